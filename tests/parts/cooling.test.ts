import { describe, expect, it } from 'vitest';
import type { Attempt } from '../../src/attempt/attempt.ts';
import { CONTACTOR_COIL } from '../../src/parts/contactor.ts';
import {
  arriveAt,
  faultOf,
  HOT_DAY,
  type JobFigures,
  look,
  number,
  open,
  operate,
  sign,
  take,
  wait,
  waitUntil,
  walk,
} from '../attempt/trainee.ts';
import { setAt, siteAt, smallWorld, stateAt } from './smallRig.ts';

/** The wall has asked for cooling on a hot day, and ten minutes have passed. */
function cooling(figures: JobFigures = {}): Attempt {
  return arriveAt({
    weather: HOT_DAY,
    history: [
      { name: 'set', part: 'thermostat', control: 'setCool', value: 68 },
      { name: 'operate', part: 'thermostat', control: 'mode', position: 'cool' },
      { name: 'wait', seconds: 600 },
    ],
    ...figures,
  });
}

const running = (attempt: Attempt, part: string) => sign(attempt, part, 'running');

describe('a call for cooling', () => {
  it('runs blower, compressor and fan, and the contactor is in', () => {
    const attempt = cooling();
    expect(running(attempt, 'blower')).toBe('cool');
    expect(running(attempt, 'compressor')).toBe('run');
    expect(running(attempt, 'condenserFan')).toBe('run');
    expect(sign(attempt, 'contactor', 'armature')).toBe('in');
    operate(attempt, 'thermostat', 'mode', 'off');
    expect(running(attempt, 'compressor')).toBe('off');
  });

  it('with the contactor’s coil open, or its armature jammed, runs the blower alone with full volts on the coil', () => {
    for (const mode of ['coilOpen', 'jammed']) {
      const attempt = cooling({ faults: [faultOf('contactor', mode)] });
      expect(running(attempt, 'blower')).toBe('cool');
      expect(running(attempt, 'compressor')).toBe('off');
      open(attempt, 'outdoorPanel');
      expect(number(attempt, 'voltsLoaded', 'contactor.A1', 'contactor.A2')).toBeGreaterThan(20);
    }
  });

  it('tells an open coil from a jammed one by ohms, with the coil’s wires off', () => {
    const ohms = (mode: string) => {
      const attempt = cooling({ faults: [faultOf('contactor', mode)] });
      open(attempt, 'outdoorPanel');
      take(
        attempt,
        { name: 'lift', wire: 'coilY', end: 'to' },
        { name: 'lift', wire: 'coilC', end: 'to' },
        { name: 'meter', fn: 'ohms' },
      );
      take(attempt, { name: 'probe', lead: 'red', at: 'contactor.A1' }, { name: 'probe', lead: 'black', at: 'contactor.A2' });
      return look(attempt);
    };
    expect(ohms('coilOpen').kind).toBe('overload');
    // Common practice, no source (physics.md): a contactor's coil is 10 to 15 Ω at direct current.
    expect(ohms('jammed').value).toBeGreaterThan(10);
    expect(ohms('jammed').value).toBeLessThan(15);
  });

  it('cannot stop a compressor whose contactor is welded', () => {
    const attempt = cooling({ faults: [faultOf('contactor', 'welded')] });
    operate(attempt, 'thermostat', 'mode', 'off');
    wait(attempt, 60);
    expect(running(attempt, 'compressor')).toBe('run');
  });
});

describe('a corroded splice', () => {
  it('of 80 Ω passes every unloaded test and starves the coil as soon as it draws', () => {
    const attempt = cooling({ faults: [faultOf('spliceY', 'corroded', 80)] });
    expect(running(attempt, 'compressor')).toBe('off');
    open(attempt, 'outdoorPanel');
    const loaded = number(attempt, 'voltsAc', 'contactor.A1', 'contactor.A2');
    expect(loaded).toBeLessThan(CONTACTOR_COIL.pickUp * 24);
    take(attempt, { name: 'lift', wire: 'coilY', end: 'to' });
    expect(number(attempt, 'voltsAc', 'coilY@to', 'contactor.A2')).toBeGreaterThan(25);
    expect(number(attempt, 'voltsLoaded', 'coilY@to', 'contactor.A2')).toBeGreaterThan(24);
    take(attempt, { name: 'land', wire: 'coilY', end: 'to' });
    // What the coil misses stands across the splice.
    expect(number(attempt, 'voltsAc', 'spliceY.a', 'spliceY.b')).toBeGreaterThan(15);
  });

  it('of 400 Ω sags even on the meter’s own load', () => {
    const attempt = cooling({ faults: [faultOf('spliceY', 'corroded', 400)] });
    open(attempt, 'outdoorPanel');
    take(attempt, { name: 'lift', wire: 'coilY', end: 'to' });
    expect(number(attempt, 'voltsAc', 'coilY@to', 'contactor.A2')).toBeGreaterThan(25);
    expect(number(attempt, 'voltsLoaded', 'coilY@to', 'contactor.A2')).toBeLessThan(25);
  });

  it('of 15 Ω leaves so few volts that the contactor chatters and nothing starts', () => {
    const attempt = cooling({ faults: [faultOf('spliceY', 'corroded', 15)] });
    expect(sign(attempt, 'contactor', 'armature')).toBe('chatter');
    expect(sign(attempt, 'contactor', 'chatter')).toBe(1);
    expect(running(attempt, 'compressor')).toBe('off');
    walk(attempt, 'outdoor');
    expect(attempt.steps.at(-1)?.view.noticed).toContainEqual({ part: 'contactor', key: 'chatter', value: 1, sense: 'hear' });
    open(attempt, 'outdoorPanel');
    const share = number(attempt, 'voltsAc', 'contactor.A1', 'contactor.A2') / 24;
    expect(share).toBeGreaterThanOrEqual(CONTACTOR_COIL.chatterFrom);
    expect(share).toBeLessThan(CONTACTOR_COIL.pickUp);
  });
});

// Common practice, no source (physics.md, Loads and contacts): pull-in and drop-out are two thresholds; between, it may chatter.
describe('a contactor between its thresholds', () => {
  const onSupply = (volts: number) =>
    smallWorld(
      [
        { id: 'supply', kind: 'testSupply', params: { volts } },
        { id: 'contactor', kind: 'contactor' },
      ],
      [
        ['supply.a', 'contactor.A1'],
        ['supply.b', 'contactor.A2'],
      ],
    );

  it('chatters from below, holds from above', () => {
    const world = onSupply(24 * 0.65);
    expect(stateAt(world, 'contactor').armature).toBe(2);
    expect(world.state.unsettled).toBe(0);
    setAt(world, 'supply', 'volts', 24);
    setAt(world, 'supply', 'volts', 24 * 0.65);
    expect(stateAt(world, 'contactor').armature).toBe(1);
  });

  it('lies still under the volts at which it begins to buzz', () => {
    expect(stateAt(onSupply(24 * 0.5), 'contactor').armature).toBe(0);
  });

  it('draws 25 to 35 VA before it seats and 6 to 8 VA after', () => {
    const world = onSupply(24);
    const sealed = 24 * siteAt(world, 'contactor').amps(2);
    expect(sealed).toBeGreaterThanOrEqual(6);
    expect(sealed).toBeLessThanOrEqual(8);
    const buzzing = onSupply(24 * 0.65);
    const unsealed = 24 * (siteAt(buzzing, 'contactor').amps(2) / 0.65);
    expect(unsealed).toBeGreaterThanOrEqual(25);
    expect(unsealed).toBeLessThanOrEqual(35);
  });
});

// Common practice, no source (physics.md): motors start or fail with their capacitor; the overload opens, and closes when cool.
describe('a weak run capacitor', () => {
  it('lets the compressor hum until its overload opens, and hum again when that has cooled', () => {
    const attempt = arriveAt({ weather: HOT_DAY, faults: [faultOf('capacitor', 'compressorSectionWeak', 0.2)] });
    take(attempt, { name: 'set', part: 'thermostat', control: 'setCool', value: 68 });
    operate(attempt, 'thermostat', 'mode', 'cool');
    expect(running(attempt, 'compressor')).toBe('hum');
    expect(running(attempt, 'condenserFan')).toBe('run');
    expect(waitUntil(attempt, () => running(attempt, 'compressor') === 'off')).toBeLessThan(30);
    const cooled = waitUntil(attempt, () => running(attempt, 'compressor') === 'hum');
    expect(cooled).toBeGreaterThan(120);
    expect(waitUntil(attempt, () => running(attempt, 'compressor') === 'off')).toBeLessThan(30);
  });

  it('reads far under its plate when it is off and by itself', () => {
    const microfarads = (faults: JobFigures['faults'] = []) => {
      const attempt = cooling({ faults });
      open(attempt, 'disconnectCover', 'outdoorPanel');
      operate(attempt, 'disconnect', 'position', 'out');
      take(attempt, { name: 'lift', wire: 'compressorStart', end: 'from' }, { name: 'lift', wire: 'capacitorFeed', end: 'to' });
      return number(attempt, 'capacitance', 'capacitor.C', 'capacitor.HERM') * 1e6;
    };
    expect(microfarads()).toBeCloseTo(35, 0);
    expect(microfarads([faultOf('capacitor', 'compressorSectionWeak', 0.4)])).toBeCloseTo(14, 0);
    expect(microfarads([faultOf('capacitor', 'compressorSectionOpen')])).toBeLessThan(1);
  });

  it('of the fan’s section: the fan stands, and the high-pressure switch stops the compressor', () => {
    const attempt = arriveAt({ weather: HOT_DAY, faults: [faultOf('capacitor', 'fanSectionOpen')] });
    take(attempt, { name: 'set', part: 'thermostat', control: 'setCool', value: 68 });
    operate(attempt, 'thermostat', 'mode', 'cool');
    expect(running(attempt, 'compressor')).toBe('run');
    expect(running(attempt, 'condenserFan')).not.toBe('run');
    const tripped = waitUntil(attempt, () => running(attempt, 'compressor') === 'off');
    expect(tripped).toBeGreaterThan(60);
    expect(tripped).toBeLessThan(300);
  });
});

describe('a compressor restarted too soon', () => {
  it('cannot start against its pressure, hums, trips, and the step is logged as unsafe', () => {
    const attempt = cooling();
    walk(attempt, 'outdoor');
    operate(attempt, 'disconnect', 'position', 'out');
    expect(running(attempt, 'compressor')).toBe('off');
    const step = operate(attempt, 'disconnect', 'position', 'in');
    expect(step.unsafe).toBe('shortCycle');
    expect(running(attempt, 'compressor')).toBe('hum');
    expect(waitUntil(attempt, () => running(attempt, 'compressor') === 'off')).toBeLessThan(30);
    waitUntil(attempt, () => running(attempt, 'compressor') === 'run');
  });

  it('starts well when the disconnect was out for five minutes', () => {
    const attempt = cooling();
    walk(attempt, 'outdoor');
    operate(attempt, 'disconnect', 'position', 'out');
    wait(attempt, 300);
    expect(operate(attempt, 'disconnect', 'position', 'in').unsafe).toBeUndefined();
    expect(running(attempt, 'compressor')).toBe('run');
  });
});

// Common practice, no source (physics.md, Meter): one conductor; around a whole cable the sum, near zero; wrapped n times, n times.
describe('the clamp', () => {
  const clamp = (attempt: Attempt, around: string, turns = 1) => take(attempt, { name: 'clamp', around, turns }).reading!.value;

  it('reads one conductor, nothing around its cable, and n times as much when wrapped n times', () => {
    const attempt = cooling();
    open(attempt, 'outdoorPanel');
    take(attempt, { name: 'meter', fn: 'ampsAc' });
    const one = clamp(attempt, 'outY');
    expect(one).toBeGreaterThan(0.2);
    expect(one).toBeLessThan(0.4);
    expect(clamp(attempt, 'outdoorCable')).toBeLessThan(0.02);
    for (const turns of [5, 10]) expect(clamp(attempt, 'outY', turns) / turns).toBeCloseTo(one, 2);
  });

  it('reads the compressor’s run amps, and several times as much when it hums', () => {
    const attempt = cooling();
    open(attempt, 'outdoorPanel');
    take(attempt, { name: 'meter', fn: 'ampsAc' });
    const run = clamp(attempt, 'compressorCommon');
    expect(run).toBeGreaterThan(5);
    expect(run).toBeLessThan(20);
    operate(attempt, 'disconnect', 'position', 'out');
    expect(look(attempt).value).toBe(0);
    operate(attempt, 'disconnect', 'position', 'in');
    expect(look(attempt).value).toBeGreaterThan(3 * run);
  });

  it('reads a heating call in R and W, and the cable’s sum is nothing', () => {
    const attempt = cooling();
    open(attempt, 'blowerDoor');
    operate(attempt, 'doorSwitch', 'plunger', 'held');
    take(attempt, { name: 'meter', fn: 'ampsAc' });
    expect(clamp(attempt, 'statY')).toBeGreaterThan(0.2);
    expect(clamp(attempt, 'statR')).toBeGreaterThan(0.2);
    expect(clamp(attempt, 'statCable')).toBeLessThan(0.02);
  });
});
