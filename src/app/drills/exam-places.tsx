import { number, t } from '../words.ts';
import { isClosed, type RunningExam } from './exam-keep.ts';

interface Props {
  readonly running: RunningExam;
  readonly at: number;
  readonly onGo: (place: number) => void;
}

/** Every question and ticket of an exam, with what has been done about it. */
export function ExamPlaces({ running: { answers, flagged, bench = [] }, at, onGo }: Props) {
  const places = [
    ...answers.map((answer, place) => ({ words: number(place + 1), done: answer !== null })),
    ...bench.map((work, place) => ({ words: t('drill:exam.bench.short', { at: number(place + 1) }), done: isClosed(work) })),
  ];
  return (
    <nav aria-label={t('drill:exam.questions')}>
      <ol class="exam-places">
        {places.map(({ words, done }, place) => {
          const state = done ? 'answered' : 'open';
          const isFlagged = flagged.includes(place);
          return (
            <li key={place}>
              <button
                type="button"
                class="button"
                aria-current={place === at ? 'true' : undefined}
                data-state={state}
                onClick={() => onGo(place)}
              >
                {words}
                {isFlagged && <span aria-hidden="true"> ⚑</span>}
                <span class="unseen">
                  {t(`drill:exam.state.${state}`)}
                  {isFlagged && ` ${t('drill:exam.state.flagged')}`}
                </span>
              </button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
