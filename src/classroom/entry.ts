import { isAnswers } from './answers.ts';
import type { Doubt } from './doubts.ts';
import type { Graded, Result } from './grade.ts';
import type { PaperResult } from './gradeAnswers.ts';

/** What a gradebook keeps of one graded submission: plain data, without the log. */
export interface Entry {
  /** The file that it came in, as a person knows it. */
  readonly file: string;
  readonly trainee: { readonly code: string; readonly name: string };
  /** Place in the assignment's items. */
  readonly item: number;
  /** From 1. */
  readonly attempt: number;
  /** The ticket's id; of a paper, the digest of its questions. */
  readonly ticket: string;
  readonly began: string;
  /** Seconds by the clock from there to each step. */
  readonly stamps: readonly number[];
  /** Of each step, a text that is equal for equal actions. */
  readonly actions: readonly string[];
  /** Equal for the same submission handed in twice. */
  readonly seal: string;
  readonly doubts: readonly Doubt[];
  /** Undefined where the log does not replay. */
  readonly result: Result | undefined;
  /** What a paper's answers were worth. */
  readonly paper?: PaperResult | undefined;
}

export function entryOf(file: string, { submission, doubts, result, paper }: Graded): Entry {
  if (isAnswers(submission)) {
    const { trainee, item, attempt, began, seal } = submission;
    // Choices are no steps: two who know the same choose the same.
    const rest = { ticket: submission.paper, stamps: [], actions: [], seal, doubts, result: undefined, paper };
    return { file, trainee, item, attempt, began, ...rest };
  }
  const { trainee, item, attempt, ticket, began, stamps, seals, seal } = submission;
  const actions = seals.map((each) => each.slice(0, 8));
  return { file, trainee, item, attempt, ticket: ticket.id, began, stamps, actions, seal, doubts, result };
}

/** What it came to, of 100; undefined where that could not be worked out. */
export const pointsIn = ({ result, paper }: Pick<Entry, 'result' | 'paper'>): number | undefined => result?.total ?? paper?.total;
