/** What comes out of a class: submissions, the table of points, and all that is kept of one person. */
import { isAnswers, type Submitted } from '../classroom/answers.ts';
import type { Assignment } from '../classroom/assignment.ts';
import { doubt } from '../classroom/doubts.ts';
import { type Entry, entryOf } from '../classroom/entry.ts';
import { gradebookOf } from '../classroom/gradebook.ts';
import { type CsvWords, csvOf, longTable, namingKey } from '../classroom/gradebookCsv.ts';
import type { Clock } from './clock.ts';
import type { Host } from './host.ts';
import type { Records } from './records.ts';

/** Every finished attempt at an assignment, ready to be handed in. A paper whose time is over is finished, whether its trainee is there or not. */
export function submissionsOf(
  { records, attempts, papers }: Pick<Host, 'records' | 'attempts' | 'papers'>,
  id: string,
): Submitted[] {
  papers.settleAll(id);
  return records.attemptsAt(id).flatMap((row): Submitted[] => {
    if (row.ended === null) return [];
    return [papers.isPaper(id, row.item) ? papers.submission(row) : attempts.submission(row)];
  });
}

/** The host's table is told in keys, which are the same for everybody who reads it with a program. */
const KEYS: CsvWords = {
  column: (column) => column,
  item: (item) => `item${item + 1}`,
  weighted: (item) => item,
  naming: namingKey,
  doubt: ({ code }) => code,
  yes: 'true',
  no: 'false',
};

/**
 * The gradebook of what was handed in, as comma-separated values by RFC 4180. The host's own clock kept the time: what its instructor added
 * or paused is no doubt.
 */
export async function gradebookCsv(
  { examiner, drawer, room }: Pick<Host, 'examiner' | 'drawer' | 'room'>,
  assignment: Assignment,
  submissions: readonly Submitted[],
  trainees: readonly string[],
): Promise<string> {
  const entries: Entry[] = [];
  for (const submission of submissions) {
    const graded = isAnswers(submission)
      ? await drawer.grade(assignment, trainees, submission, room.paper(assignment, submission.trainee.code, submission.item))
      : await examiner.grade(assignment, trainees, submission);
    const { doubts, ...rest } = graded ?? { submission, doubts: [doubt('brokenLog')], result: undefined };
    entries.push(entryOf('', { ...rest, doubts: doubts.filter(({ code }) => code !== 'overTime') }));
  }
  return csvOf(longTable(gradebookOf({ assignment, entries }), KEYS));
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
        answers: records.answers(id).map(({ question, choice, stamp }) => ({ question, choice, at: instant(stamp) })),
      })),
    ),
  };
}
