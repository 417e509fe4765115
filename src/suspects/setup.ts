import { act, moveHands } from '../attempt/act.ts';
import type { Action } from '../attempt/actions.ts';
import type { Step } from '../attempt/attempt.ts';
import type { Bench } from '../attempt/bench.ts';
import { kindOf } from '../attempt/registry.ts';
import { toldApart } from '../meter/apart.ts';
import type { Reading } from '../meter/read.ts';
import { observationsApart } from './apart.ts';
import type { Following } from './follow.ts';
import { goBack } from './snapshot.ts';

function isInformative(following: Following, step: number): boolean {
  return (following.columns[step]?.gainBits ?? 0) > 0;
}

/** The last step that counts: an informative one, or one that safe working asks for. */
function lastThatCounts(following: Following, required: readonly boolean[]): number {
  return following.columns.findLastIndex((column, step) => column.gainBits > 0 || required[step] === true);
}

/**
 * Whether a step without gain was a set-up, by the definition: take it out of the log, take the rest again, and see whether a later
 * step that counts (an informative one, or one that safe working asks for) would have told something else or could not have been done.
 * @param required by step: whether safe working or proof asks for it
 */
export function neededByDeletion(
  following: Following,
  steps: readonly Step[],
  index: number,
  required: readonly boolean[],
): boolean {
  const { field, truth } = following;
  const start = following.before[index];
  const truthStart = following.truthBefore[index];
  if (!start || !truthStart) return false;
  const last = lastThatCounts(following, required);
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
      if (isInformative(following, step)) return true;
      // What only undid the step that was taken out needs no doing; the rest goes on without it.
      continue;
    }
    const told = act(truth, taken.action).observation;
    if (required[step] === true && readingsApart(told.reading, taken.observation.reading)) return true;
    // Whoever had been ruled out by then has no say in what the step told.
    for (const twin of start.keys()) {
      const bench = field.twins[twin]?.bench;
      if (!bench || following.leftBefore[step]?.[twin] !== true) continue;
      const matched = !observationsApart(act(bench, taken.action).observation, told);
      if (isInformative(following, step) && matched !== column.matched[twin]) return true;
    }
  }
  return false;
}

function readingsApart(a: Reading | undefined, b: Reading | undefined): boolean {
  return a && b ? toldApart(a, b) : a !== b;
}

/**
 * The same verdict, sooner. First the hands alone go through the rest without the step: if an informative step is refused, it was needed.
 * If not, and the step moved nothing electrical, and from it to the last step that counts nothing happened by itself, and the hands
 * stand at every step that counts as they did, then nothing can have told otherwise. Only what is left is taken out and done again.
 */
export function neededLater(following: Following, steps: readonly Step[], index: number, required: readonly boolean[]): boolean {
  const truthStart = following.truthBefore[index];
  const taken = steps[index]?.action;
  const last = lastThatCounts(following, required);
  if (!truthStart || !taken || last <= index) return false;
  const { truth } = following;
  const kept = handsAt(truth, steps, index, last, () => goBack(truth, truthStart), taken);
  const without = handsAt(truth, steps, index, last, () => goBack(truth, truthStart), undefined);
  let same = true;
  for (let step = index + 1; step <= last; step++) {
    const hands = without[step - index - 1];
    if (hands === undefined && isInformative(following, step)) return true;
    if (hands !== kept[step - index - 1]) same = false;
  }
  const quiet = following.columns.slice(index, last + 1).every((column) => !column.eventful);
  if (same && quiet && !kindOf(taken).electrical && taken.name !== 'look' && taken.name !== 'tug') return false;
  return neededByDeletion(following, steps, index, required);
}

/** The hands after each later step, as a text to compare; undefined where the step is refused. Nothing is solved. */
function handsAt(
  truth: Bench,
  steps: readonly Step[],
  index: number,
  last: number,
  home: () => void,
  first: Action | undefined,
): (string | undefined)[] {
  home();
  if (first) moveHands(truth, first);
  const after: (string | undefined)[] = [];
  for (let step = index + 1; step <= last; step++) {
    const action = steps[step]?.action;
    if (!action || kindOf(action).refusal(truth, action) !== undefined) {
      after.push(undefined);
      continue;
    }
    moveHands(truth, action);
    const { place, fn, red, black, clamp, turns, world } = truth;
    after.push(
      JSON.stringify([
        place,
        fn,
        red,
        black,
        clamp,
        turns,
        world.state.covers,
        world.state.bodies,
        world.state.lifted,
        world.state.jumpers,
      ]),
    );
  }
  return after;
}
