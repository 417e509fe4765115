import { DEFAULT_RUBRIC, type Rubric } from '../../score/rubric.ts';
import { number, t } from '../words.ts';
import { NumberField, Tick } from './fields.tsx';

/** What a ticket's hundred points are given for. */
const GIVEN = ['section', 'part', 'failure', 'waste', 'pace', 'safety', 'evidence', 'call'] as const;
/** What they are taken for, each time. */
const TAKEN = ['soundReplaced', 'unsafe'] as const;
const HINTS = ['where', 'kind', 'exact'] as const;

interface Props {
  readonly rubric: Rubric | undefined;
  readonly onRubric: (rubric: Rubric | undefined) => void;
}

/** Points and the price of hints, where they differ from the usual. */
export function RubricFields({ rubric, onRubric }: Props) {
  const sum = rubric === undefined ? 100 : GIVEN.reduce((total, each) => total + rubric[each], 0);
  const points = (each: (typeof GIVEN)[number] | (typeof TAKEN)[number]) => (
    <NumberField
      key={each}
      label={t(`builder:rubric.${each}`)}
      value={rubric?.[each]}
      from={0}
      to={100}
      onValue={(value) => rubric && onRubric({ ...rubric, [each]: value ?? 0 })}
    />
  );
  return (
    <>
      <Tick checked={rubric === undefined} onChange={(usual) => onRubric(usual ? undefined : DEFAULT_RUBRIC)}>
        {t('builder:rubric.usual')}
      </Tick>
      {rubric !== undefined && (
        <>
          <fieldset>
            <legend>{t('builder:rubric.given')}</legend>
            <div class="make-row">{GIVEN.map(points)}</div>
          </fieldset>
          <p class={sum === 100 ? '' : 'make-wrong'} role="status">
            {t('builder:rubric.sum', { sum: number(sum) })}
          </p>
          <fieldset>
            <legend>{t('builder:rubric.taken')}</legend>
            <div class="make-row">
              {TAKEN.map(points)}
              {HINTS.map((each) => (
                <NumberField
                  key={each}
                  label={t(`builder:rubric.hint.${each}`)}
                  value={rubric.hints[each]}
                  from={0}
                  to={100}
                  onValue={(value) => onRubric({ ...rubric, hints: { ...rubric.hints, [each]: value ?? 0 } })}
                />
              ))}
            </div>
          </fieldset>
        </>
      )}
    </>
  );
}
