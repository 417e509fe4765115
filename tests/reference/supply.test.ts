import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { meltSeconds } from '../../src/parts/fuse.ts';
import { assemble } from '../../src/rig/assemble.ts';
import { loadRig } from '../../src/rig/load.ts';
import { advance } from '../../src/world/time.ts';
import { createWorld, rewire, settle, stateOf, voltsBetween, type World } from '../../src/world/world.ts';
import { arriveAt, number, open, operate } from '../attempt/trainee.ts';
import { setAt, siteAt, smallWorld, stateAt } from '../parts/smallRig.ts';

/** Percent of the rating, and the least and most seconds until the fuse opens. */
const BAND = [
  [135, 0.75, 600],
  [160, 0.25, 50],
  [200, 0.15, 5],
  [350, 0.08, 0.5],
] as const;
const HUNDRED_HOURS = 360_000;

// Source: ISO 8820-3 / SAE J1284, operating times of a blade fuse (from memory).
describe('a blade fuse stays inside the band of ISO 8820-3', () => {
  it.each(BAND)('by its curve: %i %% opens it after %d to %d s', (percent, least, most) => {
    expect(meltSeconds(percent / 100)).toBeGreaterThanOrEqual(least);
    expect(meltSeconds(percent / 100)).toBeLessThanOrEqual(most);
  });

  it('by its curve: 110 % does not open it in 100 hours, and more current never takes longer', () => {
    expect(meltSeconds(1.1)).toBeGreaterThan(HUNDRED_HOURS);
    for (let ratio = 1.11; ratio < 20; ratio += 0.01) expect(meltSeconds(ratio + 0.01)).toBeLessThan(meltSeconds(ratio));
  });

  /** A fuse with this share of its rating through it: seconds until it opens, or all that it was given. */
  function secondsToOpen(rating: number, percent: number, patience: number): number {
    const amps = (rating * percent) / 100;
    const world = smallWorld(
      [
        { id: 'supply', kind: 'testSupply', params: { volts: 0 } },
        { id: 'fuse', kind: 'bladeFuse', params: { amps: rating } },
        { id: 'load', kind: 'testLoad', params: { ohms: 10 } },
      ],
      [
        ['supply.a', 'fuse.a'],
        ['fuse.b', 'load.a'],
        ['load.b', 'supply.b'],
      ],
    );
    // One volt tells what the loop's ohms are; then as many volts as give the amps.
    setAt(world, 'supply', 'volts', 1);
    setAt(world, 'supply', 'volts', amps / siteAt(world, 'fuse').amps(0));
    expect(siteAt(world, 'fuse').amps(0)).toBeCloseTo(amps, 6);
    return advance(world, patience, () => stateAt(world, 'fuse').blown === 1);
  }

  it.each(BAND.flatMap((row) => [3, 5].map((rating) => [rating, ...row] as const)))(
    'in a circuit: a %i A fuse at %i %% opens after %d to %d s',
    (rating, percent, least, most) => {
      const seconds = secondsToOpen(rating, percent, 1000);
      expect(seconds).toBeGreaterThanOrEqual(least);
      expect(seconds).toBeLessThanOrEqual(most);
    },
  );

  it('in a circuit: 110 % does not open it in 100 hours', () => {
    expect(secondsToOpen(3, 110, HUNDRED_HOURS)).toBe(HUNDRED_HOURS);
  });

  it('and is no younger for having rested: damage adds up', () => {
    const world = smallWorld(
      [
        { id: 'supply', kind: 'testSupply', params: { volts: 6 } },
        { id: 'fuse', kind: 'bladeFuse', params: { amps: 3 } },
      ],
      [
        ['supply.a', 'fuse.a'],
        ['fuse.b', 'supply.b'],
      ],
    );
    const ohms = 6 / siteAt(world, 'fuse').amps(0);
    const run = (seconds: number) => {
      setAt(world, 'supply', 'volts', 6 * ohms);
      const passed = advance(world, seconds, () => stateAt(world, 'fuse').blown === 1);
      setAt(world, 'supply', 'volts', 0);
      advance(world, 10);
      return passed;
    };
    const first = meltSeconds(2) * 0.7;
    expect(run(first)).toBe(first);
    expect(run(10)).toBeCloseTo(meltSeconds(2) * 0.3, 3);
  });
});

/** 24 V sources of a rig, by the two terminals that they feed: a transformer's secondary, or a supply that plugs in. */
function sourcesOf(world: World) {
  return world.assembly.parts.flatMap((part) => {
    const { X1, X2 } = world.wiring.partNodes[part.index] as Record<string, number>;
    return X1 === undefined || X2 === undefined || part.params.ratedVoltAmps === undefined ? [] : [{ part, X1, X2 }];
  });
}

const fusesOf = (world: World) => world.assembly.parts.filter((part) => part.kind.kind === 'bladeFuse');

// Source: NFPA 70 (NEC), chapter 9, table 11(A) (from memory): Class 2, AC, over 20 to 30 V. Not inherently limited: a fuse of at most
// 100 ÷ volts. Inherently limited: at most 8 A a minute after a short.
describe('the 24 V supply of every rig is Class 2', () => {
  const files = readdirSync('scenarios/rigs').filter((file) => file.endsWith('.json'));
  it.each(files)('%s: at most 100 VA on the plate, 30 V open, and a fuse, or a limit of its own', (file) => {
    const assembly = assemble(loadRig(JSON.parse(readFileSync(`scenarios/rigs/${file}`, 'utf8'))));
    const world = createWorld(assembly, []);
    const fuses = fusesOf(world);
    for (const fuse of fuses) stateOf(world, fuse).out = 1;
    settle(world);
    const sources = sourcesOf(world);
    expect(sources.length).toBeGreaterThan(0);
    // A transformer has its own fuse; what has none is shorted for a minute.
    const limited = sources.filter(({ part }) => part.kind.kind !== 'transformer');
    expect(fuses.length).toBe(sources.length - limited.length);
    for (const { part, X1, X2 } of sources) {
      expect(part.params.ratedVoltAmps).toBeLessThanOrEqual(100);
      const volts = voltsBetween(world, X1, X2);
      expect(volts).toBeGreaterThan(20);
      expect(volts).toBeLessThanOrEqual(30);
      for (const fuse of fuses) expect(fuse.params.amps).toBeLessThanOrEqual(100 / volts);
    }
    for (const { part } of limited) {
      const shorted = createWorld(assembly, []);
      shorted.state.jumpers = [{ from: `${part.id}.X1`, to: `${part.id}.X2` }];
      rewire(shorted);
      settle(shorted);
      const site = shorted.sites[part.index]!;
      expect(site.amps(0)).toBeGreaterThan(8);
      advance(shorted, 60);
      expect(site.amps(0)).toBeLessThanOrEqual(8);
    }
  });
});

/** A transformer at 120 V with a resistor across its secondary. */
function transformerInto(ohms: number, ratedVoltAmps = 40): World {
  return smallWorld(
    [
      { id: 'supply', kind: 'testSupply', params: { volts: 120 } },
      { id: 'transformer', kind: 'transformer', params: { ratedVoltAmps } },
      { id: 'load', kind: 'testLoad', params: { ohms } },
    ],
    [
      ['supply.a', 'transformer.H1'],
      ['supply.b', 'transformer.H2'],
      ['transformer.X1', 'load.a'],
      ['transformer.X2', 'load.b'],
      ['load.b', 'supply.b'],
    ],
  );
}

// Common practice, no source (physics.md, Supply).
describe('a control transformer', () => {
  it.each([20, 40, 75, 100])('of %i VA reads 27 V open and 24 V within 2 %% at its rated resistive load', (voltAmps) => {
    expect(siteAt(transformerInto(1e6, voltAmps), 'transformer').volts('X1', 'X2')).toBeCloseTo(27, 1);
    const volts = siteAt(transformerInto((24 * 24) / voltAmps, voltAmps), 'transformer').volts('X1', 'X2');
    expect(Math.abs(volts - 24)).toBeLessThan(0.02 * 24);
  });

  it('of 40 VA reads about 1 Ω across its secondary and 16 Ω across its primary, dead', () => {
    const attempt = arriveAt();
    open(attempt, 'blowerDoor');
    operate(attempt, 'furnaceSwitch', 'lever', 'off');
    expect(number(attempt, 'ohms', 'transformer.X1', 'transformer.X2')).toBeCloseTo(1, 0);
    expect(number(attempt, 'ohms', 'transformer.H1', 'transformer.H2')).toBeCloseTo(16, 0);
  });

  it('in a hard short without a fuse burns out after minutes, and not before one', () => {
    const world = transformerInto(0.01);
    const seconds = advance(world, 3600, () => stateAt(world, 'transformer').burnt === 1);
    expect(seconds).toBeGreaterThan(60);
    expect(seconds).toBeLessThan(900);
    setAt(world, 'load', 'ohms', 100);
    expect(siteAt(world, 'transformer').volts('X1', 'X2')).toBeLessThan(0.1);
  });

  it('at its rated load runs for a day', () => {
    const world = transformerInto(14.4);
    expect(advance(world, 86_400, () => stateAt(world, 'transformer').burnt === 1)).toBe(86_400);
    expect(siteAt(world, 'transformer').volts('X1', 'X2')).toBeGreaterThan(20);
  });
});
