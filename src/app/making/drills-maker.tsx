import { useState } from 'preact/hooks';
import type { PaperSetting } from '../../classroom/assignment.ts';
import { t } from '../words.ts';
import { NumberField } from './fields.tsx';
import { KindTicks } from './kind-ticks.tsx';

const LEAST = 3;
const MOST = 60;
/** As many as ten minutes hold. */
const USUAL = 15;

/** Kinds of exercise to choose from, one by one or all of a skill, and how many of them. */
export function DrillsMaker({ onDrills }: { readonly onDrills: (setting: PaperSetting) => void }) {
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [count, setCount] = useState(USUAL);
  return (
    <>
      <p>{t('builder:papers.drillsText')}</p>
      <KindTicks chosen={chosen} onChosen={setChosen} />
      <div class="make-row">
        <NumberField
          label={t('builder:papers.count')}
          value={count}
          from={LEAST}
          to={MOST}
          step={1}
          onValue={(next = USUAL) => setCount(Math.min(MOST, Math.max(LEAST, Math.round(next))))}
        />
        <button
          type="button"
          class="button"
          disabled={chosen.length === 0}
          onClick={() => {
            onDrills({ kind: 'drills', drills: [...chosen], count });
            setChosen([]);
          }}
        >
          {t('builder:papers.addDrills')}
        </button>
      </div>
    </>
  );
}
