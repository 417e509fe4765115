import type { BenchView } from '../../attempt/view.ts';
import type { JudgedStep, RuledOut } from '../../score/debrief.ts';
import type { Difference } from '../../suspects/apart.ts';
import type { Naming } from '../../suspects/hypotheses.ts';
import { noticedShort, noticedTexts, noticeText, type StepTold, stepWords } from '../step-words.ts';
import { listed, modeName, namingText, number, readingText, signText, t, thingName } from '../words.ts';
import { BetterTest, shareLeft } from './better.tsx';
import { byPart, byWords, leftAfter, type PartGroup } from './groups.ts';
import type { Reviewed } from './use-debrief.ts';

/** Parts shown at once; the rest open on demand. */
const PARTS_SHOWN = 6;
const LEFT_SHOWN = 4;
const BECAUSE_SHOWN = 4;
const NOTICED_SHOWN = 3;

interface StepProps {
  readonly reviewed: Reviewed;
  readonly step: JudgedStep;
}

/** What a step was worth: what it ruled out, what it could not, why its outcome was certain, and what would have told more. */
export function StepBody({ reviewed, step }: StepProps) {
  const { view, told } = reviewed;
  const observed = told[step.number - 1];
  const searching = step.kind !== 'after' && reviewed.actions[step.number - 1]?.name !== 'hint';
  return (
    <>
      {observed?.step.reading !== undefined && observed.measured !== '' && (
        <p class="step-reading">
          {observed.measured}: <b>{readingText(observed.step.reading)}</b>
        </p>
      )}
      {observed !== undefined && observed.noticed.length > 0 && <p class="step-reading">{noticedShort(observed, NOTICED_SHOWN)}</p>}
      {step.kind === 'wasted' && <WhyWasted reviewed={reviewed} step={step} />}
      {step.kind !== 'wasted' && searching && step.ruledOut.length === 0 && <p>{t('app:debrief.ruledOutNone')}</p>}
      {step.ruledOut.length > 0 && <RuledOutParts view={view} ruledOut={step.ruledOut} />}
      {step.unsafe !== undefined && <p class="step-unsafe">{t(`app:unsafe.${step.unsafe}`)}</p>}
      {searching && <LeftOver reviewed={reviewed} step={step} />}
      {searching && step.kind !== 'wasted' && step.gainBits > 0 && (
        <p class="quiet">{t('app:debrief.gain', { share: shareLeft(step.gainBits), bits: number(step.gainBits, 1) })}</p>
      )}
      {searching && <BetterTest key={step.number} reviewed={reviewed} step={step} />}
    </>
  );
}

/** The words of a step by its number. */
export function wordsOf(told: readonly StepTold[], step: number): string {
  const found = told[step - 1];
  return found === undefined ? '' : stepWords(found);
}

/** Why a wasted step's outcome was certain, read off the match matrix: what was known, and what whoever was left shows. */
function WhyWasted({ reviewed, step }: StepProps) {
  const { debrief, told, view } = reviewed;
  const known = step.because
    .slice(0, BECAUSE_SHOWN)
    .map((each) => t('app:debrief.wasted.step', { step: each, words: wordsOf(told, each) }));
  const rest = step.because.length - known.length;
  if (rest > 0) known.push(t('app:debrief.more', { count: rest }));
  const count = debrief.steps[step.number - 2]?.left ?? debrief.suspectsAtStart;
  const observed = told[step.number - 1];
  const shown = observed === undefined ? [] : shownBy(view, observed);
  return (
    <p>
      {known.length === 0 ? t('app:debrief.wasted.fromStart') : t('app:debrief.wasted.had', { steps: listed(known) })}{' '}
      {shown.length === 0
        ? t('app:debrief.wasted.nothing', { count })
        : t('app:debrief.wasted.shows', { count, shown: listed(shown) })}
    </p>
  );
}

function shownBy(view: BenchView, { step, measured }: StepTold): string[] {
  const reading = step.reading === undefined || measured === '' ? [] : [readingText(step.reading)];
  const noticed = noticedTexts(view, step);
  const rest = noticed.length - NOTICED_SHOWN;
  const more = rest > 0 ? [t('app:debrief.moreNoticed', { count: rest })] : [];
  return [...reading, ...noticed.slice(0, NOTICED_SHOWN), ...more];
}

function RuledOutParts({ view, ruledOut }: { readonly view: BenchView; readonly ruledOut: readonly RuledOut[] }) {
  const parts = byPart(ruledOut);
  const rest = parts.slice(PARTS_SHOWN);
  const shown = parts.slice(0, PARTS_SHOWN);
  return (
    <>
      <p>{t('app:debrief.ruledOut', { count: ruledOut.length })}</p>
      <Parts view={view} parts={shown} />
      {rest.length > 0 && (
        <details>
          <summary>{t('app:debrief.moreParts', { count: rest.length })}</summary>
          <Parts view={view} parts={rest} />
        </details>
      )}
    </>
  );
}

/** Each part with what befell it no more, and what would have been seen if it had. */
function Parts({ view, parts }: { readonly view: BenchView; readonly parts: readonly PartGroup<RuledOut>[] }) {
  return (
    <dl class="ruled-parts">
      {parts.map(({ target, faults }) => (
        <div key={target}>
          <dt>{thingName(target)}</dt>
          {[...byWords(faults, (fault) => wouldText(view, fault.would))].map(([would, of]) => (
            <dd key={would}>{t('app:debrief.row', { modes: listed(of.map(modeText)), would })}</dd>
          ))}
        </div>
      ))}
    </dl>
  );
}

/** How a fault's part failed; with the second fault where it is one of a pair. */
function modeText(naming: Naming): string {
  const mode = modeName(naming.mode);
  return naming.also === undefined ? mode : t('app:fault.with', { mode, second: namingText(naming.also) });
}

function LeftOver({ reviewed, step }: StepProps) {
  const left = leftAfter(reviewed.debrief, step.number);
  const rest = left.length - LEFT_SHOWN;
  return (
    <>
      <p>{t('app:debrief.leftOver', { count: step.left })}</p>
      <ul>
        {left.slice(0, LEFT_SHOWN).map((each) => (
          <li key={namingText(each)}>{namingText(each)}</li>
        ))}
        {rest > 0 && <li>{t('app:debrief.more', { count: rest })}</li>}
      </ul>
    </>
  );
}

function wouldText(view: BenchView, would: Difference): string {
  const otherwise = t('app:debrief.would.otherwise');
  switch (would.kind) {
    case 'reading':
      return would.reading === undefined
        ? t('app:debrief.would.noReading')
        : t('app:debrief.would.reading', { reading: readingText(would.reading) });
    case 'notice': {
      const [notice, key] = would.notice
        ? [would.notice, 'app:debrief.would.notice']
        : [would.instead, 'app:debrief.would.unnoticed'];
      const words = notice === undefined ? '' : noticeText(view, notice);
      return words === '' ? otherwise : t(key, { words });
    }
    case 'level':
      return would.value === undefined ? otherwise : t('app:debrief.would.notice', { words: levelText(would.key, would.value) });
    case 'none':
      return otherwise;
  }
}

/** A slow drift, by `part.key` and what it had come to. */
function levelText(key: string, value: number): string {
  const dot = key.indexOf('.');
  return t('app:notice', { part: thingName(key.slice(0, dot)), words: signText(key.slice(dot + 1), value) });
}
