import { describe, expect, it } from 'vitest';
import rigFile from '../../scenarios/rigs/electricAirHandler.json';
import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, begin } from '../../src/attempt/attempt.ts';
import { assemble } from '../../src/rig/assemble.ts';
import { type Fault, possibleFaults } from '../../src/rig/faults.ts';
import { loadRig } from '../../src/rig/load.ts';
import { advance } from '../../src/world/time.ts';
import { createWorld, type Weather, type World } from '../../src/world/world.ts';
import { layOnMat, operate, read, set, sign, take, wait, waitUntil, walk } from '../attempt/trainee.ts';
import { turn } from '../world/states.ts';
import { siteAt, stateAt } from './smallRig.ts';

const RIG = loadRig(rigFile);
const assembly = assemble(RIG);
const COLD: Weather = { outdoorFahrenheit: 22, startFahrenheit: 61 };
const HOT: Weather = { outdoorFahrenheit: 95, startFahrenheit: 82 };

function faultOf(target: string, mode: string): Fault {
  const found = possibleFaults(RIG).find((each) => each.target === target && each.mode === mode)?.members[0];
  if (!found) throw new Error(`no fault ${target} ${mode}`);
  return found;
}

function arrive(weather: Weather = COLD, ...faults: Fault[]): Attempt {
  const job = { id: 'test', rig: RIG.id, faults, weather, complaint: { history: [], observed: [], works: [] } };
  return begin(job, RIG, assembly);
}

/** A house whose thermostat calls for heat. */
function heating(weather: Weather = COLD, ...faults: Fault[]): World {
  const world = createWorld(assembly, faults, weather);
  turn(world, 'thermostat', 'setHeat', 70);
  turn(world, 'thermostat', 'mode', 'heat');
  return world;
}

function later(world: World, seconds: number): World {
  advance(world, seconds);
  return world;
}

const blowing = (world: World) => stateAt(world, 'blower').speed !== 0;
const amps = (world: World, strip: string) => siteAt(world, strip).amps(2);

// Common practice, no source (physics.md, Thermostats).
describe('a thermostat that needs C, on the bench', () => {
  it('shows all of its contacts open whatever is asked of it, and is not faulty', () => {
    const attempt = arrive();
    layOnMat(attempt);
    expect(sign(attempt, 'thermostat', 'display')).toBe('blank');
    for (const mode of ['heat', 'cool']) {
      operate(attempt, 'thermostat', 'mode', mode);
      for (const letter of ['W', 'Y', 'G'])
        expect(read(attempt, 'tone', 'thermostat.R', `thermostat.${letter}`).kind, letter).toBe('overload');
    }
    take(attempt, { name: 'seat', part: 'thermostat' });
    walk(attempt, 'hallway');
    operate(attempt, 'thermostat', 'mode', 'heat');
    set(attempt, 'thermostat', 'setHeat', 70);
    waitUntil(attempt, () => sign(attempt, 'thermostat', 'call') === 'heat');
    waitUntil(attempt, () => sign(attempt, 'register', 'air') === 'hot');
  });

  it('shows a welded contact even so', () => {
    const attempt = arrive(COLD, faultOf('thermostat', 'heatRelayWelded'));
    layOnMat(attempt);
    expect(read(attempt, 'tone', 'thermostat.R', 'thermostat.W').tone).toBe(true);
  });
});

// Common practice, no source (physics.md).
describe('electric heat', () => {
  it('closes R–G with R–W, so the blower runs at once', () => {
    const world = heating();
    expect(stateAt(world, 'thermostat').g).toBe(1);
    expect(blowing(world)).toBe(true);
    expect(amps(world, 'strip1')).toBeLessThan(1e-3);
  });

  it('from a thermostat that is set for gas heat brings the blower only with the sequencer, 30 to 90 s later', () => {
    const world = heating(COLD, faultOf('thermostat', 'fanSettingWrong'));
    expect(blowing(world)).toBe(false);
    expect(blowing(later(world, 25))).toBe(false);
    expect(blowing(later(world, 65))).toBe(true);
  });

  it('brings its strips one after the other, each 30 to 90 s after the call', () => {
    const world = heating();
    later(world, 30);
    expect([amps(world, 'strip1') > 1, amps(world, 'strip2') > 1]).toEqual([false, false]);
    later(world, 20);
    expect([amps(world, 'strip1') > 1, amps(world, 'strip2') > 1]).toEqual([true, false]);
    later(world, 40);
    expect([amps(world, 'strip1') > 1, amps(world, 'strip2') > 1]).toEqual([true, true]);
  });

  it('keeps the blower running until the last strip is off, by the interlock alone', () => {
    const world = later(heating(), 600);
    turn(world, 'thermostat', 'mode', 'off');
    let last = 0;
    for (let second = 0; second < 300; second++) {
      later(world, 1);
      const hot = amps(world, 'strip1') > 1 || amps(world, 'strip2') > 1;
      if (hot) last = second;
      if (hot) expect(blowing(world), `${second} s`).toBe(true);
    }
    expect(last).toBeGreaterThan(30);
    expect(last).toBeLessThan(110);
    expect(blowing(world)).toBe(false);
  });

  it.each([
    ['fanRelay', 'coilOpen'],
    ['statG', 'open'],
    ['thermostat', 'fanRelayStuckOpen'],
  ])('with %s %s still has its air, through the relay’s contact at rest', (target, mode) => {
    const world = heating(COLD, faultOf(target, mode));
    later(world, 300);
    expect(blowing(world)).toBe(true);
    expect(stateAt(world, 'strip1').limitOpen).toBe(0);
  });

  it('with a blower that will not start is cut out by the limits, and melts no link', () => {
    const world = heating(COLD, faultOf('blower', 'capacitorOpen'));
    let opened = 0;
    for (let second = 0; second < 900; second++) {
      later(world, 1);
      opened += stateAt(world, 'strip1').limitOpen ?? 0;
    }
    expect(opened).toBeGreaterThan(300);
    expect(stateAt(world, 'strip1').melted).toBe(0);
  });

  // P = V²/R: a strip below its rated voltage draws less in proportion.
  it('shows kW · 1000 / 240 amps a strip by the clamp, less what the supply sags', () => {
    const attempt = arrive();
    set(attempt, 'thermostat', 'setHeat', 70);
    operate(attempt, 'thermostat', 'mode', 'heat');
    const opens: Action[] = [
      { name: 'walk', to: 'airHandler' },
      { name: 'cover', cover: 'airHandlerDoor', open: true },
      { name: 'wait', seconds: 120 },
      { name: 'meter', fn: 'ampsAc' },
      { name: 'clamp', around: 'stripHot1', turns: 1 },
    ];
    const reading = take(attempt, ...opens).reading;
    if (reading?.kind !== 'number') throw new Error('no number');
    const sag = siteAt(attempt.bench.world, 'strip1').volts('L1', 'L2') / 240;
    expect(sag).toBeGreaterThan(0.9);
    expect(reading.value / sag).toBeCloseTo(5000 / 240, 0);
  });
});

// Common practice, no source: a float in R to the thermostat takes all 24 V from it.
it('a full pan takes the display of a thermostat that lives on R and C, in summer and in winter', () => {
  for (const weather of [COLD, HOT]) {
    const attempt = arrive(weather, faultOf('drainPan', 'full'));
    wait(attempt, 1);
    expect(sign(attempt, 'thermostat', 'display')).toBe('blank');
  }
});

// Its reservoir outlasts the fuse (typical, no source): a thermostat that let go at once would spare it.
it('a short behind its own relay blows the fuse, and the world settles', () => {
  const world = heating(COLD, faultOf('statW', 'shortTo:statC'));
  const blown = () => stateAt(world, 'fuse').blown === 1;
  later(world, 5);
  expect(blown()).toBe(true);
  expect(stateAt(world, 'thermostat').alive).toBe(0);
  for (let minute = 0; minute < 10; minute++) {
    later(world, 60);
    expect(world.state.unsettled).toBe(0);
    expect(stateAt(world, 'thermostat').alive).toBe(0);
  }
  expect(blown()).toBe(true);
});

// Common practice, no source: a poor joint carries the display's milliamps, and nothing more.
it('a poor joint in R leaves the display alight until it calls, and the sound one calls on', () => {
  const world = createWorld(assembly, [faultOf('statR', 'poor')], COLD);
  expect(stateAt(world, 'thermostat').alive).toBe(1);
  turn(world, 'thermostat', 'setHeat', 70);
  turn(world, 'thermostat', 'mode', 'heat');
  later(world, 1);
  expect(stateAt(world, 'thermostat').alive).toBe(0);
  expect(siteAt(world, 'thermostat').volts('R', 'C')).toBeGreaterThan(18);
  expect(stateAt(heating(), 'thermostat').alive).toBe(1);
});

// Common practice, no source.
it('W and G swapped at the air handler heat in summer: strips come on with the call for cooling', () => {
  const world = createWorld(assembly, [faultOf('statW', 'swappedFrom:statG')], HOT);
  turn(world, 'thermostat', 'setCool', 72);
  turn(world, 'thermostat', 'mode', 'cool');
  later(world, 300);
  expect(amps(world, 'strip1')).toBeGreaterThan(15);
  expect(stateAt(world, 'compressor').motion).toBe(1);
});

// N = 4·N_max·x·(1−x), N_max 9 per hour for electric heat; physics.md, Thermostats (the law of NEMA DC 3, from memory).
describe('the cycle rate of electric heat over a day', () => {
  const room = RIG.rooms[0]!;
  /** What both strips bring, Btu/h, measured in the rig. */
  const full = (() => {
    const world = later(heating(), 600);
    const heat = (id: string) => assembly.partById.get(id)!.kind.heat!(siteAt(world, id), stateAt(world, id));
    return heat('strip1') + heat('strip2');
  })();

  it.each([0.2, 0.35, 0.5, 0.65, 0.8])('at %d of full load is 4 · 9 · x · (1 − x)', (x) => {
    const outdoorFahrenheit = 70 - (x * full + room.gainsBtuPerHour) / room.lossBtuPerHourFahrenheit;
    const world = heating({ outdoorFahrenheit, startFahrenheit: 69.5 });
    later(world, 6 * 3600);
    let calls = 0;
    let was = stateAt(world, 'thermostat').w;
    let [least, most] = [Number.POSITIVE_INFINITY, 0];
    for (let tick = 0; tick < 24 * 360; tick++) {
      later(world, 10);
      const { w } = stateAt(world, 'thermostat');
      if (w === 1 && was === 0) calls += 1;
      was = w;
      least = Math.min(least, world.state.rooms[0]!);
      most = Math.max(most, world.state.rooms[0]!);
    }
    expect(calls / 24 / (4 * 9 * x * (1 - x))).toBeGreaterThan(0.85);
    expect(calls / 24 / (4 * 9 * x * (1 - x))).toBeLessThan(1.15);
    expect(least).toBeGreaterThan(69);
    expect(most).toBeLessThan(71);
  });
});
