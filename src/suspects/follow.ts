import { act } from '../attempt/act.ts';
import type { Action } from '../attempt/actions.ts';
import { type Attempt, begin, type Step } from '../attempt/attempt.ts';
import type { Bench } from '../attempt/bench.ts';
import type { Job } from '../attempt/job.ts';
import type { RigData } from '../rig/schema.ts';
import { arriveField, type Column, type Field, stepField, survivors } from './field.ts';
import { type Ground, prepareGround, standOn } from './ground.ts';
import { type Snapshot, takeSnapshot } from './snapshot.ts';

/** The match matrix of an attempt, up to the naming, and what it says of each step. Grows step by step. */
export interface Following {
  readonly field: Field;
  /** The first look round: column 0 of the matrix, no step of the trainee's. */
  readonly arrival: Column;
  /** One column a step. */
  readonly columns: Column[];
  /** Twins left before each step, and after the last. */
  readonly leftBefore: (readonly boolean[])[];
  /** Hypotheses ruled out by each step. */
  readonly ruledOut: (readonly number[])[];
  /** Step by step, the twins as they stood before it: only of those that were left then. */
  readonly before: ReadonlyMap<number, Snapshot>[];
  readonly truthBefore: Snapshot[];
  /** The true world's bench, driven alongside. */
  readonly truth: Bench;
}

/** Steps that were taken to find the fault: all before the naming. */
export function searchSteps(steps: readonly Step[]): readonly Step[] {
  const named = steps.findIndex((step) => step.action.name === 'name');
  return named < 0 ? steps : steps.slice(0, named);
}

/**
 * Drives every suspect's twin through an attempt and keeps what each predicted.
 * @param ground the ticket's suspects, when they were gathered before
 */
export function followAttempt(attempt: Attempt, ground = prepareGround(attempt.job, attempt.assembly.rig)): Following {
  const following = beginFollowing(attempt.job, attempt.assembly.rig, ground);
  for (const { action } of searchSteps(attempt.steps)) followStep(following, action);
  return following;
}

/** A following at the moment of arrival. Two at a time on one ground would tread on each other. */
export function beginFollowing(job: Job, rig: RigData, ground: Ground): Following {
  const field = standOn(ground);
  const fresh = begin(job, rig, ground.assembly);
  const arrival = arriveField(field, fresh.arrival);
  return {
    field,
    arrival,
    columns: [],
    leftBefore: [arrival.matched],
    ruledOut: [],
    before: [],
    truthBefore: [],
    truth: fresh.bench,
  };
}

/** Twins left now. */
export function leftNow(following: Following): readonly boolean[] {
  return following.leftBefore[following.leftBefore.length - 1] ?? [];
}

/** Takes a step with the truth and with every twin. */
export function followStep(following: Following, action: Action): Column {
  const { field, truth } = following;
  const left = leftNow(following);
  following.before.push(
    new Map(field.twins.flatMap((twin, index) => (left[index] ? [[index, takeSnapshot(twin.bench)] as const] : []))),
  );
  following.truthBefore.push(takeSnapshot(truth));
  const { observation } = act(truth, action);
  const column = stepField(field, action, observation, left);
  const next = left.map((was, index) => was && column.matched[index] === true);
  const alive = survivors(field, next);
  following.ruledOut.push([...survivors(field, left)].filter((hypothesis) => !alive.has(hypothesis)));
  following.columns.push(column);
  following.leftBefore.push(next);
  return column;
}
