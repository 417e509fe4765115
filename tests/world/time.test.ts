import { describe, expect, it } from 'vitest';
import { assemble } from '../../src/rig/assemble.ts';
import { type Fault, possibleFaults } from '../../src/rig/faults.ts';
import { cloneState } from '../../src/world/state.ts';
import { advance } from '../../src/world/time.ts';
import { createWorld, rewire, settle, solve, stateOf, type World } from '../../src/world/world.ts';
import { COLD_DAY, faultOf, HOT_DAY, RIG } from '../attempt/trainee.ts';
import { randomNumbers } from '../circuit/random-network.ts';
import { setAt, smallWorld, stateAt } from '../parts/smallRig.ts';
import { SYSTEM_MODES, turn } from './states.ts';

const assembly = assemble(RIG);
const MEMBERS = possibleFaults(RIG).flatMap((possible) => possible.members);
/** Faults that move in time: they trip, melt, chatter, lock out, overheat. */
const RESTLESS: readonly Fault[] = [
  faultOf('outY', 'toEarth'),
  faultOf('spliceY', 'corroded', 15),
  faultOf('flameSensor', 'coated'),
  faultOf('filter', 'dirty'),
  faultOf('capacitor', 'compressorSectionWeak', 0.2),
  faultOf('capacitor', 'fanSectionOpen'),
  faultOf('contactor', 'coilShorted'),
  faultOf('statR', 'poor', 200),
  faultOf('board', 'labelsSwappedWY'),
];

/** Operates switches and the thermostat, and waits, as a seed decides. */
function liveBySeed(world: World, seed: number, steps: number): void {
  const random = randomNumbers(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  for (let step = 0; step < steps; step++) {
    const what = random();
    if (what < 0.3) turn(world, 'thermostat', 'mode', pick(['off', 'heat', 'cool']));
    else if (what < 0.4) turn(world, 'thermostat', 'fan', pick(['auto', 'on']));
    else if (what < 0.5) turn(world, 'thermostat', pick(['setHeat', 'setCool']), 60 + Math.floor(random() * 25));
    else if (what < 0.6) turn(world, 'furnaceSwitch', 'lever', pick(['on', 'on', 'off']));
    else if (what < 0.7) turn(world, 'disconnect', 'position', pick(['in', 'in', 'out']));
    else advance(world, random() * 900);
  }
}

const weathers = [COLD_DAY, HOT_DAY, {}];

describe('the world is determinate', () => {
  it('the same acts twice leave the same state, to the bit', () => {
    for (let seed = 0; seed < 60; seed++) {
      const faults = seed % 4 === 0 ? [] : [RESTLESS[seed % RESTLESS.length]!];
      const weather = weathers[seed % 3]!;
      const lives = [0, 1].map(() => {
        const world = createWorld(assembly, faults, weather);
        liveBySeed(world, seed, 25);
        return world;
      });
      expect(lives[1]!.state, `seed ${seed}`).toStrictEqual(lives[0]!.state);
      expect([...lives[1]!.ac.re]).toEqual([...lives[0]!.ac.re]);
    }
  });

  it('two worlds that take turns leave each other alone', () => {
    const make = (fault: Fault) => createWorld(assembly, [fault], HOT_DAY);
    const [first, second] = [RESTLESS[0]!, RESTLESS[4]!];
    const alone = make(first);
    liveBySeed(alone, 7, 20);
    const together = make(first);
    const other = make(second);
    for (let step = 1; step <= 20; step++) liveBySeed(other, step, 3);
    liveBySeed(together, 7, 20);
    expect(together.state).toStrictEqual(alone.state);
  });
});

describe('a cloned state', () => {
  it('driven on gives the same as the original, which it leaves alone', () => {
    for (let seed = 0; seed < 40; seed++) {
      const faults = [RESTLESS[seed % RESTLESS.length]!];
      const original = createWorld(assembly, faults, weathers[seed % 3]);
      liveBySeed(original, seed, 12);
      const before = structuredClone(original.state);
      const copy = createWorld(assembly, faults, weathers[seed % 3]);
      copy.state = cloneState(original.state);
      rewire(copy);
      solve(copy);
      liveBySeed(copy, seed + 1000, 12);
      expect(original.state, `seed ${seed}`).toStrictEqual(before);
      liveBySeed(original, seed + 1000, 12);
      expect(copy.state, `seed ${seed}`).toStrictEqual(original.state);
    }
  });
});

describe('a wait', () => {
  it('in pieces of any size comes to the same as in one go, to the bit', () => {
    const random = randomNumbers(3);
    for (const fault of [undefined, ...RESTLESS]) {
      for (const mode of Object.keys(SYSTEM_MODES)) {
        const make = () => SYSTEM_MODES[mode]!(assembly, fault ? [fault] : []);
        const whole = make();
        const pieces = make();
        const start = whole.state.time;
        advance(whole, 2000);
        while (pieces.state.time < start + 2000) {
          // Whole quarters of a second add up without rounding, so that both clocks end alike.
          const piece = Math.min(0.25 + Math.floor(random() * 400) / 4, start + 2000 - pieces.state.time);
          advance(pieces, piece);
        }
        expect(pieces.state, `${mode} ${fault?.target} ${fault?.mode}`).toStrictEqual(whole.state);
      }
    }
  });

  it('of no length changes nothing', () => {
    const world = SYSTEM_MODES.heatRunning!(assembly, []);
    const before = structuredClone(world.state);
    advance(world, 0);
    expect(world.state).toStrictEqual(before);
  });

  it('that is stopped by what happens stands at that moment', () => {
    const world = SYSTEM_MODES.heatProving!(assembly, []);
    const passed = advance(world, 500, () => stateOf(world, assembly.partById.get('burner')!).lit === 1);
    expect(passed).toBeGreaterThan(30);
    expect(passed).toBeLessThan(60);
  });
});

describe('settling', () => {
  it.each(Object.keys(SYSTEM_MODES))(
    'ends with every fault in the mode %s, and an hour later, unsettled only where something chatters',
    (mode) => {
      for (const fault of [undefined, ...MEMBERS]) {
        const world = SYSTEM_MODES[mode]!(assembly, fault ? [fault] : []);
        const said = () => `${mode}, ${fault?.target} ${fault?.mode} ${fault?.magnitude}`;
        const chatters = () =>
          assembly.parts.some((part) =>
            part.kind
              .signs(world.sites[part.index]!, stateOf(world, part))
              .some(({ key, value }) => key === 'chatter' && value === 1),
          );
        if (world.state.unsettled === 1) expect(chatters(), said()).toBe(true);
        let unsettled = 0;
        advance(world, 3600, () => {
          if (world.state.unsettled === 1 && !chatters()) unsettled += 1;
          return false;
        });
        expect(unsettled, said()).toBe(0);
        // What has settled stays so: settled once more, every node has the same volts.
        if (world.state.unsettled === 1) continue;
        const before = [...world.ac.re, ...world.ac.im, ...world.dc];
        settle(world);
        expect([...world.ac.re, ...world.ac.im, ...world.dc], said()).toEqual(before);
      }
    },
  );

  // A contactor whose pole shorts its own coil is the electric bell's circuit: it can only buzz.
  it('of a circuit that contradicts itself ends, and shows as chatter', () => {
    const world = smallWorld(
      [
        { id: 'supply', kind: 'testSupply', params: { volts: 0 } },
        { id: 'series', kind: 'testLoad', params: { ohms: 5 } },
        { id: 'contactor', kind: 'contactor' },
      ],
      [
        ['supply.a', 'series.a'],
        ['series.b', 'contactor.A1'],
        ['contactor.A2', 'supply.b'],
        ['contactor.L1', 'contactor.A1'],
        ['contactor.T1', 'contactor.A2'],
      ],
    );
    expect(world.state.unsettled).toBe(0);
    setAt(world, 'supply', 'volts', 26);
    expect(world.state.unsettled).toBe(1);
    expect(stateAt(world, 'contactor').armature).toBe(2);
    setAt(world, 'supply', 'volts', 5);
    expect(world.state.unsettled).toBe(0);
    expect(stateAt(world, 'contactor').armature).toBe(0);
  });
});
