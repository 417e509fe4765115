import { SECTIONS, type Section } from '../../parts/part.ts';
import type { Naming } from '../../suspects/hypotheses.ts';
import { modeName, t, thingName } from '../words.ts';

/** A fault as far as it has been chosen. */
export interface ChosenFault {
  readonly section: Section | undefined;
  readonly target: string;
  readonly mode: string;
}

export const NOTHING_CHOSEN: ChosenFault = { section: undefined, target: '', mode: '' };

interface Props {
  /** Apart from other choices of the same window. */
  readonly id: string;
  readonly namings: readonly Naming[];
  readonly chosen: ChosenFault;
  readonly onChoose: (chosen: ChosenFault) => void;
  readonly where: string;
  readonly what: string;
  /** The fault that the guide speaks of: what leads to it is marked. */
  readonly marked?: Pick<ChosenFault, 'target' | 'mode'> | undefined;
}

/** Where a fault lies, what it is on, and how it failed. */
export function FaultChoice({ id, namings, chosen, onChoose, where, what, marked }: Props) {
  const { section, target, mode } = chosen;
  const inSection = namings.filter((each) => each.section === section);
  const targets = [...new Set(inSection.map((each) => each.target))].sort((a, b) => thingName(a).localeCompare(thingName(b)));
  const modes = inSection.filter((each) => each.target === target).map((each) => each.mode);
  const there = namings.find((each) => each.target === marked?.target)?.section;
  return (
    <>
      <fieldset>
        <legend>{where}</legend>
        <div class="choices">
          {SECTIONS.map((each) => (
            <label key={each} class="choice" data-marked={(each === there && section !== there) || undefined}>
              <input
                type="radio"
                name={`${id}-section`}
                checked={section === each}
                onChange={() => onChoose({ section: each, target: '', mode: '' })}
              />
              {t(`app:section.${each}`)}
            </label>
          ))}
        </div>
      </fieldset>
      {section !== undefined && (
        <div class="field">
          <label for={`${id}-target`}>{what}</label>
          <select
            id={`${id}-target`}
            value={target}
            data-marked={(section === there && target !== marked?.target && marked !== undefined) || undefined}
            onChange={(event) => onChoose({ section, target: event.currentTarget.value, mode: '' })}
          >
            <option value="">{t('app:naming.choose')}</option>
            {targets.map((each) => (
              <option key={each} value={each}>
                {thingName(each)}
              </option>
            ))}
          </select>
        </div>
      )}
      {target !== '' && (
        <fieldset>
          <legend>{t('app:naming.mode', { target: thingName(target) })}</legend>
          <div class="choices choices-long">
            {modes.map((each) => (
              <label
                key={each}
                class="choice"
                data-marked={(target === marked?.target && each === marked.mode && mode !== each) || undefined}
              >
                <input
                  type="radio"
                  name={`${id}-mode`}
                  checked={mode === each}
                  onChange={() => onChoose({ section, target, mode: each })}
                />
                {modeName(each)}
              </label>
            ))}
          </div>
        </fieldset>
      )}
    </>
  );
}
