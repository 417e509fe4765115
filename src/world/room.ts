import type { Site } from '../parts/part.ts';
import type { AssembledPart, Assembly } from '../rig/assemble.ts';
import { crossingAfter } from './decay.ts';
import type { WorldState } from './state.ts';

/** Below this airflow the heat stays in the cabinet, but for a twentieth. */
const LEAST_AIR = 0.1;
/** Past a crossing by this much, so that it has surely been crossed. */
const JUST_PAST_SECONDS = 0.01;

/** What the rooms need to know of their world. */
interface House {
  readonly assembly: Assembly;
  readonly sites: readonly Site[];
  readonly outdoorFahrenheit: number;
  readonly state: WorldState;
}

function ask(house: House, id: string, what: 'drive' | 'heat'): number {
  const part = house.assembly.partById.get(id) as AssembledPart;
  const state = house.state.parts[part.index] as WorldState['parts'][number];
  return part.kind[what]?.(house.sites[part.index] as Site, state) ?? 0;
}

/** Heat that the parts bring into a room as everything is now, Btu/h; cooling is negative. */
export function heatInto(house: House, index: number): number {
  const room = house.assembly.rig.rooms[index] as Assembly['rig']['rooms'][number];
  let heat = 0;
  for (const { part, air, share } of room.sources) {
    const carried = air === undefined || ask(house, air, 'drive') >= LEAST_AIR ? 1 : 0.05;
    heat += ask(house, part, 'heat') * carried * share;
  }
  return heat;
}

/** Where a room is heading, °F, and how slowly, seconds, with everything as it is now. */
function heading(house: House, index: number): { readonly target: number; readonly tau: number } {
  const room = house.assembly.rig.rooms[index] as Assembly['rig']['rooms'][number];
  const heat = room.gainsBtuPerHour + heatInto(house, index);
  return {
    target: house.outdoorFahrenheit + heat / room.lossBtuPerHourFahrenheit,
    tau: (room.massBtuPerFahrenheit / room.lossBtuPerHourFahrenheit) * 3600,
  };
}

/**
 * Takes the rooms' temperatures on to a time since the network last settled: one thermal mass each, exponential to its steady state.
 * Reckoned from the settling and not from the last look, so that a wait in one go and the same wait in pieces come to the same to the bit.
 */
export function roomsAt(house: House, seconds: number): void {
  const { settledAt, settledRooms, rooms } = house.state;
  settledRooms.forEach((settled, index) => {
    const { target, tau } = heading(house, index);
    rooms[index] = target + (settled - target) * Math.exp((settledAt - seconds) / tau);
  });
}

/** Takes note that everything has settled now: from here each room goes its way, and one will cross what some part watches at `crossing`. */
export function settleRooms(house: House): void {
  const { state, assembly, sites } = house;
  state.settledAt = state.time;
  state.rooms.forEach((now, index) => {
    state.settledRooms[index] = now;
  });
  const headings = state.rooms.map((_, index) => heading(house, index));
  let soonest = Number.POSITIVE_INFINITY;
  for (const part of assembly.parts) {
    if (!part.kind.watches) continue;
    const { target, tau } = headings[part.room] as (typeof headings)[number];
    const now = state.rooms[part.room] as number;
    for (const temperature of part.kind.watches(
      sites[part.index] as Site,
      state.parts[part.index] as WorldState['parts'][number],
    )) {
      const decays =
        typeof temperature === 'number'
          ? [{ height: now - target, tau }]
          : [
              { height: now - target, tau },
              { height: temperature.rise - temperature.target, tau: temperature.tauSeconds },
            ];
      const end = typeof temperature === 'number' ? temperature : temperature.fahrenheit - temperature.target;
      soonest = Math.min(soonest, crossingAfter(decays, end - target));
    }
  }
  state.crossing = state.time + soonest + JUST_PAST_SECONDS;
}
