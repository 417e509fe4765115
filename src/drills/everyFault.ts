import { arrive } from '../attempt/attempt.ts';
import { type Bench, createBench } from '../attempt/bench.ts';
import { prober } from '../attempt/measure.ts';
import { toldApart } from '../meter/apart.ts';
import type { Reading } from '../meter/read.ts';
import type { Fault } from '../rig/faults.ts';
import type { Naming } from '../suspects/hypotheses.ts';
import { goBack, type Snapshot, takeSnapshot } from '../suspects/snapshot.ts';
import { advance } from '../world/time.ts';
import { hangsOnNothing, pairsOf, takeUp } from './leads.ts';
import { faultsOf, type Spot } from './places.ts';
import type { Setting } from './setting.ts';

/** A house with one fault, or none. */
interface World {
  /** Undefined for a sound system. */
  readonly naming: Naming | undefined;
  readonly faults: readonly Fault[];
}

/** What one of these shows at one place of the leads. */
export interface Showing extends World {
  readonly reading: Reading;
  /** What it shows after each change in the next minutes, if nobody does anything. */
  readonly later: readonly Reading[];
  /** Falls under the meter's own load, or is so for a while only: what is warm still, or waits. */
  readonly ghost: boolean;
}

interface Lived extends World {
  /** As somebody arrives; the same bench each time, back where it stood. */
  readonly arrive: () => Bench;
}

/** For so long what is certain stays as it is, seconds. */
const STEADY_SECONDS = 300;
/** What changes more often in that time comes and goes. */
const MOST_CHANGES = 12;

const worlds = new WeakMap<Setting, readonly Lived[]>();
const tables = new WeakMap<Spot, readonly (readonly Showing[])[]>();

/** A house in each of its single faults, in every severity, and sound; those that live the story for the suspects live it once. */
function worldsOf(setting: Setting): readonly Lived[] {
  const known = worlds.get(setting);
  if (known) return known;
  const { weather, history, tools } = setting.variant;
  const job = { weather, tools, complaint: { history, observed: [], works: [] } };
  const twins = new Map<string, { readonly bench: Bench; readonly home: Snapshot }>();
  for (const { ground, faults } of setting.population().groups)
    for (const [index, { bench }] of ground.field.twins.entries()) {
      const [own, home] = [faults[index], ground.homes[index]];
      if (own && home) twins.set(JSON.stringify(own), { bench, home });
    }
  const all = [
    { naming: undefined, faults: [] },
    ...faultsOf(setting).flatMap(({ naming, members }) => members.map((faults) => ({ naming, faults }))),
  ].map(({ naming, faults }): Lived => {
    let lived = twins.get(JSON.stringify(faults));
    if (!lived) {
      const bench = createBench(setting.assembly, faults, job);
      lived = { bench, home: takeSnapshot(bench) };
    }
    const { bench, home } = lived;
    return {
      naming,
      faults,
      arrive: () => {
        goBack(bench, home);
        arrive(bench);
        return bench;
      },
    };
  });
  worlds.set(setting, all);
  return all;
}

/** What is found after each change of the circuit in the next minutes, if nobody does anything: between two nothing electrical happens. */
function afterEachChange<Found>({ world }: Bench, find: () => Found): Found[] {
  const found: Found[] = [];
  const columns = () => {
    const { ohms, henries, farads, acVolts, acVoltsImaginary, dcVolts } = world.values;
    return [ohms, henries, farads, acVolts, acVoltsImaginary, dcVolts];
  };
  let last = columns().map((column) => column.slice());
  advance(world, STEADY_SECONDS, () => {
    const now = columns();
    if (now.some((column, index) => column.some((value, at) => value !== last[index]?.[at]))) {
      last = now.map((column) => column.slice());
      found.push(find());
    }
    return found.length === MOST_CHANGES;
  });
  return found;
}

/**
 * What every single fault of a house, in every severity, and none, show at a spot: by world, the sound one first, then by pair of `pairsOf`. A world in
 * which nobody comes there is left out. Takes about a second, once.
 */
export function everyFaultAt(setting: Setting, spot: Spot): readonly (readonly Showing[])[] {
  const known = tables.get(spot);
  if (known) return known;
  const pairs = pairsOf(setting, spot);
  const table = worldsOf(setting).flatMap(({ naming, faults, arrive }): Showing[][] => {
    const bench = arrive();
    if (!takeUp(bench, spot)) return [];
    const read = prober(bench);
    const shown = pairs.map(({ fn, red, black }) => {
      const reading = read(fn, red, black);
      return { reading, hangs: fn === 'voltsAc' && hangsOnNothing(reading, read('voltsLoaded', red, black)) };
    });
    const readings = afterEachChange(bench, () => {
      const then = prober(bench);
      return pairs.map(({ fn, red, black }) => then(fn, red, black));
    });
    return [
      shown.map(({ reading, hangs }, index): Showing => {
        const later = readings.flatMap((each) => each[index] ?? []);
        return { naming, faults, reading, later, ghost: hangs || later.some((then) => toldApart(reading, then)) };
      }),
    ];
  });
  tables.set(spot, table);
  return table;
}

/**
 * Whether some of these could show this, in a severity of its own too: a part that can be wrong by more or less may show all that lies between
 * what it shows soundly, and at its worst.
 */
export function couldShow(
  showings: readonly Showing[],
  sound: Reading,
  asked: Reading,
  apart: (a: Reading, b: Reading) => boolean,
): boolean {
  if (showings.some(({ reading }) => !apart(asked, reading))) return true;
  if (asked.kind !== 'number') return false;
  const targets = new Map<string, number[]>();
  for (const { naming, reading } of showings)
    if (naming) targets.set(naming.target, [...(targets.get(naming.target) ?? []), sizeOf(reading)]);
  return [...targets.values()].some((sizes) => {
    const all = [...sizes, sizeOf(sound)];
    return asked.value >= Math.min(...all) && asked.value <= Math.max(...all) && new Set(sizes).size > 1;
  });
}

const sizeOf = ({ kind, value }: Reading): number => (kind === 'overload' ? Number.POSITIVE_INFINITY : value);
