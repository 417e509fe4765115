import type { Wiring } from './wiring.ts';
import type { World } from './world.ts';

/** What a world's network was worth and what it came to: to be gone back to without solving again. */
export interface Solution {
  readonly wiring: Wiring;
  readonly arrays: readonly Float64Array[];
}

function arraysOf(world: World): Float64Array[] {
  const { values, ac, dc } = world;
  return [
    values.ohms,
    values.henries,
    values.farads,
    values.acVolts,
    values.acVoltsImaginary,
    values.dcVolts,
    values.primaryOhms,
    values.secondaryOhms,
    values.magnetisingHenries,
    values.turnsRatio,
    ac.re,
    ac.im,
    dc,
  ];
}

export function takeSolution(world: World): Solution {
  return { wiring: world.wiring, arrays: arraysOf(world).map((array) => array.slice()) };
}

/** Puts a solution back; the world must be wired as it was then. */
export function putSolution(world: World, solution: Solution): void {
  arraysOf(world).forEach((array, index) => {
    const kept = solution.arrays[index];
    if (kept) array.set(kept);
  });
  world.stamp.changedAc = false;
  world.stamp.changedDc = false;
}
