/** In which order a gradebook's rows stand. No browser in here. */
import type { Row } from '../../classroom/gradebook.ts';

/** An item's column goes by its place. */
export type SortBy = 'code' | 'name' | 'total' | 'doubts' | number;

export interface Sorting {
  readonly by: SortBy;
  readonly isDown: boolean;
}

/** As the book itself has them. */
export const BY_CODE: Sorting = { by: 'code', isDown: false };

/** A heading pressed again turns the order round; numbers begin with the most, names with the first. */
export const nextSorting = (now: Sorting, by: SortBy): Sorting =>
  now.by === by ? { by, isDown: !now.isDown } : { by, isDown: by !== 'code' && by !== 'name' };

/** Rows without points stand last either way; those that are alike stay by their codes. */
export function sortedRows(rows: readonly Row[], { by, isDown }: Sorting): readonly Row[] {
  const turned = isDown ? -1 : 1;
  if (by === 'code') return isDown ? [...rows].reverse() : rows;
  if (by === 'name') return [...rows].sort((a, b) => turned * a.trainee.name.localeCompare(b.trainee.name));
  const figure = ({ cells, total }: Row): number | undefined => {
    if (by === 'total') return total;
    return by === 'doubts' ? cells.filter(({ open }) => open).length : cells[by]?.points;
  };
  return [...rows].sort((a, b) => {
    const [first, second] = [figure(a), figure(b)];
    if (first === undefined || second === undefined) return Number(first === undefined) - Number(second === undefined);
    return turned * (first - second);
  });
}
