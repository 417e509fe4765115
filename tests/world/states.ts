/** The rig in every mode that tests go through, with any faults in it. */
import type { Assembly } from '../../src/rig/assemble.ts';
import type { Fault } from '../../src/rig/faults.ts';
import { BODY } from '../../src/world/state.ts';
import { advance } from '../../src/world/time.ts';
import { createWorld, settle, stateOf, type World } from '../../src/world/world.ts';
import { COLD_DAY, HOT_DAY } from '../attempt/trainee.ts';

/** Operates a control as a hand would, and lets the network settle. */
export function turn(world: World, id: string, control: string, value: string | number): void {
  const part = world.assembly.partById.get(id);
  const site = part && world.sites[part.index];
  if (!part?.kind.operate || !site) throw new Error(`no ${id} to operate`);
  part.kind.operate(site, stateOf(world, part), control, value);
  settle(world);
}

function callForHeat(world: World): void {
  turn(world, 'thermostat', 'setHeat', 75);
  turn(world, 'thermostat', 'mode', 'heat');
}

function callForCooling(world: World): void {
  turn(world, 'thermostat', 'setCool', 68);
  turn(world, 'thermostat', 'mode', 'cool');
}

/** The system's modes, and how a world is brought into each; heat at several points of its sequence (proved at 3 s, warming from 18 s, trial at 38 s, running from 43 s). */
export const SYSTEM_MODES: Readonly<Record<string, (assembly: Assembly, faults: readonly Fault[]) => World>> = {
  off(assembly, faults) {
    return createWorld(assembly, faults);
  },
  fanOn(assembly, faults) {
    const world = createWorld(assembly, faults);
    turn(world, 'thermostat', 'fan', 'on');
    advance(world, 10);
    return world;
  },
  heatProving(assembly, faults) {
    const world = createWorld(assembly, faults, COLD_DAY);
    callForHeat(world);
    advance(world, 1);
    return world;
  },
  heatWarming(assembly, faults) {
    const world = createWorld(assembly, faults, COLD_DAY);
    callForHeat(world);
    advance(world, 36);
    return world;
  },
  heatRunning(assembly, faults) {
    const world = createWorld(assembly, faults, COLD_DAY);
    callForHeat(world);
    advance(world, 120);
    return world;
  },
  cool(assembly, faults) {
    const world = createWorld(assembly, faults, HOT_DAY);
    callForCooling(world);
    advance(world, 30);
    return world;
  },
  pulled(assembly, faults) {
    const world = createWorld(assembly, faults, HOT_DAY);
    callForCooling(world);
    advance(world, 5);
    const thermostat = assembly.partById.get('thermostat');
    if (thermostat) world.state.bodies[thermostat.index] = BODY.pulled;
    settle(world);
    advance(world, 5);
    return world;
  },
};

/** A heating call in its course (asked, proving, warming, running), and any other: seconds after it was asked for. */
const MOMENTS = [2, 36, 150] as const;

/** Every mode of any rig: at rest, each call of each of its thermostats in its course, and each body off its base while it calls. */
export function modesOf(assembly: Assembly): Readonly<Record<string, (faults: readonly Fault[]) => World>> {
  const modes: Record<string, (faults: readonly Fault[]) => World> = { rest: (faults) => createWorld(assembly, faults) };
  for (const caller of assembly.parts) {
    for (const call of caller.kind.calls ?? []) {
      const calling = (faults: readonly Fault[], seconds: number): World => {
        const world = createWorld(assembly, faults, call.id.startsWith('cool') ? HOT_DAY : COLD_DAY);
        for (const { control, value } of call.acts) turn(world, caller.id, control, value);
        advance(world, seconds);
        return world;
      };
      for (const seconds of MOMENTS) modes[`${caller.id} ${call.id} ${seconds} s`] = (faults) => calling(faults, seconds);
      if (!caller.kind.removable || call !== caller.kind.calls?.at(-1)) continue;
      modes[`${caller.id} pulled`] = (faults) => {
        const world = calling(faults, 5);
        world.state.bodies[caller.index] = BODY.pulled;
        settle(world);
        advance(world, 5);
        return world;
      };
    }
  }
  return modes;
}
