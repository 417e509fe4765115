/**
 * Which choice is right stays on the host, and so does all from which it could be drawn anew. BELLWIRE_FULL=1 takes every rig and more of its
 * items.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { itemOfFace } from '../../src/app/lab/paper-item.ts';
import type { Action } from '../../src/attempt/actions.ts';
import { begin, perform, viewOf } from '../../src/attempt/attempt.ts';
import { createBank, PER_HOUSE } from '../../src/drills/draw.ts';
import { type Item, MISCONCEPTIONS } from '../../src/drills/item.ts';
import { DRILL_KINDS } from '../../src/drills/kinds.ts';
import type { Scene } from '../../src/drills/scene.ts';
import type { Host } from '../../src/host/host.ts';
import { questionFaceOf } from '../../src/host/paper-face.ts';
import { possibleFaults } from '../../src/rig/faults.ts';
import { layHouse } from '../../src/rig/house.ts';
import type { Ticket } from '../../src/scenario/ticket.ts';
import type { Weather } from '../../src/world/world.ts';
import { library } from '../scenario/shipped.ts';
import { enrol, newFolder, openLab, paperAssignment, seated, smallLibrary } from './lab.ts';

const FULL = process.env.BELLWIRE_FULL !== undefined;
const rigs = [...(FULL ? library : smallLibrary).rigs.values()];
const EACH = FULL ? 3 : 1;

/** A few items of every kind that has some here, from numbers side by side in as few houses as may be. */
const items: Item[] = [];
beforeAll(() => {
  const bank = createBank(rigs);
  for (let house = 0; house < rigs.length; house++)
    for (const kind of DRILL_KINDS.filter(({ id }) => FULL || !items.some((item) => item.kind === id)))
      for (let number = 0, found = 0; number < PER_HOUSE && found < EACH; number++) {
        const item = bank.item(kind, (house + rigs.length * 50) * PER_HOUSE + number);
        if (!item) continue;
        found += 1;
        items.push(item);
      }
}, 600_000);

/** Every member's name in a value, and every text and number. */
function partsOf(
  json: unknown,
  names = new Set<string>(),
  leaves = new Set<unknown>(),
): { names: Set<string>; leaves: Set<unknown> } {
  if (typeof json !== 'object' || json === null) leaves.add(json);
  else
    for (const [name, value] of Object.entries(json)) {
      if (!Array.isArray(json)) names.add(name);
      partsOf(value, names, leaves);
    }
  return { names, leaves };
}

const SECRET = [
  'right',
  'misconception',
  'why',
  'faults',
  'number',
  'draws',
  'house',
  'history',
  'weather',
  'scene',
  'digest',
  'seed',
];

describe('what is shown of a question', () => {
  it('is of every kind', () => {
    expect(new Set(items.map(({ kind }) => kind)).size).toBeGreaterThan(DRILL_KINDS.length - 4);
  });

  it('is the same for two that differ only in what is wrong, where it hangs and what is right', () => {
    for (const item of items) {
      const rig = library.rigs.get(item.scene.rig)!;
      const others = possibleFaults(rig);
      const other = others.find(({ target }) => target !== item.scene.faults[0]?.target)!;
      const waited: Action = { name: 'wait', seconds: 90 };
      const scene: Scene = {
        ...item.scene,
        ...{ faults: [{ ...other, magnitude: 0 }], house: {}, weather: { outdoorFahrenheit: 1 }, history: [], tools: ['voltsAc'] },
        actions: [...item.scene.actions, waited],
      };
      const right = (item.right + 1) % item.choices.length;
      const choices = item.choices.map(({ said }, place) => ({
        said,
        misconception: place === right ? undefined : MISCONCEPTIONS[place],
      }));
      const twin: Item = { ...item, scene, right, choices, why: [], number: item.number + 1 };
      expect(JSON.stringify(questionFaceOf(twin)), item.kind).toBe(JSON.stringify(questionFaceOf(item)));
    }
  });

  it('has none of what is secret by name, and no misconception and no number of an item by value', () => {
    for (const item of items) {
      const face = questionFaceOf(item);
      const { names, leaves } = partsOf(JSON.parse(JSON.stringify(face)));
      expect(
        SECRET.filter((name) => names.has(name)),
        item.kind,
      ).toEqual([]);
      expect(
        MISCONCEPTIONS.filter((each) => leaves.has(each)),
        item.kind,
      ).toEqual([]);
      expect(leaves.has(item.number)).toBe(false);
      expect(Object.keys(face).sort()).toEqual(['ask', 'choices', 'given', 'kind', 'marked', 'moves', 'rig', 'skill']);
    }
  });

  it('puts somebody where the item has them, with every point by the same name', () => {
    const standing = ({ rig: id, house, weather, history, faults, actions }: Scene) => {
      const rig = layHouse(library.rigs.get(id)!, house);
      const complaint = { history: [...history], observed: [], works: [] };
      const job = { format: 'bellwire-ticket', version: 1, id: 'x', rig: id, mode: 'practice', order: 0, complaint } as const;
      const attempt = begin({ ...job, house, weather: weather as Weather, faults: [...faults] } as Ticket, rig);
      const refused = actions.filter((action) => !perform(attempt, action).ok);
      const { place, parts, wires } = viewOf(attempt);
      return {
        refused,
        place,
        parts: parts.map(({ id: part, body, terminals }) => [part, body, terminals.map(({ point, label }) => [point, label])]),
        wires: wires.map(({ id: wire, ends }) => [wire, ends.from.home, ends.to.home]),
      };
    };
    for (const item of items) {
      const shown = itemOfFace(questionFaceOf(item), 0);
      expect(standing(shown.scene), `${item.kind} ${item.number}`).toEqual(standing(item.scene));
    }
  });
});

describe('what a host says of papers', () => {
  let host: Host;
  const place = newFolder();
  afterAll(async () => {
    await host.close();
    place.remove();
  });

  it('is never what is right, from the first message to the last', async () => {
    host = await openLab(place.folder, { at: Date.UTC(2026, 2, 2, 13) }, { library: smallLibrary });
    enrol(host, 1);
    host.room.putUp(paperAssignment());
    const ana = seated(host, 't1');
    for (const [item, count] of [
      [2, 4],
      [3, 2],
    ] as const) {
      await ana.ask({ kind: 'open', assignment: 'week-9', item });
      for (let question = 0; question < count; question++) {
        expect(await ana.ask({ kind: 'ask', question })).toMatchObject({ kind: 'question', face: {} });
        await ana.ask({ kind: 'choose', question, choice: 0 });
      }
      await ana.ask({ kind: 'handIn' });
    }
    await ana.ask({ kind: 'leave' });
    expect(ana.messages.filter(({ kind }) => kind === 'question')).toHaveLength(6);
    for (const message of ana.messages) {
      const { names, leaves } = partsOf(message);
      // Which attempt it is.
      const secret = SECRET.filter((name) => names.has(name) && !(name === 'number' && message.kind === 'paper'));
      expect(secret, message.kind).toEqual([]);
      expect(MISCONCEPTIONS.filter((each) => leaves.has(each))).toEqual([]);
    }
  }, 120_000);
});
