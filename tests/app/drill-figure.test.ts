import { beforeAll, describe, expect, test } from 'vitest';
import { drawLadder } from '../../src/app/diagrams/ladder-layout.ts';
import { ladderTags } from '../../src/app/diagrams/ladder-tags.ts';
import { writtenOn } from '../../src/app/diagrams/part-figure.tsx';
import { placeTags } from '../../src/app/diagrams/tags.ts';
import { layWiring } from '../../src/app/diagrams/wiring-layout.ts';
import { letteredView, saidText, sentenceText } from '../../src/app/drills/said-text.ts';
import { loadedFrom } from '../../src/app/drills/scene.ts';
import type { Readings } from '../../src/app/drills/values.ts';
import { readingsAt, voltsAt, voltsOn } from '../../src/app/drills/values.ts';
import { act } from '../../src/attempt/act.ts';
import type { Action } from '../../src/attempt/actions.ts';
import { arrive, viewOf } from '../../src/attempt/attempt.ts';
import { createBench } from '../../src/attempt/bench.ts';
import type { BenchView } from '../../src/attempt/view.ts';
import type { Said } from '../../src/drills/said.ts';
import { assemble } from '../../src/rig/assemble.ts';
import type { Fault } from '../../src/rig/faults.ts';
import { laddersOf } from '../../src/rig/ladder.ts';
import { MAT_PLACE } from '../../src/rig/points.ts';
import { overlaps } from '../../src/stage/boxes.ts';
import type { BodiesOff } from '../../src/stage/factory.ts';
import { voltsBetween } from '../../src/world/world.ts';
import { library } from '../scenario/shipped.ts';
import { speakEnglish } from './english.ts';

beforeAll(speakEnglish);

const rigs = [...library.rigs.values()].map((rig) => [rig.id, assemble(rig)] as const);

/** The job of nobody: the house as it stands, with a call for what there is. */
const quiet = { weather: { outdoorFahrenheit: 70 }, complaint: { history: [], observed: [], works: [] } };

describe.each(rigs)('the explained drawing of %s', (_, assembly) => {
  const bodies = assembly.parts.filter(({ kind }) => kind.removable === true);
  const asMat: BodiesOff = Object.fromEntries(bodies.slice(0, 1).map(({ id }) => [id, 'mat']));
  const asTurned: BodiesOff = Object.fromEntries(bodies.map(({ id }) => [id, 'turned']));

  test('has every value beside its terminal, on nothing that is written there and not on another', () => {
    const points = assembly.parts.flatMap(({ id, kind }) => kind.terminals.map((terminal) => `${id}.${terminal.id}`));
    const values = points.map((point) => ({ point, text: '26.8' }));
    const drawn: (readonly [BodiesOff, string])[] = [
      ...assembly.rig.places.map(({ id }) => [{}, id] as const),
      ...bodies.map(({ data }) => [asTurned, data.place] as const),
      ...(bodies.length > 0 ? [[asMat, MAT_PLACE] as const] : []),
    ];
    for (const [off, place] of drawn) {
      const { scene, frame, flags, values: placed } = layWiring(assembly, place, { off, values });
      if (scene.parts.length === 0) continue;
      expect(placed.length, place).toBe([...scene.terminals.keys()].filter((point) => points.includes(point)).length);
      const written = [...scene.parts.flatMap(writtenOn), ...flags.map(({ box }) => box)];
      for (const [index, { point, box, spot }] of placed.entries()) {
        expect(
          written.some((each) => overlaps(each, box, 0)),
          `${place} ${point} on words`,
        ).toBe(false);
        expect(
          placed.slice(index + 1).some((other) => overlaps(other.box, box, 0)),
          `${place} ${point} on another`,
        ).toBe(false);
        expect(box.x >= frame.x && box.x + box.width <= frame.x + frame.width, `${place} ${point} inside`).toBe(true);
        const away = Math.hypot(box.x + box.width / 2 - spot.x, box.y + box.height / 2 - spot.y);
        expect(away, `${place} ${point} far off`).toBeLessThan(110);
      }
    }
  });

  test('has values along its ladders that lie on nothing', () => {
    const bench = createBench(assembly, [], quiet);
    arrive(bench);
    for (const ladder of laddersOf(assembly)) {
      const { readings } = voltsOn(bench, ladder);
      const values = new Map(
        readings.map(({ point, shown, alive }) => [point, { text: shown.value.toFixed(1), alive, volts: shown.value }] as const),
      );
      const drawing = drawLadder(ladder);
      const tags = ladderTags(drawing, values, () => ({ lines: ['a name of a part'], left: 'L1', right: 'L2' }));
      expect(tags.length).toBeGreaterThanOrEqual(2);
      for (const [index, { box }] of tags.entries())
        expect(tags.slice(index + 1).some((other) => overlaps(other.box, box, 0))).toBe(false);
    }
  });

  test('has a turned body with its pins in mirrored order, where it has one', () => {
    for (const body of bodies) {
      const { scene } = layWiring(assembly, body.data.place, { off: asTurned });
      const base = assembly.rig.wires.find(({ pin, to }) => pin === true && to.startsWith(`${body.id}.`))?.from.split('.')[0];
      const strip = assembly.partById.get(base ?? '')?.kind.strip ?? [];
      const across = (part: string) => (id: string) => scene.terminals.get(`${part}.${id}`)?.x ?? Number.NaN;
      const behind = strip.filter((id) => scene.terminals.has(`${body.id}.${id}`));
      expect(behind.length).toBeGreaterThan(3);
      const front = [...behind].sort((a, b) => across(base ?? '')(a) - across(base ?? '')(b));
      expect([...behind].sort((a, b) => across(body.id)(b) - across(body.id)(a))).toEqual(front);
    }
  });
});

describe('what is read for the drawing', () => {
  const assembly = assemble(library.rigs.get('furnaceAndCondenser')!);
  const benchWith = (faults: readonly Fault[]) => {
    const bench = createBench(assembly, faults, quiet);
    arrive(bench);
    return bench;
  };
  const told = (found: Readings) =>
    Object.fromEntries(found.readings.map(({ point, shown, alive }) => [point, [shown.value, alive]]));

  test('is volts to the common of the point’s own transformer, of line voltage to earth, and what hangs on none is left out', () => {
    const bench = benchWith([]);
    const points = assembly.parts.flatMap(({ id, kind }) => kind.terminals.map((terminal) => `${id}.${terminal.id}`));
    const { readings } = voltsAt(bench, points);
    // The same by the world's own phasors: a meter of ten megohms takes next to nothing from a line that is live or common.
    const node = (point: string) => bench.world.wiring.nodeOf.get(point) ?? 0;
    for (const { point, to, shown } of readings) {
      const volts = voltsBetween(bench.world, node(point), to === 'earth' ? 0 : node(to));
      expect(Math.abs(shown.value - volts), point).toBeLessThan(Math.max(0.1, volts / 1000));
    }
    const of = told({ of: 'volts', readings });
    expect(of['board.R']).toEqual([expect.closeTo(27, -1), true]);
    expect(of['board.W']).toEqual([expect.closeTo(0, 0), false]);
    expect(of['board.C']).toEqual([expect.closeTo(0, 0), false]);
    expect(readings.find(({ point }) => point === 'transformer.H1')?.to).toBe('earth');
    expect(Object.keys(of).filter((point) => point.startsWith('cells.'))).toEqual([]);
  });

  test('shows an open fuse as volts before it and none after it', () => {
    const of = told(voltsAt(benchWith([{ target: 'fuse', mode: 'blown', magnitude: 0 }]), ['fuse.a', 'fuse.b', 'board.R']));
    expect([of['fuse.a']?.[1], of['fuse.b']?.[1]].sort()).toEqual([false, true]);
  });

  test('is, on the mat, ohms to the point in question, for the pins of that body alone', () => {
    const bench = benchWith([]);
    for (const name of ['pull', 'mat'] as const) act(bench, { name, part: 'thermostat' });
    expect(bench.place).toBe(MAT_PLACE);
    const found = readingsAt(bench, ['thermostat.R', 'thermostat.W', 'thermostat.G', 'board.R'], 'thermostat.R');
    expect(found.of).toBe('ohms');
    expect(found.readings.map(({ point, shown, alive }) => [point, shown.kind, alive])).toEqual([
      ['thermostat.W', 'overload', false],
      ['thermostat.G', 'overload', false],
    ]);
  });
});

test('a meter that is asked for ohms on a dead circuit explains it by ohms to its black lead, and on a live one by volts', () => {
  const assembly = assemble(library.rigs.get('furnaceAndCondenser')!);
  const asked = { fn: 'ohms', red: 'fuse.a', black: 'board.C' } as const;
  const bench = createBench(assembly, [], quiet);
  arrive(bench);
  const points = ['fuse.a', 'fuse.b', 'board.W', 'board.C', 'transformer.H1'];
  expect(readingsAt(bench, points, undefined, asked).of).toBe('volts');
  act(bench, { name: 'walk', to: 'furnace' });
  act(bench, { name: 'operate', part: 'furnaceSwitch', control: 'switch', position: 'off' });
  const found = readingsAt(bench, points, undefined, asked);
  expect(found.of).toBe('ohms');
  expect(found.readings.map(({ point, to }) => [point, to])).toEqual(
    ['fuse.a', 'fuse.b', 'board.W'].map((point) => [point, 'board.C']),
  );
});

test('tags keep off what is taken, and one without room is left out', () => {
  const frame = { x: 0, y: 0, width: 200, height: 100 };
  const spot = { x: 100, y: 50 };
  const [only] = placeTags([{ spot, text: '24.0' }], { frame, taken: [{ x: 100, y: 0, width: 100, height: 100 }], wires: [] });
  expect((only?.x ?? 0) + (only?.width ?? 0)).toBeLessThan(100);
  expect(placeTags([{ spot, text: '24.0' }], { frame, taken: [frame], wires: [] })).toEqual([undefined]);
});

describe('the pins of a thermostat', () => {
  const viewAfter = (rig: string, ...actions: readonly Action[]) => {
    const stood = loadedFrom({
      rig,
      house: {},
      weather: { outdoorFahrenheit: 70 },
      tools: undefined,
      history: [],
      faults: [],
      actions,
    });
    return letteredView(viewOf(stood!.loaded.attempt));
  };
  const named = (view: BenchView, point: string) => saidText(view, { is: 'point', point });
  const pull = { name: 'pull', part: 'thermostat' } as const;

  test('are called by their screws on the wall and off it, and by their places once it is turned over', () => {
    for (const view of [viewAfter('furnaceAndCondenser'), viewAfter('furnaceAndCondenser', pull)])
      expect(named(view, 'thermostat.W')).toBe('W, thermostat');
    expect(named(viewAfter('heatPumpO', pull), 'thermostat.O')).toBe('O, thermostat');
    const turned = viewAfter('furnaceAndCondenser', pull, { name: 'turn', part: 'thermostat' });
    expect(named(turned, 'thermostat.W')).toBe('pin 4 from the left, thermostat');
  });

  test('are not what a breaker has: its screws are called by what they lead to, and leads on one part name it once', () => {
    const view = viewAfter('furnaceAndCondenser');
    const leads = (red: string, black: string) => saidText(view, { is: 'leads', fn: 'ohms', red, black });
    expect(leads('condenserBreaker.load2', 'condenserBreaker.line1')).toBe(
      'ohms, red on right load terminal and black on left line terminal, outdoor unit’s breaker',
    );
    expect(leads('board.R', 'condenserBreaker.line2')).toBe(
      'ohms, red on R, control board; black on right line terminal, outdoor unit’s breaker',
    );
  });

  test('of one part are listed with its name once, settings too, and a name that begins a sentence has a capital', () => {
    const view = viewAfter('furnaceAndCondenser');
    expect(saidText(view, { is: 'points', points: ['thermostat.W', 'thermostat.G'] })).toBe('W and G, thermostat');
    expect(saidText(view, { is: 'points', points: ['board.R', 'contactor.A1', 'board.G'] })).toBe(
      'R and G, control board; A1, contactor',
    );
    const acts: Said = {
      is: 'acts',
      acts: [
        { name: 'operate', part: 'thermostat', control: 'mode', position: 'heat' },
        { name: 'operate', part: 'thermostat', control: 'fan', position: 'on' },
      ],
    };
    expect(saidText(view, acts)).toBe('thermostat (mode: heat, fan: on)');
    expect(sentenceText(view, 'reading', 'given', { key: 'standing', values: { standing: acts } })).toBe(
      'How it is set: thermostat (mode: heat, fan: on).',
    );
    const left: Said = { is: 'part', part: 'thermostat' };
    expect(sentenceText(view, 'tellsMost', 'given', { key: 'suspect', values: { fault: left, share: acts } })).toMatch(
      /^Thermostat: /,
    );
  });
});
