import { useEffect, useState } from 'preact/hooks';
import { mine } from '../keeping/profile-now.ts';
import { EXAMS, read } from '../keeping/store.ts';

/** The tickets that the exam under way sets, of the profile at work. None where nothing can be read. */
export async function readExamTickets(): Promise<ReadonlySet<string>> {
  try {
    const kept = await read(mine(EXAMS));
    if (kept === undefined) return new Set();
    // Fetched when there is something to read: what checks it is larger than all else that the first page loads.
    const { ticketsSet } = await import('./exam-under-way.ts');
    return ticketsSet(kept, Date.now());
  } catch {
    return new Set();
  }
}

/** The same; undefined until it is known. */
export function useExamTickets(): ReadonlySet<string> | undefined {
  const [tickets, setTickets] = useState<ReadonlySet<string>>();
  useEffect(() => {
    let current = true;
    void readExamTickets().then((found) => current && setTickets(found));
    return () => {
      current = false;
    };
  }, []);
  return tickets;
}
