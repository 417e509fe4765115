/** What every browser test needs: a page of the built app at a size, its accessibility faults, its picture. */
import { mkdirSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
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
 * test. Sizes are CSS pixels.
 */
export async function openPage(
  browser: Browser,
  route: string,
  size: { width: number; height: number } = LAPTOP,
): Promise<OpenPage> {
  const context = await browser.newContext({ viewport: size, locale: 'en-US', reducedMotion: 'reduce', serviceWorkers: 'block' });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(new URL(route, inject('address')).href);
  return { page, errors, close: () => context.close() };
}

/** What axe-core calls serious or critical on the page now, as "rule: element"; empty when there is nothing. */
export async function seriousFaults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter((each) => each.impact === 'serious' || each.impact === 'critical')
    .flatMap((each) => each.nodes.map((node) => `${each.id}: ${node.target.join(' ')}`));
}

/** Keeps a picture of the page as tests/browser/shots/NAME.png (not committed), for people to look at. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = new URL('./shots/', import.meta.url).pathname;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}${name}.png` });
}
