import { useState } from 'preact/hooks';
import { type Assignment, placesOf } from '../../classroom/assignment.ts';
import type { Cell, Gradebook, Row } from '../../classroom/gradebook.ts';
import { sharesOf, weightsOf } from '../../classroom/weights.ts';
import { paperTitle } from '../paper-words.ts';
import { pointsText } from '../points-text.ts';
import { number, percent, t } from '../words.ts';
import { BY_CODE, nextSorting, type SortBy, sortedRows } from './sort.ts';
import { itemName, nameOf } from './words.ts';

interface Props {
  readonly gradebook: Gradebook;
  readonly onCell: (code: string, item: number) => void;
  readonly onPerson: (code: string) => void;
}

const paperAt = ({ items, papers }: Assignment, item: number): string => {
  const paper = papers?.[item - items.length];
  return paper === undefined ? '' : paperTitle(paper);
};

/** Trainees by items: points, and the marks of what is in doubt or overruled. */
export function GradeTable({ gradebook, onCell, onPerson }: Props) {
  const [sorting, setSorting] = useState(BY_CODE);
  const { assignment } = gradebook;
  const places = Array.from({ length: placesOf(assignment) }, (_, item) => item);
  const [weights, shares] = [weightsOf(assignment), sharesOf(assignment)];
  const weightAt = (item: number): string =>
    shares === undefined ? '' : t('gradebook:table.share', { weight: weights[item], share: percent(shares[item] ?? 0) });
  const heading = (by: SortBy, words: string, ...more: readonly string[]) => (
    <th key={by} scope="col" aria-sort={sorting.by !== by ? undefined : sorting.isDown ? 'descending' : 'ascending'}>
      <button type="button" class="book-sort" onClick={() => setSorting((now) => nextSorting(now, by))}>
        {words}
        <span aria-hidden="true">{sorting.by !== by ? '' : sorting.isDown ? ' ▼' : ' ▲'}</span>
        {more.map((each) => each !== '' && <small key={each}>{each}</small>)}
      </button>
    </th>
  );
  return (
    <section class="book-scroll" aria-label={t('gradebook:table.name')}>
      <table class="book-table">
        <thead>
          <tr>
            {heading('name', t('gradebook:column.name'))}
            {heading('code', t('gradebook:column.trainee'))}
            {places.map((item) => heading(item, itemName(assignment, item), paperAt(assignment, item), weightAt(item)))}
            {heading('total', t('gradebook:table.total'))}
            {heading('doubts', t('gradebook:column.doubts'))}
          </tr>
        </thead>
        <tbody>
          {sortedRows(gradebook.rows, sorting).map((row) => (
            <TraineeRow key={row.trainee.code} assignment={assignment} row={row} onCell={onCell} onPerson={onPerson} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

type RowProps = { readonly assignment: Assignment; readonly row: Row } & Pick<Props, 'onCell' | 'onPerson'>;

function TraineeRow({ assignment, row: { trainee, cells, total }, onCell, onPerson }: RowProps) {
  const open = cells.filter((each) => each.open).length;
  return (
    <tr data-trainee={trainee.code}>
      <th scope="row">
        <button type="button" class="book-person" onClick={() => onPerson(trainee.code)}>
          {nameOf(trainee)}
        </button>
      </th>
      <td>{trainee.code}</td>
      {cells.map((cell) => (
        <td key={cell.item} data-item={cell.item}>
          <button
            type="button"
            class="book-cell"
            data-open={cell.open || undefined}
            onClick={() => onCell(trainee.code, cell.item)}
          >
            <span class="unseen">
              {nameOf(trainee)}, {itemName(assignment, cell.item)}:{' '}
            </span>
            <Points cell={cell} />
          </button>
        </td>
      ))}
      <td data-testid="total">{number(total, 1)}</td>
      <td data-testid="open">{open === 0 ? '' : number(open)}</td>
    </tr>
  );
}

function Points({ cell: { points, open, overrule, entry } }: { readonly cell: Cell }) {
  const nothing = entry === undefined ? t('gradebook:table.nothing') : t('gradebook:table.noPoints');
  return (
    <>
      {points === undefined ? (
        <>
          <span aria-hidden="true">–</span>
          <span class="unseen">{nothing}</span>
        </>
      ) : (
        pointsText(points)
      )}
      {open && <Mark sign="?" words={t('gradebook:table.open')} />}
      {overrule !== undefined && <Mark sign="*" words={t('gradebook:table.overruled')} />}
    </>
  );
}

function Mark({ sign, words }: { readonly sign: string; readonly words: string }) {
  return (
    <span class="book-mark" data-sign={sign}>
      <span aria-hidden="true">{sign}</span>
      <span class="unseen">, {words}</span>
    </span>
  );
}

/** What the marks mean. */
export function MarkKey({ assignment }: Pick<Gradebook, 'assignment'>) {
  return (
    <ul class="book-key">
      <li>
        <span class="book-mark" data-sign="?">
          ?
        </span>{' '}
        {t('gradebook:table.open')}
      </li>
      <li>
        <span class="book-mark" data-sign="*">
          *
        </span>{' '}
        {t('gradebook:table.overruled')}
      </li>
      <li>– {t('gradebook:table.nothing')}</li>
      <li>{t(sharesOf(assignment) === undefined ? 'gradebook:table.weights' : 'gradebook:table.weighted')}</li>
    </ul>
  );
}
