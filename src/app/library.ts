import i18next from 'i18next';
import { type Assembly, assemble } from '../rig/assemble.ts';
import type { RigData } from '../rig/schema.ts';
import { loadLibrary } from '../scenario/library.ts';
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

/** The rig that a ticket plays on. */
export function rigOf(ticket: Ticket): RigData {
  const rig = library.rigs.get(ticket.rig);
  if (rig === undefined) throw new Error(`no rig ${ticket.rig}`);
  return rig;
}

const assembled = new Map<string, Assembly>();

/** A rig of the library, put together once. */
export function assembledOf(rig: RigData): Assembly {
  const known = assembled.get(rig.id);
  if (known?.rig === rig) return known;
  const fresh = assemble(rig);
  assembled.set(rig.id, fresh);
  return fresh;
}

/** The ticket that follows, round and round. */
export function ticketAfter(id: string): Ticket | undefined {
  const index = tickets.findIndex((each) => each.id === id);
  return tickets[(index + 1) % tickets.length];
}
