import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { languages } from '../../src/app/language.ts';
import { t } from '../../src/app/words.ts';
import { logOf } from '../../src/attempt/attempt.ts';
import { speakEnglish } from '../app/english.ts';
import { launch } from './chromium.ts';
import { crowdedControls } from './crowd.ts';
import { keepClosed, solved } from './engine-hand.ts';
import { accessFaults, address, button, LAPTOP, openPage, PHONE, picture } from './harness.ts';
import { put } from './store.ts';

const TICKET = 'fanButNoCooling';

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
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
  await expect.poll(() => page.locator('.ticket-row a').count()).toBeGreaterThan(0);
  const scripts = (await fetched(page)).filter((name) => name.endsWith('.js'));
  expect(scripts.filter((name) => /^(stage|bench|attempt|library|schemas)/.test(name))).toEqual([]);
  await close();
});

/** What follows the window's size and the size of text, per cent, has followed. */
async function resize(page: Page, size: { width: number; height: number }, text: string): Promise<void> {
  await page.setViewportSize(size);
  await page.evaluate(async (chosen) => {
    localStorage.setItem('bellwire.text', chosen);
    dispatchEvent(new Event('storage'));
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  }, text);
}

/** The head of a page on a phone: its lines, its controls that are too low for a finger (44 pixels), and how far the page is too wide. */
async function headOf(page: Page, text: string) {
  await resize(page, PHONE, text);
  return page.evaluate(() => {
    const shown = [...document.querySelectorAll('.page-head > *')].map((each) => each.getBoundingClientRect());
    const boxes = shown.filter(({ height }) => height > 0);
    return {
      lines: new Set(boxes.map(({ top, bottom }) => Math.round((top + bottom) / 20))).size,
      low: boxes.filter(({ height }) => height < 44).length,
      wide: document.documentElement.scrollWidth - innerWidth,
    };
  });
}

/** Kilobytes, as gzip packs them, of what the first page may fetch: well below the aim of 120, so that tickets can be added. */
const MOST_KILOBYTES = 105;

/** Of files of the built app, compressed as gzip does by default. */
function weightOf(names: readonly string[]): number {
  const bytes = [...new Set(names)].map((name) => {
    const body = readFileSync(join(inject('built'), 'assets', name));
    return name.endsWith('.woff2') ? body.length : gzipSync(body).length;
  });
  return bytes.reduce((sum, each) => sum + each, 0) / 1000;
}

test('the first page fetches no other page’s words, has all of its own, stays light, and has a head of one line on a phone, in each language', async () => {
  const { page, close } = await openPage(browser, '');
  for (const { id } of languages) {
    await page.evaluate((language) => localStorage.setItem('bellwire.language', language), id);
    await page.reload({ waitUntil: 'networkidle' });
    await page.locator('.board-rig[open] .ticket-row').first().waitFor();
    const names = await fetched(page);
    expect(names.filter((name) => name.startsWith(`${id}-`)).length).toBe(1);
    expect(names.filter((name) => /-rest-[^.]*\.js$/.test(name))).toEqual([]);
    const kilobytes = weightOf(names.filter((name) => /\.(js|css|woff2)$/.test(name)));
    expect(kilobytes).toBeGreaterThan(50);
    expect(kilobytes).toBeLessThan(MOST_KILOBYTES);
    // A key that has no words is seen with its namespace.
    const said = await page.evaluate(() => document.documentElement.textContent ?? '');
    expect(said.match(/\b[a-z]+:[a-z]\w*(\.\w+)*/g)).toBeNull();
    expect(await headOf(page, '100')).toEqual({ lines: 1, low: 0, wide: 0 });
    expect(await headOf(page, '150')).toMatchObject({ lines: expect.toSatisfy((lines) => lines <= 2), low: 0, wide: 0 });
    await resize(page, LAPTOP, '100');
    await page.goto(address('#/nowhere'));
    const lost = await page.evaluate(() => document.body.textContent ?? '');
    expect(lost.match(/\b[a-z]+:[a-z]\w*(\.\w+)*/g)).toBeNull();
    await page.goto(address('#/'));
  }
  // A language that is chosen on a later page comes with all of its words.
  await page.goto(address(`#/ticket/${TICKET}`));
  const complaint = page.locator('.complaint');
  for (const { id } of languages) {
    const { [TICKET]: words } = JSON.parse(readFileSync(new URL(`../../locales/${id}/ticket.json`, import.meta.url), 'utf8'));
    await page.locator('.language-choice').selectOption(id);
    await expect.poll(() => complaint.textContent()).toBe(words.complaint);
  }
  await close();
});

describe.each([
  ['laptop', LAPTOP],
  ['phone', PHONE],
])('the systems on a %s', (name, size) => {
  test('are folded but for that of the next ticket, tell what is done, and stay as a hand left them', async () => {
    const { page, close } = await openPage(browser, '', size);
    const folds = page.locator('.board-rig');
    const next = page.locator('.board-rig', { has: page.locator('.ticket-next') });
    await next.waitFor();
    const opened = () => folds.evaluateAll((all) => all.flatMap((each, at) => ((each as HTMLDetailsElement).open ? [at] : [])));
    expect(await opened()).toEqual([0]);
    expect(await folds.count()).toBeGreaterThan(2);
    const last = folds.last();
    const total = await last.locator('.ticket-row').count();
    expect(await last.locator('.board-done').textContent()).toBe(t('app:home.done', { done: '0', total: String(total) }));
    // One system open, of 22 tickets; all nine would be four times as long.
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThan(size === PHONE ? 5000 : 3300);
    expect(await accessFaults(page)).toEqual([]);

    await last.locator('summary').focus();
    await page.keyboard.press('Enter');
    await folds.first().locator('summary').press('Space');
    await expect.poll(opened).toEqual([(await folds.count()) - 1]);
    await picture(page, `home-folds-${name}`);
    expect(await accessFaults(page)).toEqual([]);
    const inLast = last.locator('.ticket-row a').first();
    await inLast.click();
    await page.locator('.ticket-go').waitFor();
    await page.goBack();
    await next.waitFor({ state: 'attached' });
    expect(await opened()).toEqual([(await folds.count()) - 1]);

    await put(page, 'count', 1);
    await put(page, 'finished:1', { number: 1, when: 0, ticket: TICKET, mode: 'practice', log: logOf(solved(TICKET)) });
    await page.reload();
    const withIt = page.locator('.board-rig', { has: page.locator(`a[href$="#/ticket/${TICKET}"]`) });
    await withIt.waitFor({ state: 'attached' });
    const among = String(await withIt.locator('.ticket-row').count());
    await expect.poll(() => withIt.locator('.board-done').textContent()).toBe(t('app:home.done', { done: '1', total: among }));
    await close();
  });
});

test('who chooses one system sees its tickets at once', async () => {
  const { page, close } = await openPage(browser, '', PHONE);
  await page.locator('.board-rig[open]').first().waitFor();
  const settings = page.getByRole('link', { name: t('settings:title') });
  expect(await settings.count()).toBe(0);
  await button(page, t('settings:menu.title')).click();
  await settings.waitFor();
  expect([...(await accessFaults(page)), ...(await crowdedControls(page))]).toEqual([]);
  await page.locator('.board-choices select').first().selectOption({ index: 3 });
  await expect.poll(() => page.locator('.board-rig').count()).toBe(1);
  expect(await page.locator('.board-rig[open] .ticket-row a').first().isVisible()).toBe(true);

  // Nobody is sent to what their own exam asks for; another profile's exam is none of theirs.
  const sent = async () => {
    await page.reload();
    return page
      .locator('.ticket-row', { has: page.locator('.ticket-next') })
      .locator('a')
      .getAttribute('href');
  };
  const usual = await sent();
  const bench = [{ ticket: usual?.replace('#/ticket/', '') }];
  const running = { blueprint: 'controlsCore', lot: 1, began: Date.now(), used: 0, answers: [null], flagged: [], bench };
  await put(page, 'profileX/exams', { running, sittings: [] });
  expect(await sent()).toBe(usual);
  await put(page, 'exams', { running, sittings: [] });
  expect(await sent()).not.toBe(usual);
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
  await page.locator('.board-rig[open] .ticket-row a').first().click();
  await page.waitForURL(/#\/ticket\//);
  await expect.poll(() => page.evaluate(() => document.activeElement?.localName)).toBe('h1');
  await close();
});
