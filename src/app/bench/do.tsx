import type { Action } from '../../attempt/actions.ts';
import type { Point } from '../../rig/points.ts';
import { doText } from '../action-words.ts';
import { useMarks } from '../guided/marks.ts';
import type { Bench } from '../use-attempt.ts';
import { pointName, t } from '../words.ts';
import type { Lead } from './use-leads.ts';

interface DoProps {
  readonly bench: Bench;
  readonly action: Action;
  /** Instead of the action's own words. */
  readonly words?: string;
  readonly pressed?: boolean;
  /** Id of the heading that says what it is done to. */
  readonly about?: string;
}

/** A button that takes an action. */
export function Do({ bench, action, words, pressed, about }: DoProps) {
  const marks = useMarks();
  return (
    <button
      type="button"
      class="button small"
      aria-pressed={pressed}
      aria-describedby={about}
      data-marked={marks.does(action)}
      onClick={() => bench.act(action)}
    >
      {words ?? doText(bench.view, action)}
    </button>
  );
}

/** Puts a lead on a point, or takes it off where it is. */
export function LeadButton({ bench, lead, point }: { readonly bench: Bench; readonly lead: Lead; readonly point: Point }) {
  const here = bench.view.meter[lead] === point;
  const marks = useMarks();
  return (
    <button
      type="button"
      class={`button small lead-${lead}`}
      aria-pressed={here}
      data-marked={marks.does({ name: 'probe', lead, at: point })}
      aria-label={t(`app:list.lead.${lead}`, { point: pointName(bench.view, point) })}
      onClick={() => bench.act({ name: 'probe', lead, at: here ? null : point })}
    >
      {t(here ? `app:list.on.${lead}` : `app:list.here.${lead}`)}
    </button>
  );
}
