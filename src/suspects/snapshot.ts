import type { Bench } from '../attempt/bench.ts';
import { putSolution, type Solution, takeSolution } from '../world/solution.ts';
import { cloneState, type WorldState } from '../world/state.ts';
import { rewire, solve } from '../world/world.ts';

/** A bench as it stood before a step, to go back to. */
export interface Snapshot {
  readonly state: WorldState;
  readonly hands: Pick<Bench, 'place' | 'fn' | 'red' | 'black' | 'clamp' | 'turns' | 'meterFuseOpen'>;
  readonly seen: ReadonlyMap<string, string | number>;
  /** Kept where one will be back soon and often: it costs memory, and saves solving. */
  readonly solution: Solution | undefined;
}

/** @param withSolution keeps the solved network as well */
export function takeSnapshot(bench: Bench, withSolution = false): Snapshot {
  const { place, fn, red, black, clamp, turns, meterFuseOpen } = bench;
  return {
    state: cloneState(bench.world.state),
    hands: { place, fn, red, black, clamp, turns, meterFuseOpen },
    seen: new Map(bench.seen),
    solution: withSolution ? takeSolution(bench.world) : undefined,
  };
}

export function goBack(bench: Bench, snapshot: Snapshot): void {
  bench.world.state = cloneState(snapshot.state);
  Object.assign(bench, snapshot.hands);
  bench.seen.clear();
  for (const [key, value] of snapshot.seen) bench.seen.set(key, value);
  rewire(bench.world);
  if (snapshot.solution?.wiring === bench.world.wiring) putSolution(bench.world, snapshot.solution);
  else solve(bench.world);
}
