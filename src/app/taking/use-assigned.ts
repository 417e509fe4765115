import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import { type Work, workOf } from '../../classroom/draw.ts';
import { type Paper, papersOf } from '../../classroom/papers.ts';
import { enrol, library } from '../library.ts';
import { assignedHref } from '../router.ts';
import type { Assigned, KeptPaper, KeptWork } from './records.ts';
import { rulesFor, settled } from './status.ts';
import { amendPaper, amendWork, readAssigned, readPapers, readWorks } from './store.ts';

/** The clock on the wall, seconds since 1970. */
export const wallClock = (): number => Date.now() / 1000;

/** The wall clock, told anew every second. */
export function useNow(): number {
  const [now, setNow] = useState(wallClock);
  useEffect(() => {
    const timer = setInterval(() => setNow(wallClock()), 1000);
    return () => clearInterval(timer);
  }, []);
  return now;
}

/** The id under which the pages find the ticket of one attempt. */
export function guestFor(assigned: Assigned, { item, ticket }: Work, number: number, hidden = true): string {
  return enrol(ticket, { key: `${assigned.id} ${item} ${number}`, home: assignedHref(assigned.id), hidden });
}

export interface Taken {
  readonly assigned: Assigned;
  readonly works: readonly Work[];
  /** Settled when they were read. */
  readonly kept: readonly KeptWork[];
  readonly papers: readonly Paper[];
  /** Attempts at the papers, settled too. */
  readonly keptPapers: readonly KeptPaper[];
}

async function settledPaper(id: string, rules: ReturnType<typeof rulesFor>, kept: KeptPaper): Promise<KeptPaper> {
  const now = settled(rules, kept, wallClock());
  if (now.ended !== undefined && kept.ended === undefined) await amendPaper(id, kept, { ended: now.ended });
  return now;
}

/** All that is kept of an assignment; an attempt whose time ran out meanwhile is ended. @throws when the browser denies its storage */
export async function readTaken(id: string): Promise<Taken | undefined> {
  const assigned = await readAssigned(id);
  if (assigned === undefined) return undefined;
  const { assignment, trainee } = assigned;
  const kept = await Promise.all(
    (await readWorks(id)).map(async (work) => {
      const now = settled(assignment, work, wallClock());
      if (now.ended !== undefined && work.ended === undefined) await amendWork(id, work, { ended: now.ended });
      return now;
    }),
  );
  const papers = papersOf(assignment, trainee.code, library);
  const keptPapers = await Promise.all(
    (await readPapers(id)).flatMap((each) => {
      const paper = papers.find(({ item }) => item === each.item);
      return paper === undefined ? [] : [settledPaper(id, rulesFor(assignment, paper), each)];
    }),
  );
  return { assigned, works: workOf(assignment, trainee.code, library), kept, papers, keptPapers };
}

export type TakenState = { readonly state: 'working' | 'none' | 'denied' } | { readonly state: 'ready'; readonly taken: Taken };

/** What is kept of an assignment, and how it is read again. */
export function useTaken(id: string): { readonly result: TakenState; readonly again: () => Promise<void> } {
  const [result, setResult] = useState<TakenState>({ state: 'working' });
  const again = useCallback(async () => {
    try {
      const taken = await readTaken(id);
      setResult(taken === undefined ? { state: 'none' } : { state: 'ready', taken });
    } catch {
      setResult({ state: 'denied' });
    }
  }, [id]);
  useEffect(() => void again(), [again]);
  return useMemo(() => ({ result, again }), [result, again]);
}
