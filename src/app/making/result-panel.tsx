import { useMemo } from 'preact/hooks';
import { retell } from '../retell.ts';
import { stepWords } from '../step-words.ts';
import { namingText, number, span, t } from '../words.ts';
import { faultText } from './error-text.ts';
import type { Made } from './use-made.ts';

/** What the ticket comes to, at once: or the one thing that does not stand. */
export function ResultPanel({ made }: { readonly made: Made }) {
  const { state, examined, survey, sound } = made;
  return (
    <div class="make-result" data-state={state}>
      <div role="status" class="make-state">
        {state === 'wrong' && examined?.error !== undefined ? (
          <p class="make-wrong" data-testid="wrong">
            {faultText(examined.error)}
          </p>
        ) : (
          <p>{t(`builder:state.${state}`)}</p>
        )}
        {state === 'ready' && survey?.error !== undefined && <p class="make-wrong">{faultText(survey.error)}</p>}
      </div>
      {survey !== undefined && sound !== undefined && <Figures survey={survey} sound={sound} />}
    </div>
  );
}

type Ready = { readonly survey: NonNullable<Made['survey']>; readonly sound: NonNullable<Made['sound']> };

function Figures({ survey, sound }: Ready) {
  const { measured, actions } = survey;
  const way = useMemo(() => retell(sound.ticket, sound.rig, actions).told.map(stepWords), [sound, actions]);
  return (
    <>
      <dl class="ticket-facts">
        <div>
          <dt>{t('builder:result.suspects')}</dt>
          <dd data-testid="suspects">{number(measured.suspects)}</dd>
        </div>
        <div>
          <dt>{t('builder:result.grade')}</dt>
          <dd data-testid="grade">{t(`app:grade.${measured.grade}`)}</dd>
        </div>
        <div>
          <dt>{t('builder:result.par')}</dt>
          <dd data-testid="par">{t('builder:result.parIn', { span: span(measured.seconds), count: actions.length })}</dd>
        </div>
        <div>
          <dt>{t('builder:result.alike')}</dt>
          <dd>{measured.alike.length === 0 ? t('builder:result.alone') : measured.alike.map(namingText).join('; ')}</dd>
        </div>
        <div>
          <dt>{t('builder:result.shows')}</dt>
          <dd>{measured.skills.map((skill) => t(`keeping:skill.${skill}`)).join(', ')}</dd>
        </div>
        <div>
          <dt>{t('builder:result.total')}</dt>
          <dd>{number(measured.total)}</dd>
        </div>
      </dl>
      <h3>{t('builder:result.way')}</h3>
      <ol class="make-way">
        {way.map((words, index) => (
          <li key={index}>{words}</li>
        ))}
      </ol>
    </>
  );
}
