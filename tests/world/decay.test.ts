import { describe, expect, it } from 'vitest';
import { crossingAfter, type Decay } from '../../src/world/decay.ts';

const sumAt = (decays: readonly Decay[], seconds: number) =>
  decays.reduce((sum, { height, tau }) => sum + height * Math.exp(-seconds / tau), 0);

describe('when decays cross a level', () => {
  it('one does by the logarithm of what is left', () => {
    expect(crossingAfter([{ height: 8, tau: 100 }], 2)).toBeCloseTo(100 * Math.log(4), 9);
    expect(crossingAfter([{ height: 8, tau: 100 }], 9)).toBe(Number.POSITIVE_INFINITY);
    expect(crossingAfter([{ height: 8, tau: 100 }], -1)).toBe(Number.POSITIVE_INFINITY);
  });

  it('the sum of two does where stepping through it finds it first, also on its way back', () => {
    const cases: readonly (readonly [Decay, Decay, number])[] = [
      [{ height: 10, tau: 5000 }, { height: -3, tau: 400 }, 8],
      [{ height: -4, tau: 20_000 }, { height: 3, tau: 400 }, -2],
      [{ height: 10, tau: 5000 }, { height: -9, tau: 400 }, 5],
      [{ height: 10, tau: 5000 }, { height: -9, tau: 400 }, 0.5],
      [{ height: 5, tau: 300 }, { height: 5, tau: 300 }, 4],
    ];
    for (const [a, b, level] of cases) {
      const found = crossingAfter([a, b], level);
      let stepped = 0;
      const side = Math.sign(sumAt([a, b], 0) - level);
      while (Math.sign(sumAt([a, b], stepped) - level) === side && stepped < 200_000) stepped += 1;
      expect(found, JSON.stringify([a, b, level])).toBeGreaterThan(stepped - 1.001);
      expect(found).toBeLessThan(stepped + 0.001);
      expect(sumAt([a, b], found)).toBeCloseTo(level, 6);
    }
  });

  it('the sum of two never does beyond its highest', () => {
    expect(
      crossingAfter(
        [
          { height: 10, tau: 5000 },
          { height: -9, tau: 400 },
        ],
        9.9,
      ),
    ).toBe(Number.POSITIVE_INFINITY);
  });
});
