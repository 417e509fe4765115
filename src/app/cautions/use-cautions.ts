import { useEffect, useRef, useState } from 'preact/hooks';
import { hazardsInSight } from '../../attempt/hazards.ts';
import type { BenchView } from '../../attempt/view.ts';
import { HAZARDS } from '../../parts/part.ts';
import { habit, keepHabit } from '../storage.ts';

/** In the order in which they are shown when several are due. */
export const CAUTIONS = ['entry', ...HAZARDS] as const;
export type Caution = (typeof CAUTIONS)[number];

/** A caution that is shown, and its place among those that came up together. */
export interface DueCaution {
  readonly caution: Caution;
  /** 1-based. */
  readonly number: number;
  readonly of: number;
  /** False for a moment after it came up: a press is then one that was meant for what stood there before. */
  readonly ready: boolean;
}

/** The habit that remembers that a caution was read. */
export const habitOf = (caution: Caution): string => `caution-${caution}`;
const isRead = (caution: Caution): boolean => habit(habitOf(caution), '') === 'read';

/** A caution takes no press in its first moments, milliseconds; common practice, no source. */
const SETTLES_AFTER = 600;

/**
 * The caution that is due: at the first entry to a bench, and when something dangerous is first in sight. Each is read once in a profile.
 * One that was met at a place waits there: elsewhere it would speak of what is not before the trainee.
 */
export function useCautions(view: BenchView): { readonly due: DueCaution | undefined; readonly read: () => void } {
  const [met, setMet] = useState<readonly string[]>([]);
  const [read, setRead] = useState<readonly Caution[]>(() => CAUTIONS.filter(isRead));
  const [settled, setSettled] = useState<Caution>();
  /** How many of those that came up together have been read. */
  const run = useRef(0);
  const { place } = view;
  useEffect(() => {
    const here = hazardsInSight(view).map((hazard) => `${view.place} ${hazard}`);
    setMet((before) => [...new Set([...before, ...here])]);
  }, [view]);
  const waiting = CAUTIONS.filter((each) => (each === 'entry' || met.includes(`${place} ${each}`)) && !read.includes(each));
  const caution = waiting[0];
  if (caution === undefined) run.current = 0;
  useEffect(() => {
    setSettled(undefined);
    const timer = setTimeout(() => setSettled(caution), SETTLES_AFTER);
    return () => clearTimeout(timer);
  }, [caution]);
  const ready = settled === caution;
  return {
    due: caution && { caution, number: run.current + 1, of: run.current + waiting.length, ready },
    read: () => {
      if (caution === undefined || !ready) return;
      keepHabit(habitOf(caution), 'read');
      run.current += 1;
      setRead([...read, caution]);
    },
  };
}
