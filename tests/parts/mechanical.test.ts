import { describe, expect, it } from 'vitest';
import rigFile from '../../scenarios/rigs/twoWireHeat.json';
import { type Attempt, begin } from '../../src/attempt/attempt.ts';
import { ANTICIPATOR_AMPS, anticipatorOhms } from '../../src/parts/mechanicalThermostat.ts';
import { loadRig } from '../../src/rig/load.ts';
import { number, read, sign, take, wait } from '../attempt/trainee.ts';
import { siteAt, stateAt } from './smallRig.ts';

const RIG = loadRig(rigFile);

/** Somebody who called for heat on a cold day, twenty seconds ago, and stands in the hall with the thermostat's cover off. */
function inTheHall(fault?: { target: string; mode: string; magnitude?: number }, call = true): Attempt {
  const attempt = begin(
    {
      id: 'test',
      rig: RIG.id,
      faults: fault === undefined ? [] : [{ magnitude: 0, ...fault }],
      weather: { outdoorFahrenheit: 22, startFahrenheit: 62 },
      complaint: { history: [], observed: [], works: [] },
    },
    RIG,
  );
  take(attempt, { name: 'cover', cover: 'thermostatCover', open: true });
  if (call)
    take(
      attempt,
      { name: 'set', part: 'thermostat', control: 'setHeat', value: 75 },
      { name: 'operate', part: 'thermostat', control: 'mode', position: 'heat' },
    );
  return attempt;
}

const atTheFurnace = (attempt: Attempt) =>
  take(attempt, { name: 'walk', to: 'furnace' }, { name: 'cover', cover: 'burnerDoor', open: true });
const acrossTheThermostat = (attempt: Attempt) => number(attempt, 'voltsAc', 'thermostat.R', 'thermostat.W');

// Common practice, no source (physics.md, Thermostats).
describe('a two-wire thermostat', () => {
  it('has the whole supply across its open contact', () => {
    expect(acrossTheThermostat(inTheHall(undefined, false))).toBeGreaterThan(24);
  });

  it('has almost nothing across its closed contact: what is left is the anticipator’s', () => {
    const attempt = inTheHall();
    const volts = acrossTheThermostat(attempt);
    expect(volts).toBeLessThan(1);
    const amps = siteAt(attempt.bench.world, 'thermostat').amps(1);
    expect(amps).toBeGreaterThan(0.38);
    expect(amps).toBeLessThan(0.45);
    expect(volts).toBeCloseTo(amps * (anticipatorOhms(0.4) + 0.025), 2);
  });

  it('shorted across its wires calls for heat all the time, whatever the thermostat says', () => {
    const attempt = inTheHall({ target: 'statR', mode: 'shortTo:statW' }, false);
    expect(sign(attempt, 'thermostat', 'call')).toBe('none');
    expect(sign(attempt, 'burner', 'flame')).toBe(1);
    expect(acrossTheThermostat(attempt)).toBeLessThan(0.1);
  });

  it('reads the supply over a pitted contact that is closed, and the valve does not open', () => {
    const attempt = inTheHall({ target: 'thermostat', mode: 'heatContactPitted', magnitude: 150 });
    expect(sign(attempt, 'thermostat', 'call')).toBe('heat');
    expect(sign(attempt, 'burner', 'flame')).toBe(0);
    expect(acrossTheThermostat(attempt)).toBeGreaterThan(15);
  });

  it.each([
    ['thermostat', 'heatContactOpen', true],
    ['thermostat', 'anticipatorOpen', true],
    ['statW', 'open', true],
    ['statR', 'open', true],
    ['gasValve', 'coilOpen', false],
    ['fanLimit', 'limitStuckOpen', false],
    ['transformer', 'secondaryOpen', false],
  ] as const)('%s %s: a jumper from R to W at the furnace lights it: %s', (target, mode, lights) => {
    const attempt = inTheHall({ target, mode });
    expect(sign(attempt, 'burner', 'flame')).toBe(0);
    atTheFurnace(attempt);
    take(attempt, { name: 'jumper', from: 'fanLimit.L2', to: 'gasValve.TH', on: true });
    expect(sign(attempt, 'burner', 'flame') === 1).toBe(lights);
  });
});

// Typical, no source: the heat is the same at every setting that is the load's current.
describe('the anticipator', () => {
  it('has fewer ohms the more amps it is set to, by their square', () => {
    const scale = Object.values(ANTICIPATOR_AMPS);
    for (const amps of scale) expect(anticipatorOhms(amps) * amps * amps).toBeCloseTo(anticipatorOhms(1), 9);
    expect(anticipatorOhms(0.4)).toBeCloseTo(1.5, 9);
    expect(anticipatorOhms(0.2)).toBeCloseTo(6, 9);
  });

  it('at half the load’s current reads four times the ohms between R and W', () => {
    const ohms = (magnitude?: number) => {
      const attempt = inTheHall(
        magnitude === undefined ? undefined : { target: 'thermostat', mode: 'anticipatorSetWrongly', magnitude },
      );
      take(attempt, { name: 'walk', to: 'furnace' }, { name: 'operate', part: 'furnaceSwitch', control: 'lever', position: 'off' });
      take(attempt, { name: 'walk', to: 'hallway' }, { name: 'lift', wire: 'statR', end: 'to' });
      return number(attempt, 'ohms', 'thermostat.R', 'thermostat.W');
    };
    expect(ohms(0.5) / ohms()).toBeGreaterThan(3.8);
    expect(ohms(0.5) / ohms()).toBeLessThan(4.2);
    expect(ohms(2)).toBeLessThan(ohms() / 3);
  });

  it('open, lets no current through a contact that is closed', () => {
    const attempt = inTheHall({ target: 'thermostat', mode: 'anticipatorOpen' });
    expect(sign(attempt, 'thermostat', 'call')).toBe('heat');
    expect(acrossTheThermostat(attempt)).toBeGreaterThan(24);
  });

  it('warms to its end along an exponential of its own while a call lasts', () => {
    const attempt = inTheHall();
    const { world } = attempt.bench;
    const amps = siteAt(world, 'thermostat').amps(1);
    const end = (amps * amps * anticipatorOhms(0.4) * 1.9) / 0.24;
    const began = stateAt(world, 'thermostat').called!;
    wait(attempt, 300);
    take(attempt, { name: 'operate', part: 'thermostat', control: 'mode', position: 'off' });
    const { since, rise } = stateAt(world, 'thermostat');
    expect(rise!).toBeGreaterThan(0.5);
    // The hand took its time after the switch: what was warm has cooled since by the same law.
    const off = since! - began;
    expect(end * (1 - Math.exp(-off / 400))).toBeCloseTo(rise!, 1);
  });
});

// Common practice, no source.
describe('a standing pilot', () => {
  it('that is out lets no gas through, though the coil has its volts; lit again it does', () => {
    const attempt = inTheHall({ target: 'gasValve', mode: 'pilotOut' });
    atTheFurnace(attempt);
    expect(number(attempt, 'voltsAc', 'gasValve.TH', 'gasValve.TR')).toBeGreaterThan(22);
    expect(sign(attempt, 'burner', 'flame')).toBe(0);
    take(attempt, { name: 'operate', part: 'gasValve', control: 'pilot', position: 'lit' });
    expect(sign(attempt, 'burner', 'flame')).toBe(1);
    wait(attempt, 120);
    expect(sign(attempt, 'gasValve', 'pilot')).toBe(1);
  });

  it('goes out when the button is let go with a weak thermocouple; a good one gives 15 mV under its magnet', () => {
    const sound = inTheHall();
    atTheFurnace(sound);
    expect(number(sound, 'voltsDc', 'gasValve.TC', 'gasValve.CASE')).toBeCloseTo(0.015, 3);
    const weak = inTheHall({ target: 'gasValve', mode: 'thermocoupleWeak', magnitude: 0.012 });
    atTheFurnace(weak);
    take(weak, { name: 'operate', part: 'gasValve', control: 'pilot', position: 'lit' });
    expect(number(weak, 'voltsDc', 'gasValve.TC', 'gasValve.CASE')).toBeCloseTo(0.006, 3);
    wait(weak, 30);
    expect(sign(weak, 'gasValve', 'pilot')).toBe(1);
    wait(weak, 60);
    expect(sign(weak, 'gasValve', 'pilot')).toBe(0);
    expect(sign(weak, 'burner', 'flame')).toBe(0);
  });
});

// Common practice, no source.
describe('the fan and limit control', () => {
  /** Seconds until the blower stands so, from the flame's lighting or its going out. */
  function secondsUntil(attempt: Attempt, running: string): number {
    const { world } = attempt.bench;
    const began = world.state.time;
    while (sign(attempt, 'blower', 'running') !== running && world.state.time < began + 900) wait(attempt, 5);
    return world.state.time - began;
  }

  it('starts the fan about a minute and a half after the flame, and stops it about as long after', () => {
    const attempt = inTheHall();
    const until = secondsUntil(attempt, 'heat');
    expect(until).toBeGreaterThan(70);
    expect(until).toBeLessThan(110);
    wait(attempt, 600);
    take(attempt, { name: 'operate', part: 'thermostat', control: 'mode', position: 'off' });
    expect(sign(attempt, 'burner', 'flame')).toBe(0);
    const after = secondsUntil(attempt, 'off');
    expect(after).toBeGreaterThan(70);
    expect(after).toBeLessThan(110);
  });

  it('opens its limit when the fan never starts, and closes it again by itself', () => {
    const attempt = inTheHall({ target: 'fanLimit', mode: 'fanSwitchStuckOpen' });
    wait(attempt, 400);
    expect(sign(attempt, 'burner', 'flame')).toBe(0);
    expect(stateAt(attempt.bench.world, 'fanLimit').open).toBe(1);
    // Nothing to be had at the thermostat meanwhile: the limit is in its own circuit.
    expect(read(attempt, 'voltsAc', 'thermostat.R', 'thermostat.W').value).toBeLessThan(1);
    wait(attempt, 150);
    expect(sign(attempt, 'burner', 'flame')).toBe(1);
  });
});
