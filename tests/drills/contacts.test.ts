/** What a meter finds joined, against what the thermostat itself stamps, in a world put together anew. BELLWIRE_FULL=1 asks many. */
import { describe, expect, it } from 'vitest';
import { createBank } from '../../src/drills/draw.ts';
import type { Item } from '../../src/drills/item.ts';
import { contacts } from '../../src/drills/kinds/contacts.ts';
import { benchOf } from '../../src/drills/setting.ts';
import type { Stamp } from '../../src/parts/part.ts';
import { stateOf } from '../../src/world/world.ts';
import { library } from '../scenario/shipped.ts';
import { MANY } from './worlds.ts';

const COUNT = process.env.BELLWIRE_FULL === undefined ? 40 : MANY;
const STRIDE = process.env.BELLWIRE_FULL === undefined ? 29 : 1;
/** More than an anticipator in series, less than a trickle, ohms. */
const CLOSED_OHMS = 30;

const bank = createBank([...library.rigs.values()]);
const items = Array.from({ length: COUNT }, (_, index) => bank.item(contacts, index * STRIDE)).filter((item) => item !== undefined);

/** What the part's own branches join to a terminal, as it stands at the end of the scene. */
function stampedJoins({ scene, ask }: Item): string[] {
  const { world } = benchOf(scene, library.rigs.get(scene.rig)!);
  const source = ask.values.source;
  const [id = '', terminal = ''] = source?.is === 'point' ? source.point.split('.') : [];
  // On the wall the question names the screws of the base that it is on.
  const seat = world.assembly.wires.find(({ data, fromPart }) => data.pin && world.assembly.parts[fromPart]?.id === id);
  const part = seat ? world.assembly.parts[seat.toPart]! : world.assembly.partById.get(id)!;
  const closed = new Set<number>();
  const none = () => undefined;
  const stamp: Stamp = {
    contact: (branch, isClosed) => isClosed && closed.add(branch),
    resistor: (branch, ohms) => ohms < CLOSED_OHMS && closed.add(branch),
    coil: none,
    capacitor: none,
    source: none,
    open: none,
    transformer: none,
  };
  part.kind.conduct(world.sites[part.index]!, stateOf(world, part), stamp);
  const joined = new Set([terminal]);
  for (const node of joined)
    part.kind.branches.forEach(([from, to], branch) => {
      if (!closed.has(branch)) return;
      if (from === node) joined.add(to);
      if (to === node) joined.add(from);
    });
  return part.kind.terminals
    .filter((each) => each.id !== terminal && joined.has(each.id))
    .map((each) => `${id}.${each.id}`)
    .sort();
}

const pointsOf = (item: Item, choice: number): readonly string[] => {
  const said = item.choices[choice]!.said;
  return said.is === 'points' ? [...said.points].sort() : ['?'];
};

describe('contacts', () => {
  it('are those that the thermostat stamps as closed, and no wrong choice is that set', () => {
    expect(items.length).toBeGreaterThan(COUNT / 2);
    for (const item of items) {
      const joined = stampedJoins(item);
      expect(pointsOf(item, item.right), `${item.number}`).toEqual(joined);
      item.choices.forEach((_, index) => {
        if (index !== item.right) expect(pointsOf(item, index), `${item.number}`).not.toEqual(joined);
      });
    }
  });

  it('are asked of sound and of faulty thermostats, on the mat, under power and with their wires lifted', () => {
    expect(new Set(items.map(({ scene }) => scene.faults.length))).toEqual(new Set([0, 1]));
    expect(new Set(items.map(({ ask }) => ask.key))).toEqual(new Set(['mat', 'wall', 'loose']));
  });

  it('in cooling on its own power: Y and G together, which the fan forgotten leaves at Y', () => {
    const cooling = items.filter(
      ({ scene, ask, choices, right }) =>
        scene.faults.length === 0 &&
        ask.values.source?.is === 'point' &&
        choices[right]!.said.is === 'points' &&
        choices[right]!.said.points.some((point) => point.endsWith('.Y')) &&
        !choices[right]!.said.points.some((point) => point.endsWith('.W2')),
    );
    expect(cooling.length).toBeGreaterThan(0);
    for (const item of cooling) {
      const letters = pointsOf(item, item.right).map((point) => point.split('.')[1]);
      expect(letters).toContain('G');
      for (const { said, misconception } of item.choices)
        if (misconception === 'fanForgotten' && said.is === 'points') expect(said.points.join()).not.toContain('.G');
    }
  });
});
