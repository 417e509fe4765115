/** The service report: the trainee's own words are kept, carried and never run; the sheet prints whole. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import { logOf } from '../../src/attempt/attempt.ts';
import { speakEnglish } from '../app/english.ts';
import { start } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { cutTexts } from './cut.ts';
import { accessFaults, address, openPage, PHONE, picture } from './harness.ts';
import { stepsOf, takeStep } from './shadow.ts';
import { pagesIn, SHEETS } from './sheets.ts';
import { put } from './store.ts';

const TICKET = 'clicksButWontStart';
const MARKUP = '<img src=x onerror="document.title=\'run\'"><script>document.title="run"</script> & "so" </textarea><b>bold</b>';

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

function finishedLog() {
  const shadow = start(TICKET);
  for (const action of stepsOf(TICKET)) takeStep(shadow, action);
  return logOf(shadow);
}

/** A finished attempt as it lies in the store, with a result, so that the page of progress has none to work out. */
async function layIn(page: Page): Promise<void> {
  const line = { points: 5, of: 10 };
  const items = { isolation: line, economy: line, safety: line, proof: line };
  const result = { total: 50, right: true, steps: 9, wasted: 1, minutes: 12, items };
  const attempt = { mode: 'practice', log: finishedLog() };
  await put(page, `closed:${TICKET}`, attempt);
  await put(page, 'finished:1', { ...attempt, ticket: TICKET, number: 1, when: 0, result });
  await put(page, 'count', 1);
}

async function readIn(page: Page, file: Buffer, count: number): Promise<void> {
  await page.locator('input[type=file]').setInputFiles({ name: 'mine.json', mimeType: 'application/json', buffer: file });
  await page.getByText(t('keeping:file.done', { count })).waitFor();
}

const ownWords = (page: Page) => page.getByRole('textbox', { name: t('report:words.title') });

test('own words are kept through a reload, go out and come back with a file, and are never run', async () => {
  const { page, errors, close } = await openPage(browser, '#/progress');
  await layIn(page);
  await page.goto(address(`#/report/${TICKET}`));
  await ownWords(page).fill(MARKUP);
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'report');
  await page.reload();
  expect(await ownWords(page).inputValue()).toBe(MARKUP);
  expect(await page.locator('.report-words').textContent()).toBe(MARKUP);
  expect(await page.locator('main :is(img, script, b)').count()).toBe(0);
  expect(await page.title()).not.toBe('run');
  await page.goto(address('#/progress'));
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: t('keeping:file.save'), exact: true }).click();
  const saved = readFileSync(await (await saving).path());
  // Whoever reads the file in again keeps the words that are there now.
  await page.goto(address(`#/report/${TICKET}`));
  await ownWords(page).fill('Filter changed.');
  await page.goto(address('#/progress'));
  await readIn(page, saved, 0);
  await page.goto(address(`#/report/${TICKET}/1`));
  expect(await ownWords(page).inputValue()).toBe('Filter changed.');
  await close();
  const fresh = await openPage(browser, '#/progress', PHONE);
  await readIn(fresh.page, saved, 1);
  await fresh.page.goto(address(`#/report/${TICKET}`));
  expect(await ownWords(fresh.page).inputValue()).toBe(MARKUP);
  expect(await accessFaults(fresh.page)).toEqual([]);
  expect(await cutTexts(fresh.page)).toEqual([]);
  await picture(fresh.page, 'report-phone');
  expect([...errors, ...fresh.errors]).toEqual([]);
  await fresh.close();
});

test('a thousand characters print whole on A4 and Letter: white, no wider than the sheet, no row cut in two', async () => {
  const { page, close } = await openPage(browser, '#/progress');
  await layIn(page);
  await page.goto(address(`#/report/${TICKET}`));
  await ownWords(page).fill(`${'Changed it.\n'.repeat(40)}${'W'.repeat(500)} and the last word is here`);
  const kept = await ownWords(page).inputValue();
  expect(kept.length).toBe(1000);
  await page.emulateMedia({ media: 'print' });
  for (const [format, inches] of Object.entries(SHEETS)) {
    await page.setViewportSize({ width: Math.floor(inches * 96), height: 1000 });
    expect(await cutTexts(page), format).toEqual([]);
    // One page of facts, one of readings and repair, and what the words take.
    expect(pagesIn(await page.pdf({ format })), format).toBe(3);
  }
  const found = await page.evaluate(() => ({
    grounds: ['html', 'body', '.paper', '.report'].map((each) => {
      const element = document.querySelector(each);
      return element === null ? 'missing' : getComputedStyle(element).backgroundColor;
    }),
    rows: [...document.querySelectorAll('.report tr, .report li')].map((each) => getComputedStyle(each).breakInside),
    words: [...document.querySelectorAll('.report-words')].find((each) => each.checkVisibility())?.textContent,
    boxes: [...document.querySelectorAll('main button, main textarea, header')].filter((each) => each.checkVisibility()).length,
  }));
  expect(found.grounds.filter((each) => each !== 'rgb(255, 255, 255)' && each !== 'rgba(0, 0, 0, 0)')).toEqual([]);
  expect(found.rows.length).toBeGreaterThan(5);
  expect(new Set(found.rows)).toEqual(new Set(['avoid']));
  expect(found.words).toBe(kept);
  expect(found.boxes).toBe(0);
  await close();
});

test('a debrief prints with its folds open, and shuts them again', async () => {
  const { page, close } = await openPage(browser, '#/progress');
  await layIn(page);
  await page.reload();
  await page.getByRole('link', { name: t('keeping:table.debriefOf', { number: 1, title: t(`ticket:${TICKET}.title`) }) }).click();
  await page.getByTestId('total').waitFor({ timeout: 60_000 });
  const bodies = () => page.locator('.step-body').evaluateAll((all) => all.filter((each) => each.checkVisibility()).length);
  const folds = page.locator('main details:not([data-lazy])');
  const count = await folds.count();
  expect(count).toBeGreaterThan(8);
  expect(await bodies()).toBe(0);
  // The browser's own printing, which tells the page before and after.
  await page.evaluate(() => {
    addEventListener('beforeprint', () => {
      document.body.dataset.open = String(document.querySelectorAll('main details[open]:not([data-lazy])').length);
    });
  });
  const printed = pagesIn(await page.pdf({ format: 'A4' }));
  expect(await page.locator('body').getAttribute('data-open')).toBe(String(count));
  expect(await page.locator('main details[open]').count()).toBe(0);
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  expect(await bodies()).toBeGreaterThan(5);
  await page.emulateMedia({ media: 'print' });
  for (const inches of Object.values(SHEETS)) {
    await page.setViewportSize({ width: Math.floor(inches * 96), height: 1000 });
    // The slanted words of the chart lie in boxes that overlap, though they do not.
    expect((await cutTexts(page)).filter((each) => !/^overlap: text\. .* and text\. /.test(each))).toEqual([]);
  }
  expect(printed).toBeGreaterThan(2);
  await page.emulateMedia({ media: 'screen' });
  await page.getByRole('link', { name: t('report:link'), exact: true }).click();
  await ownWords(page).waitFor();
  expect(page.url()).toContain(`#/report/${TICKET}/1`);
  await close();
});
