/** Whether a kind of question tells those who know the rest of a paper from those who do not. */
import { sampleCorrelation } from 'simple-statistics';
import type { AnswerResult } from './gradeAnswers.ts';

/** With fewer sheets chance alone reaches ±1: two standard deviations, 2/√(n−1), of all ways to deal the same shares out. */
export const FEWEST_SHEETS = 6;

export interface RestCorrelation {
  /** Sheets that ask for the kind, and for another beside it. */
  readonly sheets: number;
  /**
   * Corrected item-total correlation: Pearson's, over the sheets, of the share right at this kind with the share right at all else on the same
   * sheet, −1…1. Undefined for fewer than {@link FEWEST_SHEETS} sheets, or where either share is the same on all.
   */
  readonly discrimination: number | undefined;
}

const shareOf = (answers: readonly Pick<AnswerResult, 'right'>[]): number =>
  answers.filter(({ right }) => right).length / answers.length;

/** @param sheets each one's answers */
export function restCorrelation(
  kind: string,
  sheets: readonly (readonly Pick<AnswerResult, 'kind' | 'right'>[])[],
): RestCorrelation {
  const shares = sheets.flatMap((answers) => {
    const own = answers.filter((each) => each.kind === kind);
    const rest = answers.filter((each) => each.kind !== kind);
    return own.length === 0 || rest.length === 0 ? [] : [{ own: shareOf(own), rest: shareOf(rest) }];
  });
  const [own, rest] = [shares.map((each) => each.own), shares.map((each) => each.rest)];
  const says = shares.length >= FEWEST_SHEETS && new Set(own).size > 1 && new Set(rest).size > 1;
  return {
    sheets: shares.length,
    // Rounding may take a perfect correlation past 1.
    discrimination: says ? Math.min(1, Math.max(-1, sampleCorrelation(own, rest))) : undefined,
  };
}
