import { noticedShort, type StepTold } from '../step-words.ts';
import { t } from '../words.ts';
import type { Heard } from './use-sounds.ts';

/** So many things stand beneath the work; whoever has just come into a place sees the rest there. */
const MOST_SEEN = 3;

interface CaptionsProps {
  readonly heard: Heard;
  /** The last step, where what it let one see is told here. */
  readonly last: StepTold | undefined;
}

/** What the last step let one see and what is heard, in a line of their own beneath the work: it keeps its room, so that nothing moves or is covered. */
export function Captions({ heard, last }: CaptionsProps) {
  const seen = last === undefined ? '' : noticedShort(last, MOST_SEEN);
  const heardNow = heard.captions.join(', ');
  const whole = [seen && `${t('app:strip.seen')} ${seen}`, heardNow && `${t('app:sounds.title')} ${heardNow}`]
    .filter(Boolean)
    .join(' ');
  return (
    <p class="captions" title={whole}>
      {seen !== '' && (
        <span>
          <b>{t('app:strip.seen')}</b> {seen}{' '}
        </span>
      )}
      {heardNow !== '' && (
        <span>
          <b>{t('app:sounds.title')}</b> {heardNow}
        </span>
      )}
    </p>
  );
}

/** Turns the sound on and off: a loudspeaker that sounds, or one that is crossed out. */
export function SoundSwitch({ heard }: { readonly heard: Heard }) {
  const words = t(heard.on ? 'app:sounds.on' : 'app:sounds.off');
  return (
    <button
      type="button"
      class="sound-switch"
      aria-pressed={heard.on}
      aria-label={words}
      title={words}
      onClick={() => heard.turn(!heard.on)}
    >
      <svg viewBox="0 0 24 24" aria-hidden="true" focusable="false">
        <path class="filled" d="M3 9 H7 L12 4.5 V19.5 L7 15 H3 Z" />
        <path d={heard.on ? 'M15.5 9 Q18 12 15.5 15 M18.5 6.5 Q22.5 12 18.5 17.5' : 'M16 9 L22 15 M22 9 L16 15'} />
      </svg>
    </button>
  );
}
