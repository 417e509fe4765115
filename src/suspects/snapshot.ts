import type { Bench } from '../attempt/bench.ts';
import { cloneState, type WorldState } from '../world/state.ts';
import { rewire, solve } from '../world/world.ts';

/** A bench as it stood before a step, to go back to. */
export interface Snapshot {
  readonly state: WorldState;
  readonly hands: Pick<Bench, 'place' | 'fn' | 'red' | 'black' | 'clamp' | 'turns' | 'meterFuseOpen'>;
  readonly seen: ReadonlyMap<string, string | number>;
}

export function takeSnapshot(bench: Bench): Snapshot {
  const { place, fn, red, black, clamp, turns, meterFuseOpen } = bench;
  return {
    state: cloneState(bench.world.state),
    hands: { place, fn, red, black, clamp, turns, meterFuseOpen },
    seen: new Map(bench.seen),
  };
}

export function goBack(bench: Bench, snapshot: Snapshot): void {
  bench.world.state = cloneState(snapshot.state);
  Object.assign(bench, snapshot.hands);
  bench.seen.clear();
  for (const [key, value] of snapshot.seen) bench.seen.set(key, value);
  rewire(bench.world);
  solve(bench.world);
}
