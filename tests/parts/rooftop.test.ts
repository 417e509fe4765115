import { describe, expect, it } from 'vitest';
import rigFile from '../../scenarios/rigs/rooftopUnit.json';
import { type Attempt, begin } from '../../src/attempt/attempt.ts';
import { CONTACTOR_COIL } from '../../src/parts/contactor.ts';
import { type Fault, possibleFaults } from '../../src/rig/faults.ts';
import { loadRig } from '../../src/rig/load.ts';
import { advance } from '../../src/world/time.ts';
import { settle, stateOf, type Weather } from '../../src/world/world.ts';
import { number, operate, sign, take, wait, waitUntil, walk } from '../attempt/trainee.ts';
import { setAt, siteAt, smallWorld, stateAt } from './smallRig.ts';

const RIG = loadRig(rigFile);
const HOT: Weather = { outdoorFahrenheit: 95, startFahrenheit: 82 };
const MILD: Weather = { outdoorFahrenheit: 85, startFahrenheit: 79 };
const COLD: Weather = { outdoorFahrenheit: 10, startFahrenheit: 58 };

function faultOf(target: string, mode: string, magnitude?: number): Fault {
  const members = possibleFaults(RIG).find((each) => each.target === target && each.mode === mode)?.members ?? [];
  const fault = members.find((each) => magnitude === undefined || each.magnitude === magnitude);
  if (!fault) throw new Error(`no fault ${target} ${mode}`);
  return fault;
}

interface Call {
  readonly faults?: readonly Fault[];
  readonly weather?: Weather;
  readonly heat?: number;
  readonly cool?: number;
  readonly seconds?: number;
}

/** The shop's thermostat has called for so long; the technician arrives. */
function called({ faults = [], weather = HOT, heat, cool, seconds = 60 }: Call): Attempt {
  const mode = heat === undefined ? (cool === undefined ? 'off' : 'cool') : 'heat';
  return begin(
    {
      id: 'test',
      rig: RIG.id,
      faults,
      weather,
      complaint: {
        history: [
          ...(heat === undefined ? [] : [{ name: 'set', part: 'thermostat', control: 'setHeat', value: heat } as const]),
          ...(cool === undefined ? [] : [{ name: 'set', part: 'thermostat', control: 'setCool', value: cool } as const]),
          { name: 'operate', part: 'thermostat', control: 'mode', position: mode },
          { name: 'wait', seconds },
        ],
        observed: [],
        works: [],
      },
    },
    RIG,
  );
}

function openRoof(attempt: Attempt): void {
  walk(attempt, 'roof');
  take(attempt, { name: 'cover', cover: 'controlPanel', open: true });
}

const runs = (attempt: Attempt) =>
  ['compressor1', 'compressor2', 'blower', 'burner', 'burner2'].map((part) =>
    sign(attempt, part, part.startsWith('burner') ? 'flame' : 'running'),
  );

/** Volts across a part's own terminals, as they are. */
function across(attempt: Attempt, part: string, a: string, b: string): number {
  const assembled = attempt.assembly.partById.get(part);
  return (assembled && attempt.bench.world.sites[assembled.index]?.volts(a, b)) ?? Number.NaN;
}

describe('a sound rooftop unit', () => {
  it('runs both compressors and the blower far from the setting, and one compressor near it', () => {
    expect(runs(called({ cool: 74, weather: HOT }))).toEqual(['run', 'run', 'cool', 0, 0]);
    expect(runs(called({ cool: 78, weather: MILD }))).toEqual(['run', 'off', 'cool', 0, 0]);
  });

  it('lights the second burners off the first, and drops them before the room is there', () => {
    const attempt = called({ heat: 70, weather: COLD, seconds: 120 });
    expect(runs(attempt)).toEqual(['off', 'off', 'heat', 1, 1]);
    waitUntil(attempt, () => sign(attempt, 'thermostat', 'stage') === 1, 7200);
    expect(runs(attempt)).toEqual(['off', 'off', 'heat', 1, 0]);
  });

  it('has a class 2 transformer that carries all of its coils at once', () => {
    // NEC article 725, class 2: at most 100 VA (from memory).
    const { world } = called({ cool: 74 }).bench;
    const transformer = world.assembly.partById.get('transformer')!;
    const site = world.sites[transformer.index]!;
    const rated = Number(transformer.params.ratedVoltAmps);
    expect(rated).toBeLessThanOrEqual(100);
    expect(site.amps(1) * site.volts('X1', 'X2')).toBeLessThan(rated);
    expect(site.volts('X1', 'X2')).toBeGreaterThan(24);
  });
});

// Common practice, no source: the impedance (lockout) relay of packaged units.
describe('a lockout relay', () => {
  const low = () => called({ faults: [faultOf('circuit1', 'lowCharge')], cool: 74, seconds: 10 });

  it('holds the compressor out after the safety has closed again, and lets go when the call is broken', () => {
    const attempt = low();
    expect(sign(attempt, 'compressor1', 'running')).toBe('run');
    waitUntil(attempt, () => sign(attempt, 'lockout1', 'armature') === 'in', 120);
    wait(attempt, 900);
    openRoof(attempt);
    // The switch has long closed: nothing stands across it …
    expect(across(attempt, 'lowPressure1', 'a', 'b')).toBeLessThan(0.5);
    // … all of it stands across the relay, which the contactor's coil feeds.
    expect(number(attempt, 'voltsLoaded', 'lockout1.COM', 'lockout1.NC')).toBeGreaterThan(23);
    expect(sign(attempt, 'contactor1', 'armature')).toBe('out');
    expect(sign(attempt, 'compressor2', 'running')).toBe('run');
    walk(attempt, 'shop');
    operate(attempt, 'thermostat', 'mode', 'off');
    expect(sign(attempt, 'lockout1', 'armature')).toBe('out');
    operate(attempt, 'thermostat', 'mode', 'cool');
    waitUntil(attempt, () => sign(attempt, 'compressor1', 'running') === 'run', 400);
  });

  it('wins by its impedance: the contactor’s coil in series with it gets less than it drops out at', () => {
    const attempt = low();
    waitUntil(attempt, () => sign(attempt, 'lockout1', 'armature') === 'in', 120);
    expect(across(attempt, 'contactor1', 'A1', 'A2')).toBeLessThan(CONTACTOR_COIL.dropOut * CONTACTOR_COIL.ratedVolts * 0.2);
    expect(across(attempt, 'lockout1', 'A1', 'A2')).toBeGreaterThan(24);
  });

  it('whose contact is welded locks nothing out: the compressor comes back by itself, again and again', () => {
    const small = (welded: boolean) =>
      smallWorld(
        [
          { id: 'supply', kind: 'testSupply', params: { volts: 26 } },
          { id: 'contactor', kind: 'contactor' },
          { id: 'lockout', kind: 'lockoutRelay' },
          { id: 'safety', kind: 'testLoad', params: { ohms: 0.01 } },
        ],
        [
          ['supply.a', 'contactor.A1'],
          ['contactor.A2', 'lockout.A1'],
          ['lockout.A1', 'lockout.COM'],
          ['lockout.NC', 'safety.a'],
          ['safety.b', 'supply.b'],
          ['lockout.A2', 'supply.b'],
        ],
        welded ? [{ target: 'lockout', mode: 'welded', magnitude: 0 }] : [],
      );
    for (const welded of [false, true]) {
      const world = small(welded);
      const armatures = () => [stateAt(world, 'contactor').armature, stateAt(world, 'lockout').armature];
      expect(armatures()).toEqual([1, 0]);
      setAt(world, 'safety', 'ohms', 1e9);
      expect(armatures()).toEqual([0, 1]);
      setAt(world, 'safety', 'ohms', 0.01);
      expect(armatures()).toEqual(welded ? [1, 0] : [0, 1]);
      setAt(world, 'supply', 'volts', 0);
      setAt(world, 'supply', 'volts', 26);
      expect(armatures()).toEqual([1, 0]);
    }
  });
});

// Common practice, no source: hopscotch along a string of switches, meter on volts.
describe('switches in series', () => {
  it('show full voltage across the open one and none across the others', () => {
    const attempt = called({ faults: [faultOf('rollout', 'tripped')], heat: 70, weather: COLD });
    walk(attempt, 'heatingSection');
    take(attempt, { name: 'cover', cover: 'heatingPanel', open: true });
    expect(number(attempt, 'voltsAc', 'rollout.a', 'rollout.b')).toBeGreaterThan(24);
    expect(number(attempt, 'voltsAc', 'limit.a', 'limit.b')).toBeLessThan(0.1);
  });

  it('hide it behind a lockout relay that has pulled in: the way is dead from the relay’s contact on', () => {
    const attempt = called({ faults: [faultOf('highPressure1', 'stuckOpen')], cool: 74 });
    expect(sign(attempt, 'lockout1', 'armature')).toBe('in');
    openRoof(attempt);
    expect(number(attempt, 'voltsLoaded', 'lockout1.COM', 'strip.C')).toBeGreaterThan(23);
    expect(number(attempt, 'voltsLoaded', 'lockout1.NC', 'strip.C')).toBeLessThan(0.5);
    walk(attempt, 'coolingSection');
    take(attempt, { name: 'cover', cover: 'coolingPanel', open: true });
    expect(number(attempt, 'voltsLoaded', 'highPressure1.a', 'highPressure1.b')).toBeLessThan(0.5);
  });
});

// Common practice, no source (physics.md, Cable): unloaded full voltage, under load it sags.
describe('a corroded splice in R', () => {
  it('reads nearly full voltage at the wall until the contactor calls: then the wall goes out, every five minutes', () => {
    const attempt = called({ faults: [faultOf('spliceR', 'corroded', 15)] });
    take(attempt, { name: 'set', part: 'thermostat', control: 'setCool', value: 74 });
    expect(across(attempt, 'thermostat', 'R', 'C')).toBeGreaterThan(25.5);
    operate(attempt, 'thermostat', 'mode', 'cool');
    // The coil's inrush takes R below what the thermostat lives on: it lets go, comes back, and waits with full voltage again.
    wait(attempt, 10);
    expect(sign(attempt, 'thermostat', 'call')).toBe('waiting');
    expect(sign(attempt, 'compressor1', 'running')).toBe('off');
    expect(across(attempt, 'thermostat', 'R', 'C')).toBeGreaterThan(24);
    const seconds = waitUntil(attempt, () => sign(attempt, 'thermostat', 'display') === 'blank', 400);
    expect(seconds).toBeGreaterThan(200);
  });
});

describe('too many coils on one transformer', () => {
  /** Coils in parallel that pull in at once, volts by the series circuit: 27 V behind secondary and reflected primary (transformer.ts). */
  const expected = (coils: number): number => {
    const source = 1 + 16 * (27 / 120) ** 2;
    const ohms = CONTACTOR_COIL.ohms / coils;
    const reactance = Math.sqrt((24 ** 2 / CONTACTOR_COIL.unsealedVoltAmps) ** 2 - CONTACTOR_COIL.ohms ** 2) / coils;
    return (27 * Math.hypot(ohms, reactance)) / Math.hypot(ohms + source, reactance);
  };
  const together = (coils: number) => {
    const ids = Array.from({ length: coils }, (_, index) => `k${index}`);
    return smallWorld(
      [
        { id: 'line', kind: 'testSupply', params: { volts: 120 } },
        { id: 'transformer', kind: 'transformer', params: { ratedVoltAmps: 40 } },
        ...ids.map((id) => ({ id, kind: 'contactor' })),
      ],
      [
        ['line.a', 'transformer.H1'],
        ['line.b', 'transformer.H2'],
        ...ids.flatMap((id) => [['transformer.X1', `${id}.A1`] as const, ['transformer.X2', `${id}.A2`] as const]),
      ],
    );
  };

  it('sag it below their pick-up, and they chatter; fewer of the same pull in', () => {
    for (const coils of [1, 3, 5, 8]) {
      const world = together(coils);
      const holds = expected(coils) >= CONTACTOR_COIL.pickUp * CONTACTOR_COIL.ratedVolts;
      expect(holds).toBe(coils < 8);
      expect(stateAt(world, 'k0').armature, `${coils} coils`).toBe(holds ? 1 : 2);
      if (!holds) expect(siteAt(world, 'k0').volts('A1', 'A2')).toBeCloseTo(expected(coils), 0);
    }
  });

  it('on the unit: with four contactors’ coils hung on the fan, the fuse opens before the transformer burns, and opens again', () => {
    const attempt = called({ faults: [faultOf('fanInterlock', 'coilsAdded')], cool: 74 });
    const { world } = attempt.bench;
    const fuse = world.assembly.partById.get('fuse')!;
    const transformer = world.assembly.partById.get('transformer')!;
    waitUntil(attempt, () => stateOf(world, fuse).blown === 1, 900);
    Object.assign(stateOf(world, fuse), { blown: 0, damage: 0, rate: 0, since: world.state.time });
    settle(world);
    waitUntil(attempt, () => stateOf(world, fuse).blown === 1, 900);
    expect(stateOf(world, transformer).burnt).toBe(0);
    const sound = called({ cool: 74 });
    wait(sound, 900);
    expect(stateOf(sound.bench.world, fuse).blown).toBe(0);
  });
});

describe('a time delay relay', () => {
  const relay = (params: Record<string, number | string>, faults: readonly Fault[] = []) =>
    smallWorld(
      [
        { id: 'supply', kind: 'testSupply', params: { volts: 0 } },
        { id: 'relay', kind: 'timeDelayRelay', params: params as Record<string, number> },
      ],
      [
        ['supply.a', 'relay.A1'],
        ['supply.b', 'relay.A2'],
      ],
      faults,
    );
  /** Seconds until its contact stands so, counted one by one. */
  const until = (world: ReturnType<typeof relay>, made: number): number => {
    let seconds = 0;
    while (stateAt(world, 'relay').made !== made && seconds < 2000) {
      advance(world, 1);
      seconds += 1;
    }
    return seconds;
  };

  it('on make closes after the time on its dial within a tenth, and opens with the call', () => {
    for (const seconds of [5, 30, 300]) {
      const world = relay({ delay: 'make', seconds });
      setAt(world, 'supply', 'volts', 24);
      expect(Math.abs(until(world, 1) - seconds)).toBeLessThanOrEqual(Math.max(1, seconds / 10));
      setAt(world, 'supply', 'volts', 0);
      expect(stateAt(world, 'relay').made).toBe(0);
    }
  });

  it('on break closes with the call, and opens after the time on its dial within a tenth', () => {
    const world = relay({ delay: 'break', seconds: 90 });
    setAt(world, 'supply', 'volts', 24);
    expect(stateAt(world, 'relay').made).toBe(1);
    setAt(world, 'supply', 'volts', 0);
    expect(Math.abs(until(world, 0) - 90)).toBeLessThanOrEqual(9);
  });

  it('begins anew when the call was broken meanwhile, and never closes when its timer is dead', () => {
    const world = relay({ delay: 'make', seconds: 30 });
    setAt(world, 'supply', 'volts', 24);
    advance(world, 20);
    setAt(world, 'supply', 'volts', 0);
    setAt(world, 'supply', 'volts', 24);
    expect(Math.abs(until(world, 1) - 30)).toBeLessThanOrEqual(3);
    const dead = relay({ delay: 'make', seconds: 30 }, [{ target: 'relay', mode: 'neverTimesOut', magnitude: 0 }]);
    setAt(dead, 'supply', 'volts', 24);
    advance(dead, 3600);
    expect(stateAt(dead, 'relay').made).toBe(0);
  });
});

// Common practice, no source (physics.md, Supply): without a fuse a short takes the transformer in minutes.
describe('a short on the 24 V side', () => {
  const shorted = (fused: boolean) => {
    const world = smallWorld(
      [
        { id: 'line', kind: 'testSupply', params: { volts: 120 } },
        { id: 'transformer', kind: 'transformer', params: { ratedVoltAmps: 40 } },
        { id: 'fuse', kind: 'bladeFuse', params: { amps: 3 } },
        { id: 'short', kind: 'testLoad', params: { ohms: 0.05 } },
      ],
      [
        ['line.a', 'transformer.H1'],
        ['line.b', 'transformer.H2'],
        ['transformer.X1', fused ? 'fuse.a' : 'short.a'],
        ['fuse.b', fused ? 'short.a' : 'fuse.a'],
        ['short.b', 'transformer.X2'],
      ],
    );
    settle(world);
    return world;
  };

  it('burns a transformer without a fuse after minutes, and not at once', () => {
    const world = shorted(false);
    advance(world, 30);
    expect(stateAt(world, 'transformer').burnt).toBe(0);
    expect(stateAt(world, 'transformer').rate).toBeGreaterThan(0);
    advance(world, 1200);
    expect(stateAt(world, 'transformer').burnt).toBe(1);
  });

  it('takes the fuse within a second where there is one, and the transformer lives', () => {
    const world = shorted(true);
    advance(world, 1);
    expect(stateAt(world, 'fuse').blown).toBe(1);
    advance(world, 3600);
    expect(stateAt(world, 'transformer').burnt).toBe(0);
    expect(siteAt(world, 'transformer').volts('X1', 'X2')).toBeGreaterThan(26);
  });
});

describe('low suction pressure', () => {
  it('comes with a low charge soon, with a dirty filter later, and with neither not at all', () => {
    const tripped = (faults: readonly Fault[], seconds: number) =>
      sign(called({ faults, cool: 74, seconds }), 'lockout1', 'armature') === 'in';
    expect(tripped([faultOf('circuit1', 'lowCharge')], 100)).toBe(true);
    expect(tripped([faultOf('filter', 'dirty')], 100)).toBe(false);
    expect(tripped([faultOf('filter', 'dirty')], 400)).toBe(true);
    expect(tripped([], 400)).toBe(false);
  });

  it('and no air at all: G landed on a spare screw, both circuits lock out though the wall calls', () => {
    const attempt = called({ faults: [faultOf('statG', 'landedFrom:X')], cool: 74, seconds: 600 });
    expect(runs(attempt)).toEqual(['off', 'off', 'off', 0, 0]);
    expect(sign(attempt, 'thermostat', 'call')).toBe('cool');
    expect([1, 2].map((n) => sign(attempt, `lockout${n}`, 'armature'))).toEqual(['in', 'in']);
  });
});

describe('a condensate pump', () => {
  it('that is dead kills R to the wall after a while of cooling, and nothing else; heating fills nothing', () => {
    const dead = [faultOf('condensatePump', 'pumpDead')];
    expect(sign(called({ faults: dead, cool: 74, seconds: 300 }), 'thermostat', 'display')).toBe('on');
    const attempt = called({ faults: dead, cool: 74, seconds: 1800 });
    expect(sign(attempt, 'thermostat', 'display')).toBe('blank');
    openRoof(attempt);
    expect(number(attempt, 'voltsLoaded', 'board.R', 'board.C')).toBeGreaterThan(24);
    expect(number(attempt, 'voltsLoaded', 'strip.R', 'strip.C')).toBeLessThan(1);
    expect(sign(called({ faults: dead, heat: 70, weather: COLD, seconds: 1800 }), 'thermostat', 'display')).toBe('on');
  });

  it('that is sound empties its tank before the safety lifts, all day long', () => {
    const attempt = called({ cool: 70, seconds: 8 * 3600 });
    expect(sign(attempt, 'thermostat', 'display')).toBe('on');
    let ran = false;
    waitUntil(attempt, () => {
      ran ||= sign(attempt, 'condensatePump', 'running') === 1;
      return ran;
    });
    expect(sign(attempt, 'condensatePump', 'water')).not.toBe('full');
  });
});

describe('a two-stage thermostat', () => {
  it('brings the second stage by droop at once, by time after a quarter of an hour, and never when set up for one', () => {
    expect(sign(called({ cool: 74 }), 'thermostat', 'stage')).toBe(2);
    // One stage alone does not bring a shop down in such heat: time does it.
    const near = called({ cool: 78, weather: { outdoorFahrenheit: 93, startFahrenheit: 79 } });
    expect(sign(near, 'thermostat', 'stage')).toBe(1);
    const seconds = 60 + waitUntil(near, () => sign(near, 'thermostat', 'stage') === 2);
    expect(Math.abs(seconds - 905)).toBeLessThanOrEqual(15);
    const one = called({ faults: [faultOf('thermostat', 'setWrongly')], cool: 70, seconds: 3600 });
    expect(sign(one, 'thermostat', 'stage')).toBe(1);
    expect(sign(one, 'thermostat', 'stages')).toBe(1);
  });

  it('with Y1 and Y2 swapped runs the second compressor first, after the timer', () => {
    const attempt = called({ faults: [faultOf('statY1', 'swappedTo:statY2')], cool: 78, weather: MILD, seconds: 20 });
    expect(runs(attempt).slice(0, 2)).toEqual(['off', 'off']);
    wait(attempt, 30);
    expect(runs(attempt).slice(0, 2)).toEqual(['off', 'run']);
  });
});
