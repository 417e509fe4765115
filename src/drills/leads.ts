import { voltsToEarth } from '../attempt/access.ts';
import type { Action } from '../attempt/actions.ts';
import type { Bench } from '../attempt/bench.ts';
import { prober } from '../attempt/measure.ts';
import { DISCERNMENT, toldApart } from '../meter/apart.ts';
import type { MeterFunction } from '../meter/functions.ts';
import type { Reading } from '../meter/read.ts';
import { elementsOf } from '../rig/elements.ts';
import { netsOf } from '../rig/nets.ts';
import type { Point } from '../rig/points.ts';
import { railsOf, readingSteps, type Spot, sameSupply, spotsOf } from './places.ts';
import { type Said, saidApart } from './said.ts';
import { type Setting, takeAll } from './setting.ts';
import type { Suspect } from './suspects.ts';

/** A function and two points of one spot, and what a meter shows there in each suspect's world and in a sound one, when it is the first reading. */
export interface Place {
  readonly fn: MeterFunction;
  readonly red: Point;
  readonly black: Point;
  /** By suspect, in the order asked for. */
  readonly shown: readonly Reading[];
  readonly sound: Reading;
}

/** Half as coarse as a technician's eye: what even that does not tell apart is alike to anybody. */
const KEEN = {
  share: DISCERNMENT.share / 2,
  floors: Object.fromEntries(Object.entries(DISCERNMENT.floors).map(([fn, floor]) => [fn, floor / 2])) as typeof DISCERNMENT.floors,
};

/** Numbers whose smaller is a greater share of the larger than this are too near each other to reason about without a calculator. */
const DECISIVE_SHARE = { volts: 0.7, ohms: 0.4 } as const;

/** Whether two readings are surely apart (true), surely alike (false), or neither: then no question turns on them. */
export function clearlyApart(a: Reading, b: Reading): boolean | undefined {
  if (!toldApart(a, b, KEEN)) return false;
  if (!saidApart({ is: 'reading', reading: a }, { is: 'reading', reading: b })) return undefined;
  if (a.kind !== 'number' || b.kind !== 'number') return true;
  const [small, large] = [Math.abs(a.value), Math.abs(b.value)].sort((one, other) => one - other);
  return (small ?? 0) < (large ?? 0) * DECISIVE_SHARE[a.fn === 'ohms' ? 'ohms' : 'volts'] ? true : undefined;
}

export const leadsSaid = ({ fn, red, black }: Pick<Place, 'fn' | 'red' | 'black'>): Said => ({ is: 'leads', fn, red, black });

/** Longer than this nobody waits before a question, seconds. */
const MOST_WAIT = 5;
/** Fewer points are no choice. */
const FEWEST_POINTS = 4;

/** Spots for questions on suspects: after the customer's own call, or with the thermostat on the mat, and with a choice of points. */
export function quietSpots(setting: Setting): readonly Spot[] {
  return spotsOf(setting).filter(
    ({ way, points }) =>
      points.length >= FEWEST_POINTS && way.every((action) => action.name !== 'wait' || action.seconds <= MOST_WAIT),
  );
}

/** Above this a resistance is a leak or what electronics are made of, ohms: nobody reasons about it. */
const MOST_OHMS = 2000;
/** Less than this is nothing, volts. */
const NO_VOLTS = 1;
/** No control circuit has more and no line less, volts: two supplies in a row, or what comes through a winding. */
const STRAY_VOLTS = { from: 30, to: 90 } as const;

/** Places of the leads at a spot where the meter shows something steady to each of these suspects; two points that the trade would take. */
export function placesAt(setting: Setting, suspects: readonly Suspect[], spot: Spot): Place[] {
  const pairs = pairsOf(setting, spot);
  const columns = suspects.map((suspect) => columnAt(suspect, spot, pairs));
  const sound = columnAt(soundOf(setting), spot, pairs);
  const places = pairs.flatMap(({ fn, red, black }, index): Place[] => {
    const last = sound[index];
    const shown = columns.flatMap((column) => column[index] ?? []);
    return last && shown.length === suspects.length ? [{ fn, red, black, shown, sound: last }] : [];
  });
  // Where all is dead by intent, as on the mat, volts are no question.
  const live = places.some(
    ({ fn, shown, sound: last }) => fn === 'voltsAc' && [...shown, last].some(({ value }) => value > NO_VOLTS),
  );
  return live ? places : places.filter(({ fn }) => fn !== 'voltsAc');
}

/**
 * How telling a place is by and large: the share of any two of these suspects that it tells apart. Who knows nothing of a question would answer by
 * that alone.
 */
export function tellingAt(setting: Setting, suspects: readonly Suspect[], spot: Spot): (place: Pair) => number {
  const pairs = pairsOf(setting, spot);
  const columns = suspects.map((suspect) => columnAt(suspect, spot, pairs));
  return ({ fn, red, black }) => {
    const index = pairs.findIndex((each) => each.fn === fn && each.red === red && each.black === black);
    const shown = columns.map((column) => column[index]);
    const all = shown.flatMap((one, at) => shown.slice(at + 1).map((other) => one && other && clearlyApart(one, other)));
    return all.filter((apart) => apart === true).length / Math.max(1, all.length);
  };
}

export type Pair = Pick<Place, 'fn' | 'red' | 'black'>;
/** By pair: undefined where the meter shows nothing steady. */
type Column = readonly (Reading | undefined)[];

const columns = new WeakMap<Pick<Suspect, 'arrive'>, Map<Spot, Column>>();

function columnAt(suspect: Pick<Suspect, 'arrive'>, spot: Spot, pairs: readonly Pair[]): Column {
  const known = columns.get(suspect) ?? new Map<Spot, Column>();
  columns.set(suspect, known);
  const found = known.get(spot);
  if (found) return found;
  const bench = suspect.arrive();
  const column = takeUp(bench, spot) ? readAll(bench, pairs) : [];
  known.set(spot, column);
  return column;
}

function readAll(bench: Bench, pairs: readonly Pair[]): Column {
  const read = prober(bench);
  return pairs.map(({ fn, red, black }) => {
    const reading = read(fn, red, black);
    // Ohms on what may be live are nobody's reading; volts that fall under the meter's own load hang on nothing.
    if (fn === 'ohms') return reading.kind !== 'live' && reading.value <= MOST_OHMS ? reading : undefined;
    const stray = reading.value > STRAY_VOLTS.from && reading.value < STRAY_VOLTS.to;
    return stray || hangsOnNothing(reading, read('voltsLoaded', red, black)) ? undefined : reading;
  });
}

const sounds = new WeakMap<Setting, Pick<Suspect, 'arrive'>>();

function soundOf(setting: Setting): Pick<Suspect, 'arrive'> {
  const found = sounds.get(setting) ?? { arrive: () => setting.bench([]) };
  sounds.set(setting, found);
  return found;
}

export function hangsOnNothing(plain: Reading, loaded: Reading): boolean {
  return toldApart({ ...plain, fn: loaded.fn }, loaded);
}

/** Goes to a spot and takes a reading, whichever: so much time has passed when the first one is read. */
export function takeUp(bench: Bench, { way, points: [red, black] }: Spot): boolean {
  return red !== undefined && black !== undefined && takeAll(bench, [...way, ...readingSteps('voltsAc', red, black)]);
}

const pairsKnown = new WeakMap<Spot, readonly Pair[]>();

/** Parts with no more terminals are measured between any two of them: a motor's windings, a fuse, a coil. */
const FEW_TERMINALS = 4;

/**
 * Across whatever a part has between two terminals, along a wire, and for volts from common and from the hot side to anywhere; black nearer
 * earth. Ohms where somebody has made it dead.
 */
export function pairsOf(setting: Setting, spot: Spot): readonly Pair[] {
  const found = pairsKnown.get(spot);
  if (found) return found;
  const { points, way } = spot;
  const sound = setting.bench([]);
  takeUp(sound, spot);
  const together = sameSupply(setting);
  const copper = netsOf(setting.rig, []);
  const rails = railsOf(sound);
  const onNet = (rail: Point | undefined) =>
    rail === undefined ? undefined : points.find((point) => copper.of(point) === copper.of(rail));
  const ends = [onNet(rails?.common), onNet(rails?.hot)];
  const partOf = (point: Point) => point.split('.')[0] ?? '';
  const sorted = [...points].sort((a, b) => voltsToEarth(sound, a) - voltsToEarth(sound, b));
  const dead = isDead(setting, way);
  const { elements } = elementsOf(setting.assembly);
  const links: readonly { readonly from: Point; readonly to: Point }[] = [
    ...elements,
    ...setting.rig.wires.filter(({ pin }) => pin !== true),
  ];
  const small = (point: Point) => (setting.assembly.partById.get(partOf(point))?.kind.terminals.length ?? 0) <= FEW_TERMINALS;
  const pairs = sorted.flatMap((black, index) =>
    sorted.slice(index + 1).flatMap((red): Pair[] => {
      if (!together(red, black)) return [];
      const linked =
        links.some(({ from, to }) => (from === red && to === black) || (from === black && to === red)) ||
        (partOf(red) === partOf(black) && small(red));
      const railed = ends.includes(red) || ends.includes(black);
      return [
        ...(linked || railed ? [{ fn: 'voltsAc', red, black } as const] : []),
        ...(dead && (linked || (ends.includes(red) && ends.includes(black))) ? [{ fn: 'ohms', red, black } as const] : []),
      ];
    }),
  );
  pairsKnown.set(spot, pairs);
  return pairs;
}

/** Whether a way opens an isolator, or ends with a thermostat on the mat. */
function isDead({ assembly }: Setting, way: readonly Action[]): boolean {
  return way.some(
    (action) =>
      action.name === 'mat' ||
      (action.name === 'operate' && assembly.partById.get(action.part)?.kind.isolator?.off === action.position),
  );
}
