import type { BenchView } from '../../attempt/view.ts';
import type { JudgedStep } from '../../score/debrief.ts';
import type { Naming } from '../../suspects/hypotheses.ts';
import { doneText, measuredName, modeName, number, readingText, t, thingName } from '../words.ts';

const NAMED_AT_MOST = 12;

/** A step in words: what was measured and read, or what was done. */
export function stepWords(view: BenchView, numberOfStep: number): string {
  const step = view.steps[numberOfStep - 1];
  if (step === undefined) return '';
  const measures = step.action.name === 'probe' || step.action.name === 'clamp' || step.action.name === 'meter';
  if (measures && step.reading !== undefined && step.reading.kind !== 'blank' && step.red !== undefined) {
    return `${measuredName(view, step)}: ${readingText(step.reading)}`;
  }
  return doneText(view, step.action);
}

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
                  <li key={each}>{t('app:debrief.stepTitle', { step: each, words: stepWords(view, each) })}</li>
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
