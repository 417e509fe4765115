/** The app in one file, opened from a disk. */
import { copyFileSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import { speakEnglish } from '../app/english.ts';
import { start } from '../scenario/shipped.ts';
import { buildSingleFile } from '../tools/single-file.ts';
import { launch } from './chromium.ts';
import { byMouse } from './drawn-hand.ts';
import { LAPTOP, picture, ticketRow } from './harness.ts';
import { expectDebrief, stepsOf } from './shadow.ts';

const TICKET = 'clicksButWontStart';

let browser: Browser;
let folder: string;
let address: string;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
  folder = mkdtempSync(join(tmpdir(), 'bellwire-single-'));
  await buildSingleFile(join(folder, 'built'));
  // A name that somebody gave it, on a stick.
  copyFileSync(join(folder, 'built/index.html'), join(folder, 'my Bellwire.html'));
  address = pathToFileURL(join(folder, 'my Bellwire.html')).href;
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Opens the file, and tells what it asked of anything but itself, and what went wrong. */
async function openFile(before: () => void = () => undefined) {
  const context = await browser.newContext({ viewport: LAPTOP, locale: 'en-US', reducedMotion: 'reduce' });
  const page = await context.newPage();
  await page.addInitScript(before);
  const strangers: string[] = [];
  const errors: string[] = [];
  context.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith('data:') && !url.startsWith('blob:') && url.split('#')[0] !== address) strangers.push(url);
  });
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  await page.goto(address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  const begin = async () => {
    await (await ticketRow(page, TICKET)).locator('a').click();
    await page.getByRole('link', { name: t('app:ticket.begin'), exact: true }).click();
    await page.locator('.drawn-host canvas').waitFor();
    await page.locator('.drawn-wait').waitFor({ state: 'detached' });
  };
  return { page, strangers, errors, begin, close: () => context.close() };
}

test('the build is one file', () => {
  expect(readdirSync(join(folder, 'built'))).toEqual(['index.html']);
});

test('it plays a ticket on the drawn bench to its debrief and asks for nothing but itself', async () => {
  const { page, strangers, errors, begin, close } = await openFile();
  await page.getByText(t('offline:single'), { exact: true }).waitFor();
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  expect(await page.evaluate(() => document.fonts.check('800 40px "Archivo Variable"', 'Bellwire'))).toBe(true);
  await picture(page, 'single');
  const shadow = start(TICKET);
  await begin();
  await byMouse(page, shadow, stepsOf(TICKET));
  await expectDebrief(page, shadow);
  await page.goto(`${address}#/`);
  await page.getByRole('combobox', { name: t('app:language') }).selectOption('fr');
  await expect.poll(() => page.evaluate(() => document.documentElement.lang)).toBe('fr');
  // It cannot read the files that a package needs, and says so.
  await page.goto(`${address}#/assign`);
  await page.locator('.make-package').getByText('depuis un disque').waitFor();
  await page.setViewportSize({ width: 390, height: 844 });
  await page.locator('.make-package').scrollIntoViewIfNeeded();
  await picture(page, 'single-package-fr');
  expect({ strangers, errors }).toEqual({ strangers: [], errors: [] });
  await close();
});

test('where the browser keeps nothing for a file, it says so and plays', async () => {
  const { page, begin, close } = await openFile(() => {
    const deny = () => {
      throw new DOMException('denied', 'SecurityError');
    };
    IDBFactory.prototype.open = deny;
    Storage.prototype.getItem = deny;
    Storage.prototype.setItem = deny;
  });
  await page.getByText(t('keeping:denied'), { exact: true }).waitFor();
  const shadow = start(TICKET);
  await begin();
  await byMouse(page, shadow, stepsOf(TICKET).slice(0, 3));
  await close();
});
