/** Currents, worked again by closed form from what the question tells, and found by ngspice in the item's own circuit. */
import { describe, expect, it } from 'vitest';
import { createBank } from '../../src/drills/draw.ts';
import type { Item } from '../../src/drills/item.ts';
import { loadCurrent } from '../../src/drills/kinds/loadCurrent.ts';
import { library } from '../scenario/shipped.ts';
import { abs, choiceValue, nearlyRight, quantityIn, solvedBySpice, walked } from './by-ngspice.ts';
import { MANY } from './worlds.ts';

const FULL = process.env.BELLWIRE_FULL !== undefined;
const bank = createBank([...library.rigs.values()]);
const numbers = Array.from({ length: FULL ? MANY : 10 }, (_, index) => (FULL ? index : index * 17 + 3));
const items = numbers.flatMap((number) => bank.item(loadCurrent, number) ?? []);
/** More of the same houses, to see what is asked for: another simulator takes its time. */
const more = numbers.flatMap((number) => [1, 2, 3].flatMap((next) => bank.item(loadCurrent, number + next) ?? []));

/**
 * Ohm's law for alternating current, I = U ÷ √(R² + X²); Kirchhoff's first law for loads side by side, I = Σ Iₖ; a clamp's I = shown ÷ turns.
 */
function byHand(item: Item): number {
  switch (item.ask.key) {
    case 'coil':
      return quantityIn(item, 'volts') / Math.hypot(quantityIn(item, 'ohms'), quantityIn(item, 'reactance'));
    case 'turns':
      return quantityIn(item, 'shown') / quantityIn(item, 'turns');
    default:
      return item.given.reduce((sum, { values: { amps } }) => sum + (amps?.is === 'quantity' ? amps.value : 0), 0);
  }
}

describe('the current of a load', () => {
  it('is asked for of a coil, of loads side by side, and through a clamp’s jaw', () => {
    expect(new Set([...items, ...more].map(({ ask }) => ask.key))).toEqual(new Set(['coil', 'clamp', 'turns']));
  });

  it('is what the closed form gives from what is told, and no wrong choice is', () => {
    for (const item of items) {
      expect(Math.abs(choiceValue(item, item.right) / byHand(item) - 1), `${item.number}`).toBeLessThan(1e-3);
      expect(nearlyRight(item, byHand(item)), `${item.number}`).toEqual([]);
    }
  });

  it('is what ngspice finds within 2 %, and no wrong choice is within 5 %', { timeout: 1_800_000 }, async () => {
    for (const item of items) {
      const { part, wire } = item.ask.values;
      const attempt = walked(item.scene);
      const solved = await solvedBySpice(attempt);
      const right = choiceValue(item, item.right);
      const branches =
        part?.is === 'part'
          ? attempt.assembly.partById.get(part.part)!.kind.branches.map(([from, to]) => `${part.part}.${from}-${to}`)
          : [wire?.is === 'wire' ? wire.wire : ''];
      const found = branches
        .map((branch) => abs(solved.amps(branch)))
        .sort((a, b) => Math.abs(a - right) - Math.abs(b - right))[0]!;
      expect(Math.abs(right / found - 1), `${item.number}`).toBeLessThan(0.02);
      expect(nearlyRight(item, found), `${item.number}`).toEqual([]);
    }
  });
});
