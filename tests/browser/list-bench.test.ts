import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import { speakEnglish } from '../app/english.ts';
import { start } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { openPage } from './harness.ts';
import { byKeys, tabTo } from './keys-hand.ts';
import { expectDebrief, stepsOf } from './shadow.ts';

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

test.each(['humsOutside', 'warmUpstairs'])(
  '%s is played from complaint to debrief with the keyboard alone on the list bench',
  async (id) => {
    const { page, errors, close } = await openPage(browser, '');
    const shadow = start(id);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await tabTo(page, { words: new RegExp(`^${t(`ticket:${id}.title`)}`) });
    await page.keyboard.press('Enter');
    await page.waitForURL(/ticket/);
    await tabTo(page, { words: t('app:ticket.begin') });
    await page.keyboard.press('Enter');
    await page.waitForURL(/bench/);
    await page.getByTestId('steps').waitFor();
    await tabTo(page, { words: t('app:head.kind.list') });
    await page.keyboard.press('Enter');
    for (const action of stepsOf(id)) await byKeys(page, shadow, action);
    expect(await expectDebrief(page, shadow)).toBeGreaterThanOrEqual(85);
    expect(errors).toEqual([]);
    await close();
  },
);
