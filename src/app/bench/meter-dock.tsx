import { useMarks } from '../guided/marks.ts';
import type { Bench } from '../use-attempt.ts';
import { t } from '../words.ts';
import type { Coach } from './coach.tsx';
import type { Sheet } from './kinds.ts';
import { Display } from './meter.tsx';
import type { Leads } from './use-leads.ts';

interface Props {
  readonly bench: Bench;
  readonly leads: Leads;
  readonly coach: Coach | undefined;
  readonly sheet: Sheet;
  readonly onSheet: (sheet: Sheet) => void;
}

/** On small screens: the meter's display, the leads, and the handles of the sheets. */
export function MeterDock({ bench, leads, coach, sheet, onSheet }: Props) {
  const marks = useMarks();
  return (
    <section class="dock" aria-label={t('app:rails.meter')}>
      <Display meter={bench.view.meter} />
      <div class="dock-handles">
        <button
          type="button"
          class="button dock-place"
          aria-expanded={sheet === 'house'}
          aria-controls="rail-house"
          data-marked={marks.sheet('house')}
          onClick={() => onSheet('house')}
        >
          {t('app:dock.place')}
        </button>
        <button
          type="button"
          class="button"
          aria-expanded={sheet === 'meter'}
          aria-controls="rail-meter"
          data-marked={marks.sheet('meter')}
          onClick={() => onSheet('meter')}
        >
          {t('app:dock.meter')}
        </button>
      </div>
      <div class="dock-leads">
        {(['red', 'black'] as const).map((lead) => (
          <button
            key={lead}
            type="button"
            class={`button dock-lead dock-${lead}`}
            aria-pressed={leads.held === lead}
            data-marked={marks.lead(lead)}
            onClick={() => leads.pick(leads.held === lead ? undefined : lead)}
          >
            {t(`app:dock.${lead}`)}
          </button>
        ))}
      </div>
      {coach !== undefined && (
        <button
          type="button"
          class="button dock-coach"
          aria-expanded={sheet === 'coach'}
          aria-controls="rail-meter"
          data-marked={marks.sheet('coach')}
          onClick={() => onSheet('coach')}
        >
          {coach.count === undefined ? t('app:coach.handleBusy') : t('app:coach.handle', { count: coach.count })}
        </button>
      )}
    </section>
  );
}
