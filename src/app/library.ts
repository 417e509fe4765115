import i18next from 'i18next';
import { type Assembly, assemble } from '../rig/assemble.ts';
import type { RigData } from '../rig/schema.ts';
import { loadLibrary, rigFor } from '../scenario/library.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { nameWires } from './wire-names.ts';

/** Every rig and ticket that ships with the app. A bad file stops the start with its path: the checks keep that from shipping. */
const library = loadLibrary(
  import.meta.glob('/scenarios/rigs/*.json', { eager: true, import: 'default' }),
  import.meta.glob('/scenarios/tickets/*.json', { eager: true, import: 'default' }),
);

const name = (): void => nameWires(library.rigs.values());
if (i18next.isInitialized) name();
i18next.on('languageChanged', name);

export const tickets: readonly Ticket[] = library.tickets;

export function findTicket(id: string): Ticket | undefined {
  return tickets.find((each) => each.id === id);
}

const rigs = new WeakMap<Ticket, RigData>();

/** The rig that a ticket plays on, as it hangs in that ticket's house. */
export function rigOf(ticket: Ticket): RigData {
  const known = rigs.get(ticket);
  if (known) return known;
  const rig = rigFor(library.rigs, ticket);
  rigs.set(ticket, rig);
  return rig;
}

const assembled = new WeakMap<RigData, Assembly>();

/** A rig of the library, put together once. */
export function assembledOf(rig: RigData): Assembly {
  const known = assembled.get(rig);
  if (known) return known;
  const fresh = assemble(rig);
  assembled.set(rig, fresh);
  return fresh;
}

/** The ticket that follows, round and round. */
export function ticketAfter(id: string): Ticket | undefined {
  const index = tickets.findIndex((each) => each.id === id);
  return tickets[(index + 1) % tickets.length];
}
