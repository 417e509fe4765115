import { type Attempt, logOf, phaseOf } from '../../attempt/attempt.ts';
import type { Kept } from '../keeping/store.ts';
import type { Keeper, Loaded } from '../use-attempt.ts';
import { type KeptWork, stampAt } from './records.ts';
import { keepWork } from './store.ts';
import { wallClock } from './use-assigned.ts';

export interface WorkKeeper extends Keeper {
  /** Settles when the last step is kept. */
  readonly kept: () => Promise<Kept>;
}

/**
 * Keeps an attempt after each of its steps, with the second of each by the clock on the wall.
 * @param deadline seconds since 1970; no step is taken from then on
 */
export function keeperOf(id: string, begun: KeptWork, loaded: Loaded, deadline: number | undefined): WorkKeeper {
  let work = begun;
  let last: Promise<Kept> = Promise.resolve('kept');
  return {
    loaded,
    isOver: () => deadline !== undefined && wallClock() >= deadline,
    keep(attempt: Attempt) {
      work = {
        ...work,
        log: logOf(attempt),
        stamps: [...work.stamps, stampAt(work, wallClock())],
        ...(phaseOf(attempt) === 'closed' ? { ended: 'closed' as const } : {}),
      };
      last = keepWork(id, work);
      return last;
    },
    kept: () => last,
  };
}
