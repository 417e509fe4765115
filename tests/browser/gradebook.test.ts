/** An instructor's gradebook out of files: what is dropped in, what the table says, and what comes out again. */
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { csvWords } from '../../src/app/gradebook/words.ts';
import { pointsText } from '../../src/app/points-text.ts';
import { t } from '../../src/app/words.ts';
import type { Submitted } from '../../src/classroom/answers.ts';
import { type Assignment, loadAssignment } from '../../src/classroom/assignment.ts';
import { entryOf } from '../../src/classroom/entry.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { type Gradebook, gradebookOf } from '../../src/classroom/gradebook.ts';
import { longTable, wideTable } from '../../src/classroom/gradebookCsv.ts';
import type { Overrule } from '../../src/classroom/overrules.ts';
import { speakEnglish } from '../app/english.ts';
import { answered, diceOf, honest, SMALL_EXAM, smallAssignment } from '../classroom/crowd.ts';
import { library } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { accessFaults, button, openPage, PHONE, picture } from './harness.ts';
import { bytesOf, cellsOf } from './spreadsheet.ts';

let browser: Browser;
let assignment: Assignment;
let submissions: readonly Submitted[];

beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
  assignment = loadAssignment({ ...smallAssignment(), papers: [SMALL_EXAM] });
  const dice = diceOf(5);
  const [first, second, third, fourth] = [
    honest(assignment, 't1', 0, dice),
    honest(assignment, 't1', 1, dice),
    honest(assignment, 't2', 0, dice),
    honest(assignment, 't10', 1, dice),
  ];
  // One says that it was shown more than its log is worth.
  submissions = [
    first,
    second,
    { ...third, shown: third.shown === 100 ? 99 : 100 },
    fourth,
    answered(assignment, 't1', 2, 3, true),
    answered(assignment, 't10', 2, 1),
  ];
});
afterAll(() => browser?.close());

/** What the page should come to, graded here. */
function expected(overrules: readonly Overrule[] = []): Gradebook {
  const grader = createGrader(assignment, library, ['t1', 't2', 't10']);
  const entries = submissions.map((each) => entryOf(nameOf(each), grader.grade(each)));
  return gradebookOf({ assignment, entries, overrules });
}

const nameOf = ({ trainee, item }: Submitted): string => `${trainee.code}-${item + 1}.json`;

/** As a hand drops them on the page. */
const drop = (page: Page, files: readonly (readonly [string, string])[]) =>
  page.evaluate((all) => {
    const dataTransfer = new DataTransfer();
    for (const [name, text] of all) dataTransfer.items.add(new File([text], name, { type: 'application/json' }));
    for (const kind of ['dragover', 'drop'])
      document.body.dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true }));
  }, files);

async function saved(page: Page, words: string): Promise<Download> {
  const [download] = await Promise.all([page.waitForEvent('download'), button(page, words).click()]);
  return download;
}

/** The table as it stands on the page: codes, points with their marks, and the total. */
const table = (page: Page) =>
  page.locator('.book-table tbody tr').evaluateAll((rows) =>
    rows.map((row) => {
      const text = (of: Element | null) => {
        const copy = of?.cloneNode(true) as Element | undefined;
        for (const unseen of copy?.querySelectorAll('.unseen') ?? []) unseen.remove();
        return copy?.textContent?.trim() ?? '';
      };
      return [row.getAttribute('data-trainee') ?? '', ...[...row.querySelectorAll('[data-item], [data-testid="total"]')].map(text)];
    }),
  );

const whole = (points: number | undefined): string => (points === undefined ? '–' : pointsText(points));

test('files are dropped, graded and looked at; a doubt is overruled; spreadsheet and saved file say the same', {
  timeout: 120_000,
}, async () => {
  const { page, errors, close } = await openPage(browser, '');
  await page.getByRole('link', { name: t('app:home.gradebook') }).click();
  await page.getByRole('heading', { level: 1, name: t('gradebook:title') }).waitFor();
  await picture(page, 'gradebook-empty');
  // Submissions may come first; a bad file is told, and the others go on.
  await drop(page, [...submissions.map((each) => [nameOf(each), JSON.stringify(each)] as const), ['torn.json', '{']]);
  await page.getByText(t('gradebook:take.waiting', { count: 6 })).waitFor();
  await expect.poll(() => page.locator('.book-wrong li').allTextContents()).toEqual(['torn.json › (file): not JSON.']);
  const chooser = page.locator('input[type="file"][multiple]:not([webkitdirectory])');
  await chooser.setInputFiles({ name: 'a.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(assignment)) });
  await page.getByText(t('gradebook:doubtsLeft', { count: 1 })).waitFor({ timeout: 60_000 });

  const before = expected();
  const points = (row: number, item: number) => before.rows[row]?.cells[item]?.points;
  const totals = before.rows.map(({ total }) => total.toFixed(1));
  expect(await table(page)).toEqual([
    ['t1', whole(points(0, 0)), whole(points(0, 1)), whole(points(0, 2)), totals[0]],
    ['t2', `${points(1, 0)}?`, '–', '–', totals[1]],
    ['t10', '–', whole(points(2, 1)), whole(points(2, 2)), totals[2]],
  ]);
  await picture(page, 'gradebook-table');
  expect(await accessFaults(page)).toEqual([]);

  // Nothing is handed in for a place that the assignment does not have.
  expect(await page.locator('.book-wrong li').count()).toBe(0);

  // Answers, looked at: how many were right, whether that passes, and what each wrong one comes from.
  expect(await page.locator('.book-table thead th').allTextContents()).toContain('Exam 3Mid-term');
  await page.locator('[data-trainee="t1"] [data-item="2"] button').click();
  const exam = page.getByRole('dialog');
  await exam.getByRole('heading', { name: 'Trainee t1, Exam 3: Mid-term' }).waitFor();
  const { paper } = before.rows[0]!.cells[2]!.entry!;
  expect([paper!.right, paper!.asked]).toEqual([2, 6]);
  expect(await exam.getByTestId('answersRight').textContent()).toBe('2 of 6');
  expect(await exam.getByTestId('passed').textContent()).toBe('no; the pass mark is 60%');
  expect(await exam.locator('.paper-wrong li').allTextContents()).toEqual(
    paper!.answers
      .filter(({ right }) => !right)
      .map(({ kind, misconception }) => {
        const why = misconception === undefined ? t('gradebook:paper.open') : t(`drill:misconception.${misconception}`);
        return `${t(`drill:kind.${kind}.name`)} ${why}`;
      }),
  );
  await picture(page, 'gradebook-exam');
  expect(await accessFaults(page)).toEqual([]);
  await page.keyboard.press('Escape');

  // The grade in doubt, looked at, and overruled: not without a reason.
  await page.locator('[data-trainee="t2"] [data-item="0"] button').click();
  const window = page.getByRole('dialog');
  await window.getByText(csvWords(assignment).doubt(before.rows[1]!.cells[0]!.doubts[0]!.doubt)).waitFor();
  expect(await window.getByTestId('fault').textContent()).toBe(
    csvWords(assignment).naming(before.rows[1]!.cells[0]!.result!.truth),
  );
  await picture(page, 'gradebook-cell');
  expect(await accessFaults(page)).toEqual([]);
  await window.getByLabel(t('gradebook:overrule.points')).fill('62.5');
  await window.getByLabel(t('gradebook:overrule.by')).fill('M. Núñez');
  const go = window.getByRole('button', { name: t('gradebook:overrule.go') });
  await go.click();
  expect(await window.getByTestId('overrules').count()).toBe(0);
  await window.getByLabel(t('gradebook:overrule.reason')).fill('=Seen at the bench, “très bien”');
  await go.click();
  await window.getByText(t('gradebook:overrule.inForce')).waitFor();
  await page.keyboard.press('Escape');
  await page.getByText(t('gradebook:noDoubts')).waitFor();
  const after = await table(page);
  expect(after[1]).toEqual(['t2', '62.5*', '–', '–', '20.8']);

  // Who leaves now is asked first.
  const asked: string[] = [];
  page.on('dialog', (dialog) => {
    asked.push(dialog.type());
    void dialog.dismiss();
  });
  await page.evaluate(() => setTimeout(() => location.reload()));
  await expect.poll(() => asked).toEqual(['beforeunload']);

  const file = await saved(page, t('gradebook:keep.save'));
  const json = JSON.parse((await bytesOf(file)).toString('utf8'));
  const [made] = json.overrules as Overrule[];
  const book = expected([made!]);
  const plain = (cells: readonly (readonly (string | number)[])[]) => cells.map((line) => line.map(String));
  // A text that looks like a formula is kept from being one.
  const safe = (cells: readonly (readonly (string | number)[])[]) =>
    plain(cells).map((line) => line.map((each) => each.replace(/^=/, "'=")));
  expect(plain(await cellsOf(await saved(page, t('gradebook:keep.wide'))))).toEqual(plain(wideTable(book, csvWords(assignment))));
  expect(plain(await cellsOf(await saved(page, t('gradebook:keep.long'))))).toEqual(safe(longTable(book, csvWords(assignment))));

  // Opened anew, it is graded anew, and says the same.
  await page.reload();
  expect(asked).toHaveLength(1);
  await chooser.setInputFiles({ name: 'saved.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(json)) });
  await page.getByText(t('gradebook:noDoubts')).waitFor({ timeout: 60_000 });
  await expect.poll(() => table(page)).toEqual(after);
  await page.setViewportSize(PHONE);
  await page.locator('.language-choice').selectOption('es');
  await page.getByRole('heading', { level: 1, name: 'Calificaciones' }).waitFor();
  await page.screenshot({ path: 'tests/browser/shots/gradebook-phone-es.png', fullPage: true });
  await page.locator('[data-trainee="t1"] [data-item="2"] button').click();
  await page.getByRole('dialog').getByText('no; se aprueba con 60').waitFor();
  await picture(page, 'gradebook-exam-phone-es');
  await page.keyboard.press('Escape');
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  expect(await accessFaults(page)).toEqual([]);

  // One trainee is erased.
  await page.locator('[data-trainee="t10"] .book-person').click();
  await picture(page, 'gradebook-person-phone');
  await page.getByRole('dialog').getByRole('button', { name: 'Borrar a este alumno' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Borrar ahora' }).click();
  await expect.poll(async () => (await table(page)).map(([code]) => code)).toEqual(['t1', 't2']);
  expect(await page.locator('main').textContent()).not.toMatch(/\b(app|builder|gradebook|lab|parts|rig):[a-z]/);
  expect(errors).toEqual([]);
  await close();
});
