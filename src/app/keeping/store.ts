/** The browser's own store, cut into one shelf for each profile. */
import { createStore, promisifyRequest, type UseStore } from 'idb-keyval';

/** How a write went. A failure is told to the trainee; what was kept before stays as it was. */
export type Kept = 'kept' | 'full' | 'failed';

/** The profile that everybody has until others are added; its keys carry no prefix. */
export const OWN = 'own';

let use: UseStore | undefined;

/** Opened at the first need: a browser that denies storage may throw as soon as it is named. */
function store(): UseStore {
  use ??= createStore('keyval-store', 'keyval');
  return use;
}

/** The key of a profile's record. */
export const shelved = (profile: string, key: string): string => (profile === OWN ? key : `${profile}/${key}`);

/** Whether a key lies on a profile's shelf, and then its name there. */
export function onShelf(profile: string, key: string): string | undefined {
  if (profile === OWN) return key.includes('/') ? undefined : key;
  return key.startsWith(`${profile}/`) ? key.slice(profile.length + 1) : undefined;
}

/** Key of a finished attempt on its profile's shelf. */
export const finishedKey = (number: number): string => `finished:${number}`;

/** Key of a profile's mock exams on its shelf. */
export const EXAMS = 'exams';

/**
 * Reads and writes in one transaction: all of it is kept, or nothing. It is committed as soon as the last write has been asked for,
 * so that a tab that dies in the next moment has kept it.
 * @param reads keys that `change` must see before it says what to write
 * @param change gives what to write; undefined as a value takes the key away
 * @throws what the browser says when it keeps nothing: QuotaExceededError, or that storage is denied
 */
export async function transact(
  reads: readonly string[],
  change: (found: ReadonlyMap<string, unknown>) => ReadonlyMap<string, unknown>,
): Promise<void> {
  await store()('readwrite', (records) => {
    const write = (found: ReadonlyMap<string, unknown>) => {
      for (const [key, value] of change(found)) {
        if (value === undefined) records.delete(key);
        else records.put(value, key);
      }
      records.transaction.commit();
    };
    const done = promisifyRequest(records.transaction);
    // A change that throws takes the whole transaction back.
    const guarded = (found: ReadonlyMap<string, unknown>) => {
      try {
        write(found);
      } catch (error) {
        records.transaction.abort();
        throw error;
      }
    };
    if (reads.length === 0) {
      done.catch(() => undefined);
      guarded(new Map());
      return done;
    }
    return new Promise<void>((resolve, reject) => {
      done.then(resolve, reject);
      const found = new Map<string, unknown>();
      for (const key of reads) {
        const asked = records.get(key);
        asked.onsuccess = () => {
          found.set(key, asked.result);
          if (found.size < reads.length) return;
          try {
            guarded(found);
          } catch (error) {
            reject(error);
          }
        };
      }
    });
  });
}

/** The same, with a failure as an answer. */
export async function tryTransact(...asked: Parameters<typeof transact>): Promise<Kept> {
  try {
    await transact(...asked);
    return 'kept';
  } catch (error) {
    return error instanceof Error && error.name === 'QuotaExceededError' ? 'full' : 'failed';
  }
}

/** @throws when the browser denies its storage */
export function read(key: string): Promise<unknown> {
  return store()('readonly', (records) => promisifyRequest(records.get(key)));
}

/**
 * Everything that is kept, by key, of all profiles.
 * @throws when the browser denies its storage
 */
export async function readAll(): Promise<ReadonlyMap<string, unknown>> {
  return store()('readonly', async (records) => {
    const [keys, values] = await Promise.all([promisifyRequest(records.getAllKeys()), promisifyRequest(records.getAll())]);
    return new Map(keys.map((key, index) => [String(key), values[index] as unknown]));
  });
}
