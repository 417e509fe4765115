import type { Bench } from '../../attempt/bench.ts';
import { prober } from '../../attempt/measure.ts';
import { DISCERNMENT } from '../../meter/apart.ts';
import type { Reading } from '../../meter/read.ts';
import type { Assembly } from '../../rig/assemble.ts';
import { elementsOf } from '../../rig/elements.ts';
import type { Ladder } from '../../rig/ladder.ts';
import { netsOf } from '../../rig/nets.ts';
import { MAT_PLACE, type Point } from '../../rig/points.ts';
import { BODY } from '../../world/state.ts';

/** What line voltage is read to. No point is called so: the meter finds earth there. */
export const EARTH: Point = 'earth';

export interface PointReading {
  readonly point: Point;
  /** Where the other lead is. */
  readonly to: Point;
  readonly shown: Reading;
  /** Volts that a technician's eye tells from none, or a way that conducts. */
  readonly alive: boolean;
}

/** What the meter shows at points, as the circuit stands. */
export interface Readings {
  readonly of: 'volts' | 'ohms';
  readonly readings: readonly PointReading[];
}

/** What is left of the volts where nothing is there, for a technician's eye: so many, or this share of what its supply has. */
const NO_VOLTS = DISCERNMENT.floors.voltsAc;
const SHARE = DISCERNMENT.share;

/** Volts AC of every point that hangs on a supply: to the common of its own supply, and of line voltage to earth. */
export function voltsAt(bench: Bench, points: readonly Point[]): Readings {
  const endOf = endsIn(bench.world.assembly);
  const pairs = points.flatMap((point) => {
    const to = endOf(point);
    return to !== undefined && isOn(bench, point) ? [{ point, to }] : [];
  });
  return { of: 'volts', readings: read(bench, 'volts', pairs) };
}

/** What the volts of a point are read to. Of two supplies that meet in a control it is the one that it hangs on without an open contact between. */
function endsIn(assembly: Assembly): (point: Point) => Point | undefined {
  const { elements, supplies } = elementsOf(assembly);
  const atRest = elements.filter(({ kind, closed }) => kind !== 'contact' || closed);
  const ways = [atRest, elements].map((joints) => {
    const nets = netsOf(assembly.rig, joints);
    const ends = new Map<Point, Point>();
    for (const { part, rails } of supplies) {
      // A service is bonded to earth; what a transformer or a bench supply feeds is read to its own common.
      const bonded = assembly.partById.get(part)?.kind.branches.some((branch) => branch.includes('earth')) === true;
      for (const rail of rails) if (!ends.has(nets.of(rail))) ends.set(nets.of(rail), bonded ? EARTH : (rails.at(-1) ?? rail));
    }
    return (point: Point) => ends.get(nets.of(point));
  });
  return (point) => ways.reduce<Point | undefined>((found, way) => found ?? way(point), undefined);
}

/** Ohms from one point to others: those of the same body on the mat, else those of its circuit. */
export function ohmsFrom(bench: Bench, points: readonly Point[], from: Point): Readings {
  const { assembly } = bench.world;
  const nets = netsOf(assembly.rig, elementsOf(assembly).elements);
  const alone = !isOn(bench, from);
  const own = points.filter((point) =>
    alone ? partOf(point) === partOf(from) : nets.of(point) === nets.of(from) && isOn(bench, point),
  );
  const pairs = own.filter((point) => point !== from).map((point) => ({ point, to: from }));
  return { of: 'ohms', readings: read(bench, 'ohms', pairs) };
}

/** Volts along the rungs of a ladder, to its own right rail. */
export function voltsOn(bench: Bench, ladder: Ladder): Readings {
  const steps = ladder.rungs.flatMap(({ load, ways, back }) => [...ways.flatMap((way) => way.steps), load, ...back.steps]);
  const shared = [...ladder.feed.steps, ...ladder.tail.steps];
  const points = [ladder.hot, ladder.common, ...[...shared, ...steps].flatMap(({ enter, leave }) => [enter, leave])];
  const pairs = [...new Set(points)].map((point) => ({ point, to: ladder.common }));
  return { of: 'volts', readings: read(bench, 'volts', pairs) };
}

function read(bench: Bench, of: Readings['of'], pairs: readonly { readonly point: Point; readonly to: Point }[]): PointReading[] {
  const probe = prober(bench);
  const { nodeOf } = bench.world.wiring;
  const shown = pairs
    .filter(({ point }) => nodeOf.has(point))
    .map(({ point, to }) => ({ point, to, shown: probe(of === 'volts' ? 'voltsAc' : 'ohms', point, to) }));
  const most = new Map<Point, number>();
  for (const { to, shown: each } of shown) most.set(to, Math.max(most.get(to) ?? 0, each.value));
  const isAlive = (each: Reading, to: Point): boolean =>
    of === 'ohms'
      ? each.kind !== 'overload'
      : each.kind !== 'number' || each.value > Math.max(NO_VOLTS, SHARE * (most.get(to) ?? 0));
  return shown.map((each) => ({ ...each, alive: isAlive(each.shown, each.to) }));
}

const partOf = (point: Point): string => point.split('.')[0] ?? '';

/** Whether a point's part is where the wiring has it: no body that is off its base. */
function isOn({ world }: Bench, point: Point): boolean {
  const part = world.assembly.partById.get(partOf(point));
  return part !== undefined && (part.kind.removable !== true || world.state.bodies[part.index] === BODY.seated);
}

/** What a meter is asked for. */
export type Leads = Pick<Bench, 'fn' | 'red' | 'black'>;

/**
 * What explains a scene at these points: ohms to the black lead where ohms are asked for and mean something, or to the point in question on the mat;
 * volts otherwise.
 * @param question the point in question, where there is one
 */
export function readingsAt(bench: Bench, points: readonly Point[], question: Point | undefined, leads: Leads = bench): Readings {
  const { fn, red, black } = leads;
  const { nodeOf } = bench.world.wiring;
  const asksOhms = (fn === 'ohms' || fn === 'tone') && red !== undefined && black !== undefined && nodeOf.has(black);
  if (asksOhms && prober(bench)('ohms', red, black).kind !== 'live') return ohmsFrom(bench, points, black);
  if (bench.place === MAT_PLACE && question !== undefined) return ohmsFrom(bench, points, question);
  return voltsAt(bench, points);
}
