import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import { speakEnglish } from '../app/english.ts';
import { start } from '../scenario/shipped.ts';
import { black, lift, meter, pull, red } from '../score/solutions.ts';
import { launch } from './chromium.ts';
import { openPage } from './harness.ts';
import { byKeys } from './keys-hand.ts';

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

test('what a step brings is announced politely, and the tone has a sign for the eye', async () => {
  const { page, close } = await openPage(browser, '#/bench/blankWall');
  const shadow = start('blankWall');
  await page.getByTestId('steps').waitFor();
  await page.getByRole('button', { name: t('app:head.kind.list'), exact: true }).click();
  const said = page.locator('[aria-live=polite][data-testid=said]');
  for (const action of [pull('thermostat'), red('subbase.C'), black('subbase.C')]) await byKeys(page, shadow, action);
  await byKeys(page, shadow, meter('tone'));
  await expect.poll(() => said.textContent()).toBe('meter on continuity. Meter: 0.0 ohms, tone sounds.');
  await expect.poll(() => page.locator('.rail-right .tone-waves').count()).toBe(1);
  expect(await page.locator('.captions').textContent()).toContain(t('stage:caption.tone'));
  await byKeys(page, shadow, red('subbase.W'));
  expect(await page.locator('.rail-right .tone-waves').count()).toBe(0);
  expect(await said.textContent()).not.toContain('tone sounds');
  await close();
});

test('an action that takes its own button away leaves the focus on the thing that it was done to', async () => {
  const { page, close } = await openPage(browser, '#/bench/blankWall');
  const shadow = start('blankWall');
  await page.getByTestId('steps').waitFor();
  await page.getByRole('button', { name: t('app:head.kind.list'), exact: true }).click();
  await byKeys(page, shadow, pull('thermostat'));
  const focused = () => page.evaluate(() => document.activeElement?.id);
  expect(await focused()).toBe('part-thermostat');
  await byKeys(page, shadow, lift('statR', 'to'));
  expect(await focused()).toBe('wire-statR');
  await close();
});

test('with single keys turned off, letters and digits do nothing', async () => {
  const { page, close } = await openPage(browser, '#/bench/blankWall');
  await page.getByTestId('steps').waitFor();
  await page.getByRole('button', { name: t('app:head.kind.list'), exact: true }).click();
  await page.getByRole('checkbox', { name: t('app:list.keys'), exact: true }).uncheck();
  await page.locator('#list-place').focus();
  for (const key of ['r', 'b', '1']) await page.keyboard.press(key);
  expect(await page.getByRole('listbox').count()).toBe(0);
  expect(await page.getByTestId('steps').textContent()).toBe('0');
  await close();
});
