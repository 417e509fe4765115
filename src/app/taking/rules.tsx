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
  const { note, mode, attempts, minutes, opens, closes, items, papers = [] } = assignment;
  const exams = papers.filter(({ kind }) => kind === 'exam').length;
  const sets = papers.length - exams;
  const hours = hoursAt(assignment, now);
  return (
    <section class="slip" aria-labelledby="rules-title">
      <h2 id="rules-title">{t('take:rules.title')}</h2>
      {note !== undefined && note.trim() !== '' && <p class="take-note">{note}</p>}
      <ul class="take-rules">
        {items.length > 0 && <li>{t('take:rules.items', { count: items.length })}</li>}
        {sets > 0 && <li>{t('take:rules.sets', { count: sets })}</li>}
        {exams > 0 && <li>{t('take:rules.exams', { count: exams })}</li>}
        <li>{t(`take:rules.mode.${mode}`)}</li>
        <li>{t(papers.length === 0 ? 'take:rules.attempts' : 'take:rules.attemptsEach', { count: attempts })}</li>
        <li>
          {minutes === undefined
            ? t(exams === 0 ? 'take:rules.noMinutes' : 'take:rules.noMinutesExam')
            : t('take:rules.minutes', { count: minutes, minutes: number(minutes) })}
        </li>
        {minutes !== undefined && exams > 0 && <li>{t('take:rules.examMinutes')}</li>}
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
