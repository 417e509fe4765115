import type { Assignment } from '../../classroom/assignment.ts';
import { number, t } from '../words.ts';
import { momentText } from './moment.ts';
import { hoursAt, tellsDebrief } from './status.ts';

interface Props {
  readonly assignment: Assignment;
  readonly now: number;
}

/** The instructor's note, and how the items are to be worked on. */
export function Rules({ assignment, now }: Props) {
  const { note, mode, attempts, minutes, opens, closes, items } = assignment;
  const hours = hoursAt(assignment, now);
  return (
    <section class="slip" aria-labelledby="rules-title">
      <h2 id="rules-title">{t('take:rules.title')}</h2>
      {note !== undefined && note.trim() !== '' && <p class="take-note">{note}</p>}
      <ul class="take-rules">
        <li>{t('take:rules.items', { count: items.length })}</li>
        <li>{t(`take:rules.mode.${mode}`)}</li>
        <li>{t('take:rules.attempts', { count: attempts })}</li>
        <li>
          {minutes === undefined
            ? t('take:rules.noMinutes')
            : t('take:rules.minutes', { count: minutes, minutes: number(minutes) })}
        </li>
        {opens !== undefined && <li>{t('take:rules.opens', { moment: momentText(opens) })}</li>}
        {closes !== undefined && <li>{t('take:rules.closes', { moment: momentText(closes) })}</li>}
        <li>
          {t(mode !== 'graded' ? 'take:rules.debrief' : closes === undefined ? 'take:rules.noDebrief' : 'take:rules.lateDebrief')}
        </li>
      </ul>
      {hours !== 'open' && (
        <p role="status" class="take-hours">
          {t(`take:hours.${hours}`)} {hours === 'over' && tellsDebrief(assignment, now) && t('take:hours.debrief')}
        </p>
      )}
    </section>
  );
}
