import { useEffect, useRef } from 'preact/hooks';
import { t } from '../words.ts';

interface Props {
  readonly title: string;
  /** Questions without an answer. */
  readonly questions: number;
  /** Tickets that are not closed. */
  readonly tickets?: number;
  readonly onGoOn: () => void;
  readonly onEnd: () => void;
}

/** Asked once more before the end, with what is left undone. */
export function Ending({ title, questions, tickets = 0, onGoOn, onEnd }: Props) {
  // It opens at the head of the page, which may be out of sight.
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section class="slip" aria-labelledby="ending-title">
      <h2 id="ending-title" tabIndex={-1} ref={heading}>
        {title}
      </h2>
      <p>{questions === 0 ? t('drill:exam.allAnswered') : t('drill:exam.open', { count: questions })}</p>
      {tickets > 0 && <p>{t('drill:exam.bench.open', { count: tickets })}</p>}
      <div class="drill-do">
        <button type="button" class="button act" onClick={onGoOn}>
          {t('drill:exam.goOn')}
        </button>
        <button type="button" class="button" onClick={onEnd}>
          {t('drill:exam.handIn')}
        </button>
      </div>
    </section>
  );
}
