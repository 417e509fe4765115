import { dataError } from '../rig/errors.ts';
import type { RigData } from '../rig/schema.ts';
import { type Library, rigFor } from '../scenario/library.ts';
import type { Ticket } from '../scenario/ticket.ts';
import type { Assignment, AssignmentItem } from './assignment.ts';
import { hashOf } from './digest.ts';

/** Drawn tickets are as hard as each other: the longest short way takes at most this share more than the shortest. */
export const PAR_SPREAD = 0.15;

/** One ticket of an assignment as one trainee gets it. */
export interface Work {
  /** Place in the assignment's items. */
  readonly item: number;
  /** In the assignment's mode, by its rubric. */
  readonly ticket: Ticket;
  readonly rig: RigData;
}

/** A number from 0 up to 1 that follows from the assignment and the trainee, and is another for every item. */
export function lotOf(assignment: Pick<Assignment, 'id' | 'seed'>, trainee: string, item: number): number {
  return Number.parseInt(hashOf(`${assignment.id} ${assignment.seed} ${trainee} ${item}`).slice(0, 12), 16) / 2 ** 48;
}

/**
 * What a trainee is given: the same whenever, and wherever, it is asked for.
 * @throws DataError where an item names a ticket or rig that is not there, or a house that does not fit
 */
export function workOf(assignment: Assignment, trainee: string, library: Library): Work[] {
  return assignment.items.map((_, item) => workWith(assignment, item, drawnFor(assignment, trainee, item, library), library));
}

/** The ticket that a trainee draws, as it stands in the assignment or the library. @throws DataError where there is none */
export function drawnFor(assignment: Assignment, trainee: string, index: number, library: Library): Ticket {
  const item = assignment.items[index];
  if (!item) throw dataError('data.shape', `items[${index}]`);
  return ticketOf(item, lotOf(assignment, trainee, index), library, `items[${index}]`);
}

/** A drawn ticket in the assignment's mode, by its rubric, on its rig. @throws DataError where there is no such rig */
export function workWith(assignment: Assignment, item: number, drawn: Ticket, library: Library): Work {
  const rubric = assignment.rubric ?? drawn.rubric;
  const ticket: Ticket = { ...drawn, mode: assignment.mode, ...(rubric ? { rubric } : {}) };
  return { item, ticket, rig: rigFor(library.rigs, ticket) };
}

function ticketOf(item: AssignmentItem, lot: number, library: Library, path: string): Ticket {
  switch (item.kind) {
    case 'own':
      return item.ticket;
    case 'shipped': {
      const found = library.tickets.find((each) => each.id === item.ticket);
      if (!found) throw dataError('classroom.noTicket', `${path}.ticket`, { ticket: item.ticket });
      return found;
    }
    case 'drawn': {
      const drawn = item.pool[Math.floor(lot * item.pool.length)];
      if (!drawn) throw dataError('data.shape', `${path}.pool`);
      return drawn.ticket;
    }
  }
}

/**
 * Of tickets with known short ways, the most that are as hard as each other, by {@link PAR_SPREAD}; in order of the short way.
 * Of equally many, the quickest.
 */
export function matched<T extends { readonly seconds: number }>(measured: readonly T[], spread = PAR_SPREAD): T[] {
  const sorted = [...measured].sort((a, b) => a.seconds - b.seconds);
  let best: T[] = [];
  sorted.forEach((first, from) => {
    const within = sorted.slice(from).filter(({ seconds }) => seconds <= first.seconds * (1 + spread));
    if (within.length > best.length) best = within;
  });
  return best;
}
