/** Where the right choice stands among those that are taken, over many lots, whatever it is drafted with. */
import { describe, expect, it } from 'vitest';
import { choicesOf, placesByLot } from '../../src/drills/choices.ts';
import type { Draft, Item } from '../../src/drills/item.ts';
import type { Said } from '../../src/drills/said.ts';
import { randomOf, shuffled } from '../../src/scenario/random.ts';
import { GUESSERS, rightBy } from './guessers.ts';

const volts = (value: number): Said => ({ is: 'quantity', value, unit: 'V' });
const terminals = (letters: string): Said => ({ is: 'points', points: [...letters].map((letter) => `stat.${letter}`) });

const DRAFTS: Readonly<Record<string, Pick<Draft, 'right' | 'wrong'>>> = {
  'a number with more beliefs above it than below': {
    right: volts(10),
    wrong: [14, 20, 28, 40, 5, 7, 2.5].map((value) => ({ said: volts(value), misconception: 'peak' as const })),
  },
  'a set drafted with one more, one less and others': {
    right: terminals('YG'),
    wrong: ['Y', 'G', 'YGW', 'WG', 'W', 'WE', 'WEB', 'E'].map((set) => ({
      said: terminals(set),
      misconception: 'otherCall' as const,
    })),
  },
};

const COUNT = 400;
const CHOICES = 4;

describe.each(Object.entries(DRAFTS))('%s', (_name, draft) => {
  const items = Array.from({ length: COUNT }, (_, number) => {
    const random = randomOf(number);
    const offer = choicesOf(draft as Draft, CHOICES, placesByLot(random))!;
    const choices = shuffled(random, [{ said: draft.right, misconception: undefined }, ...offer.wrong]);
    return { choices, right: choices.findIndex(({ misconception }) => misconception === undefined) } as unknown as Item;
  });

  it.each(Object.entries(GUESSERS))('gives nothing away to who answers by the %s', (_guess, guesser) => {
    expect(rightBy(guesser, items) / COUNT).toBeLessThan(1.5 / CHOICES);
  });
});
