/** What each ticket and each paper of an assignment counts towards the total. */
import { z } from 'zod';

export const MOST_WEIGHT = 10;

/** Against the others' weights; what says nothing counts as 1. */
export const weightSchema = z
  .int({ error: 'classroom.weight' })
  .min(1, { error: 'classroom.weight' })
  .max(MOST_WEIGHT, { error: 'classroom.weight' })
  .optional();

interface Weighted {
  readonly weight?: number | undefined;
}

interface Places {
  readonly items: readonly Weighted[];
  readonly papers?: readonly Weighted[] | undefined;
}

/** What each of an assignment's places counts, 1…10: its items, then its papers. */
export const weightsOf = ({ items, papers = [] }: Places): number[] => [...items, ...papers].map(({ weight = 1 }) => weight);

/** The same; undefined where they do not differ, and so say nothing. */
export function differingWeights(assignment: Places): readonly number[] | undefined {
  const weights = weightsOf(assignment);
  return new Set(weights).size > 1 ? weights : undefined;
}

const sumOf = (weights: readonly number[]): number => weights.reduce((all, weight) => all + weight, 0);

/** What part of the total each place has, 0…1; undefined where all have the same. */
export function sharesOf(assignment: Places): readonly number[] | undefined {
  const weights = differingWeights(assignment);
  return weights?.map((weight) => weight / sumOf(weights));
}

/** What counts so much. What counts 1 does not say so: its file stays as it was. */
export function withWeight<Item extends Weighted>(item: Item, weight = 1): Item {
  const { weight: _, ...rest } = item;
  return (weight === 1 ? rest : { ...rest, weight }) as Item;
}

/**
 * The mean of points by weight, of 100.
 * @param points by place, of 100; undefined, where there are none, counts as nothing
 * @param weights as {@link weightsOf} has them, as many as there are points
 */
export function totalOf(points: readonly (number | undefined)[], weights: readonly number[]): number {
  const sum = weights.reduce((all, weight, place) => all + weight * (points[place] ?? 0), 0);
  return sum / Math.max(1, sumOf(weights));
}
