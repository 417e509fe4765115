import { hrefOf } from '../router.ts';
import { t } from '../words.ts';

interface Props {
  readonly ticket: string;
  readonly taken: boolean;
  readonly onTakeOver: () => void;
  /** Where one goes instead; the ticket's page where left out. */
  readonly back?: string;
}

/** In place of a bench that another tab is at. */
export function Elsewhere({ ticket, taken, onTakeOver, back = hrefOf('ticket', ticket) }: Props) {
  return (
    <main class="waiting">
      <h1 tabIndex={-1}>{t(taken ? 'keeping:elsewhere.takenTitle' : 'keeping:elsewhere.title')}</h1>
      <p role="alert">{t(taken ? 'keeping:elsewhere.taken' : 'keeping:elsewhere.text')}</p>
      <button type="button" class="button act" onClick={onTakeOver}>
        {t('keeping:elsewhere.take')}
      </button>
      <a class="button" href={back}>
        {t('keeping:elsewhere.back')}
      </a>
    </main>
  );
}
