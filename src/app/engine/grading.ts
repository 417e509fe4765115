/** The worker's part in a gradebook: one submission after another of one assignment. */
import type { Action } from '../../attempt/actions.ts';
import type { Assignment } from '../../classroom/assignment.ts';
import { digestOf } from '../../classroom/digest.ts';
import { createGrader, type Graded, type Grader } from '../../classroom/grade.ts';
import type { Submission } from '../../classroom/submission.ts';
import type { Library } from '../../scenario/library.ts';
import type { Debrief } from '../../score/debrief.ts';

export interface Roll {
  readonly assignment: Assignment;
  /** Codes of everybody who may hand in, to know whose log somebody else's is. */
  readonly trainees: readonly string[];
  readonly library: Library;
}

/** What grading comes to, without the submission that it is about. */
export type Marked = Pick<Graded, 'doubts' | 'result' | 'paper'>;

/** What a report tells of an attempt: its debrief, without what each step ruled out, and what was done. */
export interface Review {
  readonly debrief: Debrief;
  readonly actions: readonly Action[];
}

let grader: Grader | undefined;
let rolled = '';

/** From now on submissions are of this assignment. What was worked out about the same one stays. */
export function roll({ assignment, trainees, library }: Roll): null {
  const now = digestOf([assignment, trainees]);
  if (now !== rolled) grader = createGrader(assignment, library, trainees);
  rolled = now;
  return null;
}

/** @throws DataError where it is no submission, or its ticket is not there */
export function grade({ submission }: { readonly submission: unknown }): Marked {
  if (grader === undefined) throw new Error('no assignment is open');
  const { doubts, result, paper } = grader.grade(submission);
  return { doubts, result, paper };
}

/** Null where the attempt does not replay. */
export function review({ submission }: { readonly submission: Submission }): Review | null {
  if (grader === undefined) throw new Error('no assignment is open');
  const found = grader.debrief(submission);
  if (found === undefined) return null;
  const { attempt, debrief } = found;
  const steps = debrief.steps.map((step) => ({ ...step, ruledOut: [] }));
  return { debrief: { ...debrief, steps }, actions: attempt.steps.map(({ action }) => action) };
}
