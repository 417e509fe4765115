import type { ComponentChildren } from 'preact';
import { hrefOf } from '../router.ts';
import { LanguageChoice } from '../shell.tsx';
import { t } from '../words.ts';
import { Dialog } from './dialog.tsx';

interface Props {
  /** Nothing is kept of this attempt. */
  readonly free: boolean;
  readonly onDone: () => void;
  /** Where else one can go from here, first. */
  readonly children?: ComponentChildren;
}

/** Where one can go from the bench, and in which language it speaks. */
export function MenuDialog({ free, onDone, children }: Props) {
  return (
    <Dialog title={t('settings:menu.title')} onDone={onDone}>
      <p>{t(free ? 'settings:menu.free' : 'settings:menu.kept')}</p>
      <nav class="menu" aria-label={t('settings:menu.title')}>
        {children}
        <a class="button" href={hrefOf('home')}>
          {t('app:toTickets')}
        </a>
        <a class="button" href={hrefOf('progress')}>
          {t('keeping:link')}
        </a>
        <a class="button" href={hrefOf('guide')}>
          {t('guide:link')}
        </a>
        <a class="button" href={hrefOf('settings')}>
          {t('settings:title')}
        </a>
      </nav>
      <div>
        <LanguageChoice />
      </div>
    </Dialog>
  );
}
