import i18next from 'i18next';
import { type Debrief, SCORE_ITEMS, type ScoreReason } from '../../score/debrief.ts';
import { hasWords, modeName, number, t, thingName, type Values } from '../words.ts';

/** Reasons shown at once; the rest open on demand. */
const SHOWN = 4;

/** The four lines of the score, each with its bar and the reason for every point given or taken. */
export function ScoreLines({ debrief }: { readonly debrief: Debrief }) {
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
            <Reasons reasons={line.reasons.slice(0, SHOWN)} />
            {line.reasons.length > SHOWN && (
              <details>
                <summary>{t('app:debrief.moreReasons', { count: line.reasons.length - SHOWN })}</summary>
                <Reasons reasons={line.reasons.slice(SHOWN)} />
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
          <Reasons reasons={debrief.hints} />
        </div>
      )}
    </section>
  );
}

function Reasons({ reasons }: { readonly reasons: readonly ScoreReason[] }) {
  return (
    <ul>
      {reasons.map((reason) => (
        <li key={`${reason.code} ${reason.step}`}>
          <span>
            {reasonText(reason)}
            {reason.step !== undefined && <small> {t('app:debrief.atStep', { step: reason.step })}</small>}
          </span>
          <span class="reason-points">{signed(reason.points)}</span>
        </li>
      ))}
    </ul>
  );
}

/** Points given or taken, with their sign; nothing for none. */
function signed(points: number): string {
  const rounded = Math.round(points * 10) / 10;
  return new Intl.NumberFormat(i18next.language, { signDisplay: 'exceptZero', maximumFractionDigits: 1 }).format(rounded);
}

/** A reason in words: ids among its values become the names of parts, failures and sections. */
export function reasonText(reason: ScoreReason): string {
  const values: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(reason.values)) values[name] = valueText(value);
  return t(`score:reason.${reason.code}`, values satisfies Values);
}

function valueText(value: string | number): string {
  if (typeof value === 'number') return number(value, Number.isInteger(value) ? 0 : 1);
  if (hasWords(`app:section.${value}`)) return t(`app:section.${value}`);
  return hasWords(`parts:mode.${value.split(':')[0]}`) ? modeName(value) : thingName(value);
}
