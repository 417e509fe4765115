/** Lots by number: the same number draws the same lots, here and everywhere. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Random } from './variant.ts';

/** A number from 0 up to 1, another each time, all of them from one whole number. */
export function randomOf(seed: number): Random {
  const generator = xoroshiro128plus(seed | 0);
  // Neighbouring seeds begin alike.
  for (let i = 0; i < 8; i++) uniformFloat64(generator);
  return () => uniformFloat64(generator);
}

/** One of these by lot; undefined where there is none. */
export function pick<T>(random: Random, from: readonly T[]): T | undefined {
  return from[Math.floor(random() * from.length)];
}

/** All of these in an order by lot. */
export function shuffled<T>(random: Random, things: readonly T[]): T[] {
  return things
    .map((thing) => ({ thing, lot: random() }))
    .sort((a, b) => a.lot - b.lot)
    .map(({ thing }) => thing);
}
