import type { Bench } from '../attempt/bench.ts';
import { type Element, elementsOf } from '../rig/elements.ts';
import { netsOf } from '../rig/nets.ts';
import { type Point, terminalPoint } from '../rig/points.ts';
import { ampsThrough, voltsBetween, type World } from '../world/world.ts';

/** A current, rms amps. */
export interface Amps {
  readonly re: number;
  readonly im: number;
}

/** A load of a low-voltage supply, as the solved circuit has it. */
export interface Load {
  readonly part: string;
  readonly from: Point;
  readonly to: Point;
  /** Across it, rms. */
  readonly volts: number;
  /** Through it, towards the common side. */
  readonly amps: Amps;
  /** What it presents at line frequency. */
  readonly ohms: number;
  readonly reactance: number;
}

/** A low-voltage supply and all that draws from it now. */
export interface Fed {
  readonly part: string;
  readonly hot: Point;
  readonly common: Point;
  /** At its terminals, rms. */
  readonly volts: number;
  /** Out of it, rms. */
  readonly amps: number;
  /** On its plate, VA. */
  readonly rated: number;
  /** The greatest draw first. */
  readonly loads: readonly Load[];
}

/** Less than this is no load to anybody with a clamp, amps; what is less than the other is a leak. */
export const LEAST_AMPS = 0.02;
const LEAK_AMPS = 1e-3;
/** With a smaller share of the supply's volts across it something is no load but in series with one (an anticipator). */
const LEAST_SHARE = 0.3;

export const sizeOf = ({ re, im }: Amps): number => Math.hypot(re, im);

export const sumOf = (amps: readonly Amps[]): Amps =>
  amps.reduce((sum, each) => ({ re: sum.re + each.re, im: sum.im + each.im }), { re: 0, im: 0 });

/** Every low-voltage supply of a rig that is live, with its loads. */
export function fedOf({ world }: Pick<Bench, 'world'>): Fed[] {
  const { assembly, wiring } = world;
  const { elements } = elementsOf(assembly);
  const isLoad = (each: Element) => each.kind === 'coil' || each.kind === 'resistor';
  // What returns to one common without passing through a load.
  const nets = netsOf(
    assembly.rig,
    elements.filter((each) => each.kind === 'contact' || each.kind === 'fuse' || each.kind === 'link'),
  );
  const node = (point: Point) => wiring.nodeOf.get(point) ?? 0;
  return assembly.parts.flatMap(({ id, params, index, kind }): Fed[] => {
    const rated = params.ratedVoltAmps;
    const out = kind.branches.findIndex(([, to]) => to === 'X1');
    if (typeof rated !== 'number' || out < 0) return [];
    const [hot, common] = [terminalPoint(id, 'X1'), terminalPoint(id, 'X2')];
    const volts = voltsBetween(world, node(hot), node(common));
    if (volts < 1) return [];
    const loads = elements
      .filter((each) => each.part !== id && isLoad(each))
      .filter(({ from, to }) => [from, to].some((end) => nets.of(end) === nets.of(common)))
      .map((each) => loadOf(world, each, node(common)))
      .filter((each) => sizeOf(each.amps) >= LEAK_AMPS && each.volts > LEAST_SHARE * volts && each.volts < 1.1 * volts)
      .sort((a, b) => sizeOf(b.amps) - sizeOf(a.amps));
    const amps = sizeOf(ampsThrough(world, (wiring.partBranch[index] ?? 0) + out));
    return [{ part: id, hot, common, volts, amps, rated, loads }];
  });
}

/** @param common node of the supply's common side */
function loadOf(world: World, { part: id, from, to }: Element, common: number): Load {
  const { wiring, assembly } = world;
  const part = assembly.partById.get(id);
  const node = (point: Point) => wiring.nodeOf.get(point) ?? 0;
  const inner = new Set((part?.kind.inner ?? []).map((name) => node(terminalPoint(id, name))));
  const first = part ? (wiring.partBranch[part.index] ?? 0) : 0;
  const own = (part?.kind.branches ?? []).map((_, place) => first + place);
  const joins = (branch: number, a: number, far: (node: number) => boolean): boolean => {
    const ends = wiring.topology.branches[branch];
    return ends !== undefined && ((ends.from === a && far(ends.to)) || (ends.to === a && far(ends.from)));
  };
  // Two halves that meet inside a part are one load: what enters the first leaves the second.
  const through =
    own.find((branch) => joins(branch, node(from), (far) => far === node(to))) ??
    own.find((branch) => joins(branch, node(from), (far) => inner.has(far)));
  const amps = through === undefined ? { re: 0, im: 0 } : ampsThrough(world, through);
  const enters = through !== undefined && wiring.topology.branches[through]?.from === node(from);
  const towards = voltsBetween(world, node(from), common) >= voltsBetween(world, node(to), common);
  const { re, im } = world.ac;
  const sign = enters ? 1 : -1;
  const across = {
    re: sign * ((re[node(from)] ?? 0) - (re[node(to)] ?? 0)),
    im: sign * ((im[node(from)] ?? 0) - (im[node(to)] ?? 0)),
  };
  const square = amps.re ** 2 + amps.im ** 2;
  return {
    part: id,
    from,
    to,
    volts: voltsBetween(world, node(from), node(to)),
    amps: enters === towards ? amps : { re: -amps.re, im: -amps.im },
    ohms: (across.re * amps.re + across.im * amps.im) / square,
    reactance: (across.im * amps.re - across.re * amps.im) / square,
  };
}

/** The draw of each part that is one to anybody with a clamp, its loads taken together: amps added as they are read, one after another. */
export function drawsOf(loads: readonly Load[]): { readonly part: string; readonly amps: number }[] {
  const parts = new Map<string, number>();
  for (const { part, amps } of loads) parts.set(part, (parts.get(part) ?? 0) + sizeOf(amps));
  return [...parts].map(([part, amps]) => ({ part, amps })).filter(({ amps }) => amps >= LEAST_AMPS);
}
