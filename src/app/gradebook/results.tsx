import { useState } from 'preact/hooks';
import { COUNTS, type Gradebook } from '../../classroom/gradebook.ts';
import { t } from '../words.ts';
import { CellDetail } from './cell-detail.tsx';
import { Person } from './person.tsx';
import { NoItems } from './progress.tsx';
import { setCounts, useBook } from './store.ts';
import { GradeTable, MarkKey } from './table.tsx';

/** What is looked at closely: a grade, or a trainee. */
type Closely = { readonly code: string; readonly item: number | undefined };

/** The grades, trainee by trainee and item by item. */
export function Results({ gradebook }: { readonly gradebook: Gradebook }) {
  const [closely, setClosely] = useState<Closely>();
  const { work } = useBook();
  const row = gradebook.rows.find(({ trainee }) => trainee.code === closely?.code);
  const cell = closely?.item === undefined ? undefined : row?.cells[closely.item];
  const done = () => setClosely(undefined);
  return (
    <>
      <fieldset class="book-counts">
        <legend>{t('gradebook:counts.title')}</legend>
        {COUNTS.map((each) => (
          <label key={each} class="choice">
            <input type="radio" name="counts" checked={gradebook.counts === each} onChange={() => setCounts(each)} />
            <span>{t(`gradebook:counts.${each}`)}</span>
          </label>
        ))}
      </fieldset>
      <p role="status" data-testid="doubts">
        {work === 'grading'
          ? ''
          : gradebook.openDoubts === 0
            ? t('gradebook:noDoubts')
            : t('gradebook:doubtsLeft', { count: gradebook.openDoubts })}
      </p>
      <GradeTable
        gradebook={gradebook}
        onCell={(code, item) => setClosely({ code, item })}
        onPerson={(code) => setClosely({ code, item: undefined })}
      />
      <MarkKey assignment={gradebook.assignment} />
      <NoItems gradebook={gradebook} />
      {row !== undefined && closely?.item === undefined && <Person row={row} onDone={done} />}
      {row !== undefined && cell !== undefined && <CellDetail gradebook={gradebook} row={row} cell={cell} onDone={done} />}
    </>
  );
}
