import { act } from '../attempt/act.ts';
import { type Attempt, begin, type Step } from '../attempt/attempt.ts';
import type { Bench } from '../attempt/bench.ts';
import type { Job } from '../attempt/job.ts';
import { kindOf } from '../attempt/registry.ts';
import { toldApart } from '../meter/apart.ts';
import type { Reading } from '../meter/read.ts';
import type { RigData } from '../rig/schema.ts';
import { observationsApart } from './apart.ts';
import { arriveField, type Column, type Field, gatherField, stepField, survivors } from './field.ts';
import { goBack, type Snapshot, takeSnapshot } from './snapshot.ts';

/** The match matrix of an attempt, up to the naming, and what it says of each step. */
export interface Following {
  readonly field: Field;
  /** The first look round: column 0 of the matrix, no step of the trainee's. */
  readonly arrival: Column;
  /** One column a step. */
  readonly columns: readonly Column[];
  /** Twins left before each step, and after the last. */
  readonly leftBefore: readonly (readonly boolean[])[];
  /** Hypotheses ruled out by each step. */
  readonly ruledOut: readonly (readonly number[])[];
  /** Step by step, the twins as they stood before it: only of those that were left then. */
  readonly before: readonly ReadonlyMap<number, Snapshot>[];
  readonly truthBefore: readonly Snapshot[];
  /** The true world's bench, driven alongside. */
  readonly truth: Bench;
}

/** Steps that were taken to find the fault: all before the naming. */
export function searchSteps(steps: readonly Step[]): readonly Step[] {
  const named = steps.findIndex((step) => step.action.name === 'name');
  return named < 0 ? steps : steps.slice(0, named);
}

/** Drives every suspect's twin through an attempt and keeps what each predicted. */
export function followAttempt(attempt: Attempt): Following {
  return follow(attempt.job, attempt.assembly.rig, searchSteps(attempt.steps));
}

function follow(job: Job, rig: RigData, steps: readonly Step[]): Following {
  const fresh = begin(job, rig);
  const field = gatherField(job, fresh.assembly);
  const arrival = arriveField(field, fresh.arrival);
  const columns: Column[] = [];
  const ruledOut: number[][] = [];
  const before: Map<number, Snapshot>[] = [];
  const truthBefore: Snapshot[] = [];
  const leftBefore: (readonly boolean[])[] = [arrival.matched];
  let left: readonly boolean[] = arrival.matched;
  for (const { action } of steps) {
    before.push(new Map(field.twins.flatMap((twin, index) => (left[index] ? [[index, takeSnapshot(twin.bench)] as const] : []))));
    truthBefore.push(takeSnapshot(fresh.bench));
    const { observation } = act(fresh.bench, action);
    const column = stepField(field, action, observation, left);
    const next = left.map((was, index) => was && column.matched[index] === true);
    const alive = survivors(field, next);
    ruledOut.push([...survivors(field, left)].filter((hypothesis) => !alive.has(hypothesis)));
    columns.push(column);
    leftBefore.push(next);
    left = next;
  }
  return { field, arrival, columns, leftBefore, ruledOut, before, truthBefore, truth: fresh.bench };
}

/**
 * Whether a step without gain was a set-up, by the definition: take it out of the log, take the rest again, and see whether a later
 * step that counts (an informative one, or one that safe working asks for) would have told something else or could not have been done.
 * @param required by step: whether safe working or proof asks for it
 */
export function neededLater(following: Following, steps: readonly Step[], index: number, required: readonly boolean[]): boolean {
  const { field, truth } = following;
  const start = following.before[index];
  const truthStart = following.truthBefore[index];
  if (!start || !truthStart) return false;
  const informative = (step: number) => (following.columns[step]?.gainBits ?? 0) > 0;
  const counts = (step: number) => informative(step) || required[step] === true;
  const last = steps.findLastIndex((_, step) => counts(step));
  if (last <= index) return false;
  goBack(truth, truthStart);
  for (const [twin, snapshot] of start) {
    const bench = field.twins[twin]?.bench;
    if (bench) goBack(bench, snapshot);
  }
  for (let step = index + 1; step <= last; step++) {
    const taken = steps[step];
    const column = following.columns[step];
    if (!taken || !column) return false;
    if (kindOf(taken.action).refusal(truth, taken.action) !== undefined) {
      if (informative(step)) return true;
      // What only undid the step that was taken out needs no doing; the rest goes on without it.
      continue;
    }
    const told = act(truth, taken.action).observation;
    if (required[step] === true && readingsApart(told.reading, taken.observation.reading)) return true;
    for (const twin of start.keys()) {
      const bench = field.twins[twin]?.bench;
      if (!bench) continue;
      const matched = !observationsApart(act(bench, taken.action).observation, told);
      if (informative(step) && following.leftBefore[step]?.[twin] === true && matched !== column.matched[twin]) return true;
    }
  }
  return false;
}

function readingsApart(a: Reading | undefined, b: Reading | undefined): boolean {
  return a && b ? toldApart(a, b) : a !== b;
}
