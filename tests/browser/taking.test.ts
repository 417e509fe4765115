/** An assignment that came as a file: two items worked on with a reload in the middle, handed in, and graded. */
import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { encodeShared } from '../../src/app/sharing.ts';
import { modeName, number, t } from '../../src/app/words.ts';
import type { Action } from '../../src/attempt/actions.ts';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { papersOf, rigsOf } from '../../src/classroom/papers.ts';
import { loadSubmission } from '../../src/classroom/submission.ts';
import { createBank } from '../../src/drills/draw.ts';
import { itemOf } from '../../src/drills/paper.ts';
import { speakEnglish } from '../app/english.ts';
import { library, start, ticket } from '../scenario/shipped.ts';
import { black, meter, pull, red } from '../score/solutions.ts';
import { launch } from './chromium.ts';
import { cutTexts } from './cut.ts';
import { accessFaults, address, button, LAPTOP, openPage, PHONE, picture } from './harness.ts';
import { byKeys } from './keys-hand.ts';
import { allRecords } from './store.ts';

const FIRST = 'fanButNoCooling';
const SECOND = 'blankWall';
const ASSIGNMENT = {
  format: 'bellwire-assignment',
  version: 1,
  id: 'week-9',
  title: 'Week nine: low voltage',
  note: 'Measure before you name.\nWrite what you would tell the customer.',
  mode: 'graded',
  attempts: 1,
  minutes: 60,
  opens: '2020-01-01T00:00:00Z',
  seed: 1,
  items: [FIRST, SECOND].map((ticket) => ({ kind: 'shipped', ticket })),
};
const STEPS: readonly Action[] = [pull('thermostat'), red('subbase.R'), black('subbase.C'), meter('voltsAc')];

const WORDS = 'Y is open.\nThe customer knows.';

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

const lay = (page: Page, text: string) =>
  page.locator('input[type=file]').setInputFiles({ name: 'week 9.json', mimeType: 'application/json', buffer: Buffer.from(text) });

async function signOn(page: Page): Promise<void> {
  await page.getByLabel(t('take:who.code')).fill('A-17');
  await page.getByLabel(t('take:who.name')).fill('Ann');
  await page.getByRole('checkbox', { name: t('take:privacy.agree') }).check();
  await button(page, t('take:who.go')).click();
  await page.getByTestId('state-1').waitFor();
}

async function saved(page: Page, words: string): Promise<Download> {
  const saving = page.waitForEvent('download');
  await button(page, words).first().click();
  return saving;
}

/** Works on an item with a few steps, names a wire and closes; reloads in the middle where that is asked for. */
async function workOn(page: Page, item: number, ticket: string, reload: boolean): Promise<void> {
  const slip = page.locator('.take-item').nth(item);
  await slip.getByRole('button', { name: t('take:item.begin'), exact: true }).click();
  await page.getByTestId('steps').waitFor();
  await button(page, t('app:head.kind.list')).click();
  const shadow = start(ticket);
  for (const action of STEPS) await byKeys(page, shadow, action);
  expect(await button(page, t('app:hint.open')).count()).toBe(0);
  expect(await page.getByTestId('left').textContent()).toMatch(/^(01:00:00|00:59:\d\d)$/);
  if (reload) {
    await page.reload();
    await page.getByTestId('steps').waitFor();
    expect(await page.getByTestId('steps').textContent()).toBe(String(STEPS.length));
    expect(await page.locator('body').textContent()).not.toContain('rig:');
    await picture(page, 'take-bench');
  }
  await byKeys(page, shadow, { name: 'name', target: 'statY', mode: 'open', evidence: [] });
  await button(page, t('app:head.close')).click();
  await page.getByTestId(`total-${item}-1`).waitFor({ timeout: 90_000 });
}

test('a file is taken, worked on through a reload, handed in and graded to the total that was shown', async () => {
  const { page, errors, close } = await openPage(browser, '#/take');
  await lay(page, JSON.stringify({ ...ASSIGNMENT, mode: 'easy' }));
  const alert = page.getByRole('alert').filter({ hasText: 'week 9.json › mode' });
  await alert.waitFor();
  expect(await accessFaults(page)).toEqual([]);
  await lay(page, JSON.stringify(ASSIGNMENT));
  await button(page, t('take:who.go')).waitFor();
  expect(await page.getByRole('alert').filter({ hasText: 'week 9.json' }).count()).toBe(0);
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'take-open');
  await signOn(page);
  await workOn(page, 0, FIRST, true);
  await workOn(page, 1, SECOND, false);
  await page.getByLabel(t('take:ended.words')).first().fill('Y open from the wall. "Tell" <b>them</b>.');
  expect(await button(page, t('take:ended.debrief')).count()).toBe(0);
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'take-done');
  // The service report: what was named and measured and the words, on paper too; neither points nor the truth, nor a word of either.
  await page
    .getByRole('link', { name: t('report:link'), exact: true })
    .first()
    .click();
  await page.getByRole('heading', { name: t('report:found.title') }).waitFor();
  expect(await page.getByRole('textbox').inputValue()).toBe('Y open from the wall. "Tell" <b>them</b>.');
  await page.getByRole('textbox').fill(WORDS);
  const sheet = (await page.locator('main').textContent()) ?? '';
  expect(sheet).toContain(modeName('open'));
  expect(sheet).toContain('Ann');
  const [truth] = ticket(FIRST).faults;
  expect(sheet).not.toContain(modeName(truth!.mode));
  expect(sheet).not.toContain(t('take:ended.score', { total: '', of: number(100) }).trim());
  expect(await page.getByRole('link', { name: t('report:back') }).count()).toBe(0);
  expect(await accessFaults(page)).toEqual([]);
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('button', { name: t('settings:print') }).isVisible()).toBe(false);
  expect(await page.locator('.report-words').textContent()).toBe(WORDS);
  await page.emulateMedia({ media: 'screen' });
  await picture(page, 'take-report');
  await page.setViewportSize(PHONE);
  await picture(page, 'take-report-phone');
  await page.setViewportSize(LAPTOP);
  await page.getByRole('link', { name: t('take:back'), exact: true }).click();
  expect(await page.getByLabel(t('take:ended.words')).first().inputValue()).toBe(WORDS);
  const file = await saved(page, t('take:ended.save'));
  expect(file.suggestedFilename()).toBe('week-9-A-17-1-1.bellwire.json');
  const zip = await saved(page, t('take:all.save'));
  const files = unzipSync(readFileSync(await zip.path()));
  expect(Object.keys(files)).toEqual(['week-9-A-17-1-1.bellwire.json', 'week-9-A-17-2-1.bellwire.json']);
  const handed = Object.values(files).map((bytes) => JSON.parse(Buffer.from(bytes).toString('utf8')) as unknown);
  expect(JSON.parse(readFileSync(await file.path(), 'utf8'))).toEqual(handed[0]);
  const grader = createGrader(loadAssignment(ASSIGNMENT), library);
  for (const [item, json] of handed.entries()) {
    const { doubts, result } = grader.grade(json);
    const submission = loadSubmission(json);
    expect(doubts).toEqual([]);
    expect(submission.log).toMatchObject({ steps: { length: STEPS.length + 2 } });
    expect(submission.stamps).toHaveLength(STEPS.length + 2);
    expect(await page.getByTestId(`total-${item}-1`).getAttribute('data-total')).toBe(String(result?.total));
    expect(submission.shown).toBe(result?.total);
    expect(submission.words).toBe(item === 0 ? WORDS : undefined);
  }
  // Free practice knows nothing of it, and no page shows the fault.
  const keys = (await allRecords(page)).map(([key]) => key);
  expect(keys.filter((key) => !/^(assigned|work):/.test(key))).toEqual([]);
  await button(page, t('take:privacy.eraseAll')).click();
  await button(page, t('take:privacy.yes')).click();
  await page.getByRole('heading', { name: t('take:file.title') }).waitFor();
  expect(await allRecords(page)).toEqual([]);
  expect(errors).toEqual([]);
  await close();
});

const PAPERS = {
  ...ASSIGNMENT,
  id: 'week-10',
  title: 'Week ten: readings and contacts',
  items: [],
  papers: [
    { kind: 'drills', drills: ['contacts', 'loadCurrent'], count: 3 },
    { kind: 'exam', title: 'Before the summer', exam: { id: 'own', items: 5, minutes: 10, pass: 0.7, skills: { contacts: 1 } } },
  ],
};

test('exercises are answered without a word on right or wrong, through a reload, handed in and graded to the total that was shown', async () => {
  const assignment = loadAssignment(PAPERS);
  const bank = createBank(rigsOf(library).flatMap((id) => library.rigs.get(id) ?? []));
  const [right = 0, second = 0] = papersOf(assignment, 'A-17', library)[0]!.questions.map((each) => itemOf(bank, each)?.right);
  const wrong = second === 0 ? 1 : 0;
  const { page, errors, close } = await openPage(browser, '#/take');
  await lay(page, JSON.stringify(PAPERS));
  await signOn(page);
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'take-papers');
  const slip = page.locator('.take-item').first();
  await slip.getByRole('button', { name: t('take:item.begin'), exact: true }).click();
  const choices = page.locator('.drill-choice');
  const asked = async (at: number) => {
    await page.getByText(t('drill:exam.place', { at: number(at), of: number(3) }), { exact: true }).waitFor();
    await choices.first().waitFor();
  };
  await asked(1);
  expect(await page.getByTestId('left').textContent()).toMatch(/^(01:00:00|00:59:\d\d)$/);
  const other = right === 0 ? 1 : 0;
  await choices.nth(other).click();
  await button(page, t('drill:exam.flag')).click();
  expect(await page.locator('.drill-why').count()).toBe(0);
  expect(await page.locator('.drill-choice[data-mark]:not([data-mark=""])').count()).toBe(0);
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'take-paper');
  await page.reload();
  // It goes on at the first question without an answer; the one before is as it was, and may be answered anew.
  await asked(2);
  await choices.nth(wrong).click();
  await button(page, t('drill:exam.before')).click();
  await asked(1);
  expect(await choices.nth(other).getAttribute('aria-pressed')).toBe('true');
  expect(await button(page, t('drill:exam.flag')).getAttribute('aria-pressed')).toBe('true');
  await choices.nth(right).click();
  await page.setViewportSize(PHONE);
  expect(await cutTexts(page)).toEqual([]);
  await picture(page, 'take-paper-phone');
  await page.setViewportSize(LAPTOP);
  await button(page, t('take:paper.end')).click();
  await page.getByText(t('drill:exam.open', { count: 1 })).waitFor();
  await button(page, t('drill:exam.handIn')).click();
  const points = page.getByTestId('total-0-1');
  await points.waitFor();
  expect(await page.getByRole('link', { name: t('take:paper.review') }).count()).toBe(0);
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'take-papers-done');
  const file = await saved(page, t('take:ended.save'));
  expect(file.suggestedFilename()).toBe('week-10-A-17-1-1.bellwire.json');
  const json = JSON.parse(readFileSync(await file.path(), 'utf8')) as { choices: unknown; stamps: unknown[] };
  expect(json.choices).toEqual([right, wrong, null]);
  const { doubts, paper, submission } = createGrader(assignment, library).grade(json);
  expect(doubts).toEqual([]);
  expect(paper).toMatchObject({ right: 1, asked: 3, total: 33.3 });
  expect(submission.shown).toBe(paper?.total);
  expect(await points.getAttribute('data-total')).toBe(String(paper?.total));
  const zip = await saved(page, t('take:all.save'));
  expect(Object.keys(unzipSync(readFileSync(await zip.path())))).toEqual([file.suggestedFilename()]);
  expect((await allRecords(page)).map(([key]) => key.replace(/:[0-9a-f]{32}/, ''))).toEqual(['assigned', 'paper:0:1']);
  await button(page, t('take:privacy.eraseAll')).click();
  await button(page, t('take:privacy.yes')).click();
  await page.getByRole('heading', { name: t('take:file.title') }).waitFor();
  expect(await allRecords(page)).toEqual([]);
  expect(errors).toEqual([]);
  await close();
});

test('a link opens on a phone, and an attempt whose time is up while nobody looks is over', async () => {
  const { page, errors, close } = await openPage(browser, `#/take/${encodeShared({ ...ASSIGNMENT, minutes: 1 })}`, PHONE);
  await page.clock.install();
  await page.reload();
  await button(page, t('take:who.go')).waitFor();
  expect(await accessFaults(page)).toEqual([]);
  expect(await cutTexts(page)).toEqual([]);
  await picture(page, 'take-open-phone');
  await signOn(page);
  await picture(page, 'take-phone');
  await button(page, t('take:item.begin')).first().click();
  await page.getByTestId('left').waitFor();
  await picture(page, 'take-bench-phone');
  expect(await accessFaults(page)).toEqual([]);
  await page.clock.fastForward(61_000);
  await page.getByText(t('take:ended.timeOver')).waitFor();
  expect(
    await page
      .locator('.take-item')
      .first()
      .getByRole('button', { name: t('take:item.begin') })
      .count(),
  ).toBe(0);
  expect(await cutTexts(page)).toEqual([]);
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'take-over-phone');
  await page.goto(address('#/take/broken!'));
  await page
    .getByRole('alert')
    .filter({ hasText: t('take:file.link') })
    .waitFor();
  expect(errors).toEqual([]);
  await close();
});
