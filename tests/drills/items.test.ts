/** Items of every kind: drawn again from their numbers, unlike each other, and with exactly one right answer. BELLWIRE_FULL=1 draws more than 20,000. */
import { describe, expect, it } from 'vitest';
import { createBank } from '../../src/drills/draw.ts';
import { flawsOf, type Item, itemKey } from '../../src/drills/item.ts';
import { DRILL_KINDS } from '../../src/drills/kinds.ts';
import { saidApart } from '../../src/drills/said.ts';
import { benchOf } from '../../src/drills/setting.ts';
import { library } from '../scenario/shipped.ts';
import { wordKeys } from '../tools/locale-keys.ts';
import { GUESSERS, rightBy } from './guessers.ts';
import { MANY } from './worlds.ts';

const rigs = [...library.rigs.values()];
const FULL = process.env.BELLWIRE_FULL !== undefined;
const COUNT = FULL ? MANY : 20;
/** Every so many numbers, so that few items show many houses. */
const STRIDE = FULL ? 1 : 6;

/** What somebody who knows nothing of the circuit may be right more often than by chance. */
const MOST_ABOVE_CHANCE = 1.5;

/** All kinds in the same houses, each of which is lived through once. */
const bank = createBank(rigs);
/** By kind. */
const drawn = new Map<string, number>();

describe.each(DRILL_KINDS.map((kind) => [kind.id, kind] as const))('%s', (_, kind) => {
  const items: Item[] = [];
  it('gives items without a flaw, none twice, from most numbers', { timeout: 1_800_000 }, () => {
    const numbers = Array.from({ length: COUNT }, (_, index) => index * STRIDE);
    for (const number of numbers) {
      const item = bank.item(kind, number);
      if (item) items.push(item);
    }
    drawn.set(kind.id, items.length);
    expect(items.length).toBeGreaterThan(COUNT / 2);
    for (const item of items) expect(flawsOf(item), `${item.number}`).toEqual([]);
    expect(new Set(items.map(itemKey)).size).toBe(items.length);
    expect(new Set(items.map(({ scene }) => scene.rig)).size).toBeGreaterThan(2);
  });

  it.each(Object.entries(GUESSERS))('gives nothing away to who answers by the %s', (_name, guesser) => {
    // More often than half above chance, by more than two deviations of as many lots.
    const share = MOST_ABOVE_CHANCE / kind.choices;
    const most = items.length * share + 2 * Math.sqrt(items.length * share * (1 - share));
    expect(rightBy(guesser, items)).toBeLessThan(most);
  });

  it('gives the same item from the same number, whatever was drawn before', { timeout: 120_000 }, () => {
    const few = [...items].reverse().slice(0, 3);
    const again = createBank(rigs);
    expect(few.map(({ number }) => again.item(kind, number))).toEqual(few);
  });

  it('stands in a scene that can be put together anew', () => {
    for (const item of items.slice(0, 5)) {
      const plain = library.rigs.get(item.scene.rig)!;
      expect(benchOf(item.scene, plain).world.state.time).toBeGreaterThan(0);
    }
  });

  it('has words for all that its items say', () => {
    for (const language of ['en', 'es', 'fr']) {
      const words = wordKeys('.', language);
      const keys = items.flatMap(({ ask, given, why, choices }) => [
        `drill:kind.${kind.id}.ask.${ask.key}`,
        ...given.map(({ key }) => `drill:kind.${kind.id}.given.${key}`),
        ...why.map(({ key }) => `drill:kind.${kind.id}.why.${key}`),
        ...choices.flatMap(({ misconception }) => (misconception ? [`drill:misconception.${misconception}`] : [])),
      ]);
      expect([...new Set(keys)].filter((key) => !words.has(key))).toEqual([]);
    }
  });
});

it('come to two in three of all numbers, and to more than 20,000 of many', () => {
  const all = [...drawn.values()].reduce((sum, each) => sum + each, 0);
  expect(all, JSON.stringify(Object.fromEntries(drawn))).toBeGreaterThan(FULL ? 20_000 : (2 / 3) * COUNT * DRILL_KINDS.length);
});

describe('flaws', () => {
  const number = (value: number) => ({ is: 'number', value }) as const;
  const choice = (value: number, misconception?: 'nextDoor') => ({ said: number(value), misconception });
  it('are two right ones, none, a right one that is said to be wrong, and two alike', () => {
    expect(flawsOf({ choices: [choice(1), choice(2, 'nextDoor'), choice(3, 'nextDoor')], right: 0 })).toEqual([]);
    expect(flawsOf({ choices: [choice(1), choice(2), choice(3, 'nextDoor')], right: 0 })).toEqual(['oneRight']);
    expect(flawsOf({ choices: [choice(1), choice(2, 'nextDoor'), choice(3, 'nextDoor')], right: 1 })).toEqual(['right']);
    expect(flawsOf({ choices: [choice(1), choice(2, 'nextDoor'), choice(2, 'nextDoor')], right: 0 })).toEqual(['alike 1']);
    expect(flawsOf({ choices: [choice(1), choice(2, 'nextDoor')], right: 0 })).toEqual(['choices']);
  });

  it('of quantities go by what a sum by hand can tell', () => {
    const volts = (value: number) => ({ is: 'quantity', value, unit: 'V' }) as const;
    expect(saidApart(volts(1), volts(1.05))).toBe(false);
    expect(saidApart(volts(1), volts(1.2))).toBe(true);
  });
});
