/** What the browser keeps: the running attempt, the last closed one and the best score of each ticket, and a few habits. */
import { del, get, set } from 'idb-keyval';
import { TICKET_MODES, type Ticket } from '../scenario/ticket.ts';

/** How a write went. A failure is told to the trainee; the attempt goes on. */
export type Kept = 'kept' | 'failed';

const running = (ticket: string) => `running:${ticket}`;
const closed = (ticket: string) => `closed:${ticket}`;
const best = (ticket: string) => `best:${ticket}`;

async function write(key: string, value: unknown): Promise<Kept> {
  try {
    await set(key, value);
    return 'kept';
  } catch {
    return 'failed';
  }
}

async function read(key: string): Promise<unknown> {
  try {
    return await get(key);
  } catch {
    return undefined;
  }
}

/** A log, and the mode in which it was taken: a log alone does not say whether hints were allowed. */
export interface KeptAttempt {
  readonly mode: Ticket['mode'];
  readonly log: unknown;
}

/** What is kept of an attempt; a log of a form that is no longer kept comes back with the mode of a ticket that says nothing else. */
function attemptIn(value: unknown): KeptAttempt | undefined {
  if (value === undefined) return undefined;
  const found = value as { readonly mode?: unknown; readonly log?: unknown } | null;
  const mode = TICKET_MODES.find((each) => each === found?.mode);
  return mode === undefined ? { mode: 'practice', log: value } : { mode, log: found?.log };
}

export const keepRunning = (ticket: string, attempt: KeptAttempt): Promise<Kept> => write(running(ticket), attempt);
export const readRunning = async (ticket: string): Promise<KeptAttempt | undefined> => attemptIn(await read(running(ticket)));
export const readClosed = async (ticket: string): Promise<KeptAttempt | undefined> => attemptIn(await read(closed(ticket)));

/** Moves an attempt from running to closed: its log is kept for the debrief. */
export async function keepClosed(ticket: string, attempt: KeptAttempt): Promise<Kept> {
  const kept = await write(closed(ticket), attempt);
  if (kept === 'kept') await dropRunning(ticket);
  return kept;
}

export async function dropRunning(ticket: string): Promise<void> {
  try {
    await del(running(ticket));
  } catch {
    // Nothing was kept, so nothing is left to drop.
  }
}

export async function readBest(ticket: string): Promise<number | undefined> {
  const value = await read(best(ticket));
  return typeof value === 'number' ? value : undefined;
}

export async function keepBest(ticket: string, score: number): Promise<void> {
  const before = await readBest(ticket);
  if (before === undefined || score > before) await write(best(ticket), score);
}

/** A habit (which bench, sound on or off, single keys), remembered where the browser allows it. */
export function habit(name: string, otherwise: string): string {
  try {
    return localStorage.getItem(`bellwire.${name}`) ?? otherwise;
  } catch {
    return otherwise;
  }
}

export function keepHabit(name: string, value: string): void {
  try {
    localStorage.setItem(`bellwire.${name}`, value);
  } catch {
    // A browser that remembers nothing still plays.
  }
}

/** How a ticket is worked on: as it says when it is graded, else as the trainee last chose. */
export function modeFor(ticket: Ticket): Ticket['mode'] {
  if (ticket.mode === 'graded') return 'graded';
  return habit('mode', ticket.mode) === 'coached' ? 'coached' : 'practice';
}

export const keepMode = (mode: 'coached' | 'practice'): void => keepHabit('mode', mode);
