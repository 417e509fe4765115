/** What a discrimination says, and whether it says anything. */
import type { Analysis } from '../../../classroom/itemAnalysis.ts';
import type { RestCorrelation } from '../../../classroom/restCorrelation.ts';

export const VERDICTS = ['few', 'alone', 'allRight', 'allWrong', 'alike', 'unsure', 'tells', 'against'] as const;
/** A key under `classview:items.discrimination`. */
export type Verdict = (typeof VERDICTS)[number];

/** Fewer trainees give no figure at all. */
const FEWEST = 3;

/**
 * What chance alone reaches nineteen times in twenty: two standard deviations. Over all ways to deal the same numbers out to the same
 * trainees, a correlation's variance is 1/(n−1) exactly, whatever the numbers (Pitman 1937, from memory; a test deals them all out).
 * @returns 0…1
 */
export const byChance = (count: number): number => Math.min(1, 2 / Math.sqrt(Math.max(1, count - 1)));

/** @param items how many the assignment has: with one there is nothing to compare with */
export function verdictOn({ count, rightCount, discrimination }: Analysis, items: number): Verdict {
  if (items < 2) return 'alone';
  if (count < FEWEST) return 'few';
  if (rightCount === count) return 'allRight';
  if (rightCount === 0) return 'allWrong';
  if (discrimination === undefined) return 'alike';
  if (Math.abs(discrimination) <= byChance(count)) return 'unsure';
  return discrimination > 0 ? 'tells' : 'against';
}

export const REST_VERDICTS = ['unsure', 'tells', 'against'] as const;
type Rated = RestCorrelation & { readonly discrimination: number };

/** What a kind's correlation with the rest of its paper says. A key under `classview:paper.apart.verdict`. */
export function restVerdict({ sheets, discrimination }: Rated): (typeof REST_VERDICTS)[number] {
  if (Math.abs(discrimination) <= byChance(sheets)) return 'unsure';
  return discrimination > 0 ? 'tells' : 'against';
}

/** Those of which something can be said, the lowest first. */
export const rated = <Kind extends RestCorrelation>(kinds: readonly Kind[]): (Kind & Rated)[] =>
  kinds
    .filter((each): each is Kind & Rated => each.discrimination !== undefined)
    .sort((a, b) => a.discrimination - b.discrimination);
