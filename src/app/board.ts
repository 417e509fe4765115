import { GRADES, type Grade } from '../scenario/grade.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { guestOf } from './guests.ts';
import measures from './measures.json';

/** What the list of tickets shows of one; tests/tools/first-page.ts takes it out of the file. */
export type Listed = Pick<Ticket, 'id' | 'rig' | 'mode' | 'order' | 'told' | 'skills'>;

/**
 * The tickets in the order of the list, as they stand in their files: what proves a ticket sound is larger than the whole first page,
 * so the library does that, when one is opened.
 */
export const board: readonly Listed[] = Object.values(
  import.meta.glob<Listed>('/scenarios/tickets/*.json', { eager: true, import: 'default', query: '?listed' }),
).sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));

export const isListed = (id: string): boolean => board.some((ticket) => ticket.id === id);

/** Whether a page may be opened on it: it ships, or it is a guest (see library.ts). */
export const isThere = (id: string): boolean => isListed(id) || (guestOf(id) ?? { hidden: true }).hidden !== true;

/** The short way of a ticket and how hard it is, worked out beforehand (tests/tools/measures.ts); undefined for one that is newer. */
export function measureOf(id: string): { readonly seconds: number; readonly grade: Grade } | undefined {
  return (measures as Readonly<Record<string, { readonly seconds: number; readonly grade: Grade }>>)[id];
}

/** The plainest first; those of one grade in the order in which they are listed, and last what was not measured. */
export function byGrade<T extends Pick<Listed, 'id'>>(tickets: readonly T[]): readonly T[] {
  return [...GRADES, undefined].flatMap((grade) => tickets.filter(({ id }) => measureOf(id)?.grade === grade));
}

/** The tickets of each rig, in the order in which they are listed. */
export function byRig(tickets: readonly Listed[]): ReadonlyMap<string, readonly Listed[]> {
  const groups = new Map<string, Listed[]>();
  for (const ticket of tickets) groups.set(ticket.rig, [...(groups.get(ticket.rig) ?? []), ticket]);
  return groups;
}
