/** The `grade` command: how it ends, and what it says. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import i18next from 'i18next';
import { afterAll, describe, expect, it } from 'vitest';
import { begin, perform } from '../../src/attempt/attempt.ts';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { workOf } from '../../src/classroom/draw.ts';
import { csvOf, longTable } from '../../src/classroom/gradebookCsv.ts';
import { submissionOf } from '../../src/classroom/submission.ts';
import { wordsOf } from '../../src/cli/files.ts';
import { exitCodeOf, gradeFolder } from '../../src/cli/grade.ts';
import { csvWords, gradebookText } from '../../src/cli/gradeText.ts';
import { possibleFaults } from '../../src/rig/faults.ts';
import { answered, SMALL_EXAM } from '../classroom/crowd.ts';
import { library } from '../scenario/shipped.ts';

const folder = mkdtempSync(join(tmpdir(), 'bellwire-grade-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const write = (name: string, text: string) => writeFileSync(join(folder, name), text);

const json = {
  format: 'bellwire-assignment',
  version: 1,
  id: 'week-9',
  title: 'Week nine',
  mode: 'graded',
  seed: 1,
  // Of the smallest system: graded in a moment.
  items: [{ kind: 'shipped', ticket: library.tickets.find(({ rig }) => rig === 'trainingBoard')!.id }],
};
const assignment = loadAssignment(json);

/** What a trainee hands in who names the wrong part, and closes. */
function handedIn(code: string, of = assignment) {
  const [work] = workOf(of, code, library);
  const attempt = begin(work!.ticket, work!.rig);
  const [fault] = work!.ticket.faults;
  const other = possibleFaults(work!.rig).find(({ target }) => target !== fault!.target)!;
  expect(perform(attempt, { name: 'name', target: other.target, mode: other.mode, evidence: [] }).ok).toBe(true);
  perform(attempt, { name: 'close' });
  const stamps = attempt.steps.map((_, index) => 3.5 * (index + 1));
  return submissionOf({
    assignment: of,
    trainee: { code, name: '' },
    work: work!,
    number: 1,
    attempt,
    began: '2026-03-02T13:00:00Z',
    stamps,
  });
}

describe('a folder with work at tickets and answers in it', () => {
  const mixed = mkdtempSync(join(tmpdir(), 'bellwire-grade-'));
  afterAll(() => rmSync(mixed, { recursive: true, force: true }));
  const put = (name: string, of: unknown) => writeFileSync(join(mixed, name), JSON.stringify(of));
  const set = loadAssignment({ ...json, papers: [SMALL_EXAM, { kind: 'drills', drills: ['vaSum', 'contacts'], count: 3 }] });

  it('is graded as one, and says of answers what was hard and why, and of a broken file where', async () => {
    await i18next.init({ lng: 'en', resources: { en: wordsOf('en') }, interpolation: { escapeValue: false } });
    put('assignment.json', set);
    put('a.json', handedIn('A1', set));
    put('b.json', answered(set, 'A1', 1, 3));
    put('c.json', answered(set, 'B2', 1, 0));
    put('d.json', { ...answered(set, 'B2', 2, 0), choices: ['first'] });
    const { gradebook, broken } = gradeFolder(join(mixed, 'assignment.json'), mixed);
    expect(broken).toMatchObject([
      { file: join(mixed, 'd.json'), error: { path: expect.stringMatching(/d\.json.*choices\[0\]$/) } },
    ]);
    const lines = gradebookText(gradebook).split('\n');
    expect(lines[0]).toMatch(/^trainee +Ticket 1 +Exam 2 +Exercises 3 +total$/);
    expect(lines[1]).toMatch(/^A1 +\d+ +50 +– +\d+\.\d$/);
    expect(lines[2]).toMatch(/^B2 +– +100 +– +33\.3$/);
    expect(lines).toContain('Exam 2: Mid-term: 2 trainees, difficulty 0.75, 1 passed');
    expect(lines).toContain('Exercises 3: vaSum, contacts: 0 trainees, difficulty –');
    const [{ kind, right, asked } = { kind: '', right: 0, asked: 0 }] = gradebook.papers[0]!.kinds;
    expect(lines.some((line) => line.includes(`: ${kind} ${right}/${asked}, `))).toBe(true);
    const [common] = gradebook.papers[0]!.misconceptions;
    expect(lines).toContain(`  ${common!.answers} × ${i18next.t(`drill:misconception.${common!.misconception}`)}`);
    const rows = csvOf(longTable(gradebook, csvWords(set))).split('\r\n');
    expect(rows.find((row) => row.startsWith('A1,Trainee A1,2,'))).toMatch(
      /^A1,Trainee A1,2,Exam 2: Mid-term,,1,1,50,50,.*,3,6,no,/,
    );
    expect(rows.find((row) => row.startsWith('B2,Trainee B2,2,'))).toMatch(/,6,6,yes,/);
  });
});

describe('ends', () => {
  write('assignment.json', JSON.stringify(json));
  const graded = () => gradeFolder(join(folder, 'assignment.json'), folder);
  let last: ReturnType<typeof graded>;
  const code = () => {
    last = graded();
    return exitCodeOf(last.gradebook, last.broken);
  };

  it('with 0 where all is read and nothing is in doubt, 1 while a doubt is left, 2 where a file could not be read', () => {
    write('a.json', JSON.stringify(handedIn('A1')));
    expect(code()).toBe(0);
    write('b.json', JSON.stringify({ ...handedIn('B2'), words: 'put in later' }));
    expect(code()).toBe(1);
    expect(last.gradebook.openDoubts).toBe(1);
    write('c.json', '{"format":');
    expect(code()).toBe(2);
    expect(last.broken.map(({ file }) => file)).toEqual([join(folder, 'c.json')]);
    // Also where nothing that could be read is in doubt.
    rmSync(join(folder, 'b.json'));
    expect(code()).toBe(2);
  });

  it.each(['en', 'es', 'fr'])('and says in %s which code means what, and one trainee otherwise than two', async (language) => {
    await i18next.init({ lng: language, resources: { [language]: wordsOf(language) }, interpolation: { escapeValue: false } });
    expect(i18next.t('gradebook:cli.usage')).toMatch(/: 1 .*, 2 .*, .* 0$/m);
    const { gradebook } = last;

    expect(gradebookText(gradebook)).toMatch({ en: /: 1 trainee,/, es: /: 1 alumno,/, fr: /: 1 stagiaire,/ }[language]!);
    const two = { ...gradebook, analyses: gradebook.analyses.map((each) => ({ ...each, count: 2 })) };
    expect(gradebookText(two)).toMatch({ en: /: 2 trainees,/, es: /: 2 alumnos,/, fr: /: 2 stagiaires,/ }[language]!);
  });
});
