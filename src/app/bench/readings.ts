import type { StepTold } from '../step-words.ts';

/** Steps whose reading is worth a line. */
export function readingsOf(told: readonly StepTold[]): readonly StepTold[] {
  return told.filter((each) => each.measured !== '');
}

/** Steps that only get the meter ready, or talk. */
const NO_FINDING: ReadonlySet<string> = new Set(['probe', 'meter', 'clamp', 'hint', 'name', 'close']);

/** Steps that may prove something: those that read, and all that did something to see what follows, were it nothing new. */
export function findingsOf(told: readonly StepTold[]): readonly StepTold[] {
  return told.filter((each) => each.measured !== '' || each.noticed.length > 0 || !NO_FINDING.has(each.step.action.name));
}
