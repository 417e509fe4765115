import { branchCurrentAc, branchCurrentDc } from '../circuit/currents.ts';
import { createValues, type Values } from '../circuit/network.ts';
import { type AcSolution, createAcSolution } from '../circuit/solver.ts';
import type { ActiveFault, Site } from '../parts/part.ts';
import type { AssembledPart, Assembly } from '../rig/assemble.ts';
import type { Fault } from '../rig/faults.ts';
import { settleRooms } from './room.ts';
import { createStamp, type PlacedStamp, stampWires } from './stamp.ts';
import type { WorldState } from './state.ts';
import { type Wiring, wiringFor } from './wiring.ts';

/** Weather and the room as a ticket finds them; what is left out is the rig's. */
export interface Weather {
  readonly outdoorFahrenheit?: number | undefined;
  readonly startFahrenheit?: number | undefined;
}

/**
 * A rig in time, with its faults in it. `state` is all that changes; the rest is either shared or worked out from it.
 * One world is one suspect's twin, or the truth: nothing in here knows which.
 */
export interface World {
  readonly assembly: Assembly;
  readonly faults: readonly Fault[];
  readonly outdoorFahrenheit: number;
  state: WorldState;
  readonly sites: readonly Site[];
  wiring: Wiring;
  values: Values;
  /** Writes into `values`. */
  stamp: PlacedStamp;
  ac: AcSolution;
  dc: Float64Array;
}

/** More passes than this, and the parts are chattering. Common relay logic settles in four or five. */
const MOST_PASSES = 40;

export function createWorld(assembly: Assembly, faults: readonly Fault[], weather: Weather = {}): World {
  const { rig } = assembly;
  const wiring = wiringFor(assembly, { faults, jumpers: [], seriesMeter: undefined });
  const values = createValues(wiring.topology);
  const world: { -readonly [K in keyof World]: World[K] } = {
    assembly,
    faults,
    outdoorFahrenheit: weather.outdoorFahrenheit ?? rig.outdoorFahrenheit,
    state: {
      time: 0,
      rooms: rig.rooms.map((room) => weather.startFahrenheit ?? room.startFahrenheit),
      settledAt: 0,
      settledRooms: rig.rooms.map((room) => weather.startFahrenheit ?? room.startFahrenheit),
      crossing: Number.POSITIVE_INFINITY,
      parts: assembly.parts.map((part) =>
        part.kind.initial(
          part.params,
          faults.find((fault) => fault.target === part.id),
        ),
      ),
      bodies: assembly.parts.map(() => 0),
      covers: rig.covers.map(() => 0),
      lifted: new Array<number>(assembly.wires.length * 2).fill(0),
      stirredUntil: assembly.wires.map(() => Number.NEGATIVE_INFINITY),
      repaired: faults.map(() => 0),
      jumpers: [],
      series: undefined,
      unsettled: 0,
    },
    sites: [],
    wiring,
    values,
    stamp: createStamp(values),
    ac: createAcSolution(wiring.topology),
    dc: new Float64Array(wiring.topology.nodes.length),
  };
  world.sites = assembly.parts.map((part) => createSite(world, part));
  settle(world);
  return world;
}

/** Faults that have not been put right. */
export function activeFaults(world: World): readonly Fault[] {
  return world.state.repaired.includes(1) ? world.faults.filter((_, index) => world.state.repaired[index] === 0) : world.faults;
}

/** Takes up a change in landings, jumpers, series meter or repairs: the network may have other nodes and branches now. */
export function rewire(world: World): void {
  const wiring = wiringFor(world.assembly, {
    faults: activeFaults(world),
    jumpers: world.state.jumpers,
    seriesMeter: world.state.series,
  });
  if (wiring === world.wiring) return;
  world.wiring = wiring;
  world.values = createValues(wiring.topology);
  world.stamp = createStamp(world.values);
  world.ac = createAcSolution(wiring.topology);
  world.dc = new Float64Array(wiring.topology.nodes.length);
}

/** Stamps the present state and solves it, AC and DC, as far as it is another than the last one solved. */
export function solve(world: World): void {
  const { values, wiring, stamp } = world;
  for (const part of world.assembly.parts) {
    stamp.at(wiring.partBranch[part.index] ?? 0, wiring.partTransformer[part.index] ?? 0);
    part.kind.conduct(world.sites[part.index] as Site, stateOf(world, part), stamp);
  }
  stampWires(world, activeFaults(world), stamp);
  if (stamp.changedAc) wiring.solver.solveAc(values, world.assembly.rig.hertz, world.ac);
  if (stamp.changedDc) wiring.solver.solveDc(values, world.dc);
  stamp.changedAc = false;
  stamp.changedDc = false;
}

/**
 * Solves and lets every part react until nothing changes. Parts that never agree are chattering: those that can are set so,
 * the rest stay as the last pass left them, and `unsettled` tells.
 */
export function settle(world: World): void {
  world.state.unsettled = agree(world) ? 0 : 1;
  settleRooms(world);
}

function agree(world: World): boolean {
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    solve(world);
    if (!react(world, pass === MOST_PASSES - 1)) return true;
  }
  solve(world);
  return false;
}

function react(world: World, last: boolean): boolean {
  let changed = false;
  for (const part of world.assembly.parts) {
    if (!part.kind.react) continue;
    const state = stateOf(world, part);
    if (!part.kind.react(world.sites[part.index] as Site, state)) continue;
    changed = true;
    if (last) part.kind.chatter?.(state);
  }
  return changed;
}

export function stateOf(world: World, part: AssembledPart) {
  return world.state.parts[part.index] as WorldState['parts'][number];
}

/** RMS volts between two nodes. */
export function voltsBetween(world: World, a: number, b: number): number {
  const { re, im } = world.ac;
  return Math.hypot((re[a] ?? 0) - (re[b] ?? 0), (im[a] ?? 0) - (im[b] ?? 0));
}

/** AC phasor through a branch, from → to. */
export function ampsThrough(world: World, branch: number): { readonly re: number; readonly im: number } {
  return branchCurrentAc(world.wiring.topology, world.values, world.assembly.rig.hertz, world.ac, branch);
}

function createSite(world: World, part: AssembledPart): Site {
  const node = (name: string): number => {
    const index = world.wiring.partNodes[part.index]?.[name];
    if (index === undefined) throw new Error(`${part.id} has no terminal ${name}`);
    return index;
  };
  const first = () => world.wiring.partBranch[part.index] ?? 0;
  const at = world.faults.findIndex((fault) => fault.target === part.id);
  const linked = (role: string, what: 'drive' | 'heat'): number => {
    const index = part.links[role];
    const other = index === undefined ? undefined : world.assembly.parts[index];
    return other?.kind[what]?.(world.sites[other.index] as Site, stateOf(world, other)) ?? 0;
  };
  const fault: ActiveFault | undefined = world.faults[at];
  return {
    id: part.id,
    params: part.params,
    codes: part.codes,
    hertz: world.assembly.rig.hertz,
    outdoorFahrenheit: world.outdoorFahrenheit,
    get fault() {
      return fault && world.state.repaired[at] === 0 ? fault : undefined;
    },
    get now() {
      return world.state.time;
    },
    get roomFahrenheit() {
      return world.state.rooms[part.room] ?? 0;
    },
    volts: (a, b) => voltsBetween(world, node(a), node(b)),
    dcVolts: (a, b) => (world.dc[node(a)] ?? 0) - (world.dc[node(b)] ?? 0),
    phasor: (branch) => ampsThrough(world, first() + branch),
    amps: (branch) => {
      const { re, im } = ampsThrough(world, first() + branch);
      return Math.hypot(re, im);
    },
    dcAmps: (branch) => branchCurrentDc(world.wiring.topology, world.values, world.dc, first() + branch),
    link: (role) => linked(role, 'drive'),
    heat: (role) => linked(role, 'heat'),
  };
}
