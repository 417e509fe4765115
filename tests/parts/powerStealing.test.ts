import { describe, expect, it } from 'vitest';
import type { Fault } from '../../src/rig/faults.ts';
import { advance } from '../../src/world/time.ts';
import { settle, stateOf, type World } from '../../src/world/world.ts';
import { turn } from '../world/states.ts';
import { setAt, siteAt, smallWorld, stateAt } from './smallRig.ts';

/** A thermostat without C on a 24 V supply, with loads of these ohms on W and Y. */
function wall(ohms: { readonly w?: number; readonly y?: number }, faults: readonly Fault[] = []): World {
  return smallWorld(
    [
      { id: 'supply', kind: 'testSupply', params: { volts: 26 } },
      { id: 'thermostat', kind: 'powerStealingThermostat' },
      { id: 'w', kind: 'testLoad', params: { ohms: ohms.w ?? 1200 } },
      { id: 'y', kind: 'testLoad', params: { ohms: ohms.y ?? 50 } },
      { id: 'splice', kind: 'testLoad', params: { ohms: 0.02 } },
    ],
    [
      ['supply.a', 'splice.a'],
      ['splice.b', 'thermostat.R'],
      ['thermostat.W', 'w.a'],
      ['thermostat.Y', 'y.a'],
      ['w.b', 'supply.b'],
      ['y.b', 'supply.b'],
    ],
    faults,
  );
}
const fault = (mode: string, magnitude = 0): Fault => ({ target: 'thermostat', mode, magnitude });
const shows = (world: World, key: string) => {
  const part = world.assembly.partById.get('thermostat')!;
  return part.kind.signs(siteAt(world, 'thermostat'), stateOf(world, part)).find((sign) => sign.key === key)?.value;
};
const volts = (world: World, load: 'w' | 'y') => siteAt(world, load).volts('a', 'b');
/** In cooling, with nothing to do: the room has 70 °F. */
const idle = (world: World): World => {
  turn(world, 'thermostat', 'setCool', 80);
  turn(world, 'thermostat', 'mode', 'cool');
  return world;
};
const calling = (world: World): World => {
  turn(world, 'thermostat', 'mode', 'cool');
  turn(world, 'thermostat', 'setCool', 60);
  return world;
};
/** Whether its display goes blank within an hour: it may come back, because it wakes up through either load. */
function blanked(world: World): boolean {
  let blank = false;
  advance(world, 3600, () => {
    blank ||= shows(world, 'display') === 'blank';
    return false;
  });
  return blank;
}

// Common practice, no source (physics.md, Thermostats); the figures are typical.
describe('a power-stealing thermostat', () => {
  it('lives without C and without cells on a few milliamps through the idle load, which does not notice', () => {
    const world = idle(wall({}));
    advance(world, 24 * 3600);
    expect(shows(world, 'display')).toBe('on');
    expect(siteAt(world, 'y').amps(0)).toBeGreaterThan(0.002);
    expect(siteAt(world, 'y').amps(0)).toBeLessThan(0.006);
    expect(volts(world, 'y')).toBeLessThan(0.5);
  });

  it('its idle Y sits near zero volts to C only because the coil is there: without one it floats to near R', () => {
    expect(volts(idle(wall({ y: 50 })), 'y')).toBeLessThan(0.5);
    // Ten megohms in the coil's place is the meter itself.
    expect(volts(idle(wall({ y: 1e7 })), 'y')).toBeGreaterThan(25);
    // A loading meter of 3 kΩ pulls it down to a third.
    expect(volts(idle(wall({ y: 3000 })), 'y')).toBeLessThan(10);
  });

  it('gives its load all but a small drop while it calls, and goes on living', () => {
    const world = calling(wall({}));
    expect(shows(world, 'call')).toBe('cool');
    expect(volts(world, 'y')).toBeGreaterThan(25);
    expect(volts(world, 'y')).toBeLessThan(26);
    advance(world, 6 * 3600);
    expect(shows(world, 'display')).toBe('on');
  });

  it.each([
    ['the load gone', { y: 1e7 }, 0.02],
    ['an input of high ohms on the board', { y: 10_000 }, 0.02],
    ['a joint of several kilohms in R', { y: 50 }, 5000],
  ])('goes blank when its trickle starves: %s', (_, loads, splice) => {
    const world = idle(wall(loads));
    setAt(world, 'splice', 'ohms', splice);
    expect(shows(world, 'display')).toBe('on');
    expect(blanked(world)).toBe(true);
  });

  it('needs the load of its mode: with Y lost it lives in heating and goes blank in cooling', () => {
    const world = wall({ y: 1e7 });
    turn(world, 'thermostat', 'mode', 'heat');
    expect(blanked(world)).toBe(false);
    idle(world);
    expect(blanked(world)).toBe(true);
  });

  it('comes back by itself when its load does, and guards the compressor first', () => {
    const world = calling(wall({ y: 1e7 }));
    advance(world, 3600);
    expect(shows(world, 'display')).toBe('blank');
    setAt(world, 'y', 'ohms', 50);
    advance(world, 300);
    expect(shows(world, 'display')).toBe('on');
    expect(shows(world, 'call')).toBe('waiting');
    advance(world, 400);
    expect(shows(world, 'call')).toBe('cool');
    expect(volts(world, 'y')).toBeGreaterThan(25);
  });

  it('feels its supply go while it cools, and waits before it closes Y again', () => {
    const world = calling(wall({}));
    setAt(world, 'supply', 'volts', 0);
    setAt(world, 'supply', 'volts', 26);
    expect(shows(world, 'call')).toBe('waiting');
    expect(volts(world, 'y')).toBeLessThan(0.5);
    advance(world, 301);
    expect(volts(world, 'y')).toBeGreaterThan(25);
  });

  it('with a store that leaks goes blank and comes back, again and again', () => {
    const world = idle(wall({}, [fault('storeLeaks', 0.006)]));
    let turns = 0;
    let last = shows(world, 'display');
    advance(world, 2 * 3600, () => {
      if (shows(world, 'display') !== last) turns += 1;
      last = shows(world, 'display');
      return false;
    });
    expect(turns).toBeGreaterThan(4);
  });

  it('a switch that is shorted runs its load whatever is asked, and starves it', () => {
    const world = idle(wall({}, [fault('coolSwitchShorted')]));
    expect(volts(world, 'y')).toBeGreaterThan(25);
    expect(shows(world, 'call')).toBe('none');
    expect(blanked(world)).toBe(true);
  });

  it('a switch that never conducts leaves the display calling and its load with the trickle', () => {
    const world = calling(wall({}, [fault('coolSwitchOpen')]));
    expect(shows(world, 'call')).toBe('cool');
    expect(volts(world, 'y')).toBeLessThan(0.5);
  });

  it('a load so small that the switch cannot hold neither runs nor chatters', () => {
    for (const ohms of [3000, 5000, 8000, 16_000, 30_000]) {
      const world = calling(wall({ y: ohms }));
      expect(world.state.unsettled, `${ohms} Ω`).toBe(0);
    }
  });

  it('with C it lives on that alone', () => {
    const world = smallWorld(
      [
        { id: 'supply', kind: 'testSupply', params: { volts: 26 } },
        { id: 'thermostat', kind: 'powerStealingThermostat' },
      ],
      [
        ['supply.a', 'thermostat.R'],
        ['supply.b', 'thermostat.C'],
      ],
    );
    idle(world);
    advance(world, 24 * 3600);
    expect(shows(world, 'display')).toBe('on');
    stateAt(world, 'supply').volts = 0;
    settle(world);
    advance(world, 3600);
    expect(shows(world, 'display')).toBe('blank');
  });
});
