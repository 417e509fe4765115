import { describe, expect, it } from 'vitest';
import { assemble } from '../../src/rig/assemble.ts';
import { heatInto } from '../../src/world/room.ts';
import { advance } from '../../src/world/time.ts';
import { createWorld, stateOf, type World } from '../../src/world/world.ts';
import { COLD_DAY, faultOf, HOT_DAY, RIG } from '../attempt/trainee.ts';
import { library } from '../scenario/shipped.ts';
import { turn } from './states.ts';

const assembly = assemble(RIG);
const room = RIG.rooms[0]!;
const TAU_SECONDS = (room.massBtuPerFahrenheit / room.lossBtuPerHourFahrenheit) * 3600;
const BURNER_BTU_PER_HOUR = 48_000;

const stateAt = (world: World, id: string) => stateOf(world, assembly.partById.get(id)!);
const lit = (world: World) => stateAt(world, 'burner').lit === 1;

function heating(set: number, faults = [] as ReturnType<typeof faultOf>[]): World {
  const world = createWorld(assembly, faults, COLD_DAY);
  turn(world, 'thermostat', 'setHeat', set);
  turn(world, 'thermostat', 'mode', 'heat');
  return world;
}

/** Lives on for hours, looking in every half minute; the room from the first reaching of the set point on, and how often the call began. */
function live(world: World, hours: number, calling: () => boolean): { temperatures: number[]; calls: number } {
  const temperatures: number[] = [];
  let calls = 0;
  let was = calling();
  for (let half = 0; half < hours * 120; half++) {
    advance(world, 30);
    const now = calling();
    if (now && !was) calls += 1;
    was = now;
    temperatures.push(world.state.rooms[0]!);
  }
  return { temperatures, calls };
}

// The closed form of dT/dt = (Q − K·(T − T_out)) / M, worked by hand: one thermal mass.
describe('the room', () => {
  it.each([1, 60, 3600, 36_000])('with everything off cools along its exponential: after %i s', (seconds) => {
    const world = createWorld(assembly, [], COLD_DAY);
    advance(world, seconds);
    const end = 22 + room.gainsBtuPerHour / room.lossBtuPerHourFahrenheit;
    expect(world.state.rooms[0]!).toBeCloseTo(end + (61 - end) * Math.exp(-seconds / TAU_SECONDS), 9);
  });

  it('with the burners lit and the blower running warms towards outdoors plus heat ÷ loss', () => {
    const world = heating(90);
    advance(world, 200);
    expect(lit(world)).toBe(true);
    const start = world.state.rooms[0]!;
    advance(world, 600);
    expect(lit(world)).toBe(true);
    const end = 22 + (BURNER_BTU_PER_HOUR + room.gainsBtuPerHour) / room.lossBtuPerHourFahrenheit;
    expect(world.state.rooms[0]!).toBeCloseTo(end + (start - end) * Math.exp(-600 / TAU_SECONDS), 6);
  });

  it('gains nothing to speak of from a flame whose heat no air carries', () => {
    const still = heating(90, [faultOf('board', 'heatBlowerRelayOpen')]);
    advance(still, 50);
    const before = still.state.rooms[0]!;
    advance(still, 20);
    expect(lit(still)).toBe(true);
    // 48 000 Btu/h for 20 s would be 0.1 °F in 2500 Btu/°F; the house loses more than what seeps through.
    expect(still.state.rooms[0]!).toBeLessThan(before);
  });

  // Source: ASHRAE Handbook, Fundamentals: sensible heat of standard air, q = 0.075 × 0.24 × 60 × cfm × ΔT = 1.08 · cfm · ΔT.
  // 400 cfm for each ton of cooling: common practice, no source; this rig cools two tons, and the heat speed moves nine tenths of that.
  it('’s furnace warms its air as 1.08 · cfm · ΔT has it, at the limit', () => {
    const world = heating(90);
    advance(world, 3000);
    expect(lit(world)).toBe(true);
    const cfm = (24_000 / 12_000) * 400 * 0.9;
    const rise = BURNER_BTU_PER_HOUR / (0.075 * 0.24 * 60 * cfm);
    expect(stateAt(world, 'limit').target! / rise).toBeGreaterThan(0.97);
    expect(stateAt(world, 'limit').target! / rise).toBeLessThan(1.03);
  });
});

// Common practice, no source (physics.md): set points are reached, cycles happen, and a dead furnace makes a cold room.
describe('a house', () => {
  it('in winter reaches its set point and holds it, in cycles', () => {
    const world = heating(71);
    live(world, 2, () => lit(world));
    const { temperatures, calls } = live(world, 6, () => lit(world));
    expect(Math.min(...temperatures)).toBeGreaterThan(69.5);
    expect(Math.max(...temperatures)).toBeLessThan(72.5);
    expect(calls / 6).toBeGreaterThan(1);
    expect(calls / 6).toBeLessThan(8);
  });

  it('in summer reaches its set point and holds it, in cycles, with at least five minutes between', () => {
    const world = createWorld(assembly, [], HOT_DAY);
    turn(world, 'thermostat', 'setCool', 74);
    turn(world, 'thermostat', 'mode', 'cool');
    const runs = () => stateAt(world, 'compressor').motion === 1;
    live(world, 3, runs);
    const { temperatures, calls } = live(world, 6, runs);
    expect(Math.min(...temperatures)).toBeGreaterThan(72.5);
    expect(Math.max(...temperatures)).toBeLessThan(75.5);
    expect(calls / 6).toBeGreaterThan(1);
    expect(calls / 6).toBeLessThan(6);
    expect(stateAt(world, 'compressor').hurried).toBe(0);
  });

  it('with a dead furnace gets cold', () => {
    const world = heating(71, [faultOf('board', 'dead')]);
    advance(world, 12 * 3600);
    expect(world.state.rooms[0]!).toBeLessThan(45);
  });

  it('is never missed when it crosses a set point a moment before a wait ends', () => {
    // Waits of every length that ends just around the crossing: the thermostat must have closed a second later, every time.
    const first = heating(55);
    // Half a degree above the set point is crossed first, and means nothing; half a degree below is what it waits for.
    advance(first, first.state.crossing);
    const { crossing } = first.state;
    for (let early = -20; early <= 20; early++) {
      const world = heating(55);
      advance(world, crossing + early / 1000);
      advance(world, 1);
      expect(stateAt(world, 'thermostat').w, `${early} ms`).toBe(1);
    }
  });
});

// By hand, as above: dT/dt = (Q·share − K·(T − T_out)) / M for each of two rooms that one coil cools.
describe('two rooms that one coil cools', () => {
  const rig = library.rigs.get('twoZoneBoiler')!;
  const two = assemble(rig);

  it('get their shares of it and no more between them, and each goes its own exponential', () => {
    const world = createWorld(two, [], { outdoorFahrenheit: 95, startFahrenheit: 84 });
    turn(world, 'upstairsStat', 'setCool', 60);
    turn(world, 'upstairsStat', 'mode', 'cool');
    advance(world, 120);
    const coil = Number(two.partById.get('compressor')!.params.coolingBtuPerHour);
    expect(heatInto(world, 0) + heatInto(world, 1)).toBeCloseTo(-coil, 6);
    const from = [...world.state.rooms];
    advance(world, 600);
    rig.rooms.forEach((each, index) => {
      const { share } = each.sources.find(({ part }) => part === 'compressor')!;
      const end = 95 + (each.gainsBtuPerHour - coil * share) / each.lossBtuPerHourFahrenheit;
      const tau = (each.massBtuPerFahrenheit / each.lossBtuPerHourFahrenheit) * 3600;
      expect(world.state.rooms[index]).toBeCloseTo(end + (from[index]! - end) * Math.exp(-600 / tau), 6);
    });
    expect(from[0]).not.toBeCloseTo(from[1]!, 2);
  });
});
