import { describe, expect, it } from 'vitest';
import { indoorPercent } from '../../src/parts/humidifier.ts';
import { createWorld, stateOf, type World } from '../../src/world/world.ts';
import { turn } from '../world/states.ts';
import { siteAt, smallRig, smallWorld, stateAt } from './smallRig.ts';

/** Burners, compressor and blower without wires: their states are set by hand. */
function ducts(cfm: number): World {
  return smallWorld(
    [
      { id: 'gasValve', kind: 'gasValve' },
      { id: 'igniter', kind: 'igniter' },
      { id: 'burner', kind: 'burner', params: { outputBtuPerHour: 54_000 }, links: { gas: 'gasValve', ignition: 'igniter' } },
      { id: 'compressor', kind: 'compressor', params: { coolingBtuPerHour: 21_600 } },
      { id: 'filter', kind: 'filter' },
      { id: 'blower', kind: 'blower', links: { filter: 'filter' } },
      {
        id: 'plenum',
        kind: 'supplyPlenum',
        params: { cfm },
        links: { air: 'blower', heating: 'burner', cooling: 'compressor' },
      },
    ],
    [['gasValve.a', 'gasValve.b']],
  );
}
const air = (world: World, key: string): number => {
  const part = world.assembly.partById.get('plenum')!;
  const signs = part.kind.signs(siteAt(world, 'plenum'), stateOf(world, part));
  return Number(signs.find((sign) => sign.key === key)?.value);
};
const rise = (world: World): number => air(world, 'supplyAir') - air(world, 'returnAir');
const COOLING_SPEED = 2;
const RUNS = 1;

// ASHRAE Handbook Fundamentals, standard air (from memory): q = 1.08 · cfm · ΔT.
describe('supply air minus return air', () => {
  it('is q / (1.08 · cfm) with the burners lit', () => {
    const world = ducts(1000);
    stateAt(world, 'burner').lit = 1;
    stateAt(world, 'blower').speed = COOLING_SPEED;
    expect(rise(world)).toBe(50);
  });

  it('is minus q / (1.08 · cfm) while the compressor runs', () => {
    const world = ducts(1000);
    stateAt(world, 'compressor').motion = RUNS;
    stateAt(world, 'blower').speed = COOLING_SPEED;
    expect(rise(world)).toBe(-20);
  });

  it('doubles with half the air', () => {
    const world = ducts(500);
    stateAt(world, 'compressor').motion = RUNS;
    stateAt(world, 'blower').speed = COOLING_SPEED;
    expect(rise(world)).toBe(-40);
  });

  it('is nothing with the fan alone, and nothing comes out without it', () => {
    const world = ducts(1000);
    stateAt(world, 'blower').speed = COOLING_SPEED;
    expect(rise(world)).toBe(0);
    stateAt(world, 'burner').lit = 1;
    stateAt(world, 'blower').speed = 0;
    expect(rise(world)).toBe(0);
  });
});

// ASHRAE psychrometric chart, from memory: air of 22 °F at 80 % holds some 1.9 g/kg, which at 68 °F is about 13 %.
it('a house in the frost is dry, and one on a warm day is not', () => {
  expect(indoorPercent(22)).toBeGreaterThan(20);
  expect(indoorPercent(22)).toBeLessThan(26);
  expect(indoorPercent(70)).toBeGreaterThan(60);
});

describe('a humidifier', () => {
  /** On 24 V in the frost, with its blower running from a supply of its own. */
  const humid = (mode?: string, target = 'valve', lineVolts = 120): World =>
    createWorld(
      smallRig(
        [
          { id: 'supply', kind: 'testSupply', params: { volts: 25 } },
          { id: 'line', kind: 'testSupply', params: { volts: lineVolts } },
          { id: 'filter', kind: 'filter' },
          { id: 'blower', kind: 'blower', links: { filter: 'filter' } },
          { id: 'humidistat', kind: 'humidistat', links: { air: 'blower' } },
          { id: 'valve', kind: 'humidifierValve' },
        ],
        [
          ['line.a', 'blower.COOL'],
          ['line.b', 'blower.N'],
          ['supply.a', 'humidistat.a'],
          ['humidistat.b', 'valve.a'],
          ['valve.b', 'supply.b'],
        ],
      ),
      mode === undefined ? [] : [{ target, mode, magnitude: 0 }],
      { outdoorFahrenheit: 22 },
    );
  const drip = (world: World) => {
    const part = world.assembly.partById.get('valve')!;
    return part.kind.signs(siteAt(world, 'valve'), stateOf(world, part)).find(({ key }) => key === 'drip')?.value;
  };

  // Common practice, no source: a humidifier's solenoid draws some 10 VA at 24 V.
  it('runs while the air is dry and moves, at some 10 VA', () => {
    const world = humid();
    expect(drip(world)).toBe('runs');
    const valve = siteAt(world, 'valve');
    expect(valve.volts('a', 'b') * valve.amps(0)).toBeGreaterThan(9);
    expect(valve.volts('a', 'b') * valve.amps(0)).toBeLessThan(12);
    turn(world, 'humidistat', 'percent', 'off');
    expect(drip(world)).toBe('none');
  });

  it('stays dry without air', () => {
    expect(drip(humid(undefined, undefined, 0))).toBe('none');
  });

  it.each([
    ['setWrongly', 'humidistat'],
    ['stuckOpen', 'humidistat'],
    ['tapShut', 'valve'],
    ['coilOpen', 'valve'],
    ['stuckShut', 'valve'],
  ])('stays dry with %s on the %s', (mode, target) => {
    expect(drip(humid(mode, target))).toBe('none');
  });
});
