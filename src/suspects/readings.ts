import { isReachable, nodeAt, reachablePoints, voltsToEarth } from '../attempt/access.ts';
import type { Action } from '../attempt/actions.ts';
import type { Bench } from '../attempt/bench.ts';
import { COST_SECONDS } from '../attempt/costs.ts';
import { carries } from '../attempt/doing/measuring.ts';
import { clampOn, prober } from '../attempt/measure.ts';
import { toldApart } from '../meter/apart.ts';
import type { MeterFunction } from '../meter/functions.ts';
import type { Reading } from '../meter/read.ts';
import type { Point } from '../rig/points.ts';
import { voltsBetween } from '../world/world.ts';

/** A reading that could be taken where a bench stands, and what each twin's meter would say. */
export interface PossibleReading {
  readonly actions: readonly Action[];
  readonly seconds: number;
  /** By twin, in the order given; equal numbers are not told apart. */
  readonly outcomes: Int32Array;
}

/** Open-circuit volts that differ by less than this cannot become readings that are told apart: the floors of apart.ts. */
const LEAST_SPREAD = { ac: 1.5, dc: 0.3 } as const;
/** Ohms are tried between all pairs only among this few; among more, within a part and to the points that were lifted. */
const FEW = 12;

interface Candidate {
  readonly fn: MeterFunction;
  readonly a: Point;
  readonly b: Point;
  readonly readings: Reading[];
  live: boolean;
}

/**
 * Readings with two leads that could tell twins apart, all standing alike.
 * @param truth a bench in the same stand: its hands decide what is within reach and what the leads cost to move
 * @param touching only pairs with one of these; all pairs when it is empty
 */
export function leadReadings(truth: Bench, twins: readonly Bench[], touching: readonly Point[] = []): PossibleReading[] {
  // The pair nearest earth comes first and takes the black lead: of equals, the one that the trade would take.
  const first = twins[0] ?? truth;
  const points = reachablePoints(truth)
    .map((point) => ({ point, volts: voltsToEarth(first, point) }))
    .sort((a, b) => a.volts - b.volts)
    .map(({ point }) => point);
  const candidates = candidatesFor(truth, points, twins, touching);
  // Twin by twin, because one solver serves them all.
  for (const twin of twins) {
    const read = prober(twin);
    for (const candidate of candidates) {
      if (candidate.live) continue;
      const reading = read(candidate.fn, candidate.a, candidate.b);
      // Nobody puts ohms on what might be live.
      if (reading.kind === 'live') candidate.live = true;
      candidate.readings.push(reading);
    }
  }
  return candidates.flatMap(({ fn, a, b, live, readings }) => {
    const outcomes = live ? undefined : alike(readings);
    if (!outcomes) return [];
    const actions = leadsTo(truth, fn, a, b);
    const seconds = actions.reduce((sum, action) => sum + (action.name === 'meter' ? COST_SECONDS.meter : COST_SECONDS.probe), 0);
    return [{ actions, seconds, outcomes }];
  });
}

/** Pairs and functions that are worth a look: volts that can differ enough, ohms within a part and, among few twins, anywhere. */
function candidatesFor(carrier: Bench, points: readonly Point[], twins: readonly Bench[], touching: readonly Point[]): Candidate[] {
  const found: Candidate[] = [];
  const nodes = twins.map((twin) => points.map((point) => nodeAt(twin, point)));
  points.forEach((a, i) => {
    points.slice(i + 1).forEach((b, offset) => {
      if (touching.length > 0 && !touching.includes(a) && !touching.includes(b)) return;
      const j = i + 1 + offset;
      const between = (index: number) => [nodes[index]?.[i] ?? 0, nodes[index]?.[j] ?? 0] as const;
      const ac = spread(twins, (twin, index) => voltsBetween(twin.world, ...between(index)));
      const dc = spread(twins, ({ world }, index) => {
        const [from, to] = between(index);
        return Math.abs((world.dc[from] ?? 0) - (world.dc[to] ?? 0));
      });
      const add = (...fns: MeterFunction[]) => {
        for (const fn of fns) if (carries(carrier, fn)) found.push({ fn, a, b, readings: [], live: false });
      };
      if (ac.to - ac.from > LEAST_SPREAD.ac) add('voltsAc', 'voltsLoaded');
      if (dc.to - dc.from > LEAST_SPREAD.dc) add('voltsDc');
      if (nearby(a, b)) add('ohms', 'capacitance');
      else if (twins.length <= FEW) add('ohms');
    });
  });
  return found;
}

/** Two terminals of one part, or a lifted end. */
function nearby(a: Point, b: Point): boolean {
  return a.includes('@') || b.includes('@') || a.split('.')[0] === b.split('.')[0];
}

function spread(
  twins: readonly Bench[],
  value: (twin: Bench, index: number) => number,
): { readonly from: number; readonly to: number } {
  let from = Number.POSITIVE_INFINITY;
  let to = 0;
  twins.forEach((twin, index) => {
    const volts = value(twin, index);
    if (volts < from) from = volts;
    if (volts > to) to = volts;
  });
  return { from, to };
}

/** Functions that must not stand on what is live. */
const DEAD_ONLY: readonly MeterFunction[] = ['ohms', 'tone', 'capacitance'];

/** Moves of key and leads for a reading, as few as there are; the key last where it would stand on what is live meanwhile. */
export function leadsTo(bench: Bench, fn: MeterFunction, a: Point, b: Point): Action[] {
  const swap = bench.red === b || bench.black === a;
  const [red, black] = swap ? [b, a] : [a, b];
  const key: Action[] = bench.fn === fn ? [] : [{ name: 'meter', fn }];
  const leads: Action[] = [];
  if (bench.black !== black) leads.push({ name: 'probe', lead: 'black', at: black });
  if (bench.red !== red) leads.push({ name: 'probe', lead: 'red', at: red });
  const onVolts = bench.fn !== 'off' && !DEAD_ONLY.includes(bench.fn);
  return onVolts && DEAD_ONLY.includes(fn) ? [...leads, ...key] : [...key, ...leads];
}

/**
 * Numbers readings so that those which an eye does not tell apart, directly or through others between them, get the same;
 * undefined when all are alike.
 */
export function alike(readings: readonly Reading[]): Int32Array | undefined {
  const order = readings.map((_, index) => index).sort((a, b) => (readings[a]?.value ?? 0) - (readings[b]?.value ?? 0));
  const outcomes = new Int32Array(readings.length).fill(-1);
  // Numbers in rising order link up with their neighbours; what is no number goes by its kind.
  const kinds = new Map<string, number>();
  let next = 0;
  let previous: Reading | undefined;
  let current = -1;
  for (const index of order) {
    const reading = readings[index];
    if (!reading) continue;
    if (reading.kind !== 'number') {
      const known = kinds.get(reading.kind);
      outcomes[index] = known ?? next;
      if (known === undefined) kinds.set(reading.kind, next++);
      continue;
    }
    if (!previous || toldApart(previous, reading)) current = next++;
    outcomes[index] = current;
    previous = reading;
  }
  return next > 1 ? outcomes : undefined;
}

/** The clamp on every wire within reach that carries enough to matter in some twin. */
export function clampReadings(truth: Bench, twins: readonly Bench[]): PossibleReading[] {
  const found: PossibleReading[] = [];
  if (!carries(truth, 'ampsAc')) return found;
  for (const wire of truth.world.assembly.wires) {
    if (wire.data.pin || (!isReachable(truth, wire.data.from) && !isReachable(truth, wire.data.to))) continue;
    const outcomes = alike(twins.map((twin) => clampOn(twin, wire.id)));
    if (!outcomes) continue;
    const key: Action[] = truth.fn === 'ampsAc' ? [] : [{ name: 'meter', fn: 'ampsAc' }];
    found.push({
      actions: [...key, { name: 'clamp', around: wire.id, turns: 1 }],
      seconds: COST_SECONDS.clamp + key.length * COST_SECONDS.meter,
      outcomes,
    });
  }
  return found;
}
