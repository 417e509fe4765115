import { useEffect, useState } from 'preact/hooks';
import type { Paper } from '../../classroom/papers.ts';
import type { Item } from '../../drills/item.ts';
import { drawQuestion } from '../drills/draw-question.ts';

/** What this page has drawn, by paper and place; null where no system has anything to ask. */
const drawn = new Map<string, Item | null>();
const keyOf = ({ digest }: Paper, place: number) => `${digest} ${place}`;

/** After a worker has failed, milliseconds. */
const AGAIN = 2000;

/** Draws one of a paper's questions, unless it is there already. @throws when the worker has died */
export async function itemAt(paper: Paper, place: number): Promise<Item | null> {
  const key = keyOf(paper, place);
  const found = drawn.get(key);
  if (found !== undefined) return found;
  const question = paper.questions[place];
  const item = question === undefined ? null : await drawQuestion(question);
  drawn.set(key, item);
  return item;
}

/**
 * A paper's items: drawn one after another, beginning at a place, while the first are being read.
 * @returns by question; null where its systems have nothing to ask of the kind, undefined while it is drawn
 */
export function useItems(paper: Paper, from: number): readonly (Item | null | undefined)[] {
  const [, setTurn] = useState(0);
  useEffect(() => {
    let current = true;
    let waiting: ReturnType<typeof setTimeout> | undefined;
    const count = paper.questions.length;
    const draw = async () => {
      for (let step = 0; step < count; step++) {
        const place = (from + step) % count;
        if (drawn.has(keyOf(paper, place))) continue;
        await itemAt(paper, place);
        if (!current) return;
        setTurn((before) => before + 1);
      }
    };
    // A worker that has died is begun anew, and what it had drawn stays.
    const begin = (): void => {
      draw().catch(() => {
        if (current) waiting = setTimeout(begin, AGAIN);
      });
    };
    begin();
    return () => {
      current = false;
      clearTimeout(waiting);
    };
  }, [paper, from]);
  return paper.questions.map((_, place) => drawn.get(keyOf(paper, place)));
}
