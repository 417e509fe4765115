/** Ladder diagrams read out of rig data, against what a technician reads off the wiring by hand. */
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/parts/catalogue.ts';
import { assemble } from '../../src/rig/assemble.ts';
import { elementsOf } from '../../src/rig/elements.ts';
import { type Ladder, laddersOf, type Rung, type Way } from '../../src/rig/ladder.ts';
import { loadRig } from '../../src/rig/load.ts';
import { library } from '../scenario/shipped.ts';

const names = (way: Way): string[] => way.steps.map(({ part, enter, leave }) => `${part} ${ends(enter, leave)}`);
const ends = (enter: string, leave: string): string => [enter, leave].map((point) => point.split('.')[1]).join('-');
const colours = (way: Way): string[][] => [...way.steps, way].map(({ wires }) => wires.map(({ colour }) => colour));

function ladderOf(ladders: readonly Ladder[], supply: string): Ladder {
  const found = ladders.filter((ladder) => ladder.supply === supply);
  expect(found.length).toBe(1);
  return found[0]!;
}
const rungOf = (ladder: Ladder, load: string): Rung =>
  ladder.rungs.find((rung) => `${rung.load.part} ${ends(rung.load.enter, rung.load.leave)}` === load)!;

describe('a gas furnace with split cooling', () => {
  const ladders = laddersOf(assemble(library.rigs.get('furnaceAndCondenser')!));
  const low = ladderOf(ladders, 'transformer');

  test('all of 24 V comes through the fuse, and only through it', () => {
    expect(names(low.feed)).toEqual(['fuse a-b']);
    expect(low.feed.steps[0]?.kind).toBe('fuse');
  });

  test('the limit, roll-out and pressure switches stand in one string before the gas relay and the valve', () => {
    const { ways, back } = rungOf(low, 'gasValve a-b');
    expect(ways.map(names)).toEqual([
      ['board R-LIMOUT', 'limit a-b', 'rollout a-b', 'board LIMIN-PSOUT', 'pressureSwitch a-b', 'board PSIN-GV'],
    ]);
    expect(ways[0]?.steps.map(({ kind, closed }) => (kind === 'contact' ? closed : kind))).toEqual([
      'link',
      true,
      true,
      'link',
      false,
      false,
    ]);
    expect(names(back)).toEqual(['board GVC-C']);
  });

  test('Y calls the contactor through the float switch, the thermostat and the high-pressure switch', () => {
    const { ways } = rungOf(low, 'contactor A1-A2');
    expect(ways.map(names)).toEqual([['floatSwitch a-b', 'thermostat R-Y', 'spliceY a-b', 'highPressure a-b']]);
    expect(colours(ways[0]!)).toEqual([['copper', 'red'], ['red'], ['yellow', 'yellow'], ['yellow'], ['yellow']]);
  });

  test('the board itself lives before the float switch: a full pan darkens the thermostat, not the board', () => {
    expect(names(rungOf(low, 'board R-C').ways[0]!)).toEqual([]);
    expect(names(rungOf(low, 'board W-C').ways[0]!)).toEqual(['floatSwitch a-b', 'thermostat R-W']);
  });

  test('the blower, inducer, igniter and transformer hang on one breaker, switch and door switch', () => {
    const house = ladders.find((ladder) => ladder.supply === 'service' && ladder.common === 'service.N');
    expect(house && names(house.feed)).toEqual(['furnaceBreaker line1-load1', 'furnaceSwitch line-load', 'doorSwitch a-b']);
    expect(house?.rungs.map(({ load }) => load.part).sort()).toEqual(['blower', 'blower', 'igniter', 'inducer', 'transformer']);
  });

  test('outside, both poles of breaker, disconnect and contactor stand in both legs of 240 V', () => {
    const outside = ladders.find((ladder) => ladder.common === 'service.L2')!;
    expect(names(outside.feed)).toEqual(['condenserBreaker line1-load1', 'disconnect line1-load1', 'contactor L1-T1']);
    expect(names(outside.tail)).toEqual(['contactor T2-L2', 'disconnect load2-line2', 'condenserBreaker load2-line2']);
    expect(names(rungOf(outside, 'compressor S-c').ways[0]!)).toEqual(['capacitor C-HERM']);
  });
});

/** Two thermostats, each with a valve of its own whose end switches call one relay side by side, wired here by hand. */
const zones = loadRig({
  format: 'bellwire-rig',
  version: 1,
  id: 'zones',
  hertz: 60,
  start: 'hall',
  outdoorFahrenheit: 20,
  rooms: [{ id: 'house', startFahrenheit: 68, lossBtuPerHourFahrenheit: 400, massBtuPerFahrenheit: 2500, sources: [] }],
  places: [{ id: 'hall', walkSeconds: 1 }],
  covers: [],
  cables: [],
  parts: [
    { id: 'service', kind: 'service', place: 'hall', at: { x: 0, y: 0 } },
    { id: 'transformer', kind: 'transformer', place: 'hall', at: { x: 0, y: 0 } },
    { id: 'one', kind: 'serviceSwitch', place: 'hall', at: { x: 0, y: 0 } },
    { id: 'two', kind: 'serviceSwitch', place: 'hall', at: { x: 0, y: 0 } },
    { id: 'valve', kind: 'gasValve', place: 'hall', at: { x: 0, y: 0 } },
  ],
  wires: [
    ['service.L1', 'transformer.H1', 'black'],
    ['service.N', 'transformer.H2', 'white'],
    ['transformer.X1', 'one.line', 'red'],
    ['one.line', 'two.line', 'red'],
    ['one.load', 'valve.a', 'brown'],
    ['two.load', 'valve.a', 'orange'],
    ['valve.b', 'transformer.X2', 'blue'],
  ].map(([from, to, colour], index) => ({ id: `w${String(index)}`, from, to, colour })),
});

describe('two switches side by side before one valve', () => {
  const ladders = laddersOf(assemble(zones));

  test('are two strings of one rung', () => {
    const { rungs, feed } = ladderOf(ladders, 'transformer');
    expect(names(feed)).toEqual([]);
    expect(rungs.length).toBe(1);
    expect(rungs[0]?.ways.map(names)).toEqual([['one line-load'], ['two line-load']]);
    expect(rungs[0]?.ways.map(colours)).toEqual([
      [['red'], ['brown']],
      [['red', 'red'], ['orange']],
    ]);
    expect(rungs[0]?.back.wires.map(({ colour }) => colour)).toEqual(['blue']);
  });

  test('taken out of the rig, one of them is one string', () => {
    const single = { ...zones, wires: zones.wires.filter(({ to }) => to !== 'two.line') };
    expect(ladderOf(laddersOf(assemble(single)), 'transformer').rungs[0]?.ways.map(names)).toEqual([['one line-load']]);
  });
});

describe.each([...library.rigs.values()].map((rig) => [rig.id, rig] as const))('the ladders of %s', (_, rig) => {
  const assembly = assemble(rig);
  const ladders = laddersOf(assembly);

  test('have a rung for every coil that something feeds, and no rung without its two rails', () => {
    const drawn = new Set(
      ladders.flatMap(({ rungs }) =>
        rungs.flatMap(({ ways, load, back }) =>
          [...ways.flatMap(({ steps }) => steps), load, ...back.steps].map(({ part }) => part),
        ),
      ),
    );
    const coils = elementsOf(assembly).elements.filter(({ kind }) => kind === 'coil');
    expect([...new Set(coils.map(({ part }) => part))].filter((part) => !drawn.has(part))).toEqual([]);
    for (const { hot, common, rungs } of ladders) {
      expect(hot).not.toBe(common);
      for (const { ways } of rungs) expect(ways.length).toBeGreaterThan(0);
    }
  });

  test('name only terminals and nodes that the kinds have', () => {
    for (const { rungs } of ladders)
      for (const { load } of rungs) {
        const [id = '', node = ''] = load.enter.split('.');
        const kind = CATALOGUE.get(assembly.partById.get(id)?.kind.kind ?? '');
        expect([...(kind?.terminals.map((each) => each.id) ?? []), ...(kind?.inner ?? [])]).toContain(node);
      }
  });
});
