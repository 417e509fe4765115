/** Writes of many people at once go to the disk together: one commit for all that came in meanwhile, and only then are they told. */
import type { Database } from './database.ts';

export interface Committer {
  /** Does the write with the next commit; then tells whether it is on the disk. Told in order. */
  add(write: (() => void) | undefined, told: (kept: boolean) => void): void;
  /** Commits now. */
  flush(): void;
}

export function createCommitter(db: Database): Committer {
  let waiting: { readonly write: (() => void) | undefined; readonly told: (kept: boolean) => void }[] = [];
  let due = false;
  const all = db.transaction((writes: readonly (() => void)[]) => {
    for (const write of writes) write();
  });

  /** Whether these are on the disk. */
  function commit(writes: readonly (() => void)[]): boolean {
    try {
      if (writes.length > 0) all.immediate(writes);
      return true;
    } catch {
      return false;
    }
  }

  function flush(): void {
    due = false;
    const batch = waiting;
    waiting = [];
    const kept = commit(batch.flatMap(({ write }) => write ?? []));
    // One that cannot be written does not take the others with it.
    for (const { write, told } of batch) told(kept || (write !== undefined && commit([write])));
  }

  return {
    add(write, told) {
      waiting.push({ write, told });
      if (due) return;
      due = true;
      setImmediate(flush);
    },
    flush,
  };
}
