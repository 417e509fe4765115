import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { decodeShared } from '../../src/app/sharing.ts';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { PAR_SPREAD } from '../../src/classroom/draw.ts';
import { launch } from './chromium.ts';
import { accessFaults, button, LAPTOP, openPage, PHONE, picture } from './harness.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** Leaves the furnace's breaker off. */
async function chooseFault(page: Page): Promise<void> {
  await page.getByRole('group', { name: 'Where it lies' }).getByText('Supply').click();
  await page.getByLabel('Part or wire').selectOption({ label: 'furnace breaker' });
  await page.locator('.make-fault').getByText('left off', { exact: true }).click();
}

test.each([
  { name: 'laptop', size: LAPTOP },
  { name: 'phone', size: PHONE },
])('an instructor makes a ticket on a $name, sees what it comes to, shares and plays it', async ({ name, size }) => {
  const { page, errors, close } = await openPage(browser, '#/build', size);
  await page.getByRole('heading', { level: 1, name: 'Make a ticket' }).waitFor();
  await chooseFault(page);
  await page.locator('.make-result:is([data-state="ready"], [data-state="wrong"])').waitFor({ timeout: 50_000 });
  await page.screenshot({ path: `tests/browser/shots/build-${name}-all.png`, fullPage: true });
  expect(Number(await page.getByTestId('suspects').textContent())).toBeGreaterThan(1);
  expect(await page.getByTestId('grade').textContent()).toMatch(/apprentice|journeyman|master/);
  await picture(page, `build-${name}`);
  expect(await accessFaults(page)).toEqual([]);
  // Also what is folded away is in words.
  expect(await page.locator('main').textContent()).not.toMatch(/\b(app|builder|keeping|parts|rig):[a-z]/);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  await button(page, 'Make a link').click();
  // The tests' page is at this PC's own address.
  await page.locator('.make-side').getByText('It works only on this PC').waitFor();
  const link = await page.getByLabel('Link', { exact: true }).inputValue();
  expect(link).toMatch(/#\/play\/[\w-]+$/);
  await button(page, 'Play it on the bench').click();
  await page.waitForURL(/#\/bench\/guest[0-9a-f]{32}$/);
  await page.locator('.bench-head h1').waitFor();
  expect(await page.locator('.bench-head h1').textContent()).not.toContain('ticket:');
  // After a reload the bench still has it, and the page of making has its draft.
  await page.reload();
  await page.locator('.bench-head h1').waitFor();
  await page.goBack();
  await page.locator('.make-result[data-state="ready"]').waitFor({ timeout: 60_000 });
  await page.goto(link);
  await page.waitForURL(/#\/ticket\/guest[0-9a-f]{32}$/);
  await page.getByRole('link', { name: 'Begin' }).waitFor();
  expect(errors).toEqual([]);
  await close();
});

test('a file from outside is told in words where it does not stand, and opened where it does', async () => {
  const { page, errors, close } = await openPage(browser, '#/build');
  const give = (name: string, text: string) =>
    page.locator('input[type="file"]').setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  await give('torn.json', '{"format":');
  await expect.poll(() => page.getByTestId('said').textContent()).toBe('torn.json › (file): not JSON.');
  await give('other.json', '{"format":"bellwire-rig"}');
  await expect.poll(() => page.getByTestId('said').textContent()).toMatch(/^other\.json › /);
  const { readFileSync } = await import('node:fs');
  const shipped = JSON.parse(readFileSync('scenarios/tickets/fanButNoCooling.json', 'utf8'));
  await give('quiet.json', JSON.stringify({ ...shipped, id: 'quiet', faults: [{ target: 'thermostat', mode: 'none' }] }));
  await expect.poll(() => page.getByTestId('wrong').textContent()).toContain('faults[0].mode');
  await give('own.json', JSON.stringify({ ...shipped, id: 'own' }));
  await page.locator('.make-result[data-state="ready"]').waitFor({ timeout: 60_000 });
  await page.goto(page.url().replace(/#.*/, '#/play/AAAA'));
  await expect.poll(() => page.locator('main [role="status"]').textContent()).toContain('damaged or cut off');
  expect(errors).toEqual([]);
  await close();
});

/** An exam with figures of one's own, and exercises before it: an assignment may be of these alone. */
async function setPapers(page: Page, name: string): Promise<void> {
  const papers = page.locator('.make-papers > li');
  const bench = page.getByLabel('with its 2 bench tickets, the same for everybody');
  // On a phone of questions alone.
  if (name === 'phone') await bench.uncheck();
  await button(page, 'Add this exam').click();
  await page.getByTestId('assign-state').getByText('It is ready to be handed out.').waitFor();
  const added = await page.locator('.make-items > li').count();
  expect(added).toBe(name === 'phone' ? 0 : 2);
  const minutes = await papers.getByLabel('Minutes').inputValue();
  const told = await page.getByTestId('exam-said').textContent();
  expect(told?.startsWith('2 tickets of this exam’s bench part were added to the tickets above.')).toBe(added > 0);
  expect(told).toContain(`Its questions have ${minutes} of the exam’s `);
  await papers.getByLabel('Questions').fill('12');
  await papers.getByLabel('Passed at, %').fill('80');
  await papers.getByLabel('A title of your own').fill('Mid-term');
  await page.getByLabel('All of these sums').check();
  await page.getByLabel('Which order is safe?').check();
  await page.locator('.make-form').getByLabel('How many exercises').fill('6');
  await button(page, 'Add these exercises').click();
  await expect
    .poll(() => page.getByTestId('papers-sum').textContent())
    .toMatch(/^18 questions in all\. .* \d+ minutes\. .* 4 minutes/);
  await papers.nth(1).getByRole('button', { name: /^Up/ }).click();
  await expect.poll(() => papers.locator('b').allTextContents()).toEqual(['Exercises: safe order and sums', 'Exam: Mid-term']);
  expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/^Down Exercises/);
  // A set's kinds are changed where it stands, and it is never left without one.
  const kinds = papers.nth(0).locator('details');
  await kinds.locator('summary').click();
  await kinds.getByLabel('All of these sums').uncheck();
  expect(await papers.locator('b').first().textContent()).toBe('Exercises: Which order is safe?');
  expect(await kinds.getByLabel('Which order is safe?').isDisabled()).toBe(true);
  await kinds.getByLabel('All of these sums').check();
  expect(await papers.locator('b').first().textContent()).toBe('Exercises: safe order and sums');
  await kinds.locator('summary').click();
  if (name === 'phone') return;
  await papers.nth(0).getByRole('button', { name: /^Look/ }).click();
  const sample = page.getByRole('dialog');
  await sample.locator('.drill-choice').first().click({ timeout: 30_000 });
  await sample.locator('.drill-why').waitFor();
  await picture(page, 'assign-sample');
  await page.keyboard.press('Escape');
}

test.each([
  { name: 'laptop', size: LAPTOP },
  { name: 'phone', size: PHONE },
])(
  'an instructor makes a graded assignment on a $name: a shipped ticket, and a pool of tickets as hard as each other',
  async ({ name, size }) => {
    const { page, errors, close } = await openPage(browser, '#/assign', size);
    const state = page.getByTestId('assign-state');
    await state.getByText('It needs a title.').waitFor();
    // A file with a kind of exercise that there is none of is told with the place in it.
    const papers = ['reading', 'mindReading'].map((kind) => ({ kind: 'drills', drills: [kind], count: 3 }));
    const strange = { format: 'bellwire-assignment', version: 1, id: 'a', title: 'A', mode: 'graded', seed: 1, items: [] };
    const buffer = Buffer.from(JSON.stringify({ ...strange, papers }));
    const file = { name: 'strange.json', mimeType: 'application/json', buffer };
    await page.locator('.make-head input[type="file"]').setInputFiles(file);
    await state.getByText('papers[1].drills[0]: there is no kind of exercise mindReading').waitFor();
    expect(await button(page, 'Make a link').isDisabled()).toBe(true);
    await button(page, 'Start afresh').click();
    await page.getByLabel('Title', { exact: true }).fill('Week 3');
    await setPapers(page, name);
    await page.getByLabel('Opens', { exact: true }).fill('2026-11-30T08:00');
    await button(page, 'Add this ticket').click();
    await state.getByText('It is ready to be handed out.').waitFor();
    await page.getByLabel('System', { exact: true }).selectOption('trainingBoard');
    await page.getByLabel('How many', { exact: true }).fill('2');
    await page.keyboard.press('Tab');
    await button(page, 'Draw them').click();
    await page.locator('.make-items [data-kind="drawn"]').waitFor({ timeout: 60_000 });
    expect(await page.getByTestId('pool-said').textContent()).toBe('2 tickets are in.');
    // It is to weigh three times what each of the others does: five on a laptop, three on a phone.
    const pool = page.locator('.make-items [data-kind="drawn"]');
    expect(await page.locator('.make-weight').getByText('of the total').count()).toBe(0);
    await pool.getByLabel('Weight').fill('0');
    await page.keyboard.press('Tab');
    await state.getByText(`items[${name === 'phone' ? 1 : 3}].weight: a weight is a whole number from 1 to 10.`).waitFor();
    await pool.getByLabel('Weight').fill('3');
    await page.keyboard.press('Tab');
    await pool.getByText(`${name === 'phone' ? 50 : 38}% of the total`).waitFor();
    if (name === 'phone') {
      await page.locator('.language-choice').selectOption('fr');
      await page.getByRole('heading', { name: 'Exercices et examens' }).waitFor();
    }
    await page.screenshot({ path: `tests/browser/shots/assign-${name}-all.png`, fullPage: true });
    expect(await accessFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    if (name === 'phone') await page.locator('.language-choice').selectOption('en');
    await button(page, 'Make a link').click();
    const link = await page.getByLabel('Link', { exact: true }).inputValue();
    const shared = loadAssignment(decodeShared(link.replace(/.*#\/take\//, '')));
    expect(shared).toMatchObject({ title: 'Week 3', mode: 'graded', opens: expect.stringMatching(/Z$/) });
    const [drawn, shipped, ...bench] = [...shared.items].reverse();
    expect(bench.map(({ kind }) => kind)).toEqual(name === 'phone' ? [] : ['shipped', 'shipped']);
    if (shipped?.kind !== 'shipped' || drawn?.kind !== 'drawn') throw new Error('other items');
    expect(shared.papers).toEqual([
      { kind: 'drills', drills: ['safeOrder', 'loopDrop', 'loadCurrent', 'vaSum'], count: 6 },
      expect.objectContaining({ kind: 'exam', title: 'Mid-term', exam: expect.objectContaining({ items: 12, pass: 0.8 }) }),
    ]);
    expect(drawn.weight).toBe(3);
    const seconds = drawn.pool.map((each) => each.seconds);
    expect(Math.max(...seconds)).toBeLessThanOrEqual(Math.min(...seconds) * (1 + PAR_SPREAD));
    // A reload loses nothing.
    await page.reload();
    await state.getByText('It is ready to be handed out.').waitFor();
    expect(errors).toEqual([]);
    await close();
  },
);
