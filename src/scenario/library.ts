import { type DataError, dataError, isDataError } from '../rig/errors.ts';
import { layHouse } from '../rig/house.ts';
import { loadRig } from '../rig/load.ts';
import type { RigData } from '../rig/schema.ts';
import { loadTicket, type Ticket } from './ticket.ts';

/** What is there to play: rigs, and tickets in the order in which they are listed. */
export interface Library {
  readonly rigs: ReadonlyMap<string, RigData>;
  readonly tickets: readonly Ticket[];
}

/**
 * Loads rigs and tickets, by the path of each file.
 * @throws DataError whose path begins with the file
 */
export function loadLibrary(rigs: Readonly<Record<string, unknown>>, tickets: Readonly<Record<string, unknown>>): Library {
  const loaded = new Map<string, RigData>();
  for (const [file, json] of Object.entries(rigs)) {
    const rig = inFile(file, () => loadRig(json));
    if (loaded.has(rig.id)) throw dataError('rig.twice', `${file} › id`, { id: rig.id });
    loaded.set(rig.id, rig);
  }
  const all = Object.entries(tickets).map(([file, json]) => {
    const ticket = inFile(file, () => loadTicket(json));
    if (!loaded.has(ticket.rig)) throw dataError('ticket.noRig', `${file} › rig`, { rig: ticket.rig });
    return ticket;
  });
  return { rigs: loaded, tickets: all.sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1)) };
}

/**
 * The rig that a ticket plays on, as it hangs in that ticket's house.
 * @throws DataError where there is no such rig, or the house does not fit it
 */
export function rigFor(rigs: ReadonlyMap<string, RigData>, ticket: Pick<Ticket, 'rig' | 'house'>): RigData {
  const rig = rigs.get(ticket.rig);
  if (!rig) throw dataError('ticket.noRig', 'rig', { rig: ticket.rig });
  return layHouse(rig, ticket.house);
}

/** Runs a check, and puts the file before the path of whatever it complains of. */
export function inFile<T>(file: string, check: () => T): T {
  try {
    return check();
  } catch (error) {
    if (isDataError(error)) throw Object.assign(error as DataError, { path: `${file} › ${error.path}` });
    throw error;
  }
}
