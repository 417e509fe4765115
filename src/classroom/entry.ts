import type { Doubt } from './doubts.ts';
import type { Graded, Result } from './grade.ts';

/** What a gradebook keeps of one graded submission: plain data, without the log. */
export interface Entry {
  /** The file that it came in, as a person knows it. */
  readonly file: string;
  readonly trainee: { readonly code: string; readonly name: string };
  /** Place in the assignment's items. */
  readonly item: number;
  /** From 1. */
  readonly attempt: number;
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
}

export function entryOf(file: string, { submission, doubts, result }: Graded): Entry {
  const { trainee, item, attempt, ticket, began, stamps, seals, seal } = submission;
  const actions = seals.map((each) => each.slice(0, 8));
  return { file, trainee, item, attempt, ticket: ticket.id, began, stamps, actions, seal, doubts, result };
}
