import { nodeAt } from '../attempt/access.ts';
import type { AssembledWire } from '../rig/assemble.ts';
import { endPoint, type Point } from '../rig/points.ts';
import { ampsThrough, voltsBetween } from '../world/world.ts';
import { type Amps, type Fed, LEAST_AMPS, type Load, sizeOf, sumOf } from './loads.ts';
import type { Worked } from './sums.ts';

/** Less through a cable than this drops nothing worth a question, amps. */
const LEAST_RUN_AMPS = 0.1;
/** Currents nearer than this share are one current. */
const SAME_SHARE = 0.02;

/** A conductor of a cable; its ends and its current as one end of the cable has them. */
export interface Run {
  readonly wire: AssembledWire;
  readonly near: Point;
  readonly far: Point;
  /** From near to far. */
  readonly amps: Amps;
  /** Along it, rms volts as solved. */
  readonly drop: number;
}

/** Two conductors of one cable, there and back, with one current. */
export interface Loop {
  readonly there: Run;
  readonly back: Run;
  /** What this current is the whole of. */
  readonly loads: readonly Load[];
  /** Before both conductors and after them, rms volts as solved. */
  readonly source: number;
  readonly left: number;
}

/** Conductors of each cable that carry something, cable by cable. */
export function runsOf({ bench }: Worked): Run[][] {
  const { world } = bench;
  const { assembly } = world;
  const hang = (wire: AssembledWire) => assembly.parts[wire.fromPart]?.data.place;
  return assembly.rig.cables.map(({ id }) => {
    const conductors = assembly.wires.filter(({ data }) => data.cable === id);
    const [first] = conductors;
    return conductors
      .map((wire): Run => {
        const { re, im } = ampsThrough(world, world.wiring.wires[wire.index]?.body ?? 0);
        // Whichever end of each conductor is called its from.
        const along = first === undefined || hang(wire) === hang(first);
        const [near, far] = [endPoint(wire.id, along ? 'from' : 'to'), endPoint(wire.id, along ? 'to' : 'from')];
        const drop = voltsBetween(world, nodeAt(bench, near), nodeAt(bench, far));
        return { wire, near, far, amps: along ? { re, im } : { re: -re, im: -im }, drop };
      })
      .filter(({ amps }) => sizeOf(amps) >= LEAST_RUN_AMPS);
  });
}

export function loopsOf(worked: Worked, cables: readonly (readonly Run[])[]): Loop[] {
  return cables.flatMap((runs) =>
    runs.flatMap((one, place) => runs.slice(place + 1).flatMap((other) => loopOf(worked, one, other) ?? [])),
  );
}

function loopOf({ bench, fed }: Worked, one: Run, other: Run): Loop | undefined {
  if (!alike(sumOf([one.amps, other.amps]), { re: 0, im: 0 }, sizeOf(one.amps))) return undefined;
  const loads = loadsOf(fed, one.amps);
  if (!loads) return undefined;
  const volts = (a: Point, b: Point) => voltsBetween(bench.world, nodeAt(bench, a), nodeAt(bench, b));
  const toCommon = (point: Point) => volts(point, fed.common);
  const [there, back] = toCommon(one.near) >= toCommon(other.near) ? [one, other] : [other, one];
  const ends = [volts(there.near, back.near), volts(there.far, back.far)];
  const across = Math.max(...ends);
  // Either the load lies at one end between the two, or what switches it does, and its other side is on common.
  const [source, left] =
    across > fed.volts / 2
      ? [across, Math.min(...ends)]
      : ends[0] === across
        ? [toCommon(there.near), toCommon(back.near)]
        : [toCommon(there.far), toCommon(back.far)];
  return { there, back, loads, source, left };
}

const alike = (a: Amps, b: Amps, of: number): boolean => Math.hypot(a.re - b.re, a.im - b.im) < SAME_SHARE * of;

/** The loads that this current is the whole of: one, or as few as make it up; undefined where others would, too. */
export function loadsOf({ loads }: Fed, amps: Amps): readonly Load[] | undefined {
  let sets: (readonly Load[])[] = [[]];
  for (const load of loads.filter((each) => sizeOf(each.amps) >= LEAST_AMPS)) sets = sets.concat(sets.map((set) => [...set, load]));
  const fits = sets.filter((set) => {
    const sum = sumOf(set.map((load) => load.amps));
    return set.length > 0 && [1, -1].some((way) => alike({ re: way * sum.re, im: way * sum.im }, amps, sizeOf(amps)));
  });
  const [fewest, next] = fits.sort((a, b) => a.length - b.length);
  return fewest?.length === next?.length ? undefined : fewest;
}
