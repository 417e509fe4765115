import { useEffect, useState } from 'preact/hooks';
import { type AttemptLog, replay, viewOf } from '../../attempt/attempt.ts';
import type { BenchView } from '../../attempt/view.ts';
import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import type { Debrief } from '../../score/debrief.ts';
import { retell } from '../retell.ts';
import type { StepTold } from '../step-words.ts';
import { keepBest, readClosed } from '../storage.ts';
import type { Job } from './work.ts';

export type DebriefState =
  | { readonly state: 'working' | 'none' | 'failed' }
  | {
      readonly state: 'ready';
      readonly debrief: Debrief;
      readonly view: BenchView;
      readonly told: readonly StepTold[];
      readonly shortWay: readonly StepTold[];
    };

/** The debrief of the last closed attempt at a ticket, replayed from its log. */
export function useDebrief(ticket: Ticket, rig: RigData): DebriefState {
  const [result, setResult] = useState<DebriefState>({ state: 'working' });
  useEffect(() => {
    const worker = new Worker(new URL('./work.ts', import.meta.url), { type: 'module' });
    const start = async () => {
      const log = (await readClosed(ticket.id)) as AttemptLog | undefined;
      if (log === undefined) {
        setResult({ state: 'none' });
        return;
      }
      const actions = replay(ticket, rig, log).steps.map((step) => step.action);
      const { attempt, told } = retell(ticket, rig, actions);
      const view = viewOf(attempt);
      worker.onmessage = (event: MessageEvent<Debrief>) => {
        void keepBest(ticket.id, event.data.total);
        const shortWay = retell(ticket, rig, event.data.par.actions).told;
        setResult({ state: 'ready', debrief: event.data, view, told, shortWay });
      };
      worker.onerror = () => setResult({ state: 'failed' });
      worker.postMessage({ ticket, rig, log } satisfies Job);
    };
    start().catch(() => setResult({ state: 'failed' }));
    return () => worker.terminate();
  }, [ticket, rig]);
  return result;
}
