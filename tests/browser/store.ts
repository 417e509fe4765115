/** The page's own store, IndexedDB as the app keeps it: read and written from outside, so that a test need not play what it needs. */
import type { Page } from 'playwright-core';

/** What is asked of the store: one record, all of them, or that a record be written. */
type Asked = readonly ['get', key: string] | readonly ['all'] | readonly ['put', key: string, value: unknown];

function ask(page: Page, asked: Asked): Promise<unknown> {
  return page.evaluate(
    ([what, key, value]) =>
      new Promise<unknown>((resolve, reject) => {
        const opened = indexedDB.open('keyval-store');
        // Whoever opens it first makes it, this or the app: without its table the other would wait for ever.
        opened.onupgradeneeded = () => opened.result.createObjectStore('keyval');
        opened.onerror = () => reject(opened.error);
        opened.onsuccess = () => {
          const transaction = opened.result.transaction('keyval', what === 'put' ? 'readwrite' : 'readonly');
          const table = transaction.objectStore('keyval');
          const keys = what === 'all' ? table.getAllKeys() : undefined;
          const found = what === 'put' ? table.put(value, key) : what === 'all' ? table.getAll() : table.get(key as string);
          transaction.onerror = () => reject(transaction.error);
          transaction.oncomplete = () => {
            opened.result.close();
            const result = found.result as unknown;
            resolve(keys === undefined ? result : keys.result.map((each, index) => [each, (result as unknown[])[index]]));
          };
        };
      }),
    [...asked] as const,
  );
}

/** What the page has kept under a key; undefined where nothing is. */
export const keptLog = (page: Page, key: string): Promise<unknown> => ask(page, ['get', key]);

/** Lays something into the page's store as the app keeps it. */
export async function put(page: Page, key: string, value: unknown): Promise<void> {
  await ask(page, ['put', key, value]);
}

/** Every record with its key, in the order of the keys. */
export const allRecords = async (page: Page): Promise<readonly (readonly [key: string, value: unknown])[]> =>
  (await ask(page, ['all'])) as [string, unknown][];
