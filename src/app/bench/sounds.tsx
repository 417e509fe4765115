import { t } from '../words.ts';
import type { Heard } from './use-sounds.ts';

/** Captions of what is heard, over the work. */
export function Captions({ heard }: { readonly heard: Heard }) {
  if (heard.captions.length === 0) return null;
  return (
    <p class="captions">
      <b>{t('app:sounds.title')}</b> {heard.captions.join(', ')}
    </p>
  );
}

export function SoundSwitch({ heard }: { readonly heard: Heard }) {
  return (
    <button type="button" class="button small sound-switch" aria-pressed={heard.on} onClick={() => heard.turn(!heard.on)}>
      {t(heard.on ? 'app:sounds.on' : 'app:sounds.off')}
    </button>
  );
}
