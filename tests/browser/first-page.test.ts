import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { languages } from '../../src/app/language.ts';
import { launch } from './chromium.ts';
import { keepClosed, solved } from './engine-hand.ts';
import { openPage } from './harness.ts';

const TICKET = 'fanButNoCooling';

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

/** Names of the files that the page has fetched so far. */
async function fetched(page: Page): Promise<string[]> {
  const names = await page.evaluate(() => performance.getEntriesByType('resource').map((each) => each.name));
  return names.map((name) => name.replace(/^.*\//, ''));
}

const STAGE = /^stage-[^.]*\.js$/;

test('the first page loads neither Phaser nor the solver, nor what proves files sound', async () => {
  const { page, close } = await openPage(browser, '');
  await page.getByRole('heading', { level: 1 }).waitFor();
  expect(await page.locator('.ticket-row a').count()).toBeGreaterThan(0);
  const scripts = (await fetched(page)).filter((name) => name.endsWith('.js'));
  expect(scripts.filter((name) => /^(stage|bench|attempt|library|schemas)/.test(name))).toEqual([]);
  await close();
});

test('no page but the drawn bench loads Phaser', async () => {
  const { page, close } = await openPage(browser, '');
  await keepClosed(page, solved(TICKET));
  const visit = async (route: string, shows: Locator) => {
    await page.goto(new URL(route, inject('address')).href);
    await page.reload();
    await shows.waitFor({ timeout: 60_000 });
    const names = await fetched(page);
    expect(names.some((name) => name.endsWith('.js'))).toBe(true);
    return names.filter((name) => STAGE.test(name)).length;
  };
  const heading = page.getByRole('heading', { level: 1 });
  const stages: Record<string, number> = {};
  for (const route of ['#/', '#/guide', '#/progress', `#/ticket/${TICKET}`]) stages[route] = await visit(route, heading);
  stages.debrief = await visit(`#/debrief/${TICKET}`, page.getByTestId('total'));
  stages.bench = await visit(`#/bench/${TICKET}`, page.locator('.drawn-host canvas'));
  expect(stages).toEqual({ '#/': 0, '#/guide': 0, '#/progress': 0, [`#/ticket/${TICKET}`]: 0, debrief: 0, bench: 1 });
  await close();
});

test('each language is written in the letters that every page fetches; a name of other letters fetches the rest', async () => {
  const { page, close } = await openPage(browser, '');
  const RARE = /-(more|ext)-[^.]*\.woff2$/;
  for (const { id } of languages) {
    await page.evaluate((language) => localStorage.setItem('bellwire.language', language), id);
    for (const route of ['#/', `#/bench/${TICKET}`]) {
      await page.goto(new URL(route, inject('address')).href);
      await page.reload();
      await page.getByRole('heading', { level: 1 }).waitFor();
      await page.evaluate(() => document.fonts.ready.then(() => undefined));
      expect(await page.evaluate(() => document.documentElement.lang)).toBe(id);
      const fonts = (await fetched(page)).filter((name) => name.endsWith('.woff2'));
      expect(fonts.filter((name) => name.startsWith('archivo-') || name.startsWith('atkinson-')).length).toBeGreaterThan(1);
      expect(fonts.filter((name) => RARE.test(name))).toEqual([]);
    }
  }
  await page.locator('h1').evaluate((heading) => {
    heading.textContent = 'Łukasz Ößterä';
  });
  await expect.poll(async () => (await fetched(page)).filter((name) => RARE.test(name)).length).toBe(2);
  await close();
});

test('a page that is still on its way takes the focus to its heading when it comes', async () => {
  const { page, close } = await openPage(browser, '');
  await page.locator('.ticket-row a').first().click();
  await page.waitForURL(/#\/ticket\//);
  await expect.poll(() => page.evaluate(() => document.activeElement?.localName)).toBe('h1');
  await close();
});
