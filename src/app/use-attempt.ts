import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { Action } from '../attempt/actions.ts';
import { type Attempt, begin, logOf, optionsOf, perform, replay, viewOf } from '../attempt/attempt.ts';
import type { BenchView, StepView } from '../attempt/view.ts';
import type { TicketFace } from '../classroom/protocol.ts';
import type { RigData } from '../rig/schema.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { isGuided } from './guided/choice.ts';
import { retell } from './retell.ts';
import { type StepTold, stepSpoken, tellStep } from './step-words.ts';
import {
  holdClosed,
  type Kept,
  type KeptAttempt,
  keepClosed,
  keepRunning,
  layAside,
  modeFor,
  readRunningSurely,
} from './storage.ts';
import { refusalText, t } from './words.ts';

/** What a bench shows of its ticket. */
export type JobFace = Pick<TicketFace, 'id' | 'rig' | 'mode' | 'told' | 'complaint' | 'weather' | 'rubric'>;

/** What a bench page needs of the running attempt. */
export interface Bench {
  /** What its trainee may know of the ticket, in the mode in which it is being worked on. */
  readonly ticket: JobFace;
  /** The same with what is wrong. Undefined where the world runs on a host: nothing that needs it can be asked here. */
  readonly whole: Ticket | undefined;
  /** What the naming offers beside each single lasting fault. */
  readonly naming: TicketFace['naming'];
  readonly rig: RigData;
  /** On the circuit of a debrief: nothing is scored or kept. */
  readonly free: boolean;
  readonly view: BenchView;
  /** Every step in words, as they stood when it was taken. */
  readonly told: readonly StepTold[];
  /** Every discrete action that is allowed now. */
  readonly options: readonly Action[];
  readonly act: (action: Action) => void;
  /** Why the last action was refused, in words; undefined when it was not. */
  readonly refused: string | undefined;
  /** What the last action brought, for the polite live region. */
  readonly said: string;
  readonly say: (words: string) => void;
  readonly kept: Kept;
  /** How the attempt came here: begun, taken up again, or begun because the kept log no longer replays. */
  readonly origin: 'begun' | 'resumed' | 'lost';
}

/** An attempt that is kept elsewhere than free practice is: an assigned one. It was begun, or taken up again, beforehand. */
export interface Keeper {
  readonly loaded: Loaded;
  /** Keeps the attempt after a step. */
  readonly keep: (attempt: Attempt) => Promise<Kept>;
  /** Whether no step is taken any more. */
  readonly isOver: () => boolean;
}

export interface Loaded {
  readonly ticket: Ticket;
  readonly attempt: Attempt;
  readonly told: readonly StepTold[];
  readonly origin: Bench['origin'];
  /** The store could not be read: what may lie in it is not written over. */
  readonly shut?: boolean;
}

function fresh(ticket: Ticket, rig: RigData, origin: Bench['origin'] = 'begun'): Loaded {
  return { ticket, attempt: begin(ticket, rig), told: [], origin };
}

/** The guide works beside the coach, whatever the trainee likes elsewhere. */
const modeToBegin = (ticket: Ticket): Ticket['mode'] =>
  ticket.mode !== 'graded' && isGuided(ticket.id) ? 'coached' : modeFor(ticket);

async function load(ticket: Ticket, rig: RigData): Promise<Loaded> {
  let kept: KeptAttempt | undefined;
  try {
    kept = await readRunningSurely(ticket.id);
  } catch {
    return { ...fresh({ ...ticket, mode: modeToBegin(ticket) }, rig), shut: true };
  }
  if (kept === undefined) return fresh({ ...ticket, mode: modeToBegin(ticket) }, rig);
  const job: Ticket = { ...ticket, mode: ticket.mode === 'graded' ? 'graded' : kept.mode };
  try {
    const { steps } = replay(job, rig, kept.log);
    const actions = steps.map((step) => step.action);
    return { ticket: job, ...retell(job, rig, actions), origin: 'resumed' };
  } catch {
    // Kept by another version, or damaged: told on the bench, laid aside, and the job starts anew.
    await layAside(ticket.id, kept);
    return fresh(job, rig, 'lost');
  }
}

/**
 * The attempt at a ticket: taken up where it was left, kept after every step.
 * @param keeper looks after it instead, from where it stands; it stays the same one
 * @param free a fresh attempt of which nothing is kept, to probe the circuit at leisure
 */
export function useAttempt(ticket: Ticket, rig: RigData, free = false, keeper?: Keeper): Bench | undefined {
  const [loaded, setLoaded] = useState<Loaded>();
  const [view, setView] = useState<BenchView>();
  const [told, setTold] = useState<readonly StepTold[]>([]);
  const [refused, setRefused] = useState<string>();
  const [said, setSaid] = useState('');
  const [kept, setKept] = useState<Kept>('kept');
  const options = useRef<{ readonly view: BenchView; readonly actions: readonly Action[] }>();

  useEffect(() => {
    let current = true;
    const loading = keeper
      ? Promise.resolve(keeper.loaded)
      : free
        ? Promise.resolve(fresh({ ...ticket, mode: 'practice' }, rig))
        : load(ticket, rig);
    void loading.then((result) => {
      if (!current) return;
      setLoaded(result);
      setView(viewOf(result.attempt));
      setTold(result.told);
      if (result.shut === true) setKept('failed');
    });
    return () => {
      current = false;
    };
  }, [ticket, rig, free, keeper]);

  const act = useCallback(
    (action: Action) => {
      if (loaded === undefined || keeper?.isOver() === true) return;
      const result = perform(loaded.attempt, action);
      if (!result.ok) {
        setRefused(refusalText(result.refusal));
        return;
      }
      const next = viewOf(loaded.attempt);
      setRefused(undefined);
      setView(next);
      setTold((before) => [...before, tellStep(next, result.step)]);
      setSaid(spoken(next, result.step));
      if (free) return;
      if (keeper !== undefined) {
        void keeper.keep(loaded.attempt).then(setKept);
        return;
      }
      const attempt = { mode: loaded.ticket.mode, log: logOf(loaded.attempt) };
      if (loaded.shut === true) {
        if (next.phase === 'closed') holdClosed(ticket.id, attempt);
        return;
      }
      void (next.phase === 'closed' ? keepClosed(ticket.id, attempt) : keepRunning(ticket.id, attempt)).then(setKept);
    },
    [loaded, ticket, free, keeper],
  );

  if (loaded === undefined || view === undefined) return undefined;
  if (options.current?.view !== view) options.current = { view, actions: optionsOf(loaded.attempt) };
  return {
    ticket: loaded.ticket,
    whole: loaded.ticket,
    naming: offeredIn(loaded.ticket),
    rig,
    free,
    view,
    told,
    options: options.current.actions,
    act,
    refused,
    said,
    say: setSaid,
    kept,
    origin: loaded.origin,
  };
}

const offeredIn = ({ suspects }: Ticket): TicketFace['naming'] => ({
  intermittents: suspects?.intermittents === true,
  pairs: (suspects?.pairs ?? []).length > 0,
});

/** What a step brought, with what was unsafe about it. */
export function spoken(view: BenchView, step: StepView): string {
  const unsafe = step.unsafe === undefined ? '' : ` ${t(`app:unsafe.${step.unsafe}`)}`;
  return `${stepSpoken(view, step)}.${unsafe}`;
}
