import { useState } from 'preact/hooks';
import { number, t } from '../words.ts';
import { Ending } from './ending.tsx';
import { TimeLeft } from './exam-clock.tsx';
import { isClosed, unanswered } from './exam-keep.ts';
import { ExamTicket } from './exam-ticket.tsx';
import { ItemView } from './item-view.tsx';
import { PlacesNav } from './places-nav.tsx';
import { TurnBar } from './turn-bar.tsx';
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
  const { answers, flagged, bench = [] } = running;
  const [ending, setEnding] = useState(false);
  const places = [
    ...answers.map((answer, place) => ({ words: number(place + 1), done: answer !== null })),
    ...bench.map((work, place) => ({ words: t('drill:exam.bench.short', { at: number(place + 1) }), done: isClosed(work) })),
  ].map((each, place) => ({ ...each, flagged: flagged.includes(place) }));
  const ticket = bench[at - items.length];
  const placed = { at: number(at + 1), of: number(places.length) };
  const left = unanswered(items, running);
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
      {ending && <Ending title={t('drill:exam.sure')} {...left} onGoOn={() => setEnding(false)} onEnd={exam.finish} />}
      {ticket === undefined ? (
        <Question exam={exam} at={at} onNext={() => onGo(Math.min(places.length - 1, at + 1))} />
      ) : (
        <ExamTicket work={ticket} number={at - items.length + 1} />
      )}
      <TurnBar
        at={at}
        places={places.length}
        flagged={flagged.includes(at)}
        main={ticket === undefined}
        onFlag={() => exam.flag(at)}
        onGo={onGo}
      />
      <PlacesNav places={places} at={at} onGo={onGo} />
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
