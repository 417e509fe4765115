/** The process that reasons: who is still a suspect on each bench, and what submissions are worth. The room never waits for it. */
import type { Action } from '../attempt/actions.ts';
import { type Attempt, begin, perform } from '../attempt/attempt.ts';
import type { Assignment } from '../classroom/assignment.ts';
import { digestOf } from '../classroom/digest.ts';
import { createGrader, type Graded, type Grader } from '../classroom/grade.ts';
import type { RigData } from '../rig/schema.ts';
import type { Library } from '../scenario/library.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { survivors } from '../suspects/field.ts';
import { followAttempt } from '../suspects/follow.ts';
import { type Ground, prepareGround } from '../suspects/ground.ts';
import { answerHost } from './answering.ts';

export type Question =
  | {
      readonly kind: 'follow';
      readonly ticket: Ticket;
      readonly rig: RigData;
      readonly actions: readonly Action[];
    }
  | {
      readonly kind: 'grade';
      readonly assignment: Assignment;
      readonly trainees: readonly string[];
      readonly submission: unknown;
    };

export interface Followed {
  readonly steps: number;
  readonly left: number;
  readonly atStart: number;
  /** The last step that ruled somebody out; 0: none did. */
  readonly learnt: number;
}

export type Answer = { readonly followed: Followed } | { readonly graded: Graded } | { readonly failed: true };

/** A ground holds a world for every suspect. */
const MOST_GROUNDS = 8;

const grounds = new Map<string, Ground>();
let grader: { readonly key: string; readonly grader: Grader } | undefined;

function groundOf(ticket: Ticket, rig: RigData): Ground {
  const key = digestOf(ticket);
  const ground = grounds.get(key) ?? prepareGround(ticket, rig);
  grounds.delete(key);
  grounds.set(key, ground);
  const [oldest] = grounds.keys();
  if (grounds.size > MOST_GROUNDS && oldest !== undefined) grounds.delete(oldest);
  return ground;
}

function follow(ticket: Ticket, rig: RigData, actions: readonly Action[]): Followed {
  const attempt: Attempt = begin(ticket, rig);
  for (const action of actions) perform(attempt, action);
  const { field, leftBefore, ruledOut } = followAttempt(attempt, groundOf(ticket, rig));
  const alive = (left: readonly boolean[] | undefined) => (left ? survivors(field, left).size : 0);
  return {
    steps: actions.length,
    left: alive(leftBefore.at(-1)),
    atStart: alive(leftBefore[0]),
    learnt: ruledOut.findLastIndex((each) => each.length > 0) + 1,
  };
}

function graderOf(assignment: Assignment, trainees: readonly string[], library: Library): Grader {
  const key = digestOf({ assignment, trainees });
  if (grader?.key !== key) grader = { key, grader: createGrader(assignment, library, trainees) };
  return grader.grader;
}

answerHost<Question, Answer>(
  (question, library) =>
    question.kind === 'follow'
      ? { followed: follow(question.ticket, question.rig, question.actions) }
      : { graded: graderOf(question.assignment, question.trainees, library).grade(question.submission) },
  () => {
    // A ground that broke off half way is of no use to the next.
    grounds.clear();
    return { failed: true };
  },
);
