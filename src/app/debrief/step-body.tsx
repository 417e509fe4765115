import type { BenchView } from '../../attempt/view.ts';
import type { JudgedStep } from '../../score/debrief.ts';
import type { Naming } from '../../suspects/hypotheses.ts';
import { measuredName, modeName, number, readingText, stepWords, t, thingName } from '../words.ts';

const NAMED_AT_MOST = 12;

/** What a step was worth: what it ruled out, or why its outcome was certain. */
export function StepBody({ view, step }: { readonly view: BenchView; readonly step: JudgedStep }) {
  const observed = view.steps[step.number - 1];
  return (
    <>
      {observed?.reading !== undefined && observed.reading.kind !== 'blank' && (
        <p class="step-reading">
          {measuredName(view, observed)}: <b>{readingText(observed.reading)}</b>
        </p>
      )}
      {step.kind === 'wasted' ? (
        <>
          <p>{t('app:debrief.whyWasted')}</p>
          {step.because.length > 0 && (
            <>
              <p>{t('app:debrief.because')}</p>
              <ul>
                {step.because.map((each) => (
                  <li key={each}>{t('app:debrief.stepTitle', { step: each, words: wordsOf(view, each) })}</li>
                ))}
              </ul>
            </>
          )}
        </>
      ) : step.ruledOut.length === 0 ? (
        step.kind !== 'after' && <p>{t('app:debrief.ruledOutNone')}</p>
      ) : (
        <RuledOut ruledOut={step.ruledOut} />
      )}
      {step.unsafe !== undefined && <p class="step-unsafe">{t(`app:unsafe.${step.unsafe}`)}</p>}
      {step.kind !== 'after' && step.kind !== 'wasted' && step.gainBits > 0 && (
        <p class="quiet">{t('app:debrief.gain', { bits: number(step.gainBits, 1) })}</p>
      )}
      {step.kind !== 'after' && <p class="quiet">{t('app:debrief.left', { count: step.left })}</p>}
    </>
  );
}

/** The words of a step by its number. */
export function wordsOf(view: BenchView, step: number): string {
  const found = view.steps[step - 1];
  return found === undefined ? '' : stepWords(view, found);
}

function RuledOut({ ruledOut }: { readonly ruledOut: readonly Naming[] }) {
  const rest = ruledOut.length - NAMED_AT_MOST;
  return (
    <>
      <p>{t('app:debrief.ruledOut', { count: ruledOut.length })}</p>
      <ul class="ruled-out">
        {ruledOut.slice(0, NAMED_AT_MOST).map((each) => (
          <li key={`${each.target} ${each.mode}`}>{namingText(each)}</li>
        ))}
        {rest > 0 && <li>{t('app:debrief.more', { count: rest })}</li>}
      </ul>
    </>
  );
}

export function namingText(naming: Naming): string {
  return t('app:debrief.truth', { target: thingName(naming.target), mode: modeName(naming.mode) });
}
