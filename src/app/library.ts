/**
 * The rigs and tickets that ship, and beside them the tickets that do not: guests, such as an instructor's own and assigned ones.
 *
 * To work on a ticket that is not in the library: check it (`checkTicket`), `const id = enrol(ticket, { key, home })`, and go to
 * `hrefOf('bench', id)`, or `'ticket'` for its page; `debrief`, `report` and `live` take the same id. The pages then find it here under
 * that id, also after a reload of the tab. The running and the last closed attempt are kept under that id (storage.ts: `readRunning`,
 * `readClosed`), apart from attempts at the shipped ticket, and stand neither in the progress nor in an exported file. The log names the
 * ticket by that id: whoever replays it on the ticket as it was puts the ticket's own id back. The same ticket and key are the same
 * guest, so an attempt goes on when it is enrolled again; another key (the assignment, the item, the number of the attempt) is
 * another attempt. `home` is where the debrief leads back to.
 */
import i18next from 'i18next';
import { createBench } from '../attempt/bench.ts';
import { digestOf } from '../classroom/digest.ts';
import { type Assembly, assemble } from '../rig/assemble.ts';
import { isDataError } from '../rig/errors.ts';
import type { RigData } from '../rig/schema.ts';
import { loadLibrary, rigFor } from '../scenario/library.ts';
import { symptomOf } from '../scenario/symptom.ts';
import { loadTicket, type Ticket } from '../scenario/ticket.ts';
import { guestOf, keepGuest } from './guests.ts';
import { nameWires } from './wire-names.ts';

/** Every rig and ticket that ships with the app. A bad file stops the start with its path: the checks keep that from shipping. */
export const library = loadLibrary(
  import.meta.glob('/scenarios/rigs/*.json', { eager: true, import: 'default' }),
  import.meta.glob('/scenarios/tickets/*.json', { eager: true, import: 'default' }),
);

const name = (): void => nameWires(library.rigs.values());
if (i18next.isInitialized) name();
i18next.on('languageChanged', name);
// The words for them may come after the rigs.
i18next.on('loaded', name);

/** The rigs that ship, by id, each as it left the factory. */
export const rigs: ReadonlyMap<string, RigData> = library.rigs;

export const tickets: readonly Ticket[] = library.tickets;

/** A ticket that ships, or a guest. */
export function findTicket(id: string): Ticket | undefined {
  return tickets.find((each) => each.id === id) ?? findGuest(id);
}

const guests = new Map<string, Ticket>();

function findGuest(id: string): Ticket | undefined {
  const known = guests.get(id);
  if (known !== undefined) return known;
  try {
    const ticket = loadTicket(guestOf(id)?.ticket);
    rigOf(ticket);
    guests.set(id, ticket);
    return ticket;
  } catch (error) {
    // Kept by another version, or damaged: as if it were not there.
    if (isDataError(error)) return undefined;
    throw error;
  }
}

interface Enrolling {
  /** Tells apart what shall not share an attempt. */
  readonly key?: string;
  readonly home: string;
  /** Keeps the pages that anybody may open from finding it. */
  readonly hidden?: boolean;
}

/**
 * Takes in a ticket that is not in the library: see above.
 * @returns the id under which every page finds it
 * @throws DataError where its rig is not there, or its house does not fit
 */
export function enrol(ticket: Ticket, { key = '', home, hidden = false }: Enrolling): string {
  rigOf(ticket);
  const id = `guest${digestOf([ticket, key])}`;
  keepGuest(id, {
    ticket: { ...ticket, id, ...(hasOwnWords(ticket) ? {} : { told: storyOf(ticket) }) },
    words: ticket.id,
    home,
    hidden,
  });
  return id;
}

/** Whether somebody wrote words for just this complaint: it ships so. */
function hasOwnWords({ id, rig, complaint }: Ticket): boolean {
  const shipped = tickets.find((each) => each.id === id && each.told === undefined);
  return shipped !== undefined && digestOf([shipped.rig, shipped.complaint]) === digestOf([rig, complaint]);
}

/** What the customer says: as the ticket has it, else what they can tell by living there with this fault. */
export function storyOf(ticket: Ticket): NonNullable<Ticket['told']> {
  if (ticket.told !== undefined) return ticket.told;
  const assembly = assembledOf(rigOf(ticket));
  return { ...symptomOf(createBench(assembly, ticket.faults, ticket), createBench(assembly, [], ticket)), voice: 1, job: 1 };
}

const hung = new WeakMap<Ticket, RigData>();

/** The rig that a ticket plays on, as it hangs in that ticket's house. */
export function rigOf(ticket: Ticket): RigData {
  const known = hung.get(ticket);
  if (known) return known;
  const rig = rigFor(library.rigs, ticket);
  hung.set(ticket, rig);
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

/** The ticket that follows, round and round. @param barred those that are passed over */
export function ticketAfter(id: string, barred: ReadonlySet<string>): Ticket | undefined {
  const after = tickets.findIndex((each) => each.id === id) + 1;
  return [...tickets.slice(after), ...tickets.slice(0, after)].find((each) => !barred.has(each.id));
}
