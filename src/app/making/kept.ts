/** What is being made is kept while the tab lives, so that a play on the bench or a reload does not lose it. */
import type { Ticket } from '../../scenario/ticket.ts';
import { loadTicket } from '../../scenario/ticket.ts';

const keyOf = (name: string): string => `bellwire.making.${name}`;

export function keepMaking(name: string, value: unknown): void {
  try {
    sessionStorage.setItem(keyOf(name), JSON.stringify(value));
  } catch {
    // The page still has it.
  }
}

/** What was kept, where `load` takes it; undefined where there is nothing, or another version's. */
export function readMaking<T>(name: string, load: (json: unknown) => T): T | undefined {
  try {
    const text = sessionStorage.getItem(keyOf(name));
    return text === null ? undefined : load(JSON.parse(text));
  } catch {
    return undefined;
  }
}

/** A draft's shape is a ticket's, but that its lists may be empty. @throws DataError */
export function loadDraft(json: unknown): Ticket {
  const draft = json as Ticket;
  const { faults, complaint } = draft;
  const some = [{ part: 'none', sign: 'none', is: 0 }];
  const filled = loadTicket({
    ...draft,
    faults: faults.length === 0 ? [{ target: 'none', mode: 'none' }] : faults,
    complaint: {
      ...complaint,
      observed: complaint.observed.length === 0 ? some : complaint.observed,
      works: complaint.works.length === 0 ? some : complaint.works,
    },
  });
  return { ...filled, faults, complaint: { ...filled.complaint, observed: complaint.observed, works: complaint.works } };
}
