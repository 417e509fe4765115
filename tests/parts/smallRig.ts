/** A few parts wired together on a test bench, with a supply and a load that the test sets. */
import { z } from 'zod';
import { CATALOGUE } from '../../src/parts/catalogue.ts';
import { definePart, type PartKind, type PartState } from '../../src/parts/part.ts';
import { type Assembly, assemble } from '../../src/rig/assemble.ts';
import type { Fault } from '../../src/rig/faults.ts';
import { loadRig } from '../../src/rig/load.ts';
import { createWorld, settle, stateOf, type World } from '../../src/world/world.ts';

const AB = [
  { id: 'a', label: '' },
  { id: 'b', label: '' },
];

/** A supply of any volts behind 1 mΩ. */
const testSupply = definePart<{ volts: number }, PartState & { volts: number }>({
  kind: 'testSupply',
  section: 'supply',
  parameters: z.strictObject({ volts: z.number().default(0) }),
  terminals: AB,
  branches: [
    ['b', 'a'],
    ['b', 'earth'],
  ],
  modes: [],
  replaceMinutes: 1,
  initial: ({ volts }) => ({ due: Number.POSITIVE_INFINITY, volts }),
  conduct(_site, state, stamp) {
    stamp.source(0, 0.001, state.volts, 0);
    stamp.resistor(1, 0.001);
  },
  signs: () => [],
});

/** A resistor of any ohms. */
const testLoad = definePart<{ ohms: number }, PartState & { ohms: number }>({
  kind: 'testLoad',
  section: 'equipment',
  parameters: z.strictObject({ ohms: z.number().default(1e6) }),
  terminals: AB,
  branches: [['a', 'b']],
  modes: [],
  replaceMinutes: 1,
  initial: ({ ohms }) => ({ due: Number.POSITIVE_INFINITY, ohms }),
  conduct(_site, state, stamp) {
    stamp.resistor(0, state.ohms);
  },
  signs: () => [],
});

for (const kind of [testSupply, testLoad]) (CATALOGUE as Map<string, PartKind>).set(kind.kind, kind);

export interface SmallPart {
  readonly id: string;
  readonly kind: string;
  readonly params?: Readonly<Record<string, number>>;
  readonly links?: Readonly<Record<string, string>>;
}

/** Parts by id and wires as pairs of terminals. Wires are fixed and an inch long, so that they add no more than 12 mΩ each. */
export function smallRig(parts: readonly SmallPart[], wires: readonly (readonly [from: string, to: string])[]): Assembly {
  return assemble(
    loadRig({
      format: 'bellwire-rig',
      version: 1,
      id: 'small',
      hertz: 60,
      start: 'bench',
      places: [{ id: 'bench', walkSeconds: 0 }],
      covers: [],
      parts: parts.map((part) => ({ ...part, place: 'bench', at: { x: 0, y: 0 } })),
      wires: wires.map(([from, to], index) => ({ id: `w${index}`, from, to, colour: 'grey', awg: 10, feet: 0.1, fixed: true })),
      cables: [],
      outdoorFahrenheit: 70,
      rooms: [{ id: 'room', startFahrenheit: 70, lossBtuPerHourFahrenheit: 400, massBtuPerFahrenheit: 2500, sources: [] }],
    }),
  );
}

export function smallWorld(
  parts: readonly SmallPart[],
  wires: readonly (readonly [from: string, to: string])[],
  faults: readonly Fault[] = [],
): World {
  return createWorld(smallRig(parts, wires), faults);
}

/** A part's state, to look at or to set. */
export function stateAt(world: World, id: string): PartState {
  const part = world.assembly.partById.get(id);
  if (!part) throw new Error(`no part ${id}`);
  return stateOf(world, part);
}

/** Sets one field of a part's state (a test supply's volts, a test load's ohms) and lets the network settle. */
export function setAt(world: World, id: string, field: string, value: number): void {
  stateAt(world, id)[field] = value;
  settle(world);
}

/** The part's site: its volts and amps as the part itself sees them. */
export function siteAt(world: World, id: string) {
  const part = world.assembly.partById.get(id);
  const site = part && world.sites[part.index];
  if (!site) throw new Error(`no part ${id}`);
  return site;
}
