/** What a rig says of its places' looks is taken as it stands; what it leaves out is worked out. */
import { describe, expect, test } from 'vitest';
import { begin, perform, viewOf } from '../../src/attempt/attempt.ts';
import type { RigData } from '../../src/rig/schema.ts';
import { holds, overlaps, solidBox } from '../../src/stage/boxes.ts';
import { partsHere } from '../../src/stage/placing.ts';
import { cablesOf, sectionOf } from '../../src/stage/section.ts';
import { lookOf } from '../../src/stage/surroundings.ts';
import { library, rigOf, ticket } from '../scenario/shipped.ts';
import { ALL_STANDS } from './rigs.ts';

const job = ticket('fanButNoCooling');

/** A rig of which nothing is told but what stands where. */
function bare(rig: RigData): RigData {
  return { ...rig, places: rig.places.map(({ id, walkSeconds }) => ({ id, walkSeconds })) };
}

function lookIn(rig: RigData, place: string) {
  const attempt = begin(job, rig);
  if (place !== rig.start) perform(attempt, { name: 'walk', to: place });
  const view = viewOf(attempt);
  const here = partsHere(view);
  return { view, here, look: lookOf(view, here) };
}

describe('left out', () => {
  const rig = bare(rigOf(job));

  test('a hall has wires that hang, a place with covers has wires in lanes and a cabinet round them', () => {
    expect(lookIn(rig, 'hallway').look).toMatchObject({ harness: false, cabinets: [], exits: [] });
    expect(lookIn(rig, 'furnace').look).toMatchObject({ harness: true, cabinets: [{ x: 176, y: 6, width: 622, height: 594 }] });
    expect(lookIn(rig, 'mat').look.ground.dark).toBe(true);
  });

  test.each(['furnace', 'outdoor', 'panel'])(
    'the holes of the %s are clear of every part, and each enclosure whose wires leave has one',
    (place) => {
      const { look, here, view } = lookIn(rig, place);
      const solid = here.filter(({ part }) => part.body === undefined).map(solidBox);
      for (const exit of look.exits) expect(solid.filter((box) => holds(box, exit, 0))).toEqual([]);
      for (const { from, to } of look.joins)
        for (const end of [from, to]) expect(solid.filter((box) => holds(box, end, 0))).toEqual([]);
      const partOf = (point: string) => here.find(({ part }) => part.id === point.split('.')[0]);
      const leaving = view.wires.flatMap(({ ends }) => {
        const [from, to] = [partOf(ends.from.home), partOf(ends.to.home)];
        const only = from ?? to;
        return only !== undefined && (from === undefined || to === undefined) ? [only.part.cover ?? ''] : [];
      });
      expect(look.exits.length).toBe(new Set(leaving).size);
    },
  );

  test('covers that are off lean where no part stands, with a tag for each', () => {
    for (const place of ['furnace', 'outdoor', 'panel']) {
      const { look, here, view } = lookIn(rig, place);
      const covers = view.covers.filter((cover) => cover.place === place);
      expect([look.lean.length, look.tags.length]).toEqual([covers.length, covers.length]);
      for (const box of look.lean.slice(0, 1)) {
        expect(here.filter((part) => overlaps(solidBox(part), box, 0)).map(({ part }) => part.id)).toEqual([]);
      }
    }
  });

  test('the five places take free cells of the house, two beside each other', () => {
    const { rooms } = sectionOf(viewOf(begin(job, rig)));
    expect([...rooms.keys()].sort()).toEqual(['furnace', 'hallway', 'mat', 'outdoor', 'panel']);
  });
});

test('what the rig says stands', () => {
  const { look } = lookIn(rigOf(job), 'furnace');
  const told = rigOf(job).places.find(({ id }) => id === 'furnace');
  expect(look).toMatchObject({ joins: told?.joins, exits: told?.exits, lean: told?.lean, tags: told?.tags, wireWidth: 5 });
});

describe.each([...library.rigs.keys()])('the house of %s', (id) => {
  const stand = ALL_STANDS.find(({ rig }) => rig.id === id);
  const view = viewOf(stand!.attempt);
  const { rooms, width, height } = sectionOf(view);

  test('has a room for every place, none on another, all inside the drawing', () => {
    expect([...rooms.keys()].sort()).toEqual([...view.places].sort());
    const boxes = [...rooms.values()];
    for (const [index, a] of boxes.entries()) {
      expect(a.x >= 0 && a.y >= 0 && a.x + a.width <= width && a.y + a.height <= height).toBe(true);
      for (const b of boxes.slice(index + 1)) expect(overlaps(a, b, 0)).toBe(false);
    }
  });

  test('shows the cables that run from one place to another', () => {
    for (const [from, to] of cablesOf(view)) expect([rooms.has(from), rooms.has(to)]).toEqual([true, true]);
  });
});

test('storeys stand over one another, the basement below the ground, what is outside beside the walls on the ground', () => {
  const { rooms, ground } = sectionOf({
    places: ['up', 'down', 'cellar', 'out', 'attic'],
    looks: {
      up: { id: 'up', walkSeconds: 1, section: { column: 0, storey: 1 } },
      down: { id: 'down', walkSeconds: 1, section: { column: 0, storey: 0 } },
      cellar: { id: 'cellar', walkSeconds: 1, section: { column: 0, storey: -1 } },
      out: { id: 'out', walkSeconds: 1, look: 'yard' },
      attic: { id: 'attic', walkSeconds: 1, look: 'attic' },
    },
  });
  const top = (id: string) => rooms.get(id)?.y ?? Number.NaN;
  const foot = (id: string) => top(id) + (rooms.get(id)?.height ?? Number.NaN);
  expect(['attic', 'up', 'down', 'cellar'].map(top)).toEqual(['attic', 'up', 'down', 'cellar'].map(top).sort((a, b) => a - b));
  expect(foot('down')).toBeLessThanOrEqual(ground);
  expect(top('cellar')).toBeGreaterThan(ground - 2);
  expect(foot('out')).toBe(foot('down'));
  expect(rooms.get('out')?.x).toBeGreaterThan(78 + 16);
});
