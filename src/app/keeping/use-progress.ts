import { useEffect, useState } from 'preact/hooks';
import type { AttemptLog } from '../../attempt/attempt.ts';
import { engineFor } from '../engine/engine.ts';
import { findTicket, rigOf } from '../library.ts';
import { keepResult, readFinished } from '../storage.ts';
import { type Finished, resultOf } from './records.ts';

export interface Progress {
  readonly state: 'loading' | 'denied' | 'ready';
  readonly finished: readonly Finished[];
  /** Attempts whose result is still being worked out. */
  readonly left: number;
  /** Attempts that no longer replay. */
  readonly unread: number;
}

/** The finished attempts; results that are missing (read in from a file, or never debriefed) are worked out one after the other. */
export function useProgress(again: number): Progress {
  const [progress, setProgress] = useState<Progress>({ state: 'loading', finished: [], left: 0, unread: 0 });
  useEffect(() => {
    let current = true;
    const work = async () => {
      let finished = await readFinished();
      const missing = finished.filter((each) => each.result === undefined);
      let left = missing.length;
      let unread = 0;
      const tell = () => current && setProgress({ state: 'ready', finished, left, unread });
      tell();
      // One ticket after the other, so that each is made ready once.
      for (const each of missing.toSorted((a, b) => a.ticket.localeCompare(b.ticket))) {
        if (!current) return;
        const ticket = findTicket(each.ticket);
        left -= 1;
        try {
          if (ticket === undefined) throw new Error(`no ticket ${each.ticket}`);
          const ask = { log: each.log as AttemptLog, mode: each.mode };
          const result = resultOf(await engineFor(ticket, rigOf(ticket)).ask('debrief', ask));
          await keepResult(each, result);
          finished = finished.map((other) => (other.number === each.number ? { ...other, result } : other));
        } catch {
          unread += 1;
        }
        tell();
      }
    };
    work().catch(() => current && setProgress({ state: 'denied', finished: [], left: 0, unread: 0 }));
    return () => {
      current = false;
    };
  }, [again]);
  return progress;
}
