/** The drop along a cable, recomputed from published wire tables and from ngspice's solution of the item's own circuit. */
import { describe, expect, it } from 'vitest';
import { wireOhms } from '../../src/circuit/wire.ts';
import { createBank } from '../../src/drills/draw.ts';
import type { Item } from '../../src/drills/item.ts';
import { loopDrop } from '../../src/drills/kinds/loopDrop.ts';
import { library } from '../scenario/shipped.ts';
import { abs, choiceValue, nearlyRight, quantityIn, solvedBySpice, walked } from './by-ngspice.ts';
import { MANY } from './worlds.ts';

const FULL = process.env.BELLWIRE_FULL !== undefined;
const bank = createBank([...library.rigs.values()]);
const numbers = Array.from({ length: FULL ? MANY : 9 }, (_, index) => (FULL ? index : index * 49 + 5));
const items = numbers.flatMap((number) => bank.item(loopDrop, number) ?? []);
/** More of the same houses, to see what is asked for: another simulator takes its time. */
const more = numbers.flatMap((number) => [1, 2, 3].flatMap((next) => bank.item(loopDrop, number + next) ?? []));

/** Source: NBS Handbook 100, Copper Wire Tables (1966): Ω per 1000 ft of solid wire at 20 °C. */
const NBS: Readonly<Record<number, number>> = { 14: 2.525, 16: 4.016, 18: 6.385, 20: 10.15, 22: 16.14, 24: 25.67 };

const wiresOf = ({ ask }: Item): string[] =>
  ['there', 'back'].flatMap((name) => {
    const said = ask.values[name];
    return said?.is === 'wire' ? [said.wire] : [];
  });

/** Ohm's law on n conductors in a row, U = n · L · r · I, with r from the published table. */
function byTable(item: Item): number {
  const ohms = (wiresOf(item).length * quantityIn(item, 'feet') * NBS[quantityIn(item, 'awg')]!) / 1000;
  switch (item.ask.key) {
    case 'loop':
      return ohms;
    case 'arrives':
      return quantityIn(item, 'source') - ohms * quantityIn(item, 'amps');
    default:
      return ohms * quantityIn(item, 'amps');
  }
}

describe('volts lost in a cable', () => {
  it('are asked for in every way that there is', () => {
    expect(items.length).toBeGreaterThan(numbers.length / 2);
    expect(new Set([...items, ...more].map(({ ask }) => ask.key)).size).toBeGreaterThan(2);
  });

  it('are given with the ohms of NBS Handbook 100, and worked with these come to the right choice within 0.3 %', () => {
    for (const item of items) {
      expect(Math.abs(quantityIn(item, 'table') / NBS[quantityIn(item, 'awg')]! - 1), `${item.number}`).toBeLessThan(1e-3);
      expect(Math.abs(choiceValue(item, item.right) / byTable(item) - 1), `${item.number}`).toBeLessThan(3e-3);
      expect(nearlyRight(item, byTable(item)), `${item.number}`).toEqual([]);
    }
  });

  it('are what ngspice finds in the circuit within 2 %, and no wrong choice is within 5 %', { timeout: 1_800_000 }, async () => {
    for (const item of items) {
      const attempt = walked(item.scene);
      const solved = await solvedBySpice(attempt);
      const wires = wiresOf(item);
      const along = wires.map((wire) => abs(solved.ac(`${wire}@from`, `${wire}@to`)));
      const amps = wires.map((wire) => abs(solved.amps(wire)));
      const drop = along.reduce((sum, each) => sum + each, 0);
      const [first = 0] = amps;
      for (const each of amps) expect(Math.abs(each / first - 1), `${item.number}`).toBeLessThan(0.02);
      const right = choiceValue(item, item.right);
      if (item.ask.key === 'loop') {
        expect(Math.abs(right / (drop / first) - 1), `${item.number}`).toBeLessThan(0.02);
        expect(nearlyRight(item, drop / first), `${item.number}`).toEqual([]);
        continue;
      }
      expect(Math.abs(quantityIn(item, 'amps') / first - 1), `${item.number}`).toBeLessThan(1e-3);
      if (item.ask.key !== 'arrives') {
        expect(Math.abs(right / drop - 1), `${item.number}`).toBeLessThan(0.02);
        expect(nearlyRight(item, drop), `${item.number}`).toEqual([]);
        continue;
      }
      // Somewhere in this circuit stands what is left: across the load's end of the cable, or from the return to common.
      const ends = wires.flatMap((wire) => [`${wire}@from`, `${wire}@to`]);
      const commons = attempt.assembly.parts.filter(({ params }) => params.ratedVoltAmps !== undefined).map(({ id }) => `${id}.X2`);
      const found = [...ends, ...commons]
        .flatMap((a) => ends.map((b) => abs(solved.ac(a, b))))
        .sort((a, b) => Math.abs(a - right) - Math.abs(b - right));
      expect(Math.abs(right / found[0]! - 1), `${item.number}`).toBeLessThan(0.02);
      expect(nearlyRight(item, found[0]!), `${item.number}`).toEqual([]);
    }
  });
});

// Worked examples by U = 2 · L · r · I, the drop of a two-wire run; the formula is every wiring handbook's, the loads are invented.
describe('a run worked by hand', () => {
  it.each([
    [18, 100, 0.3, 0.3831],
    [18, 250, 1.25, 3.991],
    [22, 60, 0.4, 0.7747],
    [16, 300, 0.45, 1.084],
  ])('%i AWG, %i ft, %f A at 20 °C (NBS Handbook 100)', (awg, feet, amps, volts) => {
    expect(Math.abs((2 * wireOhms(awg, feet) * amps) / volts - 1)).toBeLessThan(1.5e-3);
  });

  // Source: NFPA 70 (NEC), chapter 9, table 8: 18 AWG solid uncoated 7.77 Ω/kft at 75 °C. 0.4 % as in tests/reference/wire.test.ts.
  it('18 AWG, 100 ft, 0.3 A in an attic at 75 °C: 2 × 0.1 × 7.77 × 0.3 = 0.466 V', () => {
    expect(Math.abs((2 * wireOhms(18, 100, 75) * 0.3) / 0.4662 - 1)).toBeLessThan(4e-3);
  });
});
