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
