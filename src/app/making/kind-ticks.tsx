import { t } from '../words.ts';
import { Tick } from './fields.tsx';
import { KINDS_BY_SKILL, ticked } from './papers.ts';

interface Props {
  readonly chosen: readonly string[];
  readonly onChosen: (chosen: string[]) => void;
  /** The last one stays. */
  readonly some?: boolean;
}

/** Kinds of exercise to choose from, one by one or all of a skill. */
export function KindTicks({ chosen, onChosen, some = false }: Props) {
  const tickOf = (ids: readonly string[]) => ({
    checked: ids.every((id) => chosen.includes(id)),
    disabled: some && chosen.every((id) => ids.includes(id)) && ids.every((id) => chosen.includes(id)),
    onChange: (isIn: boolean) => onChosen(ticked(chosen, ids, isIn)),
  });
  return (
    <div class="make-skills">
      {KINDS_BY_SKILL.map(({ skill, kinds }) => {
        const ids = kinds.map(({ id }) => id);
        return (
          <fieldset key={skill}>
            <legend>{t(`drill:skill.${skill}`)}</legend>
            {kinds.length > 1 && (
              <Tick {...tickOf(ids)}>
                {t('builder:papers.whole')}
                <span class="unseen"> {t(`drill:skill.${skill}`)}</span>
              </Tick>
            )}
            {ids.map((id) => (
              <Tick key={id} {...tickOf([id])}>
                {t(`drill:kind.${id}.name`)} <small>{t(`drill:kind.${id}.about`)}</small>
              </Tick>
            ))}
          </fieldset>
        );
      })}
    </div>
  );
}
