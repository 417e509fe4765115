/** The debrief on paper: no dark ground, nothing to press, no wider than the sheet. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import { speakEnglish } from '../app/english.ts';
import { start } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { openPage, picture } from './harness.ts';
import { byKeys } from './keys-hand.ts';
import { stepsOf } from './shadow.ts';

/** A sheet of A4 between margins of 15 mm, CSS pixels at 96 to the inch (ISO 216: 210 mm wide). */
const SHEET_PIXELS = Math.floor(((210 - 30) / 25.4) * 96);

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

test('a debrief prints black on white, without buttons, within the width of a sheet', async () => {
  const { page, errors, close } = await openPage(browser, '#/bench/quietAfterTheStorm');
  const shadow = start('quietAfterTheStorm');
  await page.getByTestId('steps').waitFor();
  await page.getByRole('button', { name: t('app:head.kind.list'), exact: true }).click();
  for (const action of stepsOf('quietAfterTheStorm')) await byKeys(page, shadow, action);
  await page.getByTestId('total').waitFor({ timeout: 60_000 });
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute('data-printed', '');
  });
  await page.getByRole('button', { name: t('settings:print'), exact: true }).click();
  await expect.poll(() => page.locator('body[data-printed]').count()).toBe(1);
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: SHEET_PIXELS, height: 1000 });
  const grounds = await page.evaluate(() =>
    ['html', 'body', '.paper'].map((each) => {
      const found = document.querySelector(each);
      return found === null ? 'missing' : getComputedStyle(found).backgroundColor;
    }),
  );
  expect(grounds).toEqual(Array(3).fill('rgb(255, 255, 255)'));
  expect(await page.locator('button:visible, .page-head:visible').count()).toBe(0);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  expect((await page.pdf({ format: 'A4' })).length).toBeGreaterThan(1000);
  await picture(page, 'debrief-print');
  expect(errors).toEqual([]);
  await close();
});
