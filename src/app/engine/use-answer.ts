import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { engineFor } from './engine.ts';
import type { QuestionName, Questions } from './questions.ts';

/** The answer to a page's last question: stale answers never come here. */
export interface Answer<T> {
  /** The last answer; while a newer one is worked out it stays. */
  readonly answer: T | undefined;
  readonly state: 'idle' | 'busy' | 'ready' | 'failed';
}

/** Asks the ticket's engine one kind of question; a newer one puts the older out of date. Without a ticket nothing is answered. */
export function useAnswer<Name extends QuestionName>(
  ticket: Ticket | undefined,
  rig: RigData,
  name: Name,
): Answer<Questions[Name]['answer']> & {
  readonly ask: (ask: Questions[Name]['ask']) => Promise<Questions[Name]['answer'] | undefined>;
} {
  const [told, setTold] = useState<Answer<Questions[Name]['answer']>>({ answer: undefined, state: 'idle' });
  const newest = useRef(0);
  useEffect(
    () => () => {
      newest.current += 1;
    },
    [],
  );
  const ask = useCallback(
    async (question: Questions[Name]['ask']) => {
      if (ticket === undefined) return undefined;
      newest.current += 1;
      const mine = newest.current;
      setTold(({ answer }) => ({ answer, state: 'busy' }));
      try {
        const answer = await engineFor(ticket, rig).ask(name, question);
        if (mine !== newest.current) return undefined;
        setTold({ answer, state: 'ready' });
        return answer;
      } catch {
        if (mine === newest.current) setTold(({ answer }) => ({ answer, state: 'failed' }));
        return undefined;
      }
    },
    [ticket, rig, name],
  );
  return { ...told, ask };
}
