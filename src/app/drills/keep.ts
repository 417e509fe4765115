import { type Practice, practiceSchema } from '../../drills/practice.ts';
import { mine } from '../keeping/profile-now.ts';
import { type Kept, read, tryTransact } from '../keeping/store.ts';

/** Where a profile's practice lies on its shelf. */
export const PRACTICE = 'drills';

/** What lies there; what does not fit is left where it is, and practice begins anew. */
export const practiceIn = (value: unknown): Practice | undefined => practiceSchema.safeParse(value).data;

/** Somebody who has not practised yet: their items differ from their neighbour's by lot. */
export const freshPractice = (): Practice => ({
  lot: (crypto.getRandomValues(new Uint16Array(1))[0] ?? 0) % 10_000,
  families: {},
  skills: {},
});

/** @throws when the browser denies its storage */
export const readPractice = async (): Promise<Practice> => practiceIn(await read(mine(PRACTICE))) ?? freshPractice();

/** Keeps an answer: of two tabs that practise at once neither takes away what the other kept. */
export const keepPractice = (change: (before: Practice) => Practice): Promise<Kept> =>
  tryTransact([mine(PRACTICE)], (found) => {
    const before = practiceIn(found.get(mine(PRACTICE))) ?? freshPractice();
    return new Map([[mine(PRACTICE), change(before)]]);
  });
