import { describe, expect, it } from 'vitest';
import rigFile from '../../scenarios/rigs/twoZoneBoiler.json';
import { assemble } from '../../src/rig/assemble.ts';
import { type Fault, possibleFaults } from '../../src/rig/faults.ts';
import { loadRig } from '../../src/rig/load.ts';
import { advance } from '../../src/world/time.ts';
import { createWorld, stateOf, type Weather, type World } from '../../src/world/world.ts';
import { turn } from '../world/states.ts';
import { setAt, siteAt, smallWorld, stateAt } from './smallRig.ts';

const rig = loadRig(rigFile);
const assembly = assemble(rig);
const COLD: Weather = { outdoorFahrenheit: 22, startFahrenheit: 62 };
const HOT: Weather = { outdoorFahrenheit: 95, startFahrenheit: 82 };

function fault(target: string, mode: string, magnitude?: number): Fault {
  const members = possibleFaults(rig).find((each) => each.target === target && each.mode === mode)?.members ?? [];
  const found = magnitude === undefined ? members[0] : members.find((each) => each.magnitude === magnitude);
  if (!found) throw new Error(`no fault ${target} ${mode}`);
  return found;
}

/** What a sign of a part shows now. */
function sign(world: World, id: string, key: string): string | number | undefined {
  const part = world.assembly.partById.get(id)!;
  return part.kind.signs(world.sites[part.index]!, stateOf(world, part)).find((each) => each.key === key)?.value;
}

/** The house with heat asked for upstairs, downstairs, or in both. */
function heating(zones: readonly ('upstairs' | 'downstairs')[], faults: readonly Fault[] = [], weather = COLD): World {
  const world = createWorld(assembly, faults, weather);
  for (const zone of zones) {
    turn(world, `${zone}Stat`, 'setHeat', 70);
    turn(world, `${zone}Stat`, 'mode', 'heat');
  }
  return world;
}

function cooling(faults: readonly Fault[] = []): World {
  const world = createWorld(assembly, faults, HOT);
  turn(world, 'upstairsStat', 'setCool', 72);
  turn(world, 'upstairsStat', 'mode', 'cool');
  return world;
}

// The order of a zone's start, and that the end switch is what calls the boiler: common practice, no source (physics.md).
describe('a zone valve', () => {
  const small = (faults: readonly Fault[] = []): World =>
    smallWorld(
      [
        { id: 'supply', kind: 'testSupply' },
        { id: 'valve', kind: 'zoneValve', params: { openSeconds: 30 } },
        { id: 'load', kind: 'testLoad', params: { ohms: 100 } },
      ],
      [
        ['supply.a', 'valve.M1'],
        ['supply.b', 'valve.M2'],
        ['supply.a', 'valve.E1'],
        ['valve.E2', 'load.a'],
        ['load.b', 'supply.b'],
      ],
      faults,
    );

  it('closes its end switch only when it is open, after 10 to 60 s', () => {
    const world = small();
    setAt(world, 'supply', 'volts', 24);
    for (const seconds of [0, 10, 19.9]) {
      advance(world, seconds);
      expect(sign(world, 'valve', 'travel')).toBe('opening');
      expect(siteAt(world, 'load').volts('a', 'b')).toBeLessThan(0.1);
    }
    advance(world, 0.2);
    expect(sign(world, 'valve', 'travel')).toBe('open');
    expect(siteAt(world, 'load').volts('a', 'b')).toBeGreaterThan(23);
  });

  it('opens its end switch at once when its motor loses power, and is shut by its spring some seconds later', () => {
    const world = small();
    setAt(world, 'supply', 'volts', 24);
    advance(world, 40);
    // Half the volts neither hold nor open it, and still feed the end switch's load.
    setAt(world, 'supply', 'volts', 10);
    expect(siteAt(world, 'load').volts('a', 'b')).toBeLessThan(0.1);
    expect(sign(world, 'valve', 'travel')).toBe('closing');
    advance(world, 20);
    expect(sign(world, 'valve', 'travel')).toBe('shut');
  });

  it('draws 7 to 8 VA', () => {
    const world = small();
    setAt(world, 'supply', 'volts', 24);
    const voltAmps = 24 * siteAt(world, 'valve').amps(0);
    expect(voltAmps).toBeGreaterThan(7);
    expect(voltAmps).toBeLessThan(8);
  });

  it('with an open end switch stands open while pump and burner stay still', () => {
    const world = heating(['upstairs'], [fault('upstairsValve', 'endSwitchOpen')]);
    advance(world, 300);
    expect(sign(world, 'upstairsValve', 'travel')).toBe('open');
    expect(sign(world, 'circulator', 'running')).toBe('off');
    expect(sign(world, 'burner', 'flame')).toBe(0);
    // 24 V across an open switch, none across a closed one.
    expect(siteAt(world, 'upstairsValve').volts('E1', 'E2')).toBeGreaterThan(20);
  });

  it('with an open end switch heats its zone all the same while another zone calls', () => {
    const world = heating(['upstairs', 'downstairs'], [fault('upstairsValve', 'endSwitchOpen')]);
    advance(world, 300);
    expect(sign(world, 'circulator', 'running')).toBe('run');
    expect(sign(world, 'upstairsBaseboard', 'pipe')).toBe('hot');
  });

  it('that is stuck open heats a zone that is satisfied whenever another calls', () => {
    const live = (faults: readonly Fault[]) => {
      const world = heating(['downstairs'], faults);
      advance(world, 1800);
      expect(sign(world, 'upstairsStat', 'call')).toBe('none');
      return world.state.rooms[1]!;
    };
    expect(live([])).toBeLessThan(62);
    expect(live([fault('upstairsValve', 'stuckOpen')])).toBeGreaterThan(62.5);
    expect(live([fault('upstairsValve', 'leftOpen')])).toBeGreaterThan(62.5);
  });

  it('with a welded end switch runs pump and burner with every valve shut, and warms no room', () => {
    const world = heating([], [fault('upstairsValve', 'endSwitchWelded')]);
    advance(world, 600);
    expect(sign(world, 'circulator', 'running')).toBe('run');
    expect(Number(sign(world, 'vessel', 'gauge'))).toBeGreaterThan(140);
    expect(Math.max(...world.state.rooms)).toBeLessThan(62);
  });
});

// One thermal mass by hand: dT/dt = (heat − Σ losses) / mass, exponential while neither changes.
describe('the water', () => {
  it('of a boiler without flow warms by burner output ÷ mass', () => {
    const world = heating(['upstairs'], [fault('circulator', 'seized')]);
    advance(world, 60);
    const from = Number(sign(world, 'vessel', 'gauge'));
    const { from: exact, since } = stateAt(world, 'vessel');
    advance(world, 120);
    const { target, tau } = stateAt(world, 'vessel');
    const now = target! + (exact! - target!) * Math.exp((since! - world.state.time) / tau!);
    // 40 000 Btu/h into 120 Btu/°F are 333 °F an hour, 5.6 °F a minute, less what the jacket loses.
    expect((now - exact!) / ((world.state.time - since!) / 60)).toBeCloseTo(40_000 / 120 / 60, 0);
    expect(Number(sign(world, 'vessel', 'gauge'))).toBeGreaterThan(from);
  });

  it('never passes the aquastat’s limit, and the burner comes back when it has cooled by the differential', () => {
    const world = heating(['upstairs']);
    let hottest = 0;
    const lightings: number[] = [];
    let lit = false;
    advance(world, 7200, () => {
      hottest = Math.max(hottest, Number(sign(world, 'vessel', 'gauge')));
      const now = sign(world, 'burner', 'flame') === 1;
      if (now && !lit) lightings.push(Number(sign(world, 'vessel', 'gauge')));
      lit = now;
      return false;
    });
    expect(hottest).toBe(180);
    expect(lightings.length).toBeGreaterThan(3);
    for (const gauge of lightings.slice(1)) expect(gauge).toBeLessThanOrEqual(165);
  });

  it('boils towards the relief valve’s setting when the aquastat is stuck closed', () => {
    const world = heating(['upstairs'], [fault('aquastat', 'stuckClosed')]);
    advance(world, 3600);
    expect(Number(sign(world, 'vessel', 'gauge'))).toBeGreaterThan(210);
    expect(Number(sign(world, 'vessel', 'gauge'))).toBeLessThanOrEqual(245);
  });

  it('stays lukewarm under an aquastat that has drifted low: the pump runs, the burner hardly', () => {
    const world = heating(['upstairs', 'downstairs'], [fault('aquastat', 'drifted', -70)]);
    advance(world, 3600);
    expect(sign(world, 'circulator', 'running')).toBe('run');
    expect(Number(sign(world, 'vessel', 'gauge'))).toBeLessThanOrEqual(110);
  });

  it('comes to the same in one wait and in pieces', () => {
    const one = heating(['upstairs', 'downstairs']);
    advance(one, 3000);
    const pieces = heating(['upstairs', 'downstairs']);
    for (let second = 0; second < 3000; second += 7.5) advance(pieces, 7.5);
    expect(pieces.state.rooms).toEqual(one.state.rooms);
    expect(stateAt(pieces, 'vessel')).toEqual(stateAt(one, 'vessel'));
  });
});

// Cycle rate N = 4 · Nmax · x · (1 − x), Nmax 3 an hour for hydronic heat: common practice, no source (physics.md).
describe('a hydronic zone', () => {
  // Each room cycles at its own load: outdoors as cold as makes the load a share of what the baseboard gives.
  it.each([0.3, 0.5, 0.7])('at load fraction about %f cycles 4 · 3 · x · (1 − x) times an hour', (share) => {
    const room = rig.rooms.find((each) => each.id === 'upstairs')!;
    const world = heating(['upstairs'], [], {
      outdoorFahrenheit: 70 - (share * 9200) / room.lossBtuPerHourFahrenheit,
      startFahrenheit: 69,
    });
    const calls = () => sign(world, 'upstairsStat', 'call') === 'heat';
    advance(world, 4 * 3600);
    let starts = 0;
    let on = 0;
    let was = calls();
    let since = world.state.time;
    advance(world, 12 * 3600, () => {
      if (was) on += world.state.time - since;
      since = world.state.time;
      const now = calls();
      if (now && !was) starts += 1;
      was = now;
      return false;
    });
    const x = on / (12 * 3600);
    expect(Math.abs(x - share)).toBeLessThan(0.12);
    const expected = 4 * 3 * x * (1 - x);
    expect(starts / 12 / expected).toBeGreaterThan(0.85);
    expect(starts / 12 / expected).toBeLessThan(1.15);
  });
});

/** Two 40 VA transformers whose commons are bonded, the second with its primary the same way round or not, and an Rh–Rc jumper between them. */
function twoTransformers(inPhase: boolean, jumper: boolean): World {
  const world = smallWorld(
    [
      { id: 'supply', kind: 'testSupply' },
      { id: 'heat', kind: 'transformer' },
      { id: 'cool', kind: 'transformer' },
      { id: 'fuse', kind: 'bladeFuse' },
      { id: 'base', kind: 'dualSubbase' },
    ],
    [
      ['supply.a', 'heat.H1'],
      ['supply.b', 'heat.H2'],
      ['supply.a', inPhase ? 'cool.H1' : 'cool.H2'],
      ['supply.b', inPhase ? 'cool.H2' : 'cool.H1'],
      ['heat.X2', 'cool.X2'],
      ['heat.X1', 'base.Rh'],
      ['cool.X1', 'fuse.a'],
      ['fuse.b', 'base.Rc'],
    ],
  );
  setAt(world, 'base', 'jumper', jumper ? 1 : 0);
  setAt(world, 'supply', 'volts', 120);
  return world;
}

// Textbooks of HVAC controls, from memory: with the commons together, hot to hot of two transformers reads 0 in phase and twice the volts out of phase.
describe('two transformers with their commons together', () => {
  it('read nothing between the hots when they are in phase', () => {
    expect(siteAt(twoTransformers(true, false), 'base').volts('Rh', 'Rc')).toBeLessThan(0.5);
  });

  it('read twice as much between the hots as from hot to common when they are out of phase', () => {
    const world = twoTransformers(false, false);
    const one = siteAt(world, 'heat').volts('X1', 'X2');
    expect(one).toBeGreaterThan(24);
    expect(siteAt(world, 'base').volts('Rh', 'Rc') / one).toBeCloseTo(2, 1);
  });

  it('in phase share a load quietly through a jumper that was left in, and out of phase blow the fuse', () => {
    for (const inPhase of [true, false]) {
      const world = twoTransformers(inPhase, true);
      if (!inPhase) expect(siteAt(world, 'fuse').amps(0)).toBeGreaterThan(10);
      advance(world, 10);
      expect(sign(world, 'fuse', 'element')).toBe(inPhase ? 'whole' : 'blown');
    }
  });
});

describe('the house with a transformer for each side', () => {
  it('reads about 52 V between Rh and Rc: its transformers hang on the two legs of the service', () => {
    const world = cooling();
    advance(world, 60);
    expect(siteAt(world, 'upstairsBase').volts('Rh', 'Rc')).toBeGreaterThan(48);
    expect(sign(world, 'compressor', 'running')).toBe('run');
  });

  it('loses only its cooling with the cooling transformer', () => {
    const faults = [fault('coolingTransformer', 'primaryOpen')];
    const hot = cooling(faults);
    advance(hot, 300);
    expect(sign(hot, 'upstairsStat', 'call')).toBe('cool');
    expect(sign(hot, 'blower', 'running')).toBe('off');
    expect(sign(hot, 'compressor', 'running')).toBe('off');
    const cold = heating(['upstairs'], faults);
    advance(cold, 120);
    expect(sign(cold, 'burner', 'flame')).toBe(1);
  });

  it('with the jumper left in goes on cooling from the boiler’s transformer, until the boiler is switched off', () => {
    const world = cooling([fault('upstairsBase', 'jumperWrong')]);
    advance(world, 60);
    expect([sign(world, 'coolingFuse', 'element'), sign(world, 'boilerFuse', 'element')]).toContain('blown');
    expect(sign(world, 'compressor', 'running')).toBe('run');
    turn(world, 'boilerSwitch', 'lever', 'off');
    advance(world, 60);
    expect(sign(world, 'compressor', 'running')).toBe('off');
    expect(sign(world, 'blower', 'running')).toBe('off');
  });

  it('with the zones’ wires swapped heats the floor that nobody asked for', () => {
    const world = heating(['upstairs'], [fault('riserW1', 'swappedTo:riserW2')]);
    advance(world, 600);
    expect(sign(world, 'upstairsBaseboard', 'pipe')).toBe('cold');
    expect(sign(world, 'downstairsBaseboard', 'pipe')).toBe('hot');
  });
});
