import type { Topology } from '../circuit/network.ts';
import { createSolver, type Solver } from '../circuit/solver.ts';
import type { Assembly } from '../rig/assemble.ts';
import { type Fault, splitMode } from '../rig/faults.ts';
import { endPoint, type Point, type WIRE_ENDS } from '../rig/points.ts';

/** Branch places of one wire. A fixed wire or a pin is one branch; any other has a landing at each end. */
export interface WireBranches {
  readonly landingFrom: number;
  readonly body: number;
  readonly landingTo: number;
  /** To earth, where a conductor of a cable may have been rubbed through; −1 without. */
  readonly earth: number;
}

/** Two conductors of one jacket side by side, at either end. */
export interface PairBranches {
  /** The first conductor, and its mode that shorts it to the second. */
  readonly a: string;
  readonly short: string;
  readonly from: number;
  readonly to: number;
  /** Half of the pair's capacitance. */
  readonly farads: number;
}

/** The network of an assembly as it is landed, jumpered and metered, ready to be solved. */
export interface Wiring {
  readonly topology: Topology;
  readonly solver: Solver;
  readonly nodeOf: ReadonlyMap<string, number>;
  /** First branch and first transformer of every part. */
  readonly partBranch: readonly number[];
  readonly partTransformer: readonly number[];
  /** Node of each part's terminal, inner node or earth, by name. */
  readonly partNodes: readonly Readonly<Record<string, number>>[];
  readonly wires: readonly WireBranches[];
  readonly pairs: readonly PairBranches[];
  readonly jumpers: readonly number[];
  readonly seriesMeter: number;
}

export interface Layout {
  readonly faults: readonly Fault[];
  readonly jumpers: readonly { readonly from: Point; readonly to: Point }[];
  readonly seriesMeter: { readonly red: Point; readonly black: Point } | undefined;
}

const MOST_KEPT = 400;

/** Where the faults that land wires elsewhere put their ends. */
export function landedElsewhere(assembly: Assembly, faults: readonly Fault[]): ReadonlyMap<Point, Point> {
  const moved = new Map<Point, Point>();
  for (const fault of faults) {
    const { base, other } = splitMode(fault.mode);
    if (other === undefined) continue;
    const landed = base === 'landedFrom' ? 'from' : base === 'landedTo' ? 'to' : undefined;
    const wire = assembly.wireById.get(fault.target);
    if (landed && wire) {
      moved.set(endPoint(wire.id, landed), `${wire.data[landed].split('.')[0]}.${other}`);
      continue;
    }
    const end = base === 'swappedFrom' ? 'from' : base === 'swappedTo' ? 'to' : undefined;
    const first = assembly.wireById.get(fault.target);
    const second = assembly.wireById.get(other);
    if (!end || !first || !second) continue;
    moved.set(endPoint(first.id, end), second.data[end]);
    moved.set(endPoint(second.id, end), first.data[end]);
  }
  return moved;
}

/** The wiring for a layout; worked out once and shared by every world that is laid out alike. */
export function wiringFor(assembly: Assembly, layout: Layout): Wiring {
  const moved = landedElsewhere(assembly, layout.faults);
  const key = JSON.stringify([[...moved], layout.jumpers.map(({ from, to }) => [from, to]), layout.seriesMeter ?? null]);
  const known = assembly.wirings.get(key);
  if (known) return known as Wiring;
  if (assembly.wirings.size >= MOST_KEPT) assembly.wirings.clear();
  const wiring = lay(assembly, moved, layout);
  assembly.wirings.set(key, wiring);
  return wiring;
}

function lay(assembly: Assembly, moved: ReadonlyMap<Point, Point>, layout: Layout): Wiring {
  const nodes: string[] = ['earth'];
  const nodeOf = new Map<string, number>([['earth', 0]]);
  const node = (name: string): number => {
    let index = nodeOf.get(name);
    if (index === undefined) {
      index = nodes.length;
      nodes.push(name);
      nodeOf.set(name, index);
    }
    return index;
  };
  const branches: { name: string; from: number; to: number }[] = [];
  const branch = (name: string, from: number, to: number): number => branches.push({ name, from, to }) - 1;
  const transformers: Topology['transformers'][number][] = [];

  const partBranch: number[] = [];
  const partTransformer: number[] = [];
  const partNodes: Record<string, number>[] = [];
  for (const part of assembly.parts) {
    const own: Record<string, number> = { earth: 0 };
    for (const terminal of part.kind.terminals) own[terminal.id] = node(`${part.id}.${terminal.id}`);
    for (const inner of part.kind.inner ?? []) own[inner] = node(`${part.id}.${inner}`);
    partNodes.push(own);
    partBranch.push(branches.length);
    partTransformer.push(transformers.length);
    const at = (name: string) => own[name] ?? 0;
    part.kind.branches.forEach(([from, to]) => {
      branch(`${part.id}.${from}-${to}`, at(from), at(to));
    });
    for (const [primary, secondary] of part.kind.transformers ?? []) {
      transformers.push({
        name: part.id,
        primary: [at(primary[0]), at(primary[1])],
        secondary: [at(secondary[0]), at(secondary[1])],
      });
    }
  }

  const wires = assembly.wires.map((wire): WireBranches => {
    const terminal = (end: (typeof WIRE_ENDS)[number]) => node(moved.get(endPoint(wire.id, end)) ?? wire.data[end]);
    if (wire.data.fixed || wire.data.pin) {
      return { landingFrom: -1, body: branch(wire.id, terminal('from'), terminal('to')), landingTo: -1, earth: -1 };
    }
    const from = node(endPoint(wire.id, 'from'));
    const to = node(endPoint(wire.id, 'to'));
    return {
      landingFrom: branch(`${wire.id}@from landing`, terminal('from'), from),
      body: branch(wire.id, from, to),
      landingTo: branch(`${wire.id}@to landing`, to, terminal('to')),
      earth: wire.data.cable === undefined ? -1 : branch(`${wire.id} to earth`, to, 0),
    };
  });

  const pairs: PairBranches[] = [];
  for (const cable of assembly.rig.cables) {
    const conductors = assembly.wires.filter((wire) => wire.data.cable === cable.id);
    conductors.forEach((a, place) => {
      for (const b of conductors.slice(place + 1)) {
        pairs.push({
          a: a.id,
          short: `shortTo:${b.id}`,
          from: branch(`${a.id}-${b.id} from`, node(endPoint(a.id, 'from')), node(endPoint(b.id, 'from'))),
          to: branch(`${a.id}-${b.id} to`, node(endPoint(a.id, 'to')), node(endPoint(b.id, 'to'))),
          farads: (Math.min(a.data.feet, b.data.feet) * cable.picofaradsPerFoot * 1e-12) / 2,
        });
      }
    });
  }

  const jumpers = layout.jumpers.map(({ from, to }, index) => branch(`jumper ${index + 1}`, node(from), node(to)));
  const series = layout.seriesMeter;
  const seriesMeter = series ? branch('meter', node(series.red), node(series.black)) : -1;
  const topology: Topology = { nodes, branches, transformers };
  return {
    topology,
    solver: createSolver(topology),
    nodeOf,
    partBranch,
    partTransformer,
    partNodes,
    wires,
    pairs,
    jumpers,
    seriesMeter,
  };
}
