/** The figures behind the charts. Pure, so that tests can hold them to the gradebook. */
import { max, min, quantile } from 'simple-statistics';
import { placesOf } from '../../../classroom/assignment.ts';
import type { Gradebook } from '../../../classroom/gradebook.ts';

/** A tenth of the points, and how many trainees ended there. */
export interface Bin {
  readonly from: number;
  /** The last is to 100, and holds it. */
  readonly to: number;
  readonly trainees: number;
}

const BINS = 10;

/** Totals, 0…100, by tens. */
export function binsOf(totals: readonly number[]): readonly Bin[] {
  return Array.from({ length: BINS }, (_, index) => ({
    from: index * BINS,
    to: (index + 1) * BINS,
    trainees: totals.filter((total) => Math.min(BINS - 1, Math.floor(total / BINS)) === index).length,
  }));
}

/** The points at one item: lowest, quartiles and highest, of 100. */
export interface Spread {
  /** From 1. */
  readonly item: number;
  readonly trainees: number;
  readonly lowest: number;
  readonly lower: number;
  readonly median: number;
  readonly upper: number;
  readonly highest: number;
}

/** By item, of what counts; an item that nobody has points at is left out. */
export function spreadsOf({ assignment, rows }: Pick<Gradebook, 'assignment' | 'rows'>): readonly Spread[] {
  return Array.from({ length: placesOf(assignment) }, (_, index) => index).flatMap((index) => {
    const points = rows.flatMap(({ cells }) => cells[index]?.points ?? []);
    if (points.length === 0) return [];
    const [lower = 0, median = 0, upper = 0] = quantile(points, [0.25, 0.5, 0.75]);
    return [{ item: index + 1, trainees: points.length, lowest: min(points), lower, median, upper, highest: max(points) }];
  });
}

/** An item by its two figures. */
export interface Placed {
  /** From 1. */
  readonly item: number;
  readonly difficulty: number;
  readonly discrimination: number;
}

/** The items that have both figures. */
export function placedOf({ analyses }: Pick<Gradebook, 'analyses'>): readonly Placed[] {
  return analyses.flatMap(({ item, ticket, difficulty, discrimination }) =>
    ticket !== undefined || difficulty === undefined || discrimination === undefined
      ? []
      : [{ item: item + 1, difficulty, discrimination }],
  );
}

/** At most so many steps from nothing to the most. */
const MOST_STEPS = 6;

/** Whole numbers from nothing up, evenly apart by 1, 2 or 5 times a power of ten. */
export function wholeTicks(most: number): number[] {
  let step = 1;
  for (let next = 0; most / step > MOST_STEPS; next += 1) step *= next % 3 === 1 ? 2.5 : 2;
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, index) => index * step);
}
