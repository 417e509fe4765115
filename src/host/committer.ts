/** Writes of many people at once go to the disk together: one commit for all that came in meanwhile, and only then are they told. */
import type { Database } from './database.ts';

export interface Committer {
  /** Does the write with the next commit; then tells whether it is on the disk. Told in order. */
  add(write: (() => void) | undefined, told: (kept: boolean) => void): void;
  /** Commits now. */
  flush(): void;
}

/** Of all time, at most one part in so many goes into waiting for the disk: on a slow one more writes share a commit. */
const SHARE = 5;
/** Nobody waits longer than this for a commit to begin, milliseconds. */
const LONGEST_WAIT = 40;

export function createCommitter(db: Database): Committer {
  let waiting: { readonly write: (() => void) | undefined; readonly told: (kept: boolean) => void }[] = [];
  let due: NodeJS.Timeout | NodeJS.Immediate | undefined;
  let next = 0;
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
    due = undefined;
    if (waiting.length === 0) return;
    const batch = waiting;
    waiting = [];
    const began = performance.now();
    const kept = commit(batch.flatMap(({ write }) => write ?? []));
    const ended = performance.now();
    next = ended + Math.min(LONGEST_WAIT, (ended - began) * (SHARE - 1));
    // One that cannot be written does not take the others with it.
    for (const { write, told } of batch) told(kept || (write !== undefined && commit([write])));
  }

  return {
    add(write, told) {
      waiting.push({ write, told });
      if (due) return;
      const wait = next - performance.now();
      due = wait > 1 ? setTimeout(flush, wait) : setImmediate(flush);
    },
    flush,
  };
}
