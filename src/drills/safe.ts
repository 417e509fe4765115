import { act } from '../attempt/act.ts';
import type { Action } from '../attempt/actions.ts';
import { leftBehind, type Step } from '../attempt/attempt.ts';
import type { Bench } from '../attempt/bench.ts';
import { kindOf } from '../attempt/registry.ts';
import type { Point } from '../rig/points.ts';
import { firstUnproved, isRequired, KNOWN_SOURCE_VOLTS, needsDead, readsDead, voltsRead } from '../score/required.ts';

/** What was done in an order, and what it left. */
export interface Done {
  readonly steps: readonly Step[];
  /** Step by step: whether a cover stood open after it. */
  readonly open: readonly boolean[];
}

/** Takes these steps on a bench and keeps each as an attempt's log does; undefined where one cannot be taken. */
export function doInOrder(bench: Bench, actions: readonly Action[]): Done | undefined {
  const steps: Step[] = [];
  const open: boolean[] = [];
  for (const action of actions) {
    if (kindOf(action).refusal(bench, action) !== undefined) return undefined;
    const { observation, unsafe, replacedSound } = act(bench, action);
    const { place, fn, red, black } = bench;
    const seconds = bench.world.state.time - bench.arrived;
    const { reading, notices } = observation;
    const view = { number: steps.length + 1, action, seconds, place, fn, reading, red, black, noticed: notices, unsafe };
    steps.push({ action, view, observation, unsafe, replacedSound });
    open.push(leftBehind(bench).covers);
  }
  return { steps, open };
}

/**
 * Whether work on a dead circuit was done safely and completely: no unsafe act, no dead reading from a meter that was never proved, isolated and
 * tested for absence of voltage where the work is, the meter proved again on a live source before hands go in (live-dead-live, NFPA 70E), and
 * power back only behind closed covers.
 * @param at where the work is
 * @param restored the step that gives power back, where that is asked for
 */
export function isSafe({ assembly }: Bench['world'], { steps, open }: Done, at: Point, restored: Action | undefined): boolean {
  if (steps.some(({ unsafe }) => unsafe !== undefined) || firstUnproved(steps) !== undefined) return false;
  const work = steps.findIndex(needsDead);
  const tested = steps.findIndex((step, index) => readsDead(step) && step.view.red === at && isRequired(assembly, steps, index));
  if (tested < 0 || work < tested) return false;
  const again = steps.slice(tested, work).some((step) => (voltsRead(step) ?? 0) >= KNOWN_SOURCE_VOLTS);
  if (!again) return false;
  const back = steps.findIndex(({ action }) => action === restored);
  return restored === undefined || (back > work && open[back] === false);
}
