import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { Action } from '../attempt/actions.ts';
import { type Attempt, begin, logOf, optionsOf, perform, replay, viewOf } from '../attempt/attempt.ts';
import type { BenchView, StepView } from '../attempt/view.ts';
import type { RigData } from '../rig/schema.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { retell } from './retell.ts';
import { type StepTold, stepSpoken, tellStep } from './step-words.ts';
import { type Kept, keepClosed, keepRunning, readRunning } from './storage.ts';
import { t } from './words.ts';

/** What a bench page needs of the running attempt. */
export interface Bench {
  readonly ticket: Ticket;
  readonly rig: RigData;
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

interface Loaded {
  readonly attempt: Attempt;
  readonly told: readonly StepTold[];
  readonly origin: Bench['origin'];
}

async function load(ticket: Ticket, rig: RigData): Promise<Loaded> {
  const log = await readRunning(ticket.id);
  if (log === undefined) return { attempt: begin(ticket, rig), told: [], origin: 'begun' };
  try {
    const { steps } = replay(ticket, rig, log);
    return {
      ...retell(
        ticket,
        rig,
        steps.map((step) => step.action),
      ),
      origin: 'resumed',
    };
  } catch {
    // Kept by another version, or damaged: told on the bench, and the job starts anew.
    return { attempt: begin(ticket, rig), told: [], origin: 'lost' };
  }
}

/** The attempt at a ticket: taken up where it was left, kept after every step. */
export function useAttempt(ticket: Ticket, rig: RigData): Bench | undefined {
  const [loaded, setLoaded] = useState<Loaded>();
  const [view, setView] = useState<BenchView>();
  const [told, setTold] = useState<readonly StepTold[]>([]);
  const [refused, setRefused] = useState<string>();
  const [said, setSaid] = useState('');
  const [kept, setKept] = useState<Kept>('kept');
  const options = useRef<{ readonly view: BenchView; readonly actions: readonly Action[] }>();

  useEffect(() => {
    let current = true;
    void load(ticket, rig).then((result) => {
      if (!current) return;
      setLoaded(result);
      setView(viewOf(result.attempt));
      setTold(result.told);
    });
    return () => {
      current = false;
    };
  }, [ticket, rig]);

  const act = useCallback(
    (action: Action) => {
      if (loaded === undefined) return;
      const result = perform(loaded.attempt, action);
      if (!result.ok) {
        setRefused(t(`refusal:${result.refusal.code}`, result.refusal.values));
        return;
      }
      const next = viewOf(loaded.attempt);
      setRefused(undefined);
      setView(next);
      setTold((before) => [...before, tellStep(next, result.step)]);
      setSaid(spoken(next, result.step));
      const log = logOf(loaded.attempt);
      void (next.phase === 'closed' ? keepClosed(ticket.id, log) : keepRunning(ticket.id, log)).then(setKept);
    },
    [loaded, ticket],
  );

  if (loaded === undefined || view === undefined) return undefined;
  if (options.current?.view !== view) options.current = { view, actions: optionsOf(loaded.attempt) };
  return {
    ticket,
    rig,
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

function spoken(view: BenchView, step: StepView): string {
  const unsafe = step.unsafe === undefined ? '' : ` ${t(`app:unsafe.${step.unsafe}`)}`;
  return `${stepSpoken(view, step)}.${unsafe}`;
}
