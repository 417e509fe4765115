import { placesOf } from '../../classroom/assignment.ts';
import type { Gradebook } from '../../classroom/gradebook.ts';
import { faultText } from '../making/error-text.ts';
import { number, t } from '../words.ts';
import { goOn, stop, useBook } from './store.ts';
import { doubtText } from './words.ts';

/** How far reading and grading are, and a way to stop. */
export function Progress() {
  const { book, isReading, work, done } = useBook();
  const total = book.handedIn.size;
  const said = () => {
    if (isReading) return t('gradebook:take.reading');
    if (book.assignment === undefined) return total === 0 ? '' : t('gradebook:take.waiting', { count: total });
    return work === 'idle' && done >= total ? '' : t('gradebook:take.graded', { done: number(done), total: number(total) });
  };
  return (
    <div class="book-progress">
      <p role="status" data-testid="progress">
        {said()}
      </p>
      {work === 'grading' && (
        <>
          <progress value={done} max={total} aria-label={t('gradebook:take.progress')} />
          <button type="button" class="button" onClick={stop}>
            {t('gradebook:take.stop')}
          </button>
        </>
      )}
      {work === 'stopped' && (
        <button type="button" class="button" onClick={() => void goOn()}>
          {t('gradebook:take.goOn')}
        </button>
      )}
    </div>
  );
}

/** So many are told one by one. */
const MOST_TOLD = 20;

/** Files that could not be taken, each with why and the way out. */
export function Problems() {
  const { problems } = useBook();
  const rest = problems.length - MOST_TOLD;
  return (
    <div role="alert">
      {problems.length > 0 && (
        <div class="book-wrong">
          <p>{t('gradebook:take.wrong', { count: problems.length })}</p>
          <ul>
            {problems.slice(0, MOST_TOLD).map(({ file, error }, index) => (
              <li key={index}>{faultText(error, file)}</li>
            ))}
          </ul>
          {rest > 0 && <p>{t('gradebook:take.more', { count: rest })}</p>}
        </div>
      )}
    </div>
  );
}

/** What was handed in for items that the assignment does not have: no cell of the table can show it. */
export function NoItems({ gradebook }: { readonly gradebook: Gradebook }) {
  const { book } = useBook();
  const stray = [...book.entries.values()].filter(({ item }) => item >= placesOf(gradebook.assignment));
  if (stray.length === 0) return null;
  return (
    <ul class="book-wrong">
      {stray.map(({ file, doubts }, index) => (
        <li key={index}>
          {file}: {doubts.map(doubtText).join('; ')}
        </li>
      ))}
    </ul>
  );
}
