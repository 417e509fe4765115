import type { JudgedStep } from '../../score/debrief.ts';
import { useAnswer } from '../engine/use-answer.ts';
import { number, span, t } from '../words.ts';
import type { Reviewed } from './use-debrief.ts';

/** What a test of so many bits may be expected to leave of what is possible, as a percentage in words. */
export const shareLeft = (bits: number): string => number(100 * 2 ** -bits);

/** Gains closer than this are worth the same, bits: as many as are shown. */
const SAME_BITS = 0.05;

interface Props {
  readonly reviewed: Reviewed;
  readonly step: JudgedStep;
}

/** What would have told more at a step of the past; weighed when it is asked for. */
export function BetterTest({ reviewed, step }: Props) {
  const { actions, ticket, rig, instruct } = reviewed;
  const { answer, state, ask } = useAnswer(ticket, rig, 'better');
  const asks = state === 'idle' || state === 'failed';
  const own = actions[step.number - 1];
  const begins = answer?.actions[0] !== undefined && JSON.stringify(answer.actions[0]) === JSON.stringify(own);
  // What tells no more in no less time is no better.
  const equal =
    answer !== undefined &&
    answer !== null &&
    step.gainBits > 0 &&
    answer.gainBits < step.gainBits + SAME_BITS &&
    answer.seconds >= step.seconds;
  return (
    <details
      class="better"
      onToggle={(event) => event.currentTarget.open && asks && void ask({ actions, step: step.number })}
      data-testid="better"
      data-lazy
    >
      <summary>{t('app:debrief.better.title')}</summary>
      <div role="status" aria-busy={state === 'busy'}>
        {state === 'busy' && <p>{t('app:debrief.better.working')}</p>}
        {state === 'failed' && <p>{t('app:debrief.better.failed')}</p>}
        {state === 'ready' && answer === null && <p>{t('app:debrief.better.none')}</p>}
        {state === 'ready' && equal && <p>{t('app:debrief.better.equal')}</p>}
        {state === 'ready' && !equal && answer !== null && answer !== undefined && (
          <>
            <p>{t(begins ? 'app:debrief.better.same' : 'app:debrief.better.more')}</p>
            <ol>
              {instruct(actions.slice(0, step.number - 1), answer.actions).map((words, index) => (
                <li key={`${index} ${words}`}>{words}</li>
              ))}
            </ol>
            <p class="quiet">
              {t('app:debrief.better.gain', {
                share: shareLeft(answer.gainBits),
                bits: number(answer.gainBits, 1),
                span: span(answer.seconds),
                ownShare: shareLeft(step.gainBits),
                own: number(step.gainBits, 1),
                ownSpan: span(step.seconds),
              })}
            </p>
          </>
        )}
      </div>
    </details>
  );
}
