/** What goes dead, against worlds put together anew and a search through wires and closed contacts. BELLWIRE_FULL=1 asks many. */
import { describe, expect, it } from 'vitest';
import { laddersAsked } from '../../src/app/drills/picture.tsx';
import type { Bench } from '../../src/attempt/bench.ts';
import { idealBetween } from '../../src/attempt/measure.ts';
import { createBank } from '../../src/drills/draw.ts';
import type { Item } from '../../src/drills/item.ts';
import { ladder } from '../../src/drills/kinds/ladder.ts';
import type { Said } from '../../src/drills/said.ts';
import { benchOf } from '../../src/drills/setting.ts';
import { type Element, elementsOf } from '../../src/rig/elements.ts';
import type { Step } from '../../src/rig/ladder.ts';
import { voltsBetween } from '../../src/world/world.ts';
import { library } from '../scenario/shipped.ts';
import { MANY } from './worlds.ts';

const COUNT = process.env.BELLWIRE_FULL === undefined ? 30 : MANY;
const STRIDE = process.env.BELLWIRE_FULL === undefined ? 31 : 1;

const bank = createBank([...library.rigs.values()]);
const items = Array.from({ length: COUNT }, (_, index) => bank.item(ladder, index * STRIDE)).filter((item) => item !== undefined);

const namesOf = (said: Said | undefined): readonly string[] =>
  said?.is === 'parts' ? said.parts : said?.is === 'points' ? said.points : [];
const everyName = (item: Item): string[] => [...new Set(item.choices.flatMap(({ said }) => namesOf(said)))];
const isLoad = ({ kind }: Element): boolean => kind === 'coil' || kind === 'resistor';
const volts = ({ world }: Bench, { from, to }: Element): number =>
  voltsBetween(world, world.wiring.nodeOf.get(from) ?? 0, world.wiring.nodeOf.get(to) ?? 0);

function worldsOf({ scene, ask }: Item) {
  const fault = ask.values.fault;
  const naming = fault?.is === 'fault' ? fault.naming : undefined;
  const { target = '', mode = '' } = naming ?? {};
  const plain = library.rigs.get(scene.rig)!;
  const sound = benchOf(scene, plain);
  const open = benchOf({ ...scene, faults: [{ target, mode, magnitude: 0 }] }, plain);
  const { elements, supplies } = elementsOf(sound.world.assembly);
  const supply = ask.values.supply;
  const rails = supplies.find(({ part }) => supply?.is === 'part' && part === supply.part)?.rails ?? [];
  return { target, sound, open, elements, rails };
}

/** The loads that a name stands for; of a body on its base the base's screw. */
const loadsNamed = ({ world }: Bench, elements: readonly Element[], name: string) => {
  const pin = world.assembly.rig.wires.find((wire) => wire.pin && wire.from === name);
  const names = [name, pin?.to];
  return elements.filter((each) => isLoad(each) && [each.part, each.from, each.to].some((own) => names.includes(own)));
};

/** By its ohms, whatever its volts: an open contact between two hot points has none across it. */
const isClosed = (bench: Bench, { from, to }: Element): boolean => {
  const { kind, value } = idealBetween(bench, 'ohms', from, to);
  return kind === 'number' && value < 2;
};

/** Points that are joined to this one by wires and by closed contacts, without what has opened. */
function joined(bench: Bench, elements: readonly Element[], start: string, without: string, own: string): ReadonlySet<string> {
  const links = [
    ...bench.world.assembly.rig.wires.filter(({ id }) => id !== without),
    ...elements.filter(
      (each) =>
        !isLoad(each) &&
        each.part !== without &&
        !(each.kind === 'contact' && each.part === own) &&
        (each.kind === 'link' || isClosed(bench, each)),
    ),
  ];
  const reached = new Set([start]);
  for (const point of reached)
    for (const { from, to } of links) {
      if (from === point) reached.add(to);
      if (to === point) reached.add(from);
    }
  return reached;
}

describe('loads that go dead when something opens', () => {
  it('are dead in the world where it is open, and all others that are named are not', { timeout: 1_800_000 }, () => {
    expect(items.length).toBeGreaterThan(COUNT / 2);
    for (const item of items) {
      const { sound, open, elements } = worldsOf(item);
      const wentDead = everyName(item).filter((name) =>
        loadsNamed(sound, elements, name).some((each) => volts(sound, each) > 10 && volts(open, each) < volts(sound, each) / 5),
      );
      expect(wentDead.sort(), `${item.number}`).toEqual([...namesOf(item.choices[item.right]?.said)].sort());
    }
  });

  it('are all that go dead on the one ladder that is drawn', { timeout: 1_800_000 }, () => {
    for (const item of items) {
      const { sound, open, elements } = worldsOf(item);
      const drawn = laddersAsked(item, sound.world.assembly);
      expect(drawn, `${item.number}`).toHaveLength(1);
      const named = namesOf(item.choices[item.right]?.said).flatMap((name) => loadsNamed(sound, elements, name));
      const isEnd = ({ from, to }: Element, { enter, leave }: Step) => [enter, leave].includes(from) && [enter, leave].includes(to);
      for (const { load } of drawn[0]!.rungs) {
        const element = elements.find((each) => isLoad(each) && isEnd(each, load))!;
        const isDead = volts(sound, element) > 10 && volts(open, element) < volts(sound, element) / 5;
        expect(named.includes(element), `${item.number} ${load.enter}`).toBe(isDead);
      }
    }
  });

  it('are those that a search no longer joins to both rails', { timeout: 1_800_000 }, () => {
    for (const item of items) {
      const { target, sound, elements, rails } = worldsOf(item);
      const right = namesOf(item.choices[item.right]?.said);
      for (const name of everyName(item)) {
        const isDead = right.includes(name);
        // A control's own contacts are no way to itself: without it they fall open.
        const isFed = ({ part, from: one, to: other }: Element) => {
          const from = rails.map((rail) => joined(sound, elements, rail, target, isDead ? part : ''));
          return from.some((here) => here.has(one) && from.some((there) => there !== here && there.has(other)));
        };
        const live = loadsNamed(sound, elements, name).filter((each) => volts(sound, each) > 10);
        if (live.length > 0) expect(live.some(isFed), `${item.number} ${name}`).toBe(!isDead);
      }
    }
  });
});
