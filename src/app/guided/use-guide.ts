import { useCallback, useMemo, useState } from 'preact/hooks';
import type { Bench } from '../use-attempt.ts';
import { isGuided, keepGuided } from './choice.ts';
import { GUIDED_TICKET } from './facts.ts';
import { type Guide, guideAt } from './ideas.ts';

export interface GuideState {
  /** What the guide says now; undefined while it is not followed. */
  readonly guide: Guide | undefined;
  /** Whether there is one on this job. */
  readonly offered: boolean;
  readonly take: (up: boolean) => void;
}

/** The guide of a job, when there is one and it has been taken up. */
export function useGuide({ ticket, whole, view, free }: Bench): GuideState {
  const [on, setOn] = useState(() => isGuided(ticket.id));
  const offered = ticket.id === GUIDED_TICKET && ticket.mode !== 'graded' && !free && whole !== undefined;
  const guide = useMemo(() => (on && offered ? guideAt(view) : undefined), [on, offered, view]);
  const take = useCallback((up: boolean) => {
    keepGuided(up);
    setOn(up);
  }, []);
  return { guide, offered, take };
}
