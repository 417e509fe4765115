import { describe, expect, it } from 'vitest';
import boardFile from '../../scenarios/rigs/trainingBoard.json';
import { type Attempt, begin } from '../../src/attempt/attempt.ts';
import { loadRig } from '../../src/rig/load.ts';
import { advance } from '../../src/world/time.ts';
import { number, sign, take } from '../attempt/trainee.ts';
import { setAt, siteAt, smallWorld, stateAt } from './smallRig.ts';

const BOARD = loadRig(boardFile);

function atTheBoard(call: 'off' | 'heat' | 'cool', fault?: { target: string; mode: string; magnitude?: number }): Attempt {
  const attempt = begin(
    {
      id: 'test',
      rig: BOARD.id,
      faults: fault === undefined ? [] : [{ magnitude: 0, ...fault }],
      weather: {},
      complaint: { history: [], observed: [], works: [] },
    },
    BOARD,
  );
  if (call !== 'off') {
    const setting = call === 'heat' ? ({ control: 'setHeat', value: 90 } as const) : ({ control: 'setCool', value: 50 } as const);
    take(
      attempt,
      { name: 'set', part: 'thermostat', ...setting },
      { name: 'operate', part: 'thermostat', control: 'mode', position: call },
    );
  }
  take(attempt, { name: 'walk', to: 'workbench' });
  return attempt;
}

const lamps = (attempt: Attempt) => ['heatLamp', 'coolLamp', 'fanLamp'].map((id) => sign(attempt, id, 'lamp'));

// Common practice, no source (physics.md).
describe('a training board', () => {
  it('lights the lamp of what is called for; cooling has the fan with it', () => {
    expect(lamps(atTheBoard('off'))).toEqual(['dark', 'dark', 'dark']);
    expect(lamps(atTheBoard('heat'))).toEqual(['bright', 'dark', 'dark']);
    expect(lamps(atTheBoard('cool'))).toEqual(['dark', 'bright', 'bright']);
  });

  it('with W and Y swapped at the thermostat answers a call for heat with its contactor', () => {
    const attempt = atTheBoard('heat', { target: 'pigtailW', mode: 'swappedTo:pigtailY' });
    expect(lamps(attempt)).toEqual(['dark', 'bright', 'dark']);
    expect(sign(attempt, 'contactor', 'armature')).toBe('in');
  });

  it('has the whole supply across a lamp that is burnt out', () => {
    const attempt = atTheBoard('heat', { target: 'heatLamp', mode: 'burntOut' });
    expect(number(attempt, 'voltsAc', 'heatLamp.a', 'heatLamp.b')).toBeGreaterThan(24);
    expect(sign(attempt, 'heatLamp', 'lamp')).toBe('dark');
  });
});

describe('a plug-in supply', () => {
  const loaded = (ratedVoltAmps: number, ohms: number, fault?: { mode: string; magnitude?: number }) =>
    smallWorld(
      [
        { id: 'supply', kind: 'plugInSupply', params: { ratedVoltAmps } },
        { id: 'load', kind: 'testLoad', params: { ohms } },
      ],
      [
        ['supply.X1', 'load.a'],
        ['supply.X2', 'load.b'],
      ],
      fault === undefined ? [] : [{ target: 'supply', magnitude: 0, ...fault }],
    );

  // Common practice, no source: 24 V at the rated load, a few volts more without one.
  it.each([20, 40])('of %d VA gives 27 V open and 24 V at its rated load', (voltAmps) => {
    const volts = (ohms: number) => siteAt(loaded(voltAmps, ohms), 'load').volts('a', 'b');
    expect(volts(1e6)).toBeCloseTo(27, 1);
    // Its lead and its own joints take a tenth of a volt of that.
    expect(Math.abs(volts(24 ** 2 / voltAmps) / 24 - 1)).toBeLessThan(0.01);
  });

  it('holds at its rated load for good, and opens for ever within a minute of a dead short', () => {
    const world = loaded(40, 24 ** 2 / 40);
    advance(world, 86_400);
    expect(siteAt(world, 'load').volts('a', 'b')).toBeGreaterThan(23);
    setAt(world, 'load', 'ohms', 0.05);
    advance(world, 60);
    expect(stateAt(world, 'supply').burnt).toBe(1);
    setAt(world, 'load', 'ohms', 1e6);
    expect(siteAt(world, 'load').volts('a', 'b')).toBeLessThan(0.1);
  });

  it('unplugged still shows its winding to an ohmmeter, and a broken lead does not', () => {
    const ohms = (mode: string) => {
      const attempt = atTheBoard('off', { target: 'supply', mode });
      take(attempt, { name: 'unplug', part: 'supply' });
      const reading = take(
        attempt,
        { name: 'meter', fn: 'ohms' },
        { name: 'lift', wire: 'supplyHot', end: 'from' },
        { name: 'probe', lead: 'red', at: 'supply.X1' },
        { name: 'probe', lead: 'black', at: 'supply.X2' },
      ).reading;
      return reading?.kind === 'number' ? reading.value : reading?.kind;
    };
    expect(ohms('dead')).toBeCloseTo(1.8, 0);
    expect(ohms('leadOpen')).toBe('overload');
  });
});

// From memory, no source: a filament's ohms go as the 0.56th power of its volts, a tenth of the hot ones when cold.
describe('a lamp', () => {
  const lit = (volts: number) => {
    const world = smallWorld(
      [
        { id: 'supply', kind: 'testSupply', params: { volts } },
        { id: 'lamp', kind: 'pilotLamp' },
      ],
      [
        ['supply.a', 'lamp.a'],
        ['supply.b', 'lamp.b'],
      ],
    );
    return { watts: volts * siteAt(world, 'lamp').amps(0), level: stateAt(world, 'lamp').level };
  };

  it('takes its two watts at 24 V, and at a tenth of its volts between a quarter and a half of its current', () => {
    expect(lit(24).watts).toBeCloseTo(2, 1);
    const share = lit(2.4).watts / 2.4 / (lit(24).watts / 24);
    expect(share).toBeGreaterThan(0.25);
    expect(share).toBeLessThan(0.5);
  });

  it('is dark at 3 V, dim at 12 and bright at 20', () => {
    expect([3, 12, 20].map((volts) => lit(volts).level)).toEqual([0, 1, 2]);
  });
});
