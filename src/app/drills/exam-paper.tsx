import { useEffect, useRef, useState } from 'preact/hooks';
import { number, t } from '../words.ts';
import { TimeLeft } from './exam-clock.tsx';
import { unanswered } from './exam-keep.ts';
import { ExamPlaces } from './exam-places.tsx';
import { ExamTicket } from './exam-ticket.tsx';
import { ItemView } from './item-view.tsx';
import type { Exam } from './use-exam.ts';

interface Props {
  readonly exam: Exam;
  /** The place that is shown: a question's, or after them a ticket's. */
  readonly at: number;
  readonly onGo: (place: number) => void;
}

/** The questions and tickets, one at a time; each question may be answered anew, and all flagged and come back to until the end. */
export function ExamPaper({ exam, at, onGo }: Props) {
  const { items, running } = exam;
  const { bench = [] } = running;
  const [ending, setEnding] = useState(false);
  const places = items.length + bench.length;
  const ticket = bench[at - items.length];
  const placed = { at: number(at + 1), of: number(places) };
  const turn = (by: number) => onGo(Math.max(0, Math.min(places - 1, at + by)));
  return (
    <div class="exam-paper">
      <div class="drill-bar exam-bar">
        <p>
          {ticket === undefined
            ? t('drill:exam.place', placed)
            : t('drill:exam.bench.place', { ...placed, number: number(at - items.length + 1) })}
        </p>
        <p class="exam-clock">
          {t('drill:exam.left')} <TimeLeft left={exam.left} />
        </p>
        <button type="button" class="button" onClick={() => setEnding(true)}>
          {t('drill:exam.end')}
        </button>
      </div>
      {exam.kept !== 'kept' && <p role="alert">{t(exam.kept === 'full' ? 'keeping:full' : 'app:notKept')}</p>}
      {ending && <Ending exam={exam} onGoOn={() => setEnding(false)} />}
      {ticket === undefined ? (
        <Question exam={exam} at={at} onNext={() => turn(1)} />
      ) : (
        <ExamTicket work={ticket} number={at - items.length + 1} />
      )}
      <div class="drill-do exam-turn">
        <button type="button" class="button" disabled={at === 0} onClick={() => turn(-1)}>
          {t('drill:exam.before')}
        </button>
        <button type="button" class="button" aria-pressed={running.flagged.includes(at)} onClick={() => exam.flag(at)}>
          {t('drill:exam.flag')}
        </button>
        <button
          type="button"
          class={ticket === undefined ? 'button act' : 'button'}
          disabled={at === places - 1}
          onClick={() => turn(1)}
        >
          {t('drill:page.next')}
        </button>
      </div>
      <ExamPlaces running={running} at={at} onGo={onGo} />
    </div>
  );
}

function Question({ exam, at, onNext }: { readonly exam: Exam; readonly at: number; readonly onNext: () => void }) {
  const item = exam.items[at];
  if (item === undefined) return <p role="status">{t('drill:page.drawing')}</p>;
  if (item === null) return <p class="slip">{t('drill:exam.nothing')}</p>;
  return (
    <ItemView
      key={`${item.kind} ${item.number}`}
      item={item}
      chosen={exam.running.answers[at] ?? undefined}
      onChoose={(choice) => exam.answer(at, choice)}
      onNext={onNext}
      quiet
    />
  );
}

/** Asked once more before the end, with what is left undone. */
function Ending({ exam: { items, running, finish }, onGoOn }: { readonly exam: Exam; readonly onGoOn: () => void }) {
  const { questions, tickets } = unanswered(items, running);
  // It opens at the head of the page, which may be out of sight.
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section class="slip" aria-labelledby="ending-title">
      <h2 id="ending-title" tabIndex={-1} ref={heading}>
        {t('drill:exam.sure')}
      </h2>
      <p>{questions === 0 ? t('drill:exam.allAnswered') : t('drill:exam.open', { count: questions })}</p>
      {tickets > 0 && <p>{t('drill:exam.bench.open', { count: tickets })}</p>}
      <div class="drill-do">
        <button type="button" class="button act" onClick={onGoOn}>
          {t('drill:exam.goOn')}
        </button>
        <button type="button" class="button" onClick={finish}>
          {t('drill:exam.handIn')}
        </button>
      </div>
    </section>
  );
}
