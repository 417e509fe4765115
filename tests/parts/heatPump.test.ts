import { describe, expect, it } from 'vitest';
import { heatingShare } from '../../src/parts/motors.ts';
import { assemble } from '../../src/rig/assemble.ts';
import type { Fault } from '../../src/rig/faults.ts';
import { advance } from '../../src/world/time.ts';
import { createWorld, type World } from '../../src/world/world.ts';
import { library } from '../scenario/shipped.ts';
import { turn } from '../world/states.ts';
import { siteAt, smallWorld, stateAt } from './smallRig.ts';

const RIGS = {
  O: assemble(library.rigs.get('heatPumpO')!),
  B: assemble(library.rigs.get('heatPumpB')!),
} as const;
type Letter = keyof typeof RIGS;

interface Day {
  readonly outdoors: number;
  readonly room: number;
  readonly set: number;
  readonly mode: 'heat' | 'cool';
  readonly faults?: readonly Fault[];
  readonly emergency?: boolean;
}

const fault = (target: string, mode: string, magnitude = 0): Fault => ({ target, mode, magnitude });

/** A heat pump whose thermostat has just been set. */
function called(letter: Letter, { outdoors, room, set, mode, faults = [], emergency = false }: Day): World {
  const world = createWorld(RIGS[letter], faults, { outdoorFahrenheit: outdoors, startFahrenheit: room });
  if (emergency) turn(world, 'thermostat', 'emergency', 'on');
  turn(world, 'thermostat', mode === 'heat' ? 'setHeat' : 'setCool', set);
  turn(world, 'thermostat', 'mode', mode);
  return world;
}

function sign(world: World, id: string, key: string): string | number {
  const part = world.assembly.partById.get(id)!;
  return part.kind.signs(siteAt(world, id), stateAt(world, id)).find((each) => each.key === key)?.value ?? 'none';
}

const volts = (world: World, id: string, a: string, b: string) => siteAt(world, id).volts(a, b);
const valveVolts = (world: World) => volts(world, 'reversingValve', 'a', 'b');
const drive = (world: World, id: string) => world.assembly.partById.get(id)!.kind.drive!(siteAt(world, id), stateAt(world, id));
const heat = (world: World, id: string) => world.assembly.partById.get(id)!.kind.heat!(siteAt(world, id), stateAt(world, id));
const room = (world: World) => world.state.rooms[0]!;

/** Seconds until something stands so; Infinity when it does not within so many. */
function until(world: World, stands: () => boolean, most = 7200): number {
  for (let second = 0; second <= most; second++) {
    if (stands()) return second;
    advance(world, 1);
  }
  return Number.POSITIVE_INFINITY;
}

const WINTER = { outdoors: 30, room: 69, set: 71, mode: 'heat' } as const;
/** Warmer than the outdoor thermostats are set to. */
const MILD = { outdoors: 42, room: 64, set: 70, mode: 'heat' } as const;
const SUMMER = { outdoors: 92, room: 79, set: 74, mode: 'cool' } as const;

// Common practice, no source (physics.md, loads and contacts).
describe('the reversing valve', () => {
  it('has a solenoid of 4 to 6 VA and 20 to 50 Ω', () => {
    const world = smallWorld(
      [
        { id: 'supply', kind: 'testSupply', params: { volts: 24 } },
        { id: 'valve', kind: 'reversingValve' },
      ],
      [
        ['supply.a', 'valve.a'],
        ['supply.b', 'valve.b'],
      ],
    );
    const { re, im } = siteAt(world, 'valve').phasor(0);
    const amps = Math.hypot(re, im);
    expect(24 * amps).toBeGreaterThan(4);
    expect(24 * amps).toBeLessThan(6);
    // The real part of V / I is what an ohmmeter finds.
    const ohms = (24 * Math.abs(re)) / amps ** 2;
    expect(ohms).toBeGreaterThan(20);
    expect(ohms).toBeLessThan(50);
  });

  it('is energised in cooling where it is wired to O, and in heating where it is wired to B', () => {
    const live = (letter: Letter, day: Day) => {
      const world = called(letter, day);
      advance(world, 120);
      return valveVolts(world);
    };
    expect(live('O', SUMMER)).toBeGreaterThan(20);
    expect(live('O', WINTER)).toBeLessThan(1);
    expect(live('B', WINTER)).toBeGreaterThan(20);
    expect(live('B', SUMMER)).toBeLessThan(1);
  });

  it('with O dead heats the house in summer, and changes nothing in winter', () => {
    const faults = [fault('statO', 'open')];
    const summer = called('O', { ...SUMMER, faults });
    advance(summer, 1800);
    expect(sign(summer, 'compressor', 'running')).toBe('run');
    expect(sign(summer, 'register', 'air')).toBe('warm');
    expect(room(summer)).toBeGreaterThan(SUMMER.room);
    const winter = called('O', { ...WINTER, faults });
    advance(winter, 600);
    expect(sign(winter, 'register', 'air')).toBe('warm');
  });

  it('with B dead cools the house in winter', () => {
    const world = called('B', { ...MILD, faults: [fault('statB', 'open')] });
    advance(world, 1800);
    expect(sign(world, 'register', 'air')).toBe('cold');
    expect(room(world)).toBeLessThan(MILD.room);
  });

  it('whose wire is rubbed to earth blows the fuse when cooling is chosen, and not before', () => {
    const world = called('O', { ...WINTER, faults: [fault('outO', 'toEarth')] });
    advance(world, 600);
    expect(sign(world, 'fuse', 'element')).toBe('whole');
    expect(sign(world, 'register', 'air')).toBe('warm');
    turn(world, 'thermostat', 'mode', 'cool');
    advance(world, 10);
    expect(sign(world, 'fuse', 'element')).toBe('blown');
    expect(sign(world, 'thermostat', 'display')).toBe('blank');
  });

  it('is driven the wrong way by a thermostat that is set up for the other letter, though nothing is broken', () => {
    const world = called('O', { ...MILD, faults: [fault('thermostat', 'reversingSetWrongly')] });
    advance(world, 300);
    expect(valveVolts(world)).toBeGreaterThan(20);
    expect(sign(world, 'register', 'air')).toBe('cold');
    expect(sign(world, 'thermostat', 'reversing')).toBe('B');
  });
});

// Common practice, no source (physics.md, equipment sequences): reversing valve to cooling, outdoor fan off, W2 on.
describe('a defrost', () => {
  it('begins after half an hour of running with frost on the coil: valve over, fan off, W2 live, then the strips', () => {
    for (const letter of ['O', 'B'] as const) {
      const world = called(letter, WINTER);
      const begins = until(world, () => sign(world, 'defrostControl', 'relay') === 1);
      expect(begins, letter).toBe(1800);
      expect(sign(world, 'condenserFan', 'running')).toBe('off');
      expect(sign(world, 'compressor', 'running')).toBe('run');
      expect(volts(world, 'defrostControl', 'W2', 'C')).toBeGreaterThan(20);
      expect(until(world, () => drive(world, 'reversingValve') === 0)).toBeLessThanOrEqual(3);
      const warms = until(world, () => heat(world, 'strip1') > 1000);
      expect(warms).toBeGreaterThanOrEqual(20);
      expect(warms).toBeLessThanOrEqual(90);
    }
  });

  it('melts the frost and ends by the warm coil, well before ten minutes', () => {
    const world = called('O', WINTER);
    until(world, () => sign(world, 'defrostControl', 'relay') === 1);
    expect(sign(world, 'outdoorCoil', 'frost')).toBe('frosted');
    const seconds = until(world, () => sign(world, 'defrostControl', 'relay') === 0);
    expect(seconds).toBeGreaterThan(30);
    expect(seconds).toBeLessThan(300);
    expect(sign(world, 'outdoorCoil', 'frost')).toBe('clear');
    expect(sign(world, 'condenserFan', 'running')).toBe('run');
    advance(world, 5);
    expect(drive(world, 'reversingValve')).toBe(1);
    expect(sign(world, 'defrostControl', 'light')).toBe('1');
  });

  it('is ended by the clock after ten minutes where the coil does not get warm, and the light says so', () => {
    const world = called('O', { ...WINTER, set: 78, faults: [fault('reversingValve', 'coilOpen')] });
    until(world, () => sign(world, 'defrostControl', 'relay') === 1);
    expect(until(world, () => sign(world, 'defrostControl', 'relay') === 0)).toBe(600);
    expect(sign(world, 'defrostControl', 'light')).toBe('3');
  });

  it('does not come while the coil stays above freezing', () => {
    const world = called('O', { ...WINTER, outdoors: 46 });
    expect(until(world, () => sign(world, 'defrostControl', 'relay') === 1, 5400)).toBe(Number.POSITIVE_INFINITY);
    expect(sign(world, 'outdoorCoil', 'frost')).toBe('clear');
  });

  it('that never comes leaves a block of ice, which carries less heat', () => {
    const cold = { ...WINTER, room: 60 };
    const sound = called('O', cold);
    const iced = called('O', { ...cold, faults: [fault('defrostControl', 'defrostNever')] });
    for (const world of [sound, iced]) advance(world, 6000);
    expect(sign(iced, 'outdoorCoil', 'frost')).toBe('iced');
    expect(sign(sound, 'outdoorCoil', 'frost')).not.toBe('iced');
    expect(heat(iced, 'outdoorCoil')).toBeLessThan(0.7 * heat(sound, 'outdoorCoil'));
  });
});

describe('auxiliary heat', () => {
  it('joins after a minute of a droop of two degrees, and not for half a degree', () => {
    const drooping = called('O', { ...WINTER, room: 66 });
    expect(sign(drooping, 'thermostat', 'call')).toBe('heat');
    expect(until(drooping, () => volts(drooping, 'terminals', 'W2', 'C') > 20)).toBe(60);
    const near = called('O', { ...WINTER, room: 70.4 });
    expect(until(near, () => volts(near, 'terminals', 'W2', 'C') > 20, 1200)).toBe(Number.POSITIVE_INFINITY);
  });

  it('is locked out by the outdoor thermostat above the balance point, though W2 calls', () => {
    for (const letter of ['O', 'B'] as const) {
      const mild = called(letter, MILD);
      advance(mild, 600);
      expect(volts(mild, 'terminals', 'W2', 'C')).toBeGreaterThan(20);
      expect(volts(mild, 'terminals', 'W', 'C')).toBeLessThan(2);
      expect(heat(mild, 'strip1')).toBeLessThan(1);
      const cold = called(letter, { ...MILD, outdoors: 20 });
      advance(cold, 600);
      expect(heat(cold, 'strip1')).toBeGreaterThan(15_000);
      expect(heat(cold, 'strip2')).toBeGreaterThan(15_000);
    }
  });

  // House: 400 Btu/(h·°F), 2000 Btu/h of gains; heat pump: 24 000 Btu/h at 47 °F. The two lines cross at 24 °F for a room of 70 °F.
  it('is needed below the balance point alone: over it the heat pump warms the house by itself, under it it does not', () => {
    const alone = (outdoors: number) => {
      const faults = [fault('thermostat', 'auxiliaryNever')];
      const world = called('B', { outdoors, room: 70, set: 75, mode: 'heat', faults });
      advance(world, 1200);
      return room(world) - 70;
    };
    expect(alone(28)).toBeGreaterThan(0);
    expect(alone(18)).toBeLessThan(0);
  });

  it('as emergency heat runs the strips and the blower past the lock-out, without the compressor', () => {
    const world = called('B', { ...MILD, emergency: true });
    advance(world, 300);
    expect(sign(world, 'compressor', 'running')).toBe('off');
    expect(sign(world, 'contactor', 'armature')).toBe('out');
    expect(sign(world, 'blower', 'running')).toBe('cool');
    expect(heat(world, 'strip1') + heat(world, 'strip2')).toBeGreaterThan(30_000);
    expect(sign(world, 'register', 'air')).toBe('hot');
  });
});

describe('the heat of a heat pump', () => {
  // The usual rating points (AHRI 210/240, from memory); the share between them is typical, no source.
  it('falls with the cold: all of it at 47 °F, six tenths at 17 °F', () => {
    expect(heatingShare(47)).toBeCloseTo(1, 6);
    expect(heatingShare(17)).toBeCloseTo(0.6, 6);
    const warm = called('O', { ...MILD, outdoors: 47 });
    const cold = called('O', { ...MILD, outdoors: 17 });
    for (const world of [warm, cold]) advance(world, 30);
    expect(heat(cold, 'outdoorCoil') / heat(warm, 'outdoorCoil')).toBeCloseTo(0.6, 2);
  });

  // q = 1.08 · cfm · ΔT; 3.412 Btu/h are one watt.
  it('of the strips alone, by volts and amps, is what 800 cfm carry at the register: 1.08 · cfm · ΔT', () => {
    const world = called('B', { ...MILD, emergency: true });
    advance(world, 300);
    const watts = ['strip1', 'strip2'].reduce((sum, id) => sum + volts(world, id, 'L1', 'L2') * siteAt(world, id).amps(0), 0);
    const degrees = Number(sign(world, 'register', 'supply')) - room(world);
    expect(Math.abs(degrees - (watts * 3.412) / (1.08 * 800))).toBeLessThan(1);
    expect(degrees).toBeGreaterThan(30);
  });

  // Common practice, no source.
  it('has nowhere to go when the blower stands still: the high-pressure switch stops the compressor within minutes', () => {
    const world = called('O', { ...MILD, faults: [fault('blower', 'seized')] });
    expect(sign(world, 'compressor', 'running')).toBe('run');
    const trips = until(world, () => sign(world, 'compressor', 'running') === 'off');
    expect(trips).toBeGreaterThan(60);
    expect(trips).toBeLessThan(300);
    expect(volts(world, 'highPressure', 'a', 'b')).toBeGreaterThan(20);
  });

  it('does not come back for five minutes after the compressor has stopped', () => {
    const world = called('O', MILD);
    advance(world, 300);
    turn(world, 'thermostat', 'mode', 'off');
    expect(sign(world, 'compressor', 'running')).toBe('off');
    turn(world, 'thermostat', 'mode', 'heat');
    expect(sign(world, 'thermostat', 'call')).toBe('waiting');
    const back = until(world, () => sign(world, 'compressor', 'running') === 'run');
    expect(back).toBeGreaterThanOrEqual(299);
    expect(back).toBeLessThanOrEqual(301);
  });
});
