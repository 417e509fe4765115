/** The `grade` command: how it ends, and what it says. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import i18next from 'i18next';
import { afterAll, describe, expect, it } from 'vitest';
import { begin, perform } from '../../src/attempt/attempt.ts';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { workOf } from '../../src/classroom/draw.ts';
import { submissionOf } from '../../src/classroom/submission.ts';
import { wordsOf } from '../../src/cli/files.ts';
import { exitCodeOf, gradeFolder } from '../../src/cli/grade.ts';
import { gradebookText } from '../../src/cli/gradeText.ts';
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
  items: [{ kind: 'shipped', ticket: 'quietAfterTheStorm' }],
};
const assignment = loadAssignment(json);

/** What a trainee hands in who names the wrong part, and closes. */
function handedIn(code: string) {
  const [work] = workOf(assignment, code, library);
  const attempt = begin(work!.ticket, work!.rig);
  perform(attempt, { name: 'name', target: 'thermostat', mode: 'noDisplay', evidence: [] });
  perform(attempt, { name: 'close' });
  const stamps = attempt.steps.map((_, index) => 3.5 * (index + 1));
  return submissionOf({
    assignment,
    trainee: { code, name: '' },
    work: work!,
    number: 1,
    attempt,
    began: '2026-03-02T13:00:00Z',
    stamps,
  });
}

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
