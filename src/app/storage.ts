/** What the browser keeps: the running attempt, the last closed one and the best score of each ticket, and a few habits. */
import { JOB_MODES } from '../attempt/job.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { guestOf } from './guests.ts';
import { habitKey, mine, profileNow } from './keeping/profile-now.ts';
import type { Finished, Result } from './keeping/records.ts';
import { finishedKey, type Kept, onShelf, read, readAll, tryTransact } from './keeping/store.ts';

export type { Kept } from './keeping/store.ts';

const running = (ticket: string) => mine(`running:${ticket}`);
const closed = (ticket: string) => mine(`closed:${ticket}`);
const best = (ticket: string) => mine(`best:${ticket}`);
/** Counts the finished attempts: their order, whatever the clock says. */
const count = () => mine('count');

/** Closed attempts that the browser would not keep: the debrief can still be read while the tab lives. */
const unkept = new Map<string, KeptAttempt>();

/** A log, and the mode in which it was taken: a log alone does not say whether hints were allowed. */
export interface KeptAttempt {
  readonly mode: Ticket['mode'];
  readonly log: unknown;
}

/** What is kept of an attempt; a log of a form that is no longer kept comes back with the mode of a ticket that says nothing else. */
export function attemptIn(value: unknown): KeptAttempt | undefined {
  if (value === undefined) return undefined;
  const found = value as { readonly mode?: unknown; readonly log?: unknown } | null;
  const mode = JOB_MODES.find((each) => each === found?.mode);
  return mode === undefined ? { mode: 'practice', log: value } : { mode, log: found?.log };
}

async function readOr(key: string): Promise<unknown> {
  try {
    return await read(key);
  } catch {
    return undefined;
  }
}

export const keepRunning = (ticket: string, attempt: KeptAttempt): Promise<Kept> =>
  tryTransact([], () => new Map([[running(ticket), attempt]]));

export const readRunning = async (ticket: string): Promise<KeptAttempt | undefined> => attemptIn(await readOr(running(ticket)));

/** The same for the bench. @throws when the browser denies its storage */
export const readRunningSurely = async (ticket: string): Promise<KeptAttempt | undefined> => attemptIn(await read(running(ticket)));

/** Holds a closed attempt that cannot be kept for as long as the tab lives. */
export function holdClosed(ticket: string, attempt: KeptAttempt): void {
  unkept.set(closed(ticket), attempt);
}

/** Lays an attempt that cannot be taken up again aside, so that the next step does not write over it. */
export const layAside = (ticket: string, attempt: KeptAttempt): Promise<Kept> =>
  tryTransact([], () => new Map([[mine(`aside:${ticket}`), attempt]]));

export const readClosed = async (ticket: string): Promise<KeptAttempt | undefined> =>
  unkept.get(closed(ticket)) ?? attemptIn(await readOr(closed(ticket)));

/**
 * Moves an attempt from running to closed, in one transaction: its log is kept for the debrief and among the finished ones. At a guest
 * (see library.ts) it is kept for the debrief alone.
 */
export async function keepClosed(ticket: string, attempt: KeptAttempt): Promise<Kept> {
  const kept = await tryTransact([count()], (found) => {
    const moved = [[closed(ticket), attempt] as const, [running(ticket), undefined] as const];
    if (guestOf(ticket) !== undefined) return new Map<string, unknown>(moved);
    const number = Number(found.get(count()) ?? 0) + 1;
    const finished: Finished = { number, when: Date.now(), ticket, ...attempt };
    return new Map<string, unknown>([[count(), number], [mine(finishedKey(number)), finished], ...moved]);
  });
  if (kept === 'kept') unkept.delete(closed(ticket));
  else holdClosed(ticket, attempt);
  return kept;
}

/** A closed attempt, and its record among the finished ones; without one where the browser would not keep it. */
export interface ClosedAttempt {
  readonly attempt: KeptAttempt;
  readonly finished: Finished | undefined;
}

/** The attempt at a ticket that was finished as this number; without a number, the last one. */
export async function findClosed(ticket: string, number?: number): Promise<ClosedAttempt | undefined> {
  const all = (await readFinished().catch(() => [])).filter((each) => each.ticket === ticket);
  if (number !== undefined) {
    const finished = all.find((each) => each.number === number);
    return finished && { attempt: { mode: finished.mode, log: finished.log }, finished };
  }
  const attempt = await readClosed(ticket);
  if (attempt === undefined) return undefined;
  // An attempt that only this tab holds has no record: the last one there is belongs to an earlier attempt.
  return { attempt, finished: unkept.has(closed(ticket)) ? undefined : all.at(-1) };
}

/** Keeps the trainee's own words with a finished attempt; none take them away. */
export async function keepWords(number: number, words: string): Promise<Kept> {
  const key = mine(finishedKey(number));
  return tryTransact([key], (found) => {
    const finished = found.get(key) as Finished | undefined;
    if (finished === undefined) return new Map();
    const { words: _, ...rest } = finished;
    return new Map([[key, words === '' ? rest : { ...rest, words }]]);
  });
}

export async function dropRunning(ticket: string): Promise<void> {
  await tryTransact([], () => new Map([[running(ticket), undefined]]));
}

/** The finished attempts of the profile at work, in order. @throws when the browser denies its storage */
export async function readFinished(): Promise<readonly Finished[]> {
  // Fetched when it is needed: what checks the records is larger than all else that the first page loads.
  const { finishedIn } = await import('./keeping/records.ts');
  const shelf = new Map<string, unknown>();
  for (const [key, value] of await readAll()) {
    const own = onShelf(profileNow(), key);
    if (own !== undefined) shelf.set(own, value);
  }
  return finishedIn(shelf);
}

/** Whether anything has ever been begun or finished in the profile at work. What cannot be read counts as begun. */
export async function hasBegun(): Promise<boolean> {
  try {
    const own = [...(await readAll()).keys()].flatMap((key) => onShelf(profileNow(), key) ?? []);
    return own.some((key) => key === 'count' || /^(running|closed|finished):/.test(key));
  } catch {
    return true;
  }
}

/** Keeps what a finished attempt came to (0: one that has no record), and the ticket's best score. */
export async function keepResult({ number, ticket }: Pick<Finished, 'number' | 'ticket'>, result: Result): Promise<Kept> {
  const key = mine(finishedKey(number));
  return tryTransact([key, best(ticket)], (found) => {
    const finished = found.get(key) as Finished | undefined;
    const before = found.get(best(ticket));
    return new Map<string, unknown>([
      ...(finished === undefined ? [] : [[key, { ...finished, result }] as const]),
      [best(ticket), Math.max(result.total, typeof before === 'number' ? before : 0)],
    ]);
  });
}

export async function readBest(ticket: string): Promise<number | undefined> {
  const value = await readOr(best(ticket));
  return typeof value === 'number' ? value : undefined;
}

/** Habits that the browser would not remember: they hold while the tab lives. */
const unkeptHabits = new Map<string, string>();

/** Habits of somebody who is only passing through: this PC is not theirs, and nothing of them is written on it. */
let passing: Map<string, string> | undefined;

/** From now on habits begin anew and are held in memory alone, or, with `false`, are those of this PC again. */
export function passThrough(on: boolean): void {
  passing = on ? new Map() : undefined;
}

/** A habit (which bench, language, units), remembered where the browser allows it. */
export function habit(name: string, otherwise: string): string {
  if (passing !== undefined) return passing.get(name) ?? otherwise;
  const key = habitKey(profileNow(), name);
  try {
    return localStorage.getItem(key) ?? unkeptHabits.get(key) ?? otherwise;
  } catch {
    return unkeptHabits.get(key) ?? otherwise;
  }
}

export function keepHabit(name: string, value: string): void {
  if (passing !== undefined) {
    passing.set(name, value);
    return;
  }
  const key = habitKey(profileNow(), name);
  try {
    localStorage.setItem(key, value);
    unkeptHabits.delete(key);
  } catch {
    unkeptHabits.set(key, value);
  }
}

export function forgetHabit(name: string): void {
  if (passing !== undefined) {
    passing.delete(name);
    return;
  }
  const key = habitKey(profileNow(), name);
  unkeptHabits.delete(key);
  try {
    localStorage.removeItem(key);
  } catch {
    // Nothing is remembered here.
  }
}

/** How a ticket is worked on: as it says when it is graded, else as the trainee last chose. */
export function modeFor(ticket: Ticket): Ticket['mode'] {
  if (ticket.mode === 'graded') return 'graded';
  return habit('mode', ticket.mode) === 'coached' ? 'coached' : 'practice';
}

export const keepMode = (mode: 'coached' | 'practice'): void => keepHabit('mode', mode);
