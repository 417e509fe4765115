import type { Ticket } from '../scenario/ticket.ts';

/** What the list of tickets shows of one. */
export type Listed = Pick<Ticket, 'id' | 'rig' | 'mode' | 'order' | 'told'>;

/**
 * The tickets in the order of the list, as they stand in their files: what proves a ticket sound is larger than the whole first page,
 * so the library does that, when one is opened.
 */
export const board: readonly Listed[] = Object.values(
  import.meta.glob<Listed>('/scenarios/tickets/*.json', { eager: true, import: 'default' }),
).sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));

export const isListed = (id: string): boolean => board.some((ticket) => ticket.id === id);
