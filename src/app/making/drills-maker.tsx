import { useState } from 'preact/hooks';
import type { PaperSetting } from '../../classroom/assignment.ts';
import { t } from '../words.ts';
import { NumberField, Tick } from './fields.tsx';
import { KINDS_BY_SKILL, ticked } from './papers.ts';

const LEAST = 3;
const MOST = 60;
/** As many as ten minutes hold. */
const USUAL = 15;

/** Kinds of exercise to choose from, one by one or all of a skill, and how many of them. */
export function DrillsMaker({ onDrills }: { readonly onDrills: (setting: PaperSetting) => void }) {
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [count, setCount] = useState(USUAL);
  const put = (ids: readonly string[], isIn: boolean) => setChosen((before) => ticked(before, ids, isIn));
  return (
    <>
      <p>{t('builder:papers.drillsText')}</p>
      <div class="make-skills">
        {KINDS_BY_SKILL.map(({ skill, kinds }) => {
          const ids = kinds.map(({ id }) => id);
          return (
            <fieldset key={skill}>
              <legend>{t(`drill:skill.${skill}`)}</legend>
              {kinds.length > 1 && (
                <Tick checked={ids.every((id) => chosen.includes(id))} onChange={(isIn) => put(ids, isIn)}>
                  {t('builder:papers.whole')}
                  <span class="unseen"> {t(`drill:skill.${skill}`)}</span>
                </Tick>
              )}
              {ids.map((id) => (
                <Tick key={id} checked={chosen.includes(id)} onChange={(isIn) => put([id], isIn)}>
                  {t(`drill:kind.${id}.name`)} <small>{t(`drill:kind.${id}.about`)}</small>
                </Tick>
              ))}
            </fieldset>
          );
        })}
      </div>
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
