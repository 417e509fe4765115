import type { Action } from '../../../attempt/actions.ts';
import type { Bench } from '../../../attempt/bench.ts';
import type { HistoryAct } from '../../../attempt/job.ts';
import { lookRound } from '../../../attempt/notices.ts';
import type { Notice } from '../../../attempt/view.ts';
import type { Fault } from '../../../rig/faults.ts';
import { MAT_PLACE } from '../../../rig/points.ts';
import { callersOf, goTo } from '../../../suspects/route.ts';
import { advance } from '../../../world/time.ts';
import { type Setting, takeAll } from '../../setting.ts';
import { stepsOf } from '../contacts/bearing.ts';

/** Somewhere to stand at the equipment, every cover off, and watch: as it cycles by itself, or a call from when its power comes on. */
export interface Watch {
  readonly place: string;
  readonly powered: boolean;
  /** The part that calls, and the call; without one it goes on as the customer left it. */
  readonly call: { readonly caller: string; readonly id: string } | undefined;
}

/** What is perceived at once, and how long after the trainee began to watch, seconds. */
export interface Happening {
  readonly at: number;
  readonly notices: readonly Notice[];
}

export interface Run {
  /** From the door to where and when the watch begins. */
  readonly steps: readonly Action[];
  readonly happenings: readonly Happening[];
}

/** How long is watched, seconds: a cycle or two of a house, or a call that is just starting. */
const CYCLES_SECONDS = 5400;
const CALL_SECONDS = 600;
/** °F beyond the room that are asked for. */
const NEAR_DEGREES = 2;
/** What follows so soon is seen at once, seconds. */
const AT_ONCE_SECONDS = 1;

/** Everywhere to stand and watch in this house. */
export function watchesOf(setting: Setting): readonly Watch[] {
  const { rig, assembly } = setting;
  const callers = callersOf(setting.bench([]));
  const equipment = rig.places.filter(
    ({ id }) =>
      id !== MAT_PLACE && assembly.parts.some(({ data }) => data.place === id) && !callers.some(({ data }) => data.place === id),
  );
  return equipment.flatMap(({ id: place }) => {
    const calls = callers.flatMap(({ id: caller, kind }) =>
      (kind.calls ?? []).filter(({ id }) => id !== 'off').map(({ id }) => ({ caller, id })),
    );
    const isolated = isolatorsAt(setting, place).length > 0;
    const cycling = calls.filter(({ caller, id }) => nearCall(setting, caller, id).some(({ name }) => name === 'set'));
    return [
      { place, powered: false, call: undefined },
      ...cycling.map((call) => ({ place, powered: false, call })),
      ...(isolated ? calls.map((call) => ({ place, powered: true, call })) : []),
    ];
  });
}

function isolatorsAt({ assembly }: Setting, place: string) {
  return assembly.parts.flatMap(({ id, kind, data }) => (kind.isolator && data.place === place ? [{ id, ...kind.isolator }] : []));
}

/** A call's keys, with a temperature that the house comes to after a while: it cycles. */
function nearCall(setting: Setting, caller: string, id: string): HistoryAct[] {
  const bench = setting.bench([]);
  const part = bench.world.assembly.partById.get(caller);
  const room = Math.round(part ? (bench.world.sites[part.index]?.roomFahrenheit ?? 0) : 0);
  const acts = part?.kind.calls?.find((call) => call.id === id)?.acts ?? [];
  return stepsOf(
    caller,
    acts.map(({ control, value }) => {
      const range = part?.kind.controls?.find((each) => each.id === control)?.range;
      if (typeof value === 'string' || !range) return { control, value };
      const to = value > (range.from + range.to) / 2 ? room + NEAR_DEGREES : room - NEAR_DEGREES;
      return { control, value: Math.min(range.to, Math.max(range.from, to)) };
    }),
  );
}

const known = new WeakMap<Setting, Map<string, Run>>();

/** What somebody sees and hears happen who stands there, with these faults; kept for the setting. */
export function runOf(setting: Setting, watch: Watch, faults: readonly Fault[]): Run {
  const runs = known.get(setting) ?? new Map<string, Run>();
  known.set(setting, runs);
  const key = JSON.stringify([watch, faults]);
  const found = runs.get(key) ?? watched(setting, watch, faults);
  runs.set(key, found);
  return found;
}

function watched(setting: Setting, { place, powered, call }: Watch, faults: readonly Fault[]): Run {
  const covers = setting.rig.covers.filter((cover) => cover.place === place).map(({ id }) => id);
  const isolators = powered ? isolatorsAt(setting, place) : [];
  const going = setting.bench(faults);
  const set = call && !powered ? settingSteps(going, setting, call) : [];
  const calls = powered && call ? { caller: call.caller, call: call.id, isolate: isolators.map(({ id }) => id) } : {};
  const way = goTo(going, { place, covers, live: true, ...calls });
  const on = isolators.map(({ id, control, on: position }): Action => ({ name: 'operate', part: id, control, position }));
  const steps = [...set, ...(way ?? []), ...on];
  const bench = setting.bench(faults);
  if (!way || !takeAll(bench, steps)) return { steps, happenings: [] };
  const start = bench.world.state.time;
  const happenings: { at: number; notices: Notice[] }[] = [];
  advance(bench.world, powered ? CALL_SECONDS : CYCLES_SECONDS, () => {
    const notices = lookRound(bench);
    const at = bench.world.state.time - start;
    const last = happenings.at(-1);
    if (notices.length === 0) return false;
    if (last && at - last.at <= AT_ONCE_SECONDS) last.notices.push(...notices);
    else happenings.push({ at, notices });
    return false;
  });
  return { steps, happenings };
}

/** From the door to whoever calls, and the keys there; what stands so already needs none. */
function settingSteps(bench: Bench, setting: Setting, { caller, id }: NonNullable<Watch['call']>): Action[] {
  const place = bench.world.assembly.partById.get(caller)?.data.place ?? setting.rig.start;
  const there = [...(place === bench.place ? [] : [{ name: 'walk', to: place } as const]), ...nearCall(setting, caller, id)];
  return there.filter((step) => takeAll(bench, [step]));
}
