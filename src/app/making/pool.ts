/** Draws a pool of tickets that are as hard as each other. */
import { matched } from '../../classroom/draw.ts';
import type { Drawn } from '../engine/making.ts';

export type Pooled = Extract<Drawn, { made: object }>['made'];

/** How far a pool has come. */
export interface PoolProgress {
  readonly draws: number;
  /** Tickets that stand and are as was asked for. */
  readonly made: number;
  /** The most of them that are as hard as each other. */
  readonly alike: number;
}

/** Draws for each ticket that is wanted, before the wish is given up. */
const MOST_DRAWS = 60;

/**
 * Draws until `wanted` tickets have short ways within 15 % of each other, until it is stopped, or until there is no hope.
 * @param next the next draw; it may fail once it is stopped
 * @returns what there is of them, fewer than were wanted where it ended early
 */
export async function drawPool(
  next: () => Promise<Drawn>,
  wanted: number,
  isStopped: () => boolean,
  tell: (progress: PoolProgress) => void,
): Promise<Pooled[]> {
  const made: Pooled[] = [];
  for (let draws = 1; draws <= wanted * MOST_DRAWS && !isStopped(); draws++) {
    try {
      const drawn = await next();
      if ('made' in drawn) made.push(drawn.made);
    } catch (error) {
      if (!isStopped()) throw error;
    }
    const alike = matched(made).length;
    tell({ draws, made: made.length, alike });
    if (alike >= wanted) break;
  }
  return matched(made).slice(0, wanted);
}
