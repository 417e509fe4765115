import { useEffect, useState } from 'preact/hooks';
import { replay, viewOf } from '../../attempt/attempt.ts';
import type { BenchView } from '../../attempt/view.ts';
import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { reportOf, type ServiceReport } from '../../score/report.ts';
import { profileNow } from '../keeping/profile-now.ts';
import { profiles } from '../keeping/profiles.ts';
import { retell } from '../retell.ts';
import type { StepTold } from '../step-words.ts';
import { findClosed } from '../storage.ts';
import type { JobFace } from '../use-attempt.ts';

/** A report with all that a page needs to put it in words. */
export interface Reported {
  readonly ticket: JobFace;
  readonly rig: RigData;
  readonly report: ServiceReport;
  readonly view: BenchView;
  /** Every step in words, as they stood when it was taken. */
  readonly told: readonly StepTold[];
  /** Number of the finished attempt's record; undefined where the browser keeps none. */
  readonly number: number | undefined;
  /** What the trainee wrote before. */
  readonly words: string;
  /** Who is at work; empty when the profile has no name. */
  readonly name: string;
}

export type ReportState =
  | { readonly state: 'working' | 'none' | 'failed' }
  | { readonly state: 'ready'; readonly reported: Reported };

/** The report of an attempt by its log. @throws DataError where the log does not replay */
export function reportedOf(ticket: Ticket, rig: RigData, log: unknown): Omit<Reported, 'number' | 'words' | 'name'> {
  const attempt = replay(ticket, rig, log);
  const { told } = retell(
    ticket,
    rig,
    attempt.steps.map((step) => step.action),
  );
  return { ticket, rig, report: reportOf(attempt), view: viewOf(attempt), told };
}

/** The report of the attempt that was finished as this number, else of the last one at the ticket. */
export function useReport(ticket: Ticket, rig: RigData, number?: number): ReportState {
  const [result, setResult] = useState<ReportState>({ state: 'working' });
  useEffect(() => {
    let current = true;
    const start = async (): Promise<ReportState> => {
      const found = await findClosed(ticket.id, number);
      if (found === undefined) return { state: 'none' };
      const name = (await profiles().catch(() => [])).find((each) => each.id === profileNow())?.name ?? '';
      const job: Ticket = { ...ticket, mode: found.attempt.mode };
      const { finished } = found;
      return {
        state: 'ready',
        reported: {
          ...reportedOf(job, rig, found.attempt.log),
          number: finished?.number,
          words: finished?.words ?? '',
          name,
        },
      };
    };
    start().then(
      (state) => current && setResult(state),
      () => current && setResult({ state: 'failed' }),
    );
    return () => {
      current = false;
    };
  }, [ticket, rig, number]);
  return result;
}
