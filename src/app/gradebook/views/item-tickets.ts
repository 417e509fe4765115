import { begin, viewOf } from '../../../attempt/attempt.ts';
import type { BenchView } from '../../../attempt/view.ts';
import type { Assignment } from '../../../classroom/assignment.ts';
import { workWith } from '../../../classroom/draw.ts';
import type { Library } from '../../../scenario/library.ts';
import type { Ticket } from '../../../scenario/ticket.ts';

/** An item's ticket by its id, as it stands in the assignment or the library; undefined where it is none of the item's. */
export function ticketAt({ items }: Assignment, index: number, id: string, { tickets }: Library): Ticket | undefined {
  const item = items[index];
  if (item?.kind === 'own') return item.ticket.id === id ? item.ticket : undefined;
  if (item?.kind === 'drawn') return item.pool.find(({ ticket }) => ticket.id === id)?.ticket;
  return item?.ticket === id ? tickets.find((each) => each.id === id) : undefined;
}

/** The tickets of an item: one, or those that may be drawn. */
export function ticketsAt({ items }: Assignment, index: number, { tickets }: Library): readonly Ticket[] {
  const item = items[index];
  if (item?.kind === 'own') return [item.ticket];
  if (item?.kind === 'drawn') return item.pool.map(({ ticket }) => ticket);
  return tickets.filter(({ id }) => id === item?.ticket);
}

const views = new WeakMap<Ticket, BenchView>();

/**
 * A ticket's bench as it was found, for naming what is on it. Whoever reads of a pin later does not know which way its body lay: all
 * bodies lie on the mat, where each pin has its letter.
 */
export function namingView(assignment: Assignment, index: number, ticket: Ticket, library: Library): BenchView {
  const known = views.get(ticket);
  if (known) return known;
  const work = workWith(assignment, index, ticket, library);
  const found = viewOf(begin(work.ticket, work.rig));
  const view = { ...found, parts: found.parts.map((part) => (part.body === undefined ? part : { ...part, body: 'mat' as const })) };
  views.set(ticket, view);
  return view;
}
