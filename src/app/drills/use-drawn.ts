import { useEffect, useRef, useState } from 'preact/hooks';
import type { Item } from '../../drills/item.ts';
import type { Question } from '../../drills/paper.ts';
import { drawQuestion } from './draw-question.ts';

/** After a worker has failed, milliseconds. */
const AGAIN = 2000;

/**
 * A paper's questions, drawn one after another while the first are being read: null where its systems have nothing to ask of the kind,
 * undefined while it is drawn.
 */
export function useDrawn(paper: readonly Question[]): readonly (Item | null | undefined)[] {
  const [items, setItems] = useState<readonly (Item | null | undefined)[]>(() => paper.map(() => undefined));
  const drawn = useRef(new Set<number>());
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    let current = true;
    const draw = async () => {
      for (const [place, question] of paper.entries()) {
        if (drawn.current.has(place)) continue;
        const item = await drawQuestion(question);
        if (!current) return;
        drawn.current.add(place);
        setItems((before) => before.map((each, index) => (index === place ? item : each)));
      }
    };
    let waiting: ReturnType<typeof setTimeout>;
    // A worker that has died is begun anew, and what it had drawn stays.
    draw().catch(() => {
      waiting = setTimeout(() => setTurn((before) => before + 1), AGAIN);
    });
    return () => {
      current = false;
      clearTimeout(waiting);
    };
  }, [paper, turn]);
  return items;
}
