/** What every browser test needs: a page of the built app at a size, its accessibility faults, its picture. */
import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { inject } from 'vitest';

export const LAPTOP = { width: 1366, height: 768 } as const;
export const PHONE = { width: 390, height: 844 } as const;

export interface OpenPage {
  readonly page: Page;
  /** Errors the page threw or wrote to its console since it was opened. */
  readonly errors: string[];
  readonly close: () => Promise<void>;
}

/**
 * Opens `route` (such as '#/ticket/x', or '' for the first page) in a fresh profile, so that nothing is remembered from another
 * test. Sizes are CSS pixels. `more` may make it a phone with touch.
 */
export async function openPage(
  browser: Browser,
  route: string,
  size: { width: number; height: number } = LAPTOP,
  more: BrowserContextOptions = {},
): Promise<OpenPage> {
  const context = await browser.newContext({
    viewport: size,
    locale: 'en-US',
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
    ...more,
  });
  const page = await context.newPage();
  // Machines that do many things at once take their time.
  page.setDefaultTimeout(60_000);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(address(route));
  return { page, errors, close: () => context.close() };
}

const require = createRequire(import.meta.url);
const axeSource = readFileSync(createRequire(require.resolve('@axe-core/playwright')).resolve('axe-core/axe.min.js'), 'utf8');

/** WCAG 2.2 at levels A and AA, and what axe-core knows of good practice beside. */
const AXE_TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

interface AxeWindow {
  readonly axe?: {
    run(options: object): Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }>;
  };
}

/** What axe-core finds on the page now, of whatever weight, as "rule: element"; empty when there is nothing. */
export async function accessFaults(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeSource);
  return page.evaluate(async (values) => {
    const { axe } = window as AxeWindow;
    const found = await axe?.run({ runOnly: { type: 'tag', values }, resultTypes: ['violations'] });
    if (found === undefined) throw new Error('axe-core did not load');
    return found.violations.flatMap((each) => each.nodes.map((node) => `${each.id}: ${node.target.join(' ')}`));
  }, AXE_TAGS);
}

/** Keeps a picture of the page as tests/browser/shots/NAME.png (not committed), for people to look at. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = new URL('./shots/', import.meta.url).pathname;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}${name}.png` });
}

/** Waits until the drawn bench is up: its canvas is there, and what stood in its place is gone. */
export async function drawnReady(page: Page): Promise<void> {
  await page.locator('.drawn-host canvas').waitFor();
  await page.locator('.drawn-wait').waitFor({ state: 'detached' });
}

/** Where a page of the served app is, by what stands behind the hash. */
export const address = (hash: string): string => new URL(hash, inject('address')).href;

/** The button with just these words. */
export const button = (page: Page, words: string): Locator => page.getByRole('button', { name: words, exact: true });

/** A ticket's row on the first page, once the fold of its system is open; whoever opens it is `press`. */
export async function ticketRow(
  page: Page,
  id: string,
  press = (target: Locator): Promise<void> => target.click(),
): Promise<Locator> {
  const link = page.locator(`a[href$="#/ticket/${id}"]`);
  // Before a system is open, which one will be is not known.
  await page.locator('.board-rig[open]').first().waitFor();
  const fold = page.locator('.board-rig', { has: link });
  if (!(await fold.evaluate((each: HTMLDetailsElement) => each.open))) await press(fold.locator('summary'));
  return page.locator('li', { has: link });
}
