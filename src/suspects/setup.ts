import { act } from '../attempt/act.ts';
import type { Step } from '../attempt/attempt.ts';
import { kindOf } from '../attempt/registry.ts';
import { toldApart } from '../meter/apart.ts';
import type { Reading } from '../meter/read.ts';
import { observationsApart } from './apart.ts';
import type { Following } from './follow.ts';
import { goBack } from './snapshot.ts';

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
