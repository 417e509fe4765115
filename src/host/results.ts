/** What comes out of a class: submissions, the table of points, and all that is kept of one person. */
import Papa from 'papaparse';
import type { Assignment } from '../classroom/assignment.ts';
import type { Graded } from '../classroom/grade.ts';
import { loadSubmission, type Submission } from '../classroom/submission.ts';
import { SCORE_ITEMS } from '../score/debrief.ts';
import type { Attempts } from './attempts.ts';
import type { Clock } from './clock.ts';
import type { Examiner } from './examiner.ts';
import type { Records } from './records.ts';

/** Every finished attempt at an assignment, ready to be handed in. */
export function submissionsOf(records: Records, attempts: Attempts, assignment: string): Submission[] {
  return records.attemptsAt(assignment).flatMap((row) => (row.ended === null ? [] : [attempts.submission(row)]));
}

/**
 * Comma-separated values by RFC 4180, a row for each submission. The host's own clock kept the time: what its instructor added or
 * paused is no doubt.
 */
export async function gradebookCsv(
  examiner: Examiner,
  assignment: Assignment,
  submissions: readonly Submission[],
  trainees: readonly string[],
): Promise<string> {
  const rows: Record<string, string | number>[] = [];
  for (const submission of submissions) {
    const graded = await examiner.grade(assignment, trainees, loadSubmission(submission));
    rows.push(rowOf(submission, graded));
  }
  const fields = [
    'trainee',
    'name',
    'item',
    'attempt',
    'ended',
    'began',
    'total',
    ...SCORE_ITEMS,
    'rightNaming',
    'minutes',
    'parMinutes',
    'steps',
    'wastedSteps',
    'doubts',
  ];
  return `${Papa.unparse({ fields, data: rows }, { newline: '\r\n', escapeFormulae: true })}\r\n`;
}

function rowOf(submission: Submission, graded: Graded | undefined): Record<string, string | number> {
  const { trainee, item, attempt, ended, began } = submission;
  const result = graded?.result;
  const doubts = graded?.doubts.filter(({ code }) => code !== 'overTime').map(({ code }) => code) ?? ['brokenLog'];
  return {
    trainee: trainee.code,
    name: trainee.name,
    item: item + 1,
    attempt,
    ended,
    began,
    total: result?.total ?? '',
    ...Object.fromEntries(SCORE_ITEMS.map((each) => [each, result?.items[each] ?? ''])),
    rightNaming: result ? String(result.rightNaming) : '',
    minutes: result?.minutes ?? '',
    parMinutes: result?.parMinutes ?? '',
    steps: result?.steps ?? '',
    wastedSteps: result?.wastedSteps ?? '',
    doubts: doubts.join(' '),
  };
}

/** All that the host keeps of one trainee but the hashes of PIN and tokens. Undefined: there is nobody of that code. */
export function exportOf(records: Records, clock: Clock, assignments: readonly string[], code: string): unknown {
  const trainee = records.trainee(code);
  if (!trainee) return undefined;
  const instant = (at: number) => new Date(at).toISOString();
  return {
    format: 'bellwire-person',
    version: 1,
    made: instant(clock.now()),
    trainee: { code: trainee.code, name: trainee.name },
    attempts: assignments.flatMap((assignment) =>
      records.attemptsOf(code, assignment).map(({ id, item, number, began, ended, extra, words }) => ({
        assignment,
        item,
        number,
        began: instant(began),
        ended,
        addedSeconds: extra,
        words,
        steps: records.steps(id).map(({ stamp, seconds, action }) => ({ at: instant(stamp), seconds, action: JSON.parse(action) })),
      })),
    ),
  };
}
