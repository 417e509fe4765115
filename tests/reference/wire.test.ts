import { describe, expect, it } from 'vitest';
import { wireMillimetres, wireOhms } from '../../src/circuit/wire.ts';

describe('copper wire', () => {
  // Source: NBS Handbook 100, Copper Wire Tables (1966): Ω per 1000 ft of solid wire at 20 °C.
  it.each([
    [14, 2.525],
    [16, 4.016],
    [18, 6.385],
    [20, 10.15],
    [22, 16.14],
    [24, 25.67],
  ])('%i AWG has %f Ω per 1000 ft at 20 °C', (awg, ohms) => {
    expect(Math.abs(wireOhms(awg, 1000) / ohms - 1)).toBeLessThan(0.001);
  });

  // Source: NFPA 70 (NEC), chapter 9, table 8: 18 AWG solid uncoated, 7.77 Ω/kft direct current at 75 °C. The table
  // rounds to 3 figures (±0.06 %), takes 1620 circular mils for 18 AWG where the rule of ASTM B258 gives 1624
  // (0.25 %), and its own note 2 corrects by 0.00323/K of the value at 75 °C, which is 0.00393/K at 20 °C to within
  // 0.1 %. Together 0.4 %.
  it('18 AWG has 7.77 Ω per 1000 ft at 75 °C', () => {
    expect(Math.abs(wireOhms(18, 1000, 75) / 7.77 - 1)).toBeLessThan(0.004);
  });

  // Source: ASTM B258: 36 AWG is 0.0050 in and 4/0 (−3) is 0.4600 in by definition.
  it('the gauge is pinned at both ends', () => {
    expect(wireMillimetres(36)).toBeCloseTo(0.127, 12);
    expect(wireMillimetres(-3)).toBeCloseTo(11.684, 9);
  });

  // By the row of NBS Handbook 100 above: 6.385 × 0.1.
  it('50 ft of 18 AWG out and back is 0.64 Ω', () => {
    expect(2 * wireOhms(18, 50)).toBeCloseTo(0.64, 2);
  });
});
