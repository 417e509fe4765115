import { type Assignment, type AssignmentItem, loadAssignment } from '../../classroom/assignment.ts';
import { papersOf } from '../../classroom/papers.ts';
import { isDataError } from '../../rig/errors.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { engineAlone } from '../engine/engine.ts';
import type { Fault } from '../engine/making.ts';
import { library, rigs, tickets } from '../library.ts';

/** Random numbers below 2³¹ from the browser's own source: what decides a draw must not be guessed. */
export function randomSeed(): number {
  return (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) >>> 1;
}

/** An assignment with nothing in it yet. */
export function newAssignment(seed: number): Assignment {
  return {
    format: 'bellwire-assignment',
    version: 1,
    id: `set-${seed.toString(36)}`,
    title: '',
    mode: 'graded',
    attempts: 1,
    seed,
    items: [],
  };
}

/** A draft's shape is an assignment's, but that title and tickets may be missing still. @throws DataError */
export function loadAssignmentDraft(json: unknown): Assignment {
  const draft = json as Assignment;
  const loaded = loadAssignment({
    ...draft,
    title: draft.title === '' ? '-' : draft.title,
    items: draft.items.length === 0 ? [{ kind: 'shipped', ticket: '-' }] : draft.items,
  });
  return { ...loaded, title: draft.title, items: draft.items.length === 0 ? [] : loaded.items };
}

/** The tickets that an item may give. */
export function ticketsOf(item: AssignmentItem): readonly Ticket[] {
  if (item.kind === 'drawn') return item.pool.map(({ ticket }) => ticket);
  if (item.kind === 'own') return [item.ticket];
  return tickets.filter(({ id }) => id === item.ticket);
}

/** The first of an assignment's tickets or exercises that does not stand, with its path; none where all do. */
export async function checkItems(assignment: Assignment): Promise<Fault | undefined> {
  try {
    papersOf(assignment, '', library);
  } catch (error) {
    if (!isDataError(error)) throw error;
    const { code, path, values } = error;
    return { code, path, values };
  }
  const { items } = assignment;
  for (const [index, item] of items.entries()) {
    const path = `items[${index}]`;
    if (item.kind === 'shipped') {
      if (ticketsOf(item).length === 0)
        return { code: 'classroom.noTicket', path: `${path}.ticket`, values: { ticket: item.ticket } };
      continue;
    }
    for (const [at, ticket] of ticketsOf(item).entries()) {
      const within = item.kind === 'own' ? `${path}.ticket` : `${path}.pool[${at}].ticket`;
      const rig = rigs.get(ticket.rig);
      if (rig === undefined) return { code: 'ticket.noRig', path: `${within}.rig`, values: { rig: ticket.rig } };
      const { error } = await engineAlone().ask('examine', { json: ticket, rig });
      if (error !== undefined) return { ...error, path: `${within}.${error.path}` };
    }
  }
  return undefined;
}
