import { Howl, Howler } from 'howler';
import type { BenchView } from '../attempt/view.ts';
import { soundsOf, strikesBetween } from './heard.ts';
import { RECIPES, type SoundName } from './recipes.ts';
import { wavUrl } from './wav.ts';

/** What the bench sounds like. It follows views; it knows nothing of how they came about. */
export interface Sounds {
  show(view: BenchView): void;
  mute(on: boolean): void;
  /** 0…1. */
  volume(level: number): void;
  destroy(): void;
}

/** Seconds in which a lasting sound swells or dies away, so that it does not click. */
const FADE_MILLISECONDS = 60;

/** Makes the sounds as they are first needed and plays them; lasting ones loop for as long as the view holds them. */
export function createSounds(): Sounds {
  const made = new Map<SoundName, Howl>();
  const lasting = new Set<SoundName>();
  let before: BenchView | undefined;

  const howl = (name: SoundName): Howl => {
    const known = made.get(name);
    if (known !== undefined) return known;
    const recipe = RECIPES[name];
    const fresh = new Howl({ src: [wavUrl(recipe.samples())], format: ['wav'], loop: recipe.loops, volume: recipe.volume });
    made.set(name, fresh);
    return fresh;
  };
  const start = (name: SoundName): void => {
    const sound = howl(name);
    sound.stop();
    sound.play();
    if (RECIPES[name].loops) sound.fade(0, RECIPES[name].volume, FADE_MILLISECONDS);
  };
  const end = (name: SoundName): void => {
    const sound = howl(name);
    sound.fade(RECIPES[name].volume, 0, FADE_MILLISECONDS);
    sound.once('fade', () => {
      if (!lasting.has(name)) sound.stop();
    });
  };

  return {
    show(view) {
      const now = new Set(soundsOf(view));
      for (const name of lasting) {
        if (now.has(name)) continue;
        lasting.delete(name);
        end(name);
      }
      for (const name of now) {
        if (lasting.has(name)) continue;
        lasting.add(name);
        start(name);
      }
      for (const name of strikesBetween(before, view)) start(name);
      before = view;
    },
    mute(on) {
      Howler.mute(on);
    },
    volume(level) {
      Howler.volume(Math.min(1, Math.max(0, level)));
    },
    destroy() {
      for (const sound of made.values()) sound.unload();
      made.clear();
      lasting.clear();
    },
  };
}
