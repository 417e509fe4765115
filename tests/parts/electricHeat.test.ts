import { describe, expect, it } from 'vitest';
import { advance } from '../../src/world/time.ts';
import type { World } from '../../src/world/world.ts';
import { setAt, siteAt, smallWorld, stateAt } from './smallRig.ts';

const fault = (target: string, mode: string, magnitude = 0) => ({ target, mode, magnitude });

/** A sequencer with its heater across a supply. */
function sequencer(volts: number, params: Record<string, number> = {}, faults: Parameters<typeof smallWorld>[2] = []): World {
  return smallWorld(
    [
      { id: 'supply', kind: 'testSupply', params: { volts } },
      { id: 'sequencer', kind: 'heatSequencer', params },
    ],
    [
      ['supply.a', 'sequencer.H1'],
      ['supply.b', 'sequencer.H2'],
    ],
    faults,
  );
}

/** Seconds until something stands so; Infinity when it does not within an hour. */
function until(world: World, stands: () => boolean): number {
  for (let second = 0; second <= 3600; second++) {
    if (stands()) return second;
    advance(world, 1);
  }
  return Number.POSITIVE_INFINITY;
}

// Common practice, no source (physics.md, loads and contacts).
describe('a heat sequencer', () => {
  it('has a heater of 5 to 10 VA and 30 to 90 Ω', () => {
    const world = sequencer(24);
    const site = siteAt(world, 'sequencer');
    const voltAmps = site.volts('H1', 'H2') * site.amps(0);
    expect(voltAmps).toBeGreaterThan(5);
    expect(voltAmps).toBeLessThan(10);
    expect(site.volts('H1', 'H2') / site.amps(0)).toBeGreaterThan(30);
    expect(site.volts('H1', 'H2') / site.amps(0)).toBeLessThan(90);
  });

  it.each([24, 27])('closes its contacts 30 to 90 s after %i V come, and opens them 30 to 110 s after they go', (volts) => {
    const world = sequencer(volts);
    const state = stateAt(world, 'sequencer');
    const first = until(world, () => state.made1 === 1);
    const second = first + until(world, () => state.made2 === 1);
    for (const seconds of [first, second]) {
      expect(seconds).toBeGreaterThanOrEqual(30);
      expect(seconds).toBeLessThanOrEqual(90);
    }
    advance(world, 1200);
    setAt(world, 'supply', 'volts', 0);
    const secondOpens = until(world, () => state.made2 === 0);
    const firstOpens = secondOpens + until(world, () => state.made1 === 0);
    for (const seconds of [firstOpens, secondOpens]) {
      expect(seconds).toBeGreaterThanOrEqual(30);
      expect(seconds).toBeLessThanOrEqual(110);
    }
  });

  it('stages its contacts: last on, first off', () => {
    const world = sequencer(24);
    const state = stateAt(world, 'sequencer');
    until(world, () => state.made1 === 1);
    expect(state.made2).toBe(0);
    expect(until(world, () => state.made2 === 1)).toBeLessThan(60);
    advance(world, 1200);
    setAt(world, 'supply', 'volts', 0);
    until(world, () => state.made2 === 0);
    expect(state.made1).toBe(1);
  });

  it('on 21 V closes later than on 24 V', () => {
    const closes = (volts: number) => {
      const world = sequencer(volts);
      return until(world, () => stateAt(world, 'sequencer').made1 === 1);
    };
    expect(closes(21)).toBeGreaterThan(closes(24) + 5);
  });

  it('on half of its voltage never closes', () => {
    const world = sequencer(12);
    expect(until(world, () => stateAt(world, 'sequencer').made1 === 1)).toBe(Number.POSITIVE_INFINITY);
  });

  it('with an open heater draws nothing and never closes', () => {
    const world = sequencer(24, {}, [fault('sequencer', 'heaterOpen')]);
    expect(siteAt(world, 'sequencer').amps(0)).toBeLessThan(1e-6);
    expect(until(world, () => stateAt(world, 'sequencer').made1 === 1)).toBe(Number.POSITIVE_INFINITY);
  });

  it('whose contact would open before it has closed is refused with its rig', () => {
    expect(() => sequencer(24, { closeSeconds: 30, openSeconds: 20 })).toThrow('rig.staging');
  });

  it('called again while still warm closes sooner than from cold', () => {
    const world = sequencer(24);
    const state = stateAt(world, 'sequencer');
    const cold = until(world, () => state.made1 === 1);
    advance(world, 600);
    setAt(world, 'supply', 'volts', 0);
    until(world, () => state.made1 === 0);
    setAt(world, 'supply', 'volts', 24);
    expect(until(world, () => state.made1 === 1)).toBeLessThan(cold);
  });
});

/** A 5 kW strip across a 240 V supply, in the air of a 240 V blower with a supply of its own. */
function strip(air: boolean, faults: Parameters<typeof smallWorld>[2] = []): World {
  return smallWorld(
    [
      { id: 'supply', kind: 'testSupply', params: { volts: 240 } },
      { id: 'strip', kind: 'heatStrip', params: { kilowatts: 5 }, links: { air: 'blower' } },
      { id: 'filter', kind: 'filter' },
      { id: 'blower', kind: 'blower', params: { volts: 240 }, links: { filter: 'filter' } },
    ],
    [
      ['supply.a', 'strip.L1'],
      ['supply.b', 'strip.L2'],
      ...(air
        ? ([
            ['supply.a', 'blower.COOL'],
            ['supply.b', 'blower.N'],
          ] as const)
        : []),
    ],
    faults,
  );
}

describe('a heating strip', () => {
  // P = V²/R.
  it('draws kW · 1000 / 240 amps', () => {
    const site = siteAt(strip(true), 'strip');
    expect(site.amps(2) / ((5000 / 240) * (site.volts('L1', 'L2') / 240))).toBeCloseTo(1, 2);
    expect(site.amps(2)).toBeCloseTo(20.8, 0);
  });

  // The Btu by definition: 1055.05585262 J (ISO 31-4).
  it('gives 3412.14 Btu/h for each kW', () => {
    const world = strip(true);
    const part = world.assembly.partById.get('strip')!;
    const heat = part.kind.heat!(siteAt(world, 'strip'), stateAt(world, 'strip'));
    const kilowatts = (siteAt(world, 'strip').volts('L1', 'L2') * siteAt(world, 'strip').amps(2)) / 1000;
    // The limit and the link keep a little of the voltage for themselves.
    expect(heat / kilowatts / (3_600_000 / 1055.05585262)).toBeCloseTo(1, 2);
  });

  // Common practice, no source.
  it('in moving air heats on and on', () => {
    const world = strip(true);
    advance(world, 3600);
    expect(stateAt(world, 'strip').limitOpen).toBe(0);
    expect(siteAt(world, 'strip').amps(2)).toBeGreaterThan(20);
  });

  it('without air is opened by its limit within a minute, and comes back by itself when cool', () => {
    const world = strip(false);
    const state = stateAt(world, 'strip');
    expect(until(world, () => state.limitOpen === 1)).toBeLessThan(60);
    expect(siteAt(world, 'strip').amps(2)).toBeLessThan(1e-3);
    expect(until(world, () => state.limitOpen === 0)).toBeLessThan(300);
    expect(siteAt(world, 'strip').amps(2)).toBeGreaterThan(20);
    expect(state.melted).toBe(0);
  });

  it('under a dirty filter is cut in and out by its limit', () => {
    const world = strip(true, [fault('filter', 'dirty', 0.35)]);
    const opened = until(world, () => stateAt(world, 'strip').limitOpen === 1);
    expect(opened).toBeGreaterThan(30);
    expect(opened).toBeLessThan(1200);
  });

  it('whose limit will not open melts its link, and stays off for good', () => {
    const world = strip(false, [fault('strip', 'limitStuckClosed')]);
    expect(until(world, () => stateAt(world, 'strip').melted === 1)).toBeLessThan(300);
    advance(world, 3600);
    expect(siteAt(world, 'strip').amps(2)).toBeLessThan(1e-3);
  });

  it('with an open link drops all of the voltage across the link', () => {
    const site = siteAt(strip(true, [fault('strip', 'linkOpen')]), 'strip');
    expect(site.volts('TL', 'FL')).toBeCloseTo(240, 0);
    expect(site.volts('FL', 'L2')).toBeLessThan(1);
  });
});

// Common practice, no source (physics.md, loads and contacts).
describe('a fan relay', () => {
  const relay = (volts: number) =>
    smallWorld(
      [
        { id: 'supply', kind: 'testSupply', params: { volts } },
        { id: 'relay', kind: 'fanRelay' },
      ],
      [
        ['supply.a', 'relay.A1'],
        ['supply.b', 'relay.A2'],
      ],
    );

  it('takes about 3 VA once it is in', () => {
    const site = siteAt(relay(24), 'relay');
    expect(site.volts('A1', 'A2') * site.amps(0)).toBeCloseTo(3, 1);
  });

  it.each([
    [16.8, false],
    [19.2, true],
  ])('at %d V, pulled in is %s: it picks up between 70 and 80 %%', (volts, isIn) => {
    expect(stateAt(relay(volts), 'relay').armature === 1).toBe(isIn);
  });
});

// Common practice, no source (physics.md, Thermostats).
describe('a common-wire thermostat', () => {
  const wall = (volts: number) =>
    smallWorld(
      [
        { id: 'supply', kind: 'testSupply', params: { volts } },
        { id: 'thermostat', kind: 'commonWireThermostat' },
      ],
      [
        ['supply.a', 'thermostat.R'],
        ['supply.b', 'thermostat.C'],
      ],
    );

  it.each([0, 12, 24])('with %i V from R to C lives or does not', (volts) => {
    expect(stateAt(wall(volts), 'thermostat').alive === 1).toBe(volts === 24);
  });
});
