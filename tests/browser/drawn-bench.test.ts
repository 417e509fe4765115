import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
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
    const total = await expectDebrief(page, shadow);
    expect(total).toBeGreaterThanOrEqual(85);
    await page.getByRole('link', { name: t('app:toTickets'), exact: true }).click();
    await page
      .locator('li', { has: page.locator(`a[href$="#/ticket/${id}"]`) })
      .getByText(t('app:home.best', { score: total }), { exact: true })
      .waitFor();
    expect(errors).toEqual([]);
    await close();
  },
);
