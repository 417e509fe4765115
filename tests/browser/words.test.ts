/** Languages in a real browser: pages that show them, and pages that a language with long words does not break. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { launch } from './chromium.ts';
import { cutTexts } from './cut.ts';
import { accessFaults, LAPTOP, PHONE, picture } from './harness.ts';
import { pseudo, pseudoModule } from './pseudo.ts';

const TICKET = 'clicksButWontStart';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

async function openIn(locale: string, size: { width: number; height: number }) {
  const context = await browser.newContext({ viewport: size, locale, reducedMotion: 'reduce', serviceWorkers: 'block' });
  return { page: await context.newPage(), close: () => context.close() };
}

async function go(page: Page, route: string): Promise<void> {
  await page.goto(new URL(route, inject('address')).href);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

/** Names whatever comes first, without a word of any language, and closes the ticket. */
async function nameAndClose(page: Page): Promise<void> {
  await page.locator('.bench-head .act').click();
  const window = page.getByRole('dialog');
  await window.getByRole('radio').last().click();
  await window.locator('select').first().selectOption({ index: 2 });
  await window.locator('fieldset').nth(1).getByRole('radio').first().click();
}

const wordsOf = (language: string, file: string) =>
  JSON.parse(readFileSync(new URL(`../../locales/${language}/${file}.json`, import.meta.url), 'utf8'));

describe.each([
  ['laptop', LAPTOP],
  ['phone', PHONE],
] as const)('long words on a %s', (name, size) => {
  test('are neither cut nor on top of each other, from the first page to the debrief', async () => {
    const { page, close } = await openIn('en-US', size);
    let replaced = 0;
    await page.route(/\/assets\/en-[^/]*\.js$/, (route) => {
      replaced += 1;
      return route.fulfill({ contentType: 'text/javascript', body: pseudoModule() });
    });
    const broken: Record<string, string[]> = {};
    const look = async (what: string) => {
      await picture(page, `long-${what}-${name}`);
      broken[what] = await cutTexts(page);
    };
    await go(page, '');
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(pseudo(wordsOf('en', 'app').home.headline));
    await look('tickets');
    await go(page, `#/ticket/${TICKET}`);
    await look('ticket');
    await go(page, `#/bench/${TICKET}`);
    await page.locator('.drawn-host canvas').waitFor();
    await look('drawn');
    await page.locator('.bench-head .switch button').nth(1).click();
    await look('list');
    await nameAndClose(page);
    await look('naming');
    await page.getByRole('dialog').locator('button[type=submit]').click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.locator('.bench-head button').last().click();
    await page.getByTestId('total').waitFor({ timeout: 60_000 });
    await look('debrief');
    expect(replaced).toBeGreaterThan(0);
    expect(broken).toEqual({ tickets: [], ticket: [], drawn: [], list: [], naming: [], debrief: [] });
    await close();
  });
});

test('the measure is awake: a text that is cut, one that sticks out, and two that overlap are found', async () => {
  const { page, close } = await openIn('en-US', LAPTOP);
  await page.setContent(
    '<p style="width:4em;overflow:hidden;white-space:nowrap">a text that is cut</p><button style="width:4em;white-space:nowrap;padding:0">sticks out of it</button>' +
      '<div style="position:relative;height:3em"><b style="position:absolute">one</b><i style="position:absolute">other</i></div>',
  );
  expect((await cutTexts(page)).map((each) => each.slice(0, each.indexOf(':')))).toEqual([
    'cut at the side',
    'sticks out of its button',
    'overlap',
  ]);
  await close();
});

test.each([
  ['es', 'es-MX', 'Español'],
  ['fr', 'fr-CA', 'Français'],
])('the pages speak "%s" to a browser that asks for it, and to one that was told to', async (language, locale, ownName) => {
  const app = wordsOf(language, 'app');
  const { page, close } = await openIn(locale, LAPTOP);
  for (const [route, heading] of [
    ['', app.home.headline],
    [`#/ticket/${TICKET}`, wordsOf(language, 'ticket')[TICKET].title],
    [`#/bench/${TICKET}`, wordsOf(language, 'ticket')[TICKET].title],
  ]) {
    await go(page, route);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(heading);
    expect(await page.evaluate(() => document.documentElement.lang)).toBe(language);
    expect(await accessFaults(page), route).toEqual([]);
  }
  await page.locator('.bench-head .switch button').nth(1).click();
  await picture(page, `list-${language}`);
  expect(await accessFaults(page)).toEqual([]);
  const fetched = await page.evaluate(() => performance.getEntriesByType('resource').map((each) => each.name));
  const asked = fetched.flatMap((each) => /\/(en|es|fr)-[^/]*\.js$/.exec(each)?.[1] ?? []);
  expect([...new Set(asked)]).toEqual([language]);
  await close();

  const other = await openIn('en-US', LAPTOP);
  await go(other.page, '');
  await other.page.getByRole('combobox', { name: 'Language' }).selectOption({ label: ownName });
  await other.page.getByRole('heading', { level: 1, name: app.home.headline }).waitFor();
  await other.page.reload();
  await other.page.getByRole('heading', { level: 1, name: app.home.headline }).waitFor();
  await other.close();
});
