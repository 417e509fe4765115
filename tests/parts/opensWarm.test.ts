/** Parts that open when they have been warm for a while. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { CONTACTOR_COIL, CONTACTOR_TAU_SECONDS } from '../../src/parts/contactor.ts';
import { GAS_VALVE_TAU_SECONDS } from '../../src/parts/fire.ts';
import { HOLDS_AT, PARTS_AT } from '../../src/parts/opensWarm.ts';
import { TRANSFORMER_TAU_SECONDS } from '../../src/parts/transformer.ts';
import { possibleFaults } from '../../src/rig/faults.ts';
import { advance } from '../../src/world/time.ts';
import type { World } from '../../src/world/world.ts';
import { arriveAt, faultOf, number, open, operate, read, sign, take, wait, waitUntil, walk } from '../attempt/trainee.ts';
import { library } from '../scenario/shipped.ts';
import { setAt, siteAt, smallWorld } from './smallRig.ts';

/** How a part stands on the bench: its supply's terminals, its rated volts, and whether it carries current. */
interface Bench {
  readonly kind: string;
  readonly tau: number;
  readonly rated: number;
  readonly ends: readonly [string, string];
  readonly branch: number;
}

const BENCHES: readonly Bench[] = [
  { kind: 'contactor', tau: CONTACTOR_TAU_SECONDS, rated: 24, ends: ['A1', 'A2'], branch: 2 },
  { kind: 'gasValve', tau: GAS_VALVE_TAU_SECONDS, rated: 24, ends: ['a', 'b'], branch: 0 },
  { kind: 'transformer', tau: TRANSFORMER_TAU_SECONDS, rated: 120, ends: ['H1', 'H2'], branch: 0 },
];

function supplied({ kind, ends }: Bench, mode: string | undefined): World {
  const wires = [
    ['supply.a', `it.${ends[0]}`],
    ['supply.b', `it.${ends[1]}`],
  ] as const;
  const faults = mode === undefined ? [] : [{ target: 'it', mode, magnitude: 0 }];
  return smallWorld(
    [
      { id: 'supply', kind: 'testSupply' },
      { id: 'it', kind },
    ],
    wires,
    faults,
  );
}

const conducts = (world: World, { branch }: Bench) => siteAt(world, 'it').amps(branch) > 1e-3;

/** Seconds until it begins or ceases to conduct. */
function untilTurned(world: World, bench: Bench): number {
  const was = conducts(world, bench);
  return advance(world, 20_000, () => conducts(world, bench) !== was);
}

/** From one warmth to another while it heads for a third: the closed form of an exponential approach. */
const lagSeconds = (tau: number, from: number, to: number, target: number) => tau * Math.log((from - target) / (to - target));

describe.each(BENCHES.map((bench) => [bench.kind, bench] as const))('a %s that opens warm', (_, bench) => {
  it.each([0.9, 1, 1.1])('at %f of its volts parts, holds again and parts again when the lag says', (share) => {
    const world = supplied(bench, 'opensWarm');
    setAt(world, 'supply', 'volts', share * bench.rated);
    expect(conducts(world, bench)).toBe(true);
    const warm = share * share;
    for (const expected of [
      lagSeconds(bench.tau, 0, PARTS_AT, warm),
      lagSeconds(bench.tau, PARTS_AT, HOLDS_AT, 0),
      lagSeconds(bench.tau, HOLDS_AT, PARTS_AT, warm),
      lagSeconds(bench.tau, PARTS_AT, HOLDS_AT, 0),
    ]) {
      const seconds = untilTurned(world, bench);
      expect(Math.abs(seconds / expected - 1)).toBeLessThan(0.01);
      // Some minutes each way.
      expect(seconds).toBeGreaterThan(60);
      expect(seconds).toBeLessThan(1800);
    }
  });

  it('never parts on volts too weak to warm it', () => {
    const world = supplied(bench, 'opensWarm');
    setAt(world, 'supply', 'volts', 0.8 * bench.rated);
    expect(untilTurned(world, bench)).toBe(20_000);
    expect(conducts(world, bench)).toBe(true);
  });

  it('cools while it rests, so that a rest puts its parting off', () => {
    const world = supplied(bench, 'opensWarm');
    const first = lagSeconds(bench.tau, 0, PARTS_AT, 1);
    setAt(world, 'supply', 'volts', bench.rated);
    advance(world, first / 2);
    setAt(world, 'supply', 'volts', 0);
    advance(world, 3600);
    setAt(world, 'supply', 'volts', bench.rated);
    expect(Math.abs(untilTurned(world, bench) / first - 1)).toBeLessThan(0.01);
  });

  it('sound, conducts for as long as it is live', () => {
    const world = supplied(bench, undefined);
    setAt(world, 'supply', 'volts', bench.rated);
    expect(untilTurned(world, bench)).toBe(20_000);
  });
});

describe('a job with such a part', () => {
  const HOT = { startFahrenheit: 84, outdoorFahrenheit: 95 };
  const history = [
    { name: 'set', part: 'thermostat', control: 'setCool', value: 68 },
    { name: 'operate', part: 'thermostat', control: 'mode', position: 'cool' },
    { name: 'wait', seconds: 60 },
  ] as const;

  it('runs the condenser for some minutes, rests, and runs again with nobody near', () => {
    const attempt = arriveAt({ weather: HOT, history, faults: [faultOf('contactor', 'opensWarm')] });
    const runs = () => sign(attempt, 'compressor', 'running') === 'run';
    expect(runs()).toBe(true);
    expect(waitUntil(attempt, () => !runs())).toBeGreaterThan(120);
    expect(sign(attempt, 'blower', 'running')).toBe('cool');
    expect(waitUntil(attempt, runs)).toBeGreaterThan(180);
  });

  it('reads full volts on a coil that lets go, and its ohms only when it has cooled', () => {
    const attempt = arriveAt({ weather: HOT, history, faults: [faultOf('contactor', 'opensWarm')] });
    walk(attempt, 'outdoor');
    open(attempt, 'outdoorPanel');
    waitUntil(attempt, () => sign(attempt, 'contactor', 'armature') === 'out');
    expect(number(attempt, 'voltsLoaded', 'contactor.A1', 'contactor.A2')).toBeGreaterThan(20);
    operate(attempt, 'disconnect', 'position', 'out');
    take(attempt, { name: 'lift', wire: 'coilY', end: 'to' });
    expect(read(attempt, 'ohms', 'contactor.A1', 'contactor.A2').kind).toBe('overload');
    wait(attempt, 300);
    // Common practice, no source (physics.md): a contactor's coil is 10 to 15 Ω at direct current.
    expect(number(attempt, 'ohms', 'contactor.A1', 'contactor.A2')).toBeCloseTo(CONTACTOR_COIL.ohms, 0);
  });

  it('lights, loses its flame, and lights again after the lock-out’s hour', () => {
    const attempt = arriveAt({
      weather: { startFahrenheit: 60, outdoorFahrenheit: 20 },
      history: [
        { name: 'operate', part: 'thermostat', control: 'mode', position: 'heat' },
        { name: 'set', part: 'thermostat', control: 'setHeat', value: 75 },
        { name: 'wait', seconds: 120 },
      ],
      faults: [faultOf('gasValve', 'opensWarm')],
    });
    const lit = () => sign(attempt, 'burner', 'flame') === 1;
    expect(lit()).toBe(true);
    expect(waitUntil(attempt, () => !lit())).toBeGreaterThan(60);
    expect(waitUntil(attempt, lit, 4000)).toBeGreaterThan(1800);
  });
});

it('is thought of only where a ticket asks for what comes and goes', () => {
  for (const rig of library.rigs.values()) {
    const warm = (intermittents: boolean) => possibleFaults(rig, intermittents).filter(({ mode }) => mode === 'opensWarm').length;
    expect(warm(false)).toBe(0);
    expect(warm(true)).toBeGreaterThan(0);
  }
});
