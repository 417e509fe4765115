/** What the browser keeps: the running attempt, the last closed one and the best score of each ticket, and a few habits. */
import { del, get, set } from 'idb-keyval';

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

export const keepRunning = (ticket: string, log: unknown): Promise<Kept> => write(running(ticket), log);
export const readRunning = (ticket: string): Promise<unknown> => read(running(ticket));
export const readClosed = (ticket: string): Promise<unknown> => read(closed(ticket));

/** Moves an attempt from running to closed: its log is kept for the debrief. */
export async function keepClosed(ticket: string, log: unknown): Promise<Kept> {
  const kept = await write(closed(ticket), log);
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
