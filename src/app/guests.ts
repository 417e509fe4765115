/**
 * Tickets that do not ship with Bellwire, while this tab lives: an instructor's own, and assigned ones. No schema in here, since the
 * first page loads it: library.ts takes them in, and checks them again when they are opened.
 */
import type { Ticket } from '../scenario/ticket.ts';

export interface Guest {
  /** As this tab kept it. */
  readonly ticket: Ticket;
  /** Whose words in locales/ it goes by: those of the shipped ticket that it was, or its own id. */
  readonly words: string;
  /** Where one goes from it when it is done: what stands behind the hash, `#/` and all. */
  readonly home: string;
  /** No page may be opened on it by its id: it is worked on where it was assigned. */
  readonly hidden?: boolean;
}

const KEY = 'bellwire.guests';
/** A tab keeps the last so many. */
const MOST = 40;

function read(): Map<string, Guest> {
  try {
    return new Map(JSON.parse(sessionStorage.getItem(KEY) ?? '[]') as [string, Guest][]);
  } catch {
    return new Map();
  }
}

let guests: Map<string, Guest> | undefined;
const all = (): Map<string, Guest> => (guests ??= read());

export const guestOf = (id: string): Guest | undefined => all().get(id);

/** Keeps a guest under an id that no shipped ticket has; where the tab may keep nothing, it holds until the page is loaded anew. */
export function keepGuest(id: string, guest: Guest): void {
  const kept = all();
  kept.delete(id);
  kept.set(id, guest);
  for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
  write(kept);
}

export function dropGuest(id: string): void {
  if (all().delete(id)) write(all());
}

function write(kept: ReadonlyMap<string, Guest>): void {
  try {
    sessionStorage.setItem(KEY, JSON.stringify([...kept]));
  } catch {
    // It is in memory.
  }
}

/** Whose words in locales/ a ticket goes by. */
export const wordsIdOf = (id: string): string => guestOf(id)?.words ?? id;
