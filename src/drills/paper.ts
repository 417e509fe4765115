/** Papers: questions that a lot decides, so that whoever has the rigs draws the same ones. */
import { randomOf, shuffled } from '../scenario/random.ts';
import { type Bank, PER_HOUSE } from './draw.ts';
import type { DrillKind, Item } from './item.ts';

/** One question of a paper, to be drawn. */
export interface Question {
  readonly kind: DrillKind;
  /** The first of these that has an item gives it: a small system has nothing to ask for some kinds. */
  readonly draws: readonly [Draw, ...Draw[]];
}

/** Where an item may come from. */
export interface Draw {
  readonly rig: string;
  /** Should it have none, the next ones are tried. */
  readonly number: number;
}

/** Between two questions of one kind in one house: numbers that may be tried for an item. */
const QUESTION_STEP = 4;
const QUESTIONS_PER_HOUSE = PER_HOUSE / QUESTION_STEP;
/** Systems that are tried for an item. */
const DRAWS = 3;
/** From a lot's house to its next one. */
const HOUSE_STEP = 1009;

/** So many questions of these kinds. */
export interface QuestionGroup {
  readonly kinds: readonly DrillKind[];
  readonly count: number;
}

/**
 * The questions of a lot, mixed. Each rig hangs in few houses of its own, so that a paper is soon drawn; no number of a kind comes twice.
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
      const { kind, rig } = inTurn[index % inTurn.length] as (typeof inTurn)[number];
      const round = Math.floor(index / inTurn.length);
      // No two questions come to the same number, whichever of their systems they are asked of.
      const draw = (spare: number): Draw => {
        const at = (rigs.indexOf(rig) + spare) % rigs.length;
        const house = at + rigs.length * (1000 + lot + HOUSE_STEP * (spare + DRAWS * Math.floor(round / QUESTIONS_PER_HOUSE)));
        return { rig: rigs[at] as string, number: house * PER_HOUSE + (round % QUESTIONS_PER_HOUSE) * QUESTION_STEP };
      };
      return { kind, draws: [draw(0), ...Array.from({ length: DRAWS - 1 }, (_, spare) => draw(spare + 1))] };
    });
  });
  return shuffled(random, paper);
}

/** The item of one draw; undefined where none of its numbers has one. */
export function drawnItem(bank: Bank, kind: DrillKind, { number }: Pick<Draw, 'number'>): Item | undefined {
  for (let tries = 0; tries < QUESTION_STEP; tries++) {
    const item = bank.item(kind, number + tries);
    if (item) return item;
  }
  return undefined;
}

/** The item of a question; undefined where none of its draws has one. @param bank over the paper's rigs, in their order */
export function itemOf(bank: Bank, { kind, draws }: Question): Item | undefined {
  for (const draw of draws) {
    const item = drawnItem(bank, kind, draw);
    if (item) return item;
  }
  return undefined;
}

/** The places of questions in the order in which they are soonest drawn: house by house, so that what is worked out for one serves the next. */
export const drawingOrder = (questions: readonly Question[]): number[] =>
  [...questions.keys()].sort((a, b) => (questions[a]?.draws[0].number ?? 0) - (questions[b]?.draws[0].number ?? 0));

/**
 * All items of a paper, by question; undefined where a question has none.
 * @param draw the item of a question
 */
export function itemsOf(
  questions: readonly Question[],
  draw: (question: Question, place: number) => Item | undefined,
): (Item | undefined)[] {
  const items = questions.map((): Item | undefined => undefined);
  for (const place of drawingOrder(questions)) items[place] = draw(questions[place] as Question, place);
  return items;
}
