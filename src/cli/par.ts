import { rigFor } from '../scenario/library.ts';
import type { Par } from '../score/debrief.ts';
import { yardstickFor } from '../score/score.ts';
import { shippedLibrary, ticketById } from './files.ts';

/** The short way of a shipped ticket: the reference way under its true fault. */
export function par(ticketId: string): Par {
  const library = shippedLibrary();
  const ticket = ticketById(library, ticketId);
  return yardstickFor(ticket, rigFor(library.rigs, ticket)).par;
}
