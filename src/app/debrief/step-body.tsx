import type { BenchView } from '../../attempt/view.ts';
import type { JudgedStep, RuledOut } from '../../score/debrief.ts';
import type { Difference } from '../../suspects/apart.ts';
import type { Naming } from '../../suspects/hypotheses.ts';
import { noticeText, type StepTold, stepWords } from '../step-words.ts';
import { modeName, number, readingText, t, thingName } from '../words.ts';

const NAMED_AT_MOST = 12;

interface StepProps {
  readonly view: BenchView;
  readonly told: readonly StepTold[];
  readonly step: JudgedStep;
}

/** What a step was worth: what it ruled out, or why its outcome was certain. */
export function StepBody({ view, told, step }: StepProps) {
  const observed = told[step.number - 1];
  return (
    <>
      {observed?.step.reading !== undefined && observed.measured !== '' && (
        <p class="step-reading">
          {observed.measured}: <b>{readingText(observed.step.reading)}</b>
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
                  <li key={each}>{t('app:debrief.stepTitle', { step: each, words: wordsOf(told, each) })}</li>
                ))}
              </ul>
            </>
          )}
        </>
      ) : step.ruledOut.length === 0 ? (
        step.kind !== 'after' && <p>{t('app:debrief.ruledOutNone')}</p>
      ) : (
        <RuledOutList view={view} ruledOut={step.ruledOut} />
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
export function wordsOf(told: readonly StepTold[], step: number): string {
  const found = told[step - 1];
  return found === undefined ? '' : stepWords(found);
}

function RuledOutList({ view, ruledOut }: { readonly view: BenchView; readonly ruledOut: readonly RuledOut[] }) {
  const rest = ruledOut.length - NAMED_AT_MOST;
  return (
    <>
      <p>{t('app:debrief.ruledOut', { count: ruledOut.length })}</p>
      <ul class="ruled-out">
        {ruledOut.slice(0, NAMED_AT_MOST).map((each) => (
          <li key={`${each.target} ${each.mode}`}>{ruledOutText(view, each)}</li>
        ))}
        {rest > 0 && <li>{t('app:debrief.more', { count: rest })}</li>}
      </ul>
    </>
  );
}

/** A suspect that a step ruled out, with what would have been seen if it were guilty. */
function ruledOutText(view: BenchView, ruledOut: RuledOut): string {
  const would = wouldText(view, ruledOut.would);
  return would === '' ? namingText(ruledOut) : t('app:debrief.would.item', { fault: namingText(ruledOut), would });
}

function wouldText(view: BenchView, would: Difference): string {
  switch (would.kind) {
    case 'reading':
      return would.reading === undefined
        ? t('app:debrief.would.noReading')
        : t('app:debrief.would.reading', { reading: readingText(would.reading) });
    case 'notice': {
      if (would.notice !== undefined) return otherwise(noticeText(view, would.notice), 'app:debrief.would.notice');
      return would.instead === undefined ? '' : otherwise(noticeText(view, would.instead), 'app:debrief.would.unnoticed');
    }
    case 'level':
    case 'none':
      return '';
  }
}

function otherwise(words: string, key: 'app:debrief.would.notice' | 'app:debrief.would.unnoticed'): string {
  return words === '' ? '' : t(key, { words });
}

export function namingText(naming: Naming): string {
  return t('app:debrief.truth', { target: thingName(naming.target), mode: modeName(naming.mode) });
}
