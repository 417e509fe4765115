/** A day of a sound house on its thermostat, at a chosen load, and how often it cycled. */
import { assemble } from '../../src/rig/assemble.ts';
import type { Fault } from '../../src/rig/faults.ts';
import type { RigData } from '../../src/rig/schema.ts';
import { advance } from '../../src/world/time.ts';
import { createWorld, settle, stateOf } from '../../src/world/world.ts';

const DAY_SECONDS = 86_400;
/** Time to come to its cycle, before anything is counted. */
const SETTLING_SECONDS = 6 * 3600;

export interface House {
  readonly rig: RigData;
  readonly mode: 'heat' | 'cool';
  readonly set: number;
  /** Btu/h of the equipment at full run: what `x` is a fraction of. */
  readonly outputBtuPerHour: number;
  readonly faults?: readonly Fault[];
}

export interface Day {
  /** Calls that began, per hour. */
  readonly cyclesPerHour: number;
  /** Share of the time that it called. */
  readonly onTime: number;
  readonly meanOnSeconds: number;
  readonly meanOffSeconds: number;
}

/** Lives a day with the weather such that the house needs `load` of the output at the set temperature. */
export function dayOf({ rig, mode, set, outputBtuPerHour, faults = [] }: House, load: number): Day {
  const assembly = assemble(rig);
  const room = rig.rooms[0];
  const thermostat = assembly.parts.find((part) => part.kind.calls !== undefined);
  if (!room || !thermostat) throw new Error('no room or no thermostat');
  const heat = mode === 'heat' ? load * outputBtuPerHour : -load * outputBtuPerHour;
  const outdoorFahrenheit = set - (heat + room.gainsBtuPerHour) / room.lossBtuPerHourFahrenheit;
  const world = createWorld(assembly, faults, { outdoorFahrenheit, startFahrenheit: set });
  const site = world.sites[thermostat.index];
  const state = stateOf(world, thermostat);
  if (!site) throw new Error('no site');
  thermostat.kind.operate?.(site, state, mode === 'heat' ? 'setHeat' : 'setCool', set);
  thermostat.kind.operate?.(site, state, 'mode', mode);
  settle(world);
  const calling = () => stateOf(world, thermostat)[mode === 'heat' ? 'w' : 'y'] === 1;
  advance(world, SETTLING_SECONDS);
  const started = world.state.time;
  let [began, onSeconds, last, was] = [0, 0, started, calling()];
  const note = () => {
    if (was) onSeconds += world.state.time - last;
    if (calling() && !was) began += 1;
    was = calling();
    last = world.state.time;
    return false;
  };
  advance(world, DAY_SECONDS, note);
  note();
  return {
    cyclesPerHour: (began * 3600) / DAY_SECONDS,
    onTime: onSeconds / DAY_SECONDS,
    meanOnSeconds: onSeconds / began,
    meanOffSeconds: (DAY_SECONDS - onSeconds) / began,
  };
}
