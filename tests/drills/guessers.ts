/** People who know nothing of the circuit and go by the looks of the choices: a score by choice, the highest is their answer. */
import type { Item } from '../../src/drills/item.ts';
import type { Said } from '../../src/drills/said.ts';

export type Guesser = (item: Item) => readonly number[];

const value = (said: Said): number => {
  if (said.is === 'quantity' || said.is === 'number') return said.value;
  if (said.is !== 'reading') return 0;
  return { number: said.reading.value, overload: 1e12, live: -1, blank: -2, fuseOpen: -3 }[said.reading.kind];
};

/** What a choice is made of. */
const words = (said: Said): readonly string[] =>
  said.is === 'actions' ? said.actions.map((action) => JSON.stringify(action)) : (JSON.stringify(said).match(/[\w.:]+/g) ?? []);

const ranks = (item: Item): number[] => {
  const values = item.choices.map(({ said }) => value(said));
  return values.map((own) => values.filter((each) => each < own).length);
};

const shared = (a: readonly string[], b: readonly string[]): number => a.filter((word) => b.includes(word)).length;

/** In how many pairs of steps two orders agree. */
const inOrder = (a: readonly string[], b: readonly string[]): number =>
  a.flatMap((first, at) => a.slice(at + 1).filter((second) => b.indexOf(first) < b.indexOf(second))).length;

const likeness: Guesser = ({ choices }) => {
  const all = choices.map(({ said }) => words(said));
  const isOrder = choices.every(({ said }) => said.is === 'actions');
  return all.map((own, index) =>
    all.reduce((sum, other, at) => {
      if (at === index) return sum;
      return sum + (isOrder ? inOrder(own, other) : (2 * shared(own, other)) / (own.length + other.length));
    }, 0),
  );
};

const opposite =
  (guesser: Guesser): Guesser =>
  (item) =>
    guesser(item).map((score) => -score);

const lengths: Guesser = ({ choices }) => choices.map(({ said }) => words(said).length);

export const GUESSERS: Readonly<Record<string, Guesser>> = {
  smallest: (item) => ranks(item).map((rank) => (rank === 0 ? 1 : 0)),
  second: (item) => ranks(item).map((rank) => (rank === 1 ? 1 : 0)),
  third: (item) => ranks(item).map((rank) => (rank === 2 ? 1 : 0)),
  largest: (item) => ranks(item).map((rank) => (rank === item.choices.length - 1 ? 1 : 0)),
  longest: lengths,
  shortest: opposite(lengths),
  'most in common': likeness,
  'odd one out': opposite(likeness),
};

/** How often somebody is right; where several choices seem as good, each is as likely as the others. */
export function rightBy(guesser: Guesser, items: readonly Item[]): number {
  return items.reduce((sum, item) => {
    const scores = guesser(item);
    const best = Math.max(...scores);
    const taken = scores.flatMap((score, index) => (score === best ? [index] : []));
    return sum + (taken.includes(item.right) ? 1 / taken.length : 0);
  }, 0);
}
