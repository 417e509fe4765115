import { type Debrief, SCORE_ITEMS, type ScoreReason } from '../../score/debrief.ts';
import { numberLocale } from '../number-locale.ts';
import { modeName, number, t, thingName, type Values } from '../words.ts';

/** Reasons shown at once; the rest open on demand. */
const SHOWN = 4;

interface Props {
  readonly debrief: Debrief;
  /** The words of a step by its number. */
  readonly words: (step: number) => string;
  readonly onStep: (step: number) => void;
}

/** The four lines of the score and the price of hints, with the reason for every point given or taken; each leads to its step. */
export function ScoreLines({ debrief, words, onStep }: Props) {
  return (
    <section class="score-lines" aria-label={t('app:debrief.items')}>
      {SCORE_ITEMS.map((item) => {
        const line = debrief.items[item];
        return (
          <div key={item} class="score-line" data-item={item}>
            <h2>
              <span>{t(`app:debrief.item.${item}`)}</span>
              <span class="score-points">{t('app:debrief.points', { points: number(line.points), of: number(line.of) })}</span>
            </h2>
            <div class="bar" aria-hidden="true">
              <div style={{ width: `${(100 * Math.max(0, line.points)) / line.of}%` }} />
            </div>
            <Reasons reasons={line.reasons.slice(0, SHOWN)} onStep={onStep} />
            {line.reasons.length > SHOWN && (
              <details>
                <summary>{t('app:debrief.moreReasons', { count: line.reasons.length - SHOWN })}</summary>
                <Reasons reasons={line.reasons.slice(SHOWN)} onStep={onStep} />
              </details>
            )}
          </div>
        );
      })}
      {debrief.hints.length > 0 && (
        <div class="score-line" data-item="hints">
          <h2>
            <span>{t('app:debrief.hints')}</span>
            <span class="score-points">{signed(debrief.hints.reduce((sum, each) => sum + each.points, 0))}</span>
          </h2>
          <Reasons reasons={debrief.hints} onStep={onStep} words={words} />
        </div>
      )}
    </section>
  );
}

interface ReasonsProps {
  readonly reasons: readonly ScoreReason[];
  readonly onStep: (step: number) => void;
  /** Where a step's own words say more than the reason. */
  readonly words?: (step: number) => string;
}

function Reasons({ reasons, onStep, words }: ReasonsProps) {
  return (
    <ul>
      {reasons.map((reason) => (
        <li key={`${reason.code} ${reason.step}`}>
          <span>
            {reason.step === undefined || words === undefined ? reasonText(reason) : words(reason.step)}
            {reason.step !== undefined && <StepLink step={reason.step} onStep={onStep} />}
          </span>
          <span class="reason-points">{signed(reason.points)}</span>
        </li>
      ))}
    </ul>
  );
}

function StepLink({ step, onStep }: { readonly step: number; readonly onStep: (step: number) => void }) {
  return (
    <>
      {' '}
      <button type="button" class="step-link" onClick={() => onStep(step)}>
        {t('app:debrief.atStep', { step })}
      </button>
    </>
  );
}

/** Points given or taken, with their sign; nothing for none. */
export function signed(points: number): string {
  const rounded = Math.round(points * 10) / 10;
  return new Intl.NumberFormat(numberLocale(), { signDisplay: 'exceptZero', maximumFractionDigits: 1 }).format(rounded);
}

/** A reason in words: ids among its values become the names of parts, failures and sections. */
export function reasonText(reason: ScoreReason): string {
  const values: Record<string, string> = {};
  for (const [name, value] of Object.entries(reason.values)) values[name] = valueText(name, value);
  return t(`score:reason.${reason.code}`, values satisfies Values);
}

function valueText(name: string, value: string | number): string {
  if (typeof value === 'number') return number(value, Number.isInteger(value) ? 0 : 1);
  return name === 'mode' ? modeName(value) : thingName(value);
}
