import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, begin, perform } from '../../src/attempt/attempt.ts';
import { shippedLibrary } from '../../src/cli/files.ts';
import type { RigData } from '../../src/rig/schema.ts';
import { rigFor } from '../../src/scenario/library.ts';
import type { Ticket } from '../../src/scenario/ticket.ts';

/** The rigs and tickets that ship, for tests. */
export const library = shippedLibrary();

/** The first shelf: tickets that have a solution written by hand (tests/score/solutions.ts). */
export const worked: readonly Ticket[] = library.tickets.filter((each) => each.order <= 100);

/** The first ticket of each rig. */
export const oneOfEachRig: readonly Ticket[] = library.tickets.filter(
  (each, index) => library.tickets.findIndex((other) => other.rig === each.rig) === index,
);

/** The first shelf, and one ticket of each other rig: for tests that are too slow for all. */
export const samples: readonly Ticket[] = [...new Set([...worked, ...oneOfEachRig])];

export function ticket(id: string): Ticket {
  const found = library.tickets.find((each) => each.id === id);
  if (!found) throw new Error(`no ticket ${id}`);
  return found;
}

const rigs = new Map<Ticket, RigData>();

export function rigOf(of: Ticket): RigData {
  const rig = rigs.get(of) ?? rigFor(library.rigs, of);
  rigs.set(of, rig);
  return rig;
}

export function start(id: string): Attempt {
  const found = ticket(id);
  return begin(found, rigOf(found));
}

/** Takes steps that must be possible. */
export function take(attempt: Attempt, ...actions: readonly Action[]): void {
  for (const action of actions) {
    const outcome = perform(attempt, action);
    if (!outcome.ok) throw new Error(`${JSON.stringify(action)} refused: ${outcome.refusal.code}`);
  }
}
