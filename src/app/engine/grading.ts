/** The worker's part in a gradebook: one submission after another of one assignment. */
import type { Assignment } from '../../classroom/assignment.ts';
import { createGrader, type Graded, type Grader } from '../../classroom/grade.ts';
import type { Library } from '../../scenario/library.ts';

export interface Roll {
  readonly assignment: Assignment;
  /** Codes of everybody who may hand in, to know whose log somebody else's is. */
  readonly trainees: readonly string[];
  readonly library: Library;
}

/** What grading comes to, without the submission that it is about. */
export type Marked = Pick<Graded, 'doubts' | 'result'>;

let grader: Grader | undefined;

/** From now on submissions are of this assignment. */
export function roll({ assignment, trainees, library }: Roll): null {
  grader = createGrader(assignment, library, trainees);
  return null;
}

/** @throws DataError where it is no submission, or its ticket is not there */
export function grade({ submission }: { readonly submission: unknown }): Marked {
  if (grader === undefined) throw new Error('no assignment is open');
  const { doubts, result } = grader.grade(submission);
  return { doubts, result };
}
