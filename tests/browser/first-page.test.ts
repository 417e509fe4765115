import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch } from './chromium.ts';
import { openPage } from './harness.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

test('the built app opens with a heading and no error', async () => {
  const { page, errors, close } = await openPage(browser, '');
  await page.getByRole('heading', { level: 1 }).waitFor();
  expect(errors).toEqual([]);
  await close();
});

test('the first page and a ticket load without Phaser and without the solver', async () => {
  const { page, close } = await openPage(browser, '');
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.locator('.ticket-row a').first().click();
  await page.waitForURL(/#\/ticket\//);
  const loaded = () =>
    page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .map((each) => each.name.replace(/^.*\//, ''))
        .filter((name) => name.endsWith('.js')),
    );
  expect((await loaded()).filter((name) => /^(stage|bench|attempt)/.test(name))).toEqual([]);
  await page.locator('.act').click();
  await page.locator('.drawn-host canvas').waitFor();
  expect((await loaded()).filter((name) => /^stage/.test(name))).toHaveLength(1);
  await close();
});
