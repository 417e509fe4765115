/** A trainee without a plan: any action that can be done now, as a seed decides. */
import type { Action, ActionName } from '../../src/attempt/actions.ts';
import { type Attempt, refusalOf } from '../../src/attempt/attempt.ts';
import { REGISTRY } from '../../src/attempt/registry.ts';

/** How often each kind of action is tried beside the others; naming and closing are left out. */
const TRIED: Readonly<Partial<Record<ActionName, number>>> = {
  walk: 6,
  cover: 5,
  operate: 5,
  set: 2,
  pull: 2,
  turn: 2,
  mat: 1,
  seat: 1,
  meter: 5,
  probe: 12,
  clamp: 2,
  jumper: 3,
  lift: 3,
  land: 3,
  tug: 3,
  unplug: 1,
  plug: 1,
  look: 4,
  wait: 4,
  watch: 3,
  replace: 1,
};
/** Every kind of action that comes up. */
export const TRIED_NAMES = Object.keys(TRIED) as readonly ActionName[];
const NAMES = TRIED_NAMES.flatMap((name) => new Array<ActionName>(TRIED[name] ?? 0).fill(name));

type Random = () => number;

function pick<T>(random: Random, list: readonly T[]): T | undefined {
  return list[Math.floor(random() * list.length)];
}

/** A setting of some control with a range, in its steps. */
function anySetting(attempt: Attempt, random: Random): Action | undefined {
  const settings = attempt.assembly.parts.flatMap((part) =>
    (part.kind.controls ?? []).map((control) => ({ part: part.id, control })),
  );
  const found = pick(
    random,
    settings.filter(({ control }) => control.range !== undefined),
  );
  if (!found?.control.range) return undefined;
  const { from, to, step } = found.control.range;
  const value = from + step * Math.floor((random() * (to - from)) / step);
  return { name: 'set', part: found.part, control: found.control.id, value };
}

/** An action that is not refused. */
export function anyAction(attempt: Attempt, random: Random): Action {
  for (let tries = 0; tries < 1000; tries++) {
    const name = pick(random, NAMES) ?? 'wait';
    const options: readonly Action[] = REGISTRY[name].options(attempt.bench);
    const action = name === 'set' ? anySetting(attempt, random) : pick(random, options);
    if (action && refusalOf(attempt, action) === undefined) return action;
  }
  throw new Error('nothing can be done');
}
