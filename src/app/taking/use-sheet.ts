import { useCallback, useMemo, useRef, useState } from 'preact/hooks';
import type { Paper } from '../../classroom/papers.ts';
import type { Kept } from '../keeping/store.ts';
import type { KeptPaper } from './records.ts';
import { withChoice, withFlag } from './sheet.ts';
import { deadlineOf, rulesFor, tellsAtOnce } from './status.ts';
import { keepPaper } from './store.ts';
import { type Taken, wallClock } from './use-assigned.ts';

export interface Sheet {
  readonly sheet: KeptPaper;
  /** How the last choice was kept. */
  readonly stored: Kept;
  /** Seconds since 1970; undefined where nothing limits it. */
  readonly deadline: number | undefined;
  /** Whether each answer is told at once. */
  readonly open: boolean;
  readonly choose: (place: number, choice: number) => void;
  readonly flag: (place: number) => void;
  /** Ends the attempt; settles once that is kept, with how. */
  readonly end: (how: NonNullable<KeptPaper['ended']>) => Promise<Kept>;
}

/** An attempt at a paper under way: each choice is kept at once, none is taken when the time is over. */
export function useSheet({ assigned }: Taken, paper: Paper, begun: KeptPaper): Sheet {
  const { id, assignment } = assigned;
  const [sheet, setSheet] = useState(begun);
  const [stored, setStored] = useState<Kept>('kept');
  const current = useRef(begun);
  const deadline = deadlineOf(rulesFor(assignment, paper), begun);
  const open = tellsAtOnce(assignment, paper);
  const change = useCallback(
    async (after: KeptPaper) => {
      if (after === current.current) return 'kept';
      current.current = after;
      setSheet(after);
      const kept = await keepPaper(id, after);
      setStored(kept);
      return kept;
    },
    [id],
  );
  const may = useCallback(
    () => current.current.ended === undefined && (deadline === undefined || wallClock() < deadline),
    [deadline],
  );
  const choose = useCallback(
    (place: number, choice: number) => {
      if (may()) void change(withChoice(current.current, place, choice, wallClock(), open));
    },
    [change, may, open],
  );
  const flag = useCallback(
    (place: number) => {
      if (may()) void change(withFlag(current.current, place));
    },
    [change, may],
  );
  const end = useCallback((ended: NonNullable<KeptPaper['ended']>) => change({ ...current.current, ended }), [change]);
  return useMemo(() => ({ sheet, stored, deadline, open, choose, flag, end }), [sheet, stored, deadline, open, choose, flag, end]);
}
