import { describe, expect, it } from 'vitest';
import cooledFile from '../../scenarios/rigs/furnaceAndCondenser.json';
import twoWireFile from '../../scenarios/rigs/twoWireHeat.json';
import { loadRig } from '../../src/rig/load.ts';
import { dayOf, type House } from './cycling.ts';

/**
 * Cycles per hour at a share `onTime` of running: ANSI/NEMA DC 3, Residential controls (from memory): N = 4 · N_max · x · (1 − x).
 * @param most cycles per hour at half load
 */
function nema(most: number, onTime: number): number {
  return 4 * most * onTime * (1 - onTime);
}

const LOADS = [0.2, 0.35, 0.5, 0.65, 0.8] as const;
const TWO_WIRE = loadRig(twoWireFile);
const COOLED = loadRig(cooledFile);
/** The same house with a thermostat that lives on R and C, and no cells. */
const COMMON_WIRE = loadRig({
  ...cooledFile,
  parts: cooledFile.parts
    .filter(({ id }) => id !== 'cells')
    .map((part) =>
      part.id === 'thermostat' ? { ...part, kind: 'commonWireThermostat', params: { electricHeat: false, heatCycles: 5 } } : part,
    ),
  wires: cooledFile.wires.filter(({ from }) => !from.startsWith('cells.')),
});

const gas = { mode: 'heat', set: 70, outputBtuPerHour: 48_000 } as const;
const cooling = { mode: 'cool', set: 75, outputBtuPerHour: 24_000 } as const;

/** Houses, and what cycles per hour at half load are usual there: 5 to 6 gas forced air, 3 cooling (common practice, no source). */
const HOUSES: readonly (readonly [string, House, number])[] = [
  ['a mechanical thermostat with its anticipator set to the load', { rig: TWO_WIRE, ...gas }, 5.5],
  ['a battery thermostat that heats', { rig: COOLED, ...gas }, 5],
  ['a battery thermostat that cools', { rig: COOLED, ...cooling }, 3],
  ['a common-wire thermostat that heats', { rig: COMMON_WIRE, ...gas }, 5],
  ['a common-wire thermostat that cools', { rig: COMMON_WIRE, ...cooling }, 3],
];

describe.each(HOUSES)('%s', (_, house, most) => {
  it.each(LOADS)('cycles as the parabola has it, within a tenth: at a load of %f', { timeout: 60_000 }, (load) => {
    const { cyclesPerHour, onTime } = dayOf(house, load);
    // It runs longer than the load's share, for the time that heat takes to come.
    expect(onTime).toBeGreaterThan(load - 0.06);
    expect(onTime).toBeLessThan(load + 0.1);
    const expected = nema(most, onTime);
    expect(cyclesPerHour / expected).toBeGreaterThan(0.9);
    expect(cyclesPerHour / expected).toBeLessThan(1.1);
  });
});

describe('a cooling thermostat at a fifth of its load', () => {
  // Source: ANSI/AHRI 210/240's cyclic test (from memory): 6 minutes on and 24 off, which is 2 cycles an hour at x = 0.2; by NEMA's
  // parabola a thermostat of 3.125 cycles an hour at half load does the same.
  it('does what the rating standard’s cyclic test does: about six minutes on and twenty-four off', { timeout: 60_000 }, () => {
    expect(nema(3.125, 0.2)).toBeCloseTo(2, 9);
    const { onTime, meanOnSeconds, meanOffSeconds } = dayOf({ rig: COOLED, ...cooling }, 0.2);
    expect(onTime).toBeCloseTo(0.2, 1);
    expect(meanOnSeconds / 360).toBeGreaterThan(0.85);
    expect(meanOnSeconds / 360).toBeLessThan(1.15);
    expect(meanOffSeconds / 1440).toBeGreaterThan(0.85);
    expect(meanOffSeconds / 1440).toBeLessThan(1.15);
  });
});

// Common practice, no source: set to more than the load draws it warms less and the cycles grow long; set to less, short.
describe('an anticipator set wrongly', () => {
  const wrong = (magnitude: number, load: number) =>
    dayOf({ rig: TWO_WIRE, ...gas, faults: [{ target: 'thermostat', mode: 'anticipatorSetWrongly', magnitude }] }, load);

  it.each(LOADS)(
    'to half the current cycles twice as often at least; to double, three quarters as often at most: load %f',
    {
      timeout: 60_000,
    },
    (load) => {
      const right = dayOf({ rig: TWO_WIRE, ...gas }, load).cyclesPerHour;
      expect(wrong(0.5, load).cyclesPerHour / right).toBeGreaterThan(2);
      expect(wrong(2, load).cyclesPerHour / right).toBeLessThan(0.75);
    },
  );
});
