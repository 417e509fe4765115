import { arrive } from '../attempt/attempt.ts';
import { createBench } from '../attempt/bench.ts';
import { prober } from '../attempt/measure.ts';
import type { Reading } from '../meter/read.ts';
import type { Fault } from '../rig/faults.ts';
import { hypothesesOf, type Naming } from '../suspects/hypotheses.ts';
import { goBack, takeSnapshot } from '../suspects/snapshot.ts';
import { hangsOnNothing, pairsOf, takeUp } from './leads.ts';
import type { Spot } from './places.ts';
import type { Setting } from './setting.ts';

/** What one fault, or none, shows at one place of the leads. */
export interface Showing {
  /** Undefined for a sound system. */
  readonly naming: Naming | undefined;
  readonly faults: readonly Fault[];
  readonly reading: Reading;
  /** Falls under the meter's own load. */
  readonly ghost: boolean;
}

interface World {
  readonly naming: Naming | undefined;
  readonly faults: readonly Fault[];
  /** To a spot, and a reading taken there. */
  readonly goTo: (spot: Spot) => ReturnType<typeof prober> | undefined;
}

const worlds = new WeakMap<Setting, readonly World[]>();
const tables = new WeakMap<Spot, readonly (readonly Showing[])[]>();

/** A house in each of its single faults, in every severity, and sound. */
function worldsOf(setting: Setting): readonly World[] {
  const known = worlds.get(setting);
  if (known) return known;
  const { weather, history, tools } = setting.variant;
  const job = { weather, tools, complaint: { history, observed: [], works: [] } };
  const all = [
    { naming: undefined, faults: [] },
    ...hypothesesOf(setting.rig).flatMap(({ naming, members }) => members.map((faults) => ({ naming, faults }))),
  ].map(({ naming, faults }): World => {
    const bench = createBench(setting.assembly, faults, job);
    arrive(bench);
    const home = takeSnapshot(bench);
    return {
      naming,
      faults,
      goTo: (spot) => {
        goBack(bench, home);
        return takeUp(bench, spot) ? prober(bench) : undefined;
      },
    };
  });
  worlds.set(setting, all);
  return all;
}

/** What every single fault of a house, in every severity, and none, show at a spot: by pair of `pairsOf`; the sound one first. Takes half a second, once. */
export function everyFaultAt(setting: Setting, spot: Spot): readonly (readonly Showing[])[] {
  const known = tables.get(spot);
  if (known) return known;
  const pairs = pairsOf(setting, spot);
  const table: Showing[][] = pairs.map(() => []);
  for (const { naming, faults, goTo } of worldsOf(setting)) {
    const read = goTo(spot);
    pairs.forEach(({ fn, red, black }, index) => {
      const reading = read?.(fn, red, black);
      if (!reading || !read) return;
      const ghost = fn === 'voltsAc' && hangsOnNothing(reading, read('voltsLoaded', red, black));
      table[index]?.push({ naming, faults, reading, ghost });
    });
  }
  tables.set(spot, table);
  return table;
}

/**
 * Whether some single fault could show this, in a severity of its own too: a part that can be wrong by more or less may show all that lies between
 * what it shows soundly, and at its worst.
 */
export function couldShow(showings: readonly Showing[], asked: Reading, apart: (a: Reading, b: Reading) => boolean): boolean {
  if (showings.some(({ reading }) => !apart(asked, reading))) return true;
  if (asked.kind !== 'number') return false;
  const sound = showings.find(({ naming }) => naming === undefined)?.reading;
  const targets = new Map<string, number[]>();
  for (const { naming, reading } of showings) {
    if (naming) targets.set(naming.target, [...(targets.get(naming.target) ?? []), sizeOf(reading)]);
  }
  return [...targets.values()].some((sizes) => {
    const all = sound ? [...sizes, sizeOf(sound)] : sizes;
    return asked.value >= Math.min(...all) && asked.value <= Math.max(...all) && new Set(sizes).size > 1;
  });
}

const sizeOf = ({ kind, value }: Reading): number => (kind === 'overload' ? Number.POSITIVE_INFINITY : value);
