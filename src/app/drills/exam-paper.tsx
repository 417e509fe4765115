import { useState } from 'preact/hooks';
import { number, t } from '../words.ts';
import { TimeLeft } from './exam-clock.tsx';
import { isClosed } from './exam-keep.ts';
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
  const turn = (by: number) => onGo(Math.max(0, Math.min(places - 1, at + by)));
  return (
    <>
      <div class="drill-bar exam-bar">
        <p>
          {ticket === undefined
            ? t('drill:exam.place', { at: number(at + 1), of: number(items.length) })
            : t('drill:exam.bench.place', { at: number(at - items.length + 1), of: number(bench.length) })}
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
      <div class="drill-do">
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
    </>
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
  const open = items.filter((each, place) => each !== null && running.answers[place] === null).length;
  const tickets = (running.bench ?? []).filter((work) => !isClosed(work)).length;
  return (
    <section class="slip" aria-labelledby="ending-title">
      <h2 id="ending-title">{t('drill:exam.sure')}</h2>
      <p>{open === 0 ? t('drill:exam.allAnswered') : t('drill:exam.open', { count: open })}</p>
      {tickets > 0 && <p>{t('drill:exam.bench.open', { count: tickets })}</p>}
      <div class="drill-do">
        <button type="button" class="button act" onClick={finish}>
          {t('drill:exam.handIn')}
        </button>
        <button type="button" class="button" onClick={onGoOn}>
          {t('drill:exam.goOn')}
        </button>
      </div>
    </section>
  );
}
