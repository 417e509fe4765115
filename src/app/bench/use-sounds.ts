import { useEffect, useRef, useState } from 'preact/hooks';
import type { BenchView } from '../../attempt/view.ts';
import { soundsOf, strikesBetween } from '../../sound/heard.ts';
import { createSounds, type Sounds } from '../../sound/sounds.ts';
import { useSetting } from '../settings.ts';
import { t } from '../words.ts';

/** What the bench sounds like: played unless turned off, and always in words. */
export interface Heard {
  /** Captions of what lasts and of what struck in the last step. */
  readonly captions: readonly string[];
  readonly on: boolean;
  readonly turn: (on: boolean) => void;
}

export function useSounds(view: BenchView): Heard {
  const sounds = useRef<Sounds>();
  const before = useRef<BenchView>();
  const [sound, keepSound] = useSetting('sound');
  const [volume] = useSetting('volume');
  const on = sound === 'on';
  const [captions, setCaptions] = useState<readonly string[]>([]);

  useEffect(() => {
    sounds.current = createSounds();
    return () => sounds.current?.destroy();
  }, []);
  useEffect(() => sounds.current?.mute(!on), [on]);
  useEffect(() => sounds.current?.volume(Number(volume) / 100), [volume]);
  useEffect(() => {
    sounds.current?.show(view);
    const names = [...strikesBetween(before.current, view), ...soundsOf(view)];
    before.current = view;
    // One's own hand is no news: a probe that seats is heard, and seen on the meter.
    setCaptions(names.filter((name) => name !== 'seat').map((name) => t(`stage:caption.${name}`)));
  }, [view]);

  return { captions, on, turn: (next) => keepSound(next ? 'on' : 'off') };
}
