/** The app without its server, and the app whose server got another version while somebody was at work. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import { speakEnglish } from '../app/english.ts';
import { start } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { byMouse } from './drawn-hand.ts';
import { type FolderServer, serveFolder } from './folder-server.ts';
import { drawnReady, LAPTOP, picture, ticketRow } from './harness.ts';
import { expectDebrief, stepsOf } from './shadow.ts';

const TICKET = 'clicksButWontStart';

let browser: Browser;
let aside: string;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
  aside = mkdtempSync(join(tmpdir(), 'bellwire-offline-'));
});
afterAll(async () => {
  await browser?.close();
  rmSync(aside, { recursive: true, force: true });
});

/** A profile that allows service workers, on a first visit that has been made and whose files are all kept. */
async function visited(server: FolderServer): Promise<{ context: BrowserContext; page: Page; errors: string[] }> {
  const context = await browser.newContext({ viewport: LAPTOP, locale: 'en-US', reducedMotion: 'reduce', serviceWorkers: 'allow' });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  await page.goto(server.address);
  await page.getByText(t('offline:kept'), { exact: true }).waitFor();
  return { context, page, errors };
}

async function openBench(page: Page): Promise<void> {
  await (await ticketRow(page, TICKET)).locator('a').click();
  await page.getByRole('link', { name: t('app:ticket.begin'), exact: true }).click();
  await page.locator('.drawn-host canvas').waitFor();
  await page.locator('.drawn-wait').waitFor({ state: 'detached' });
}

const wordsOf = (language: string) =>
  JSON.parse(readFileSync(new URL(`../../locales/${language}/app.json`, import.meta.url), 'utf8'));

test('after one visit the server may go: a ticket is played to its debrief, and every page and language is there', async () => {
  const server = await serveFolder(inject('built'));
  const { context, page, errors } = await visited(server);
  await picture(page, 'kept-offline');
  const { installabilityErrors } = await (await context.newCDPSession(page)).send('Page.getInstallabilityErrors');
  // A test's profile is a private window, in which nothing is installed.
  expect(installabilityErrors.map((each) => each.errorId).filter((id) => id !== 'in-incognito')).toEqual([]);
  await server.stop();
  await page.reload();
  const shadow = start(TICKET);
  await openBench(page);
  await byMouse(page, shadow, stepsOf(TICKET));
  await expectDebrief(page, shadow);
  for (const route of ['#/guide', '#/progress', '#/']) {
    await page.goto(new URL(route, server.address).href);
    await page.reload();
    await page.getByRole('heading', { level: 1 }).waitFor();
  }
  for (const language of ['es', 'fr', 'en']) {
    await page.evaluate((id) => localStorage.setItem('bellwire.language', id), language);
    await page.reload();
    await page.getByRole('heading', { level: 1, name: wordsOf(language).home.headline, exact: true }).waitFor();
  }
  // Letters that no language of ours needs, for somebody's name.
  await page.locator('h1').evaluate((heading) => {
    heading.textContent = 'Ł';
  });
  await expect.poll(() => page.evaluate(() => document.fonts.check('800 40px "Archivo Variable"', 'Ł'))).toBe(true);
  expect(errors).toEqual([]);
  await context.close();
});

/** A later version of the built app: each file has another name, and none of the old names is left. */
function laterVersion(): string {
  const folder = join(aside, 'later');
  cpSync(inject('built'), folder, { recursive: true });
  const assets = readdirSync(join(folder, 'assets'));
  const later = (name: string) => name.replace(/..(\.\w+)$/, '_2$1');
  const texts = [...assets.map((name) => join('assets', name)), 'index.html', 'sw.js'].filter((name) =>
    /\.(js|css|html)$/.test(name),
  );
  for (const name of texts) {
    let text = readFileSync(join(folder, name), 'utf8');
    for (const asset of assets) text = text.replaceAll(asset, later(asset));
    writeFileSync(join(folder, name), text.replace('"version":"', '"version":"2'));
  }
  for (const name of assets) renameSync(join(folder, 'assets', name), join(folder, 'assets', later(name)));
  return folder;
}

const entryOf = (page: Page) => page.evaluate(() => document.querySelector<HTMLScriptElement>('script[type=module]')?.src);

test('a new version waits: an attempt goes on in the old one to its debrief, and the next cold start has the new one', async () => {
  const server = await serveFolder(inject('built'));
  const { context, page, errors } = await visited(server);
  const before = await entryOf(page);
  const shadow = start(TICKET);
  const steps = stepsOf(TICKET);
  await openBench(page);
  await byMouse(page, shadow, steps.slice(0, 4));

  server.swap(laterVersion());
  await page.evaluate(async () => {
    await (await navigator.serviceWorker.ready).update();
  });
  const other = await context.newPage();
  await other.goto(server.address);
  await other.getByText(t('offline:renewed'), { exact: true }).waitFor();
  await picture(other, 'renewed-offline');
  expect(await entryOf(other)).toBe(before);
  await other.close();

  // Even a page that is loaded again finds the version in which its attempt was begun, and the pages that it had not yet asked for.
  await page.reload();
  await drawnReady(page);
  expect(await entryOf(page)).toBe(before);
  await byMouse(page, shadow, steps.slice(4));
  await expectDebrief(page, shadow);
  expect(errors).toEqual([]);
  await page.close();

  const coldStart = async () => {
    const next = await context.newPage();
    await next.goto(server.address);
    await next.getByRole('heading', { level: 1 }).waitFor();
    const found = { entry: await entryOf(next), caches: await next.evaluate(() => caches.keys().then((all) => all.length)) };
    await next.close();
    return found;
  };
  await expect.poll(coldStart, { timeout: 20_000, interval: 1000 }).toEqual({ entry: expect.stringMatching(/_2\.js$/), caches: 1 });
  await context.close();
  await server.stop();
});
