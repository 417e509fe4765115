/** axe-core finds nothing of any weight on any page, on a laptop and on a phone: WCAG 2.2 by its rules. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { placeName, t } from '../../src/app/words.ts';
import { speakEnglish } from '../app/english.ts';
import { launch } from './chromium.ts';
import { accessFaults, drawnReady, LAPTOP, openPage, PHONE, picture } from './harness.ts';

const TICKET = 'clicksButWontStart';

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

const button = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });

async function settled(page: Page): Promise<void> {
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

async function walkTo(page: Page, place: string, onPhone: boolean): Promise<void> {
  if (onPhone) await page.locator('.dock-place').click();
  await button(page, placeName(place)).last().click();
  await page.getByRole('heading', { level: 2, name: placeName(place) }).waitFor();
}

describe.each([
  ['laptop', LAPTOP],
  ['phone', PHONE],
] as const)('%s', (name, size) => {
  const onPhone = name === 'phone';
  const holds = async (page: Page, what: string) => {
    await picture(page, `${what}-${name}`);
    expect(await accessFaults(page), what).toEqual([]);
    // Nothing may run off the side: WCAG 2.2, 1.4.10.
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), what).toBeLessThanOrEqual(0);
  };

  test.each([
    ['tickets', ''],
    ['ticket', `#/ticket/${TICKET}`],
    ['guide', '#/guide'],
    ['unknown', '#/ticket/nobodyWroteThis'],
  ])('the page "%s"', async (what, route) => {
    const { page, close } = await openPage(browser, route, size);
    await settled(page);
    await holds(page, what);
    await close();
  });

  test('the drawn bench', async () => {
    const { page, close } = await openPage(browser, `#/bench/${TICKET}`, size);
    await settled(page);
    await drawnReady(page);
    await holds(page, 'drawn');
    await close();
  });

  test('the list bench in the hallway and at the open furnace, the picker, the window, the repair, and the debrief', async () => {
    const { page, errors, close } = await openPage(browser, `#/bench/${TICKET}`, size);
    await settled(page);
    await button(page, t('app:head.kind.list')).click();
    await button(page, t('action:do.pull')).click();
    await holds(page, 'list-hallway');
    await walkTo(page, 'furnace', onPhone);
    for (const cover of ['burnerDoor', 'blowerDoor'])
      await button(page, t('action:do.coverOpen', { cover: t(`rig:cover.${cover}`) })).click();
    await holds(page, 'list-furnace');
    await page.keyboard.press('r');
    await page.getByRole('listbox').waitFor();
    await holds(page, 'picker');
    await page.keyboard.press('Enter');
    if (onPhone) {
      await button(page, t('app:dock.meter')).click();
      await holds(page, 'sheet-meter');
      await button(page, t('app:dock.meter')).click();
    }
    await page.keyboard.press('b');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.keyboard.press('1');
    await button(page, t('app:head.name')).click();
    const window = page.getByRole('dialog');
    await window.getByRole('radio', { name: t('app:section.equipment'), exact: true }).click();
    await window.getByLabel(t('app:naming.target'), { exact: true }).selectOption({ index: 2 });
    await window.getByRole('radio', { name: t('app:section.equipment'), exact: true }).click();
    await window.getByLabel(t('app:naming.target'), { exact: true }).selectOption({ index: 2 });
    await window.locator('fieldset').nth(1).getByRole('radio').first().click();
    await holds(page, 'naming');
    await window.locator('button[type=submit]').click();
    await holds(page, 'prove');
    await button(page, t('app:head.close')).click();
    await page.getByTestId('total').waitFor({ timeout: 60_000 });
    await page.locator('.debrief-steps summary').first().click();
    await page.locator('.table-summary').click();
    await holds(page, 'debrief');
    expect(errors).toEqual([]);
    await close();
  });
});

test('axe-core is awake: a picture without words is found', async () => {
  const { page, close } = await openPage(browser, '');
  await settled(page);
  await page.evaluate(() => document.querySelector('main')?.append(document.createElement('img')));
  expect(await accessFaults(page)).toEqual(['image-alt: img']);
  await close();
});
