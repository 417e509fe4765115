import type { PartState, Site } from '../parts/part.ts';
import type { Assembly } from '../rig/assemble.ts';
import type { WorldState } from './state.ts';

/** Below this airflow the heat stays in the cabinet, but for a twentieth. */
const LEAST_AIR = 0.1;
/** Past a crossing by this much, so that it has surely been crossed. */
const JUST_PAST_SECONDS = 0.01;

/** What the room needs to know of its world. */
interface House {
  readonly assembly: Assembly;
  readonly sites: readonly Site[];
  readonly outdoorFahrenheit: number;
  readonly state: WorldState;
}

const stateAt = (house: House, index: number) => house.state.parts[index] as PartState;

/** Where the room is heading, °F, and how slowly, seconds, with everything as it is now. */
function heading(house: House): { readonly target: number; readonly tau: number } {
  const { room } = house.assembly.rig;
  const air = house.assembly.partById.get(room.air);
  const flow = air?.kind.drive ? air.kind.drive(house.sites[air.index] as Site, stateAt(house, air.index)) : 0;
  let heat = room.gainsBtuPerHour;
  for (const id of room.sources) {
    const part = house.assembly.partById.get(id);
    if (!part?.kind.heat) continue;
    heat += part.kind.heat(house.sites[part.index] as Site, stateAt(house, part.index)) * (flow >= LEAST_AIR ? 1 : 0.05);
  }
  return {
    target: house.outdoorFahrenheit + heat / room.lossBtuPerHourFahrenheit,
    tau: (room.massBtuPerFahrenheit / room.lossBtuPerHourFahrenheit) * 3600,
  };
}

/**
 * Room temperature, °F, at a time since the network last settled: one thermal mass, exponential to its steady state. Reckoned from
 * the settling and not from the last look, so that a wait in one go and the same wait in pieces come to the same to the bit.
 */
export function roomAt(house: House, seconds: number): number {
  const { target, tau } = heading(house);
  const { settledAt, settledFahrenheit } = house.state;
  return target + (settledFahrenheit - target) * Math.exp((settledAt - seconds) / tau);
}

/** Takes note that everything has settled now: from here the room goes its way, and will cross what some part watches at `crossing`. */
export function settleRoom(house: House): void {
  const { state, assembly, sites } = house;
  state.settledAt = state.time;
  state.settledFahrenheit = state.roomFahrenheit;
  const { target, tau } = heading(house);
  let soonest = Number.POSITIVE_INFINITY;
  for (const part of assembly.parts) {
    if (!part.kind.watches) continue;
    for (const temperature of part.kind.watches(sites[part.index] as Site, stateAt(house, part.index))) {
      const share = (temperature - target) / (state.roomFahrenheit - target);
      if (share > 0 && share < 1) soonest = Math.min(soonest, -tau * Math.log(share));
    }
  }
  state.crossing = state.time + soonest + JUST_PAST_SECONDS;
}
