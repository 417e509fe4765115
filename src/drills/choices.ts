/** The choices of an item: the right one and some that are wrong, such that its place among them gives nothing away. */
import type { Random } from '../scenario/variant.ts';
import type { Draft, Wrong } from './item.ts';
import { distance, sizeOf } from './likeness.ts';
import { type Said, saidApart } from './said.ts';

/** Wrong choices from which some are taken, the worthiest. */
const MOST_WRONG = 9;

/** Lots, from 0 up to 1, for where the right choice is to stand: by size, and by how much it has in common with the others. */
type Places = readonly number[];

export const placesByLot = (random: Random): Places => [random(), random()];

export interface Offer {
  /** The wrong choices that are taken. */
  readonly wrong: readonly Wrong[];
  /** By how many places the right one misses those that it was to have. */
  readonly off: number;
}

/**
 * Wrong choices that can be told from the right one and from each other: with them the right one comes
 * nearest to the places that its lots fall on; of those with which it does, the worthiest. Undefined where there are too few.
 */
export function choicesOf({ right, wrong }: Draft, count: number, places: Places): Offer | undefined {
  const apart: Wrong[] = [];
  for (const each of wrong)
    if (apart.length < MOST_WRONG && [right, ...apart.map(({ said }) => said)].every((other) => saidApart(other, each.said)))
      apart.push(each);
  const offers = someOf(apart, count - 1).map((few) => ({
    few,
    stands: standsIn(
      right,
      few.map(({ said }) => said),
    ),
  }));
  const [bySize = 0, byLikeness = 0] = places.map((lot) => lot * count);
  const sizes = new Set(offers.map(({ stands }) => stands[0]?.before ?? 0));
  const wanted = [wantedOf(bySize, [...sizes]), { place: Math.floor(byLikeness), off: 0 }];
  let best: Offer | undefined;
  for (const { few, stands } of offers) {
    const off = stands.reduce((sum, stand, by) => sum + (wanted[by]?.off ?? 0) + missed(stand, wanted[by]?.place ?? 0), 0);
    if (best === undefined || off < best.off) best = { wrong: few, off };
  }
  return best;
}

/** The place by size that a lot falls on, or where the right choice cannot stand there any place where it can. @param lot from 0 up to the count of choices */
function wantedOf(lot: number, possible: readonly number[]): { readonly place: number; readonly off: number } {
  const place = Math.floor(lot);
  if (possible.includes(place)) return { place, off: 0 };
  const sorted = [...possible].sort((a, b) => a - b);
  return { place: sorted[Math.floor((lot - place) * sorted.length)] ?? 0, off: 1 };
}

/** Every choice of so many things, those with the first of them first. */
export function someOf<T>(things: readonly T[], count: number): T[][] {
  if (count === 0) return [[]];
  return things.flatMap((thing, index) => someOf(things.slice(index + 1), count - 1).map((rest) => [thing, ...rest]));
}

/** A place among others: so many before it, and so many, itself among them, that are like it. */
interface Stand {
  readonly before: number;
  readonly alike: number;
}

/** Where the right choice stands by size, and by how little it has in common with the others. */
function standsIn(right: Said, wrong: readonly Said[]): readonly Stand[] {
  const all = [right, ...wrong];
  const sizes = all.map((each) => sizeOf(each) ?? 0);
  const far = all.map((one) => all.reduce((sum, other) => sum + distance(one, other), 0));
  return [sizes, far].map(([own = 0, ...others]) => ({
    before: others.filter((each) => each < own - NEAR).length,
    alike: 1 + others.filter((each) => !(Math.abs(each - own) > NEAR)).length,
  }));
}

/** Sums that are no further apart are one. */
const NEAR = 1e-9;

const missed = ({ before, alike }: Stand, place: number): number =>
  place < before ? before - place : Math.max(0, place - (before + alike - 1));
