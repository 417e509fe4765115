import { useEffect, useRef } from 'preact/hooks';
import type { AttemptLog } from '../../attempt/attempt.ts';
import { engineFor } from '../engine/engine.ts';
import { itemStatus, tellsScore } from './status.ts';
import { amendWork } from './store.ts';
import { guestFor, type Taken } from './use-assigned.ts';

/** Works out, one after another, the scores that may be told and are not yet, and keeps them. */
export function useScores(taken: Taken, now: number, onChange: () => Promise<void>): void {
  const tried = useRef(new Set<string>());
  const { assigned, works, kept } = taken;
  const { assignment } = assigned;
  const due = works
    .flatMap((work) => {
      const status = itemStatus(
        assignment,
        kept.filter((each) => each.item === work.item),
        now,
      );
      return tellsScore(assignment, status, now) ? status.ended.map((each) => ({ work, each })) : [];
    })
    .find(({ each }) => each.shown === undefined && !tried.current.has(`${each.item} ${each.number}`));
  const key = due && `${due.each.item} ${due.each.number}`;
  useEffect(() => {
    if (due === undefined || key === undefined) return;
    const { work, each } = due;
    tried.current.add(key);
    const ticket = { ...work.ticket, id: guestFor(assigned, work, each.number) };
    const score = async () => {
      const { total } = await engineFor(ticket, work.rig).ask('debrief', {
        log: each.log as unknown as AttemptLog,
        mode: ticket.mode,
      });
      // What is handed in from now on says it.
      await amendWork(assigned.id, each, { shown: total, saved: false });
    };
    // One that cannot be worked out is handed in without; the grader works it out anew anyhow.
    void score()
      .catch(() => undefined)
      .then(onChange);
  }, [key]);
}
