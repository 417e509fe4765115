import { act } from '../attempt/act.ts';
import type { Action } from '../attempt/actions.ts';
import { arrive } from '../attempt/attempt.ts';
import { type Bench, createBench } from '../attempt/bench.ts';
import { kindOf } from '../attempt/registry.ts';
import { type Assembly, assemble } from '../rig/assemble.ts';
import type { Fault } from '../rig/faults.ts';
import { layHouse } from '../rig/house.ts';
import type { RigData } from '../rig/schema.ts';
import { type Population, populate } from '../scenario/population.ts';
import { drawVariant, type Random, type Variant } from '../scenario/variant.ts';
import { goBack, type Snapshot, takeSnapshot } from '../suspects/snapshot.ts';
import type { Scene } from './scene.ts';

/** One house with its story, in which many items are drawn: what is worked out for one serves the next. */
export interface Setting {
  /** The rig as it hangs in this house. */
  readonly rig: RigData;
  readonly assembly: Assembly;
  readonly variant: Variant;
  /** A lot of the house's own, for what is the same for all who ask in it. */
  readonly lot: number;
  /** The world at the end of the story with these faults, as somebody arrives: the same bench each time, back where it stood. */
  bench(faults: readonly Fault[]): Bench;
  /** Every fault of this house, put together by what its customer can tell. Takes a second, once. */
  population(): Population;
  /** A scene here. */
  scene(faults: readonly Fault[], actions: readonly Action[]): Scene;
}

/** Benches that one setting keeps. */
const MOST_KEPT = 60;

export function drawSetting(plain: RigData, random: Random): Setting {
  const variant = drawVariant(plain, random);
  const { rig, house, weather, history, tools } = variant;
  const lot = Math.floor(random() * 2 ** 31);
  const assembly = assemble(rig);
  const kept = new Map<string, { readonly bench: Bench; readonly home: Snapshot }>();
  let population: Population | undefined;
  return {
    rig,
    assembly,
    variant,
    lot,
    bench: (faults) => {
      const key = JSON.stringify(faults);
      let known = kept.get(key);
      if (known) goBack(known.bench, known.home);
      else {
        const bench = createBench(assembly, faults, { weather, tools, complaint: { history, observed: [], works: [] } });
        arrive(bench);
        known = { bench, home: takeSnapshot(bench) };
      }
      kept.delete(key);
      kept.set(key, known);
      const [oldest] = kept.keys();
      if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
      return known.bench;
    },
    population: () => (population ??= populate(variant)),
    scene: (faults, actions) => ({ rig: plain.id, house, weather, tools, history, faults, actions }),
  };
}

/** Takes these steps; whether all could be taken. */
export function takeAll(bench: Bench, actions: readonly Action[]): boolean {
  return actions.every((action) => {
    if (kindOf(action).refusal(bench, action) !== undefined) return false;
    act(bench, action);
    return true;
  });
}

/**
 * A scene as it stands after its last step, put together anew.
 * @param plain the rig that the scene names
 * @throws DataError where the house does not fit the rig
 */
export function benchOf({ house, weather, tools, history, faults, actions }: Scene, plain: RigData): Bench {
  const assembly = assemble(layHouse(plain, house));
  const bench = createBench(assembly, faults, { weather, tools, complaint: { history, observed: [], works: [] } });
  arrive(bench);
  if (!takeAll(bench, actions)) throw new Error('a scene with a step that cannot be taken');
  return bench;
}
