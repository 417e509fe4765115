/** Papers: questions that a lot decides, so that whoever has the rigs draws the same ones. */
import { randomOf, shuffled } from '../scenario/random.ts';
import { type Bank, PER_HOUSE } from './draw.ts';
import type { DrillKind, Item } from './item.ts';

/** One question of a paper, to be drawn. */
export interface Question {
  readonly kind: DrillKind;
  readonly rig: string;
  /** Of the item; should that number have none, of the next one that has. */
  readonly number: number;
}

/** Between two questions of one kind in one house: numbers that may be tried for an item. */
const QUESTION_STEP = 4;

/** So many questions of these kinds. */
export interface QuestionGroup {
  readonly kinds: readonly DrillKind[];
  readonly count: number;
}

/**
 * The questions of a lot, mixed. Each rig hangs in one house of its own, so that a paper is soon drawn; no number of a kind comes twice.
 * @param rigs ids in order; the same for everybody who draws the paper
 * @param lot 0 … 1,000,000
 */
export function questionsOf(groups: readonly QuestionGroup[], rigs: readonly string[], lot: number): Question[] {
  const random = randomOf(lot);
  const paper = groups.flatMap(({ kinds, count }) => {
    const own = shuffled(
      random,
      kinds.flatMap((kind) => rigs.map((rig) => ({ kind, rig }))),
    );
    // Kinds take turns, and so do the rigs within each.
    const turns = new Map<DrillKind, number>();
    const inTurn = own
      .map((each) => {
        const turn = turns.get(each.kind) ?? 0;
        turns.set(each.kind, turn + 1);
        return { ...each, turn };
      })
      .sort((a, b) => a.turn - b.turn);
    return Array.from({ length: count }, (_, index): Question => {
      const { kind, rig } = inTurn[index % inTurn.length] as Omit<Question, 'number'>;
      const house = rigs.indexOf(rig) + rigs.length * (1000 + lot);
      return { kind, rig, number: house * PER_HOUSE + Math.floor(index / inTurn.length) * QUESTION_STEP };
    });
  });
  return shuffled(random, paper);
}

/** The item of a question; undefined where none of its numbers has one. */
export function itemOf(bank: Bank, { kind, number }: Pick<Question, 'kind' | 'number'>): Item | undefined {
  for (let tries = 0; tries < QUESTION_STEP; tries++) {
    const item = bank.item(kind, number + tries);
    if (item) return item;
  }
  return undefined;
}
