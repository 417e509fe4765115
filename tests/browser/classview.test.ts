/** A class as a whole, and the reports for its trainees: what the page says of a small class that was graded here too. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { spreadsOf } from '../../src/app/gradebook/views/chart-data.ts';
import { t } from '../../src/app/words.ts';
import type { Submitted } from '../../src/classroom/answers.ts';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { entryOf } from '../../src/classroom/entry.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { type Gradebook, gradebookOf } from '../../src/classroom/gradebook.ts';
import { loadOverrules, type Overrule } from '../../src/classroom/overrules.ts';
import { speakEnglish } from '../app/english.ts';
import { answered, codes, diceOf, honest, SMALL_EXAM, smallAssignment } from '../classroom/crowd.ts';
import { library } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { cutTexts } from './cut.ts';
import { accessFaults, button, LAPTOP, openPage, PHONE, picture } from './harness.ts';
import { pagesIn, SHEETS } from './sheets.ts';

const TRAINEES = codes(3);
const OVERRULE: Overrule = {
  trainee: 't2',
  item: 0,
  points: 62.5,
  reason: 'Shown again at the bench.',
  by: 'M. Núñez',
  at: '2026-03-03T08:00:00Z',
};

let browser: Browser;
let file: string;
let gradebook: Gradebook;

beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
  const assignment = loadAssignment({ ...smallAssignment(), papers: [SMALL_EXAM] });
  const dice = diceOf(6);
  const each: Submitted[] = TRAINEES.flatMap((code, index) => [
    ...[0, 1].map((item) => honest(assignment, code, item, dice)),
    answered(assignment, code, 2, 2 * index, index === 1),
  ]);
  const submissions = each.map((submission, index) => ({ file: `${index}.json`, submission }));
  const { overrules } = loadOverrules({
    format: 'bellwire-overrules',
    version: 1,
    assignment: assignment.id,
    overrules: [OVERRULE],
  });
  const grader = createGrader(assignment, library, TRAINEES);
  gradebook = gradebookOf({
    assignment,
    overrules,
    entries: each.map((one, index) => entryOf(`${index}.json`, grader.grade(one))),
  });
  file = JSON.stringify({ format: 'bellwire-gradebook', version: 1, assignment, submissions, overrules });
});
afterAll(() => browser?.close());

test('a class is seen by skill, by item and in charts, and each trainee’s report prints on a sheet of its own', async () => {
  const { page, errors, close } = await openPage(browser, '#/gradebook');
  const chooser = page.locator('input[type="file"][multiple]:not([webkitdirectory])');
  await chooser.setInputFiles({ name: 'a.json', mimeType: 'application/json', buffer: Buffer.from(file) });
  await page.getByText(t('gradebook:noDoubts')).waitFor({ timeout: 60_000 });
  const texts = (rows: string) =>
    page.locator(rows).evaluateAll((all) => all.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent)));
  const open = () =>
    page.locator('.classview details').evaluateAll((all) => {
      for (const each of all) each.setAttribute('open', '');
    });

  // The map's table says what the gradebook says; the map has a mark for each of its cells.
  await button(page, t('classview:view.skills')).click();
  await open();
  const shares = gradebook.skills.map(({ trainees }) =>
    trainees.map(({ shown, asked }) =>
      asked === 0 ? t('classview:skills.unasked') : t('classview:skills.share', { shown, asked }),
    ),
  );
  const rows = await texts('[data-of="skills"] .skills-table tbody tr');
  expect(rows.slice(1)).toEqual(TRAINEES.map((_, row) => shares.map((each) => each[row])));
  expect(await page.locator('[data-of="skills"] .skills-map .skill-mark').count()).toBe(3 * gradebook.skills.length);
  const [analysis] = gradebook.papers;
  const answers = await texts('[data-of="questions"] .skills-table tbody tr');
  expect(answers.slice(1)).toEqual(
    TRAINEES.map((_, row) =>
      analysis!.skills.map(({ trainees }) =>
        t('classview:skills.share', { shown: trainees[row]!.right, asked: trainees[row]!.asked }),
      ),
    ),
  );
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'classview-skills');

  await button(page, t('classview:view.items')).click();
  await open();
  expect(await page.locator('.item-analysis > .item-facts').count()).toBe(3);
  await page.locator('.item-tickets .item-facts').first().waitFor();
  const exam = page.locator('[data-paper="2"]');
  expect(await exam.locator('h3').textContent()).toBe('Exam 3: Mid-term');
  const [common] = analysis!.misconceptions;
  expect(await exam.textContent()).toContain(`${analysis!.passedCount} of 3 trainees`);
  expect(await exam.textContent()).toContain(t('classview:paper.apart.few', { count: 3, least: '6' }));
  expect(await exam.textContent()).toContain(t(`drill:misconception.${common!.misconception}`));
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'classview-items');

  // Each chart has a name and a table; the points are those of the gradebook.
  await button(page, t('classview:view.charts')).click();
  await page.getByRole('img', { name: t('classview:charts.totals.title') }).waitFor();
  await page.getByRole('img', { name: t('classview:charts.points.title') }).waitFor();
  await open();
  const spreads = spreadsOf(gradebook).map(({ trainees, lowest, lower, median, upper, highest }) =>
    [trainees, lowest, lower, median, upper, highest].map((each) => Math.round(each)),
  );
  const figures = await texts('.plot:nth-of-type(2) tbody tr');
  expect(figures.map((row) => row.map(Number))).toEqual(spreads);
  expect(await page.locator('.paper-bar-figures').allTextContents()).toEqual(
    analysis!.kinds.map(({ right, asked }) => `${right} of ${asked} (${Math.round((100 * right) / asked)}%)`),
  );
  expect(await accessFaults(page)).toEqual([]);
  await page.setViewportSize(PHONE);
  await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  await picture(page, 'classview-charts-phone');
  await page.setViewportSize(LAPTOP);

  await page.getByRole('link', { name: t('classview:report.all') }).click();
  const sheets = page.locator('.trainee-sheet');
  await sheets.first().waitFor({ timeout: 60_000 });
  expect(await sheets.locator('.sheet-total b').allTextContents()).toEqual(
    gradebook.rows.map(({ total }) => String(Math.round(total * 10) / 10)),
  );
  // What was taken away in each part is what is missing there.
  const parts = await page.locator('.sheet-score tbody tr:not([data-item="hints"])').evaluateAll((all) =>
    all.map((row) => {
      const [points = 0, of = 0] = (row.querySelector('.sheet-points')?.textContent ?? '').split(' / ').map(Number);
      const lost = [...row.querySelectorAll('b')].reduce((sum, each) => sum + Number(each.textContent), 0);
      return { points, missing: of - points, lost: -lost };
    }),
  );
  expect(parts).toHaveLength(3 * 2 * 4);
  for (const { points, missing, lost } of parts) {
    if (points > 0) expect(Math.abs(lost - missing)).toBeLessThan(0.5);
    else expect(lost).toBeGreaterThanOrEqual(missing - 0.5);
  }
  expect(await sheets.locator('.paper-wrong li').count()).toBe(2 + 1 + 4);
  const second = (await sheets.nth(1).textContent()) ?? '';
  for (const said of [OVERRULE.reason, OVERRULE.by, t('classview:report.practise')]) expect(second).toContain(said);
  expect(second).not.toMatch(/\bt[13]\b|\b(app|classview|gradebook|keeping|parts|rig|score):[a-z]/);
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'trainee-report');

  await page.emulateMedia({ media: 'print' });
  for (const [format, inches] of Object.entries(SHEETS)) {
    await page.setViewportSize({ width: Math.floor(inches * 96), height: 1000 });
    expect(await cutTexts(page), format).toEqual([]);
    expect(pagesIn(await page.pdf({ format })), format).toBe(TRAINEES.length);
  }
  const grounds = await page
    .locator('html, body, .paper, .trainee-sheet')
    .evaluateAll((all) => all.map((each) => getComputedStyle(each).backgroundColor));
  expect(new Set(grounds)).toEqual(new Set(['rgb(255, 255, 255)']));
  expect(await page.locator('main button:visible, header.page-head:visible').count()).toBe(0);
  // However short they are.
  await page.addStyleTag({ content: '.sheet-item { display: none !important }' });
  expect(pagesIn(await page.pdf({ format: 'A4' }))).toBe(TRAINEES.length);
  expect(errors).toEqual([]);
  await close();
});
