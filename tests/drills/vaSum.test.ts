/** VA taken from a supply: added again from what the question tells, which ngspice finds in the item's own circuit. */
import { describe, expect, it } from 'vitest';
import type { Attempt } from '../../src/attempt/attempt.ts';
import { createBank } from '../../src/drills/draw.ts';
import type { Item } from '../../src/drills/item.ts';
import { vaSum } from '../../src/drills/kinds/vaSum.ts';
import { library } from '../scenario/shipped.ts';
import { abs, choiceValue, nearlyRight, quantityIn, type Solved, solvedBySpice, walked } from './by-ngspice.ts';
import { MANY } from './worlds.ts';

const FULL = process.env.BELLWIRE_FULL !== undefined;
const bank = createBank([...library.rigs.values()]);
const numbers = Array.from({ length: FULL ? MANY : 7 }, (_, index) => (FULL ? index : index * 25 + 3));
const items = numbers.flatMap((number) => bank.item(vaSum, number) ?? []);

/** What the question tells of each load. */
function told({ given }: Item): { part: string; amps: number }[] {
  return given.flatMap(({ key, values: { part, amps } }) =>
    key === 'load' && part?.is === 'part' && amps?.is === 'quantity' ? [{ part: part.part, amps: amps.value }] : [],
  );
}

/** Volts times the sum of the amps; its share of the plate; what the plate leaves. */
function byHand(item: Item, amps: number): number {
  const voltAmps = quantityIn(item, 'volts') * amps;
  const rated = quantityIn(item, 'rated');
  if (item.ask.key === 'share') return (100 * voltAmps) / rated;
  return item.ask.key === 'spare' ? rated - voltAmps : voltAmps;
}

/** The amps of one part by the power that its branches at the supply's voltage take: |Σ V·I*| ÷ V. */
function drawn(attempt: Attempt, solved: Solved, id: string, supply: number): number {
  const { topology } = attempt.bench.world.wiring;
  const part = attempt.assembly.partById.get(id)!;
  const ends: string[] = [];
  let [re, im] = [0, 0];
  for (const [place, { name, from, to }] of topology.branches.entries()) {
    if (!part.kind.branches.some(([a, b]) => name === `${id}.${a}-${b}`)) continue;
    const volts = solved.ac(topology.nodes[from]!, topology.nodes[to]!);
    if (abs(volts) < 0.3 * supply || abs(volts) > 1.1 * supply) continue;
    const amps = solved.amps(place);
    if (abs(amps) < 1e-3) continue;
    ends.push(topology.nodes[from]!, topology.nodes[to]!);
    re += volts.re * amps.re + volts.im * amps.im;
    im += volts.im * amps.re - volts.re * amps.im;
  }
  const across = ends.flatMap((a) => ends.map((b) => abs(solved.ac(a, b))));
  return Math.hypot(re, im) / Math.max(...across);
}

describe('VA taken from a transformer', () => {
  it('are asked for in several ways', () => {
    expect(items.length).toBeGreaterThan(numbers.length / 2);
    expect(new Set(items.map(({ ask }) => ask.key)).size).toBeGreaterThan(1);
  });

  it('are volts times the sum of what the question tells, and no wrong choice is', () => {
    for (const item of items) {
      const amps = told(item).reduce((sum, each) => sum + each.amps, 0);
      expect(Math.abs(choiceValue(item, item.right) / byHand(item, amps) - 1), `${item.number}`).toBeLessThan(1e-3);
      expect(nearlyRight(item, byHand(item, amps)), `${item.number}`).toEqual([]);
    }
  });

  it('are told as ngspice finds them, and not less than it finds at the supply', { timeout: 1_800_000 }, async () => {
    for (const item of items) {
      const attempt = walked(item.scene);
      const solved = await solvedBySpice(attempt);
      const asked = item.ask.values.supply;
      const supply = asked?.is === 'part' ? asked.part : '';
      const volts = abs(solved.ac(`${supply}.X1`, `${supply}.X2`));
      expect(Math.abs(quantityIn(item, 'volts') / volts - 1), `${item.number}`).toBeLessThan(1e-3);
      // A part whose loads hang at both ends of a long cable sees two voltages, and its amps by one of them are a little off.
      for (const { part, amps } of told(item))
        expect(Math.abs(amps / drawn(attempt, solved, part, volts) - 1), `${item.number} ${part}`).toBeLessThan(0.08);
      const { kind } = attempt.assembly.partById.get(supply)!;
      const [from, to] = kind.branches.find(([, end]) => end === 'X1')!;
      const out = abs(solved.amps(`${supply}.${from}-${to}`));
      const sum = told(item).reduce((all, { amps }) => all + amps, 0);
      expect(out, `${item.number}`).toBeLessThan(1.001 * sum);
      // And nobody with a clamp in hand would take a wrong choice for right.
      expect(nearlyRight(item, byHand(item, out)), `${item.number}`).toEqual([]);
    }
  });

  // Source: NFPA 70 (NEC), chapter 9, table 11(A) (from memory): Class 2, AC, 20 to 30 V, not inherently limited: 100 VA on the plate,
  // overcurrent protection of at most 100 ÷ volts. What flows all day must be less.
  it('come from supplies within Class 2', () => {
    for (const item of items) {
      const volts = quantityIn(item, 'volts');
      expect(volts, `${item.number}`).toBeLessThanOrEqual(30);
      expect(quantityIn(item, 'rated'), `${item.number}`).toBeLessThanOrEqual(100);
      expect(
        told(item).reduce((sum, { amps }) => sum + amps, 0),
        `${item.number}`,
      ).toBeLessThan(100 / volts);
    }
  });
});
