/** What a meter shows at a spot of a house, in the world of a fault and in a sound one, of what somebody can know without a solver. */
import type { Bench } from '../../../attempt/bench.ts';
import { idealBetween, prober } from '../../../attempt/measure.ts';
import type { MeterFunction } from '../../../meter/functions.ts';
import type { Reading } from '../../../meter/read.ts';
import type { Fault } from '../../../rig/faults.ts';
import type { Point } from '../../../rig/points.ts';
import { pick, shuffled } from '../../../scenario/random.ts';
import type { Random } from '../../../scenario/variant.ts';
import { voltsBetween } from '../../../world/world.ts';
import { hangsOnNothing, takeUp } from '../../leads.ts';
import { faultsOf, type Spot, sameSupply, spotsOf, suppliesOf } from '../../places.ts';
import { type Said, saidApart } from '../../said.ts';
import type { Setting } from '../../setting.ts';

/** What a display shows, by kind: nothing, a low-voltage supply's volts, those of half a service or of the whole of it; on ohms a warning, no way, copper, a load. */
export const SHOWS = { volts: ['none', 'low', 'half', 'line'], ohms: ['live', 'open', 'copper', 'load'] } as const;
export type Shows = (typeof SHOWS)[keyof typeof SHOWS][number];

/** Less than this is nothing, volts, or copper, ohms. */
const NO_VOLTS = 1.2;
const COPPER_OHMS = 1;
/** More than this is a leak, or what electronics are made of, ohms. */
const MOST_OHMS = 2000;
/** A control circuit has less, half a service less than the other, volts. */
const LOW_VOLTS = 40;
const HALF_VOLTS = 150;
/** Volts that miss those of every supply by more than this share are known to a solver alone. */
const PLAIN_SHARE = 0.06;
/** Pairs of points that are tried, and of those that show what is asked for. */
const MOST_PAIRS = 60;
const MOST_FOUND = 8;

export interface Here {
  readonly spot: Spot;
  /** Where the red lead is: no other number of the house has it there. */
  readonly point: Point;
}

const known = new WeakMap<Setting, readonly Here[]>();

/** Everywhere in a house where one lead can be. */
export function heresIn(setting: Setting): readonly Here[] {
  const found = known.get(setting) ?? spotsOf(setting).flatMap((spot) => spot.points.map((point): Here => ({ spot, point })));
  known.set(setting, found);
  return found;
}

/** Pairs of points by lot, one of them this, at which a meter shows just that; at each, unless all will do, a fault makes a difference. */
export function shownAt(
  setting: Setting,
  { spot, point }: Here,
  { faults, fn, shows, all }: { faults: readonly Fault[]; fn: MeterFunction; shows: Shows; all: boolean },
  random: Random,
): (readonly [Point, Point])[] {
  const together = sameSupply(setting);
  const others = shuffled(random, spot.points).filter((other) => other !== point && together(other, point));
  const bench = setting.bench(faults);
  if (!takeUp(bench, spot)) return [];
  const look = lookOn(bench);
  const found = others
    .map((other) => [point, other] as const)
    .filter(([red, black]) => look.shows(fn, red, black) === shows)
    .slice(0, MOST_FOUND);
  if (all || found.length === 0) return found;
  const here = found.map(([red, black]) => look.read(fn, red, black));
  const sound = setting.bench([]);
  if (!takeUp(sound, spot)) return [];
  const { read } = lookOn(sound);
  return found.filter(([red, black], index) => {
    const one = here[index];
    return one && saidApart(said(one), said(read(fn, red, black)));
  });
}

/** Pairs of points by lot. */
export function pairsByLot(points: readonly Point[], random: Random): (readonly [Point, Point])[] {
  const pairs: (readonly [Point, Point])[] = [];
  for (let tries = 0; tries < MOST_PAIRS; tries++) {
    const [one, other] = [pick(random, points), pick(random, points)];
    if (one !== undefined && other !== undefined && one !== other) pairs.push([one, other]);
  }
  return pairs;
}

/** One of the faults by lot of what has its terminal or its end there, whose name says all of it. */
export function faultNear(setting: Setting, point: Point, random: Random): readonly Fault[] | undefined {
  const near = new Set([
    point.split('.')[0],
    ...setting.rig.wires.filter(({ from, to }) => from === point || to === point).map(({ id }) => id),
  ]);
  const there = faultsOf(setting).filter(({ naming, members }) => near.has(naming.target) && members.length === 1);
  return pick(random, there)?.members[0];
}

export interface Look {
  readonly read: (fn: MeterFunction, red: Point, black: Point) => Reading;
  readonly ideal: (fn: MeterFunction, red: Point, black: Point) => Reading;
  /** Whether so many volts are nothing, or those of a supply. */
  readonly isPlain: (volts: number) => boolean;
  /** Undefined where only a solver knows what is shown. */
  readonly shows: (fn: MeterFunction, red: Point, black: Point) => Shows | undefined;
  /** Of each supply, between any two of its rails. */
  readonly stiff: readonly (readonly [Point, Point])[];
}

/** A meter at a bench as it stands; good until another world is asked for. */
export function lookOn(bench: Bench): Look {
  const read = prober(bench);
  const ideal = (fn: MeterFunction, red: Point, black: Point) => idealBetween(bench, fn, red, black);
  const stiff = suppliesOf(bench.world.assembly).flatMap(({ rails }) =>
    rails.flatMap((one, index) => rails.slice(index + 1).map((other) => [one, other] as const)),
  );
  const node = (point: Point) => bench.world.wiring.nodeOf.get(point) ?? 0;
  const volts = stiff.map(([one, other]) => voltsBetween(bench.world, node(one), node(other)));
  const isPlain = (value: number) => value < NO_VOLTS || volts.some((each) => Math.abs(value - each) < PLAIN_SHARE * each);
  const shows = (fn: MeterFunction, red: Point, black: Point): Shows | undefined => {
    const reading = read(fn, red, black);
    if (fn === 'ohms') return ohmsShow(reading);
    if (fn === 'voltsDc') return Math.abs(reading.value) < NO_VOLTS ? 'none' : 'low';
    const { value } = reading;
    if (!isPlain(value)) return undefined;
    // What the meter's burden pulls down, or a little down, is nobody's to know; what it pulls to nothing is why there is a loaded function.
    const pulled = hangsOnNothing(read('voltsAc', red, black), read('voltsLoaded', red, black));
    if (pulled && !(fn === 'voltsLoaded' && value < NO_VOLTS)) return undefined;
    return value < NO_VOLTS ? 'none' : value < LOW_VOLTS ? 'low' : value < HALF_VOLTS ? 'half' : 'line';
  };
  return { read, ideal, isPlain, shows, stiff };
}

function ohmsShow({ kind, value }: Reading): Shows | undefined {
  if (kind === 'live') return 'live';
  if (kind === 'overload') return 'open';
  return value < COPPER_OHMS ? 'copper' : value <= MOST_OHMS ? 'load' : undefined;
}

export const said = (reading: Reading): Said => ({ is: 'reading', reading });
