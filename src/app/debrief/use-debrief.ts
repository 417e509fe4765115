import { useEffect, useState } from 'preact/hooks';
import type { Action } from '../../attempt/actions.ts';
import { type AttemptLog, replay, viewOf } from '../../attempt/attempt.ts';
import type { BenchView } from '../../attempt/view.ts';
import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import type { Debrief } from '../../score/debrief.ts';
import { engineFor, leaveEngine } from '../engine/engine.ts';
import { type Instruct, instructor } from '../instruct.ts';
import { resultOf } from '../keeping/records.ts';
import { retell } from '../retell.ts';
import type { StepTold } from '../step-words.ts';
import { findClosed, keepResult } from '../storage.ts';

/** A closed attempt with all that a page needs to tell of it. */
export interface Reviewed {
  readonly ticket: Ticket;
  readonly rig: RigData;
  readonly debrief: Debrief;
  readonly view: BenchView;
  /** Every step in words, as they stood when it was taken. */
  readonly told: readonly StepTold[];
  readonly shortWay: readonly StepTold[];
  readonly actions: readonly Action[];
  readonly instruct: Instruct;
}

export type DebriefState =
  | { readonly state: 'working' | 'none' | 'failed' }
  | { readonly state: 'ready'; readonly reviewed: Reviewed };

/** The debrief of the attempt that was finished as this number, else of the last one at the ticket, replayed from its log. */
export function useDebrief(ticket: Ticket, rig: RigData, number?: number): DebriefState {
  const [result, setResult] = useState<DebriefState>({ state: 'working' });
  useEffect(() => {
    let current = true;
    const start = async (): Promise<DebriefState> => {
      const found = await findClosed(ticket.id, number);
      if (found === undefined) return { state: 'none' };
      const { mode } = found.attempt;
      const log = found.attempt.log as AttemptLog;
      const job: Ticket = { ...ticket, mode };
      const working = engineFor(ticket, rig).ask('debrief', { log, mode });
      // The words are found meanwhile; if they are not, nobody will hear what the engine says.
      working.catch(() => undefined);
      const actions = replay(job, rig, log).steps.map((step) => step.action);
      const { attempt, told } = retell(job, rig, actions);
      const instruct = instructor(job, rig);
      const debrief = await working;
      void keepResult({ number: found.finished?.number ?? 0, ticket: ticket.id }, resultOf(debrief));
      const shortWay = retell(job, rig, debrief.par.actions).told;
      return {
        state: 'ready',
        reviewed: { ticket: job, rig, debrief, view: viewOf(attempt), told, shortWay, actions, instruct },
      };
    };
    start().then(
      (state) => current && setResult(state),
      () => current && setResult({ state: 'failed' }),
    );
    return () => {
      current = false;
      leaveEngine(ticket.id);
    };
  }, [ticket, rig, number]);
  return result;
}
