import { useEffect, useState } from 'preact/hooks';
import { hazardsInSight } from '../../attempt/hazards.ts';
import type { BenchView } from '../../attempt/view.ts';
import { HAZARDS } from '../../parts/part.ts';
import { habit, keepHabit } from '../storage.ts';

/** In the order in which they are shown when several are due. */
export const CAUTIONS = ['entry', ...HAZARDS] as const;
export type Caution = (typeof CAUTIONS)[number];

const habitOf = (caution: Caution): string => `caution.${caution}`;
const isRead = (caution: Caution): boolean => habit(habitOf(caution), '') === 'read';

/** The caution that is due: at the first entry to a bench, and when something dangerous is first in sight. Each is read once in a profile. */
export function useCautions(view: BenchView): { readonly due: Caution | undefined; readonly read: () => void } {
  const [met, setMet] = useState<readonly Caution[]>([]);
  const [read, setRead] = useState<readonly Caution[]>(() => CAUTIONS.filter(isRead));
  // What went out of sight again before it was read still is due.
  useEffect(() => setMet((before) => [...new Set([...before, ...hazardsInSight(view)])]), [view]);
  const due = CAUTIONS.find((each) => (each === 'entry' || met.includes(each)) && !read.includes(each));
  return {
    due,
    read: () => {
      if (due === undefined) return;
      keepHabit(habitOf(due), 'read');
      setRead([...read, due]);
    },
  };
}
