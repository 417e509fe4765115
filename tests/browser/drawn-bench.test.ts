import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { speakEnglish } from '../app/english.ts';
import { start } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { byMouse } from './drawn-hand.ts';
import { openPage } from './harness.ts';
import { expectDebrief, stepsOf } from './shadow.ts';

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

test.each(['fanButNoCooling', 'deadSinceTheFirstHotDay'])(
  '%s is played from complaint to debrief with the mouse on the drawn bench',
  async (id) => {
    const { page, errors, close } = await openPage(browser, '');
    const shadow = start(id);
    await page.locator(`a[href$="#/ticket/${id}"]`).click();
    await page.getByRole('link', { name: 'Begin', exact: true }).click();
    await page.locator('.drawn-host canvas').waitFor();
    await page.locator('.drawn-wait').waitFor({ state: 'detached' });
    for (const action of stepsOf(id)) await byMouse(page, shadow, action);
    expect(await expectDebrief(page, shadow)).toBeGreaterThanOrEqual(85);
    expect(errors).toEqual([]);
    await close();
  },
);
