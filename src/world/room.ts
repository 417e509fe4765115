import type { Site } from '../parts/part.ts';
import { stateOf, type World } from './world.ts';

/** Below this airflow the heat stays in the cabinet, but for a twentieth. */
const LEAST_AIR = 0.1;

/** Where the room is heading, °F, and how slowly, seconds, with everything as it is now. */
function heading(world: World): { readonly target: number; readonly tau: number } {
  const { room } = world.assembly.rig;
  const air = world.assembly.partById.get(room.air);
  const flow = air?.kind.drive ? air.kind.drive(world.sites[air.index] as Site, stateOf(world, air)) : 0;
  let heat = room.gainsBtuPerHour;
  for (const id of room.sources) {
    const part = world.assembly.partById.get(id);
    if (part?.kind.heat)
      heat += part.kind.heat(world.sites[part.index] as Site, stateOf(world, part)) * (flow >= LEAST_AIR ? 1 : 0.05);
  }
  return {
    target: world.outdoorFahrenheit + heat / room.lossBtuPerHourFahrenheit,
    tau: (room.massBtuPerFahrenheit / room.lossBtuPerHourFahrenheit) * 3600,
  };
}

/** Room temperature, °F, this many seconds on, if nothing changes meanwhile: one thermal mass, exponential to its steady state. */
export function roomAfter(world: World, seconds: number): number {
  const { target, tau } = heading(world);
  return target + (world.state.roomFahrenheit - target) * Math.exp(-seconds / tau);
}

/** Seconds until the room first crosses one of these temperatures, Infinity when it never will. */
export function secondsToCross(world: World, temperatures: readonly number[]): number {
  const { target, tau } = heading(world);
  const now = world.state.roomFahrenheit;
  let soonest = Number.POSITIVE_INFINITY;
  for (const temperature of temperatures) {
    const part = (temperature - target) / (now - target);
    if (part > 0 && part < 1) soonest = Math.min(soonest, -tau * Math.log(part));
  }
  return soonest;
}
