/** The guide and the cautions in a real browser: who presses only what is marked comes from the first page to the debrief. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { GUIDED_TICKET } from '../../src/app/guided/facts.ts';
import { t } from '../../src/app/words.ts';
import { speakEnglish } from '../app/english.ts';
import { launch } from './chromium.ts';
import { accessFaults, drawnReady, LAPTOP, openPage, PHONE, picture } from './harness.ts';

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

const guide = (page: Page) => page.getByTestId('guide');
const soon = <T>(get: () => Promise<T>) => expect.poll(get, { timeout: 10_000 });
const steps = async (page: Page) => Number(await page.getByTestId('steps').textContent());

/** What is marked on the page and can be seen; in a window over the bench only what is in it. */
function marked(page: Page) {
  return page.locator('dialog [data-marked]:visible, :root:not(:has(dialog[open])) [data-marked]:visible');
}

/** Reads a caution that is up, as it comes. */
async function readCaution(page: Page): Promise<void> {
  const summary = page.locator('.caution-strip:visible summary');
  if ((await summary.count()) > 0) await summary.tap();
  const read = page.getByRole('button', { name: t('cautions:read'), exact: true }).filter({ visible: true });
  await ((await summary.count()) > 0 ? read.tap() : read.click());
}

/** A box is wholly on the screen, and nothing lies over its middle but what does not take presses. */
async function uncovered(page: Page, box: { x: number; y: number; width: number; height: number }): Promise<string> {
  return page.evaluate(({ x, y, width, height }) => {
    const at = document.elementFromPoint(x + width / 2, y + height / 2);
    const inside = x >= 0 && y >= 0 && x + width <= innerWidth && y + height <= innerHeight;
    return `${inside ? 'inside' : 'outside'} ${at?.tagName.toLowerCase()}`;
  }, box);
}

/** Taps what is marked: a control of the page, or the spot on the drawn bench. */
async function tapMarked(page: Page): Promise<void> {
  const control = marked(page).first();
  if ((await control.count()) > 0) {
    if ((await control.evaluate((each) => each.tagName)) === 'SELECT') {
      // Which entry is said by the words of the idea.
      await control.selectOption({ label: t('rig:part.drainPan') });
    } else await control.tap();
    return;
  }
  const box = await page.locator('.drawn-mark').boundingBox();
  if (box === null) throw new Error('nothing is marked');
  expect(await uncovered(page, box)).toBe('inside canvas');
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(24);
  await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
}

async function openPhone() {
  const context = await browser.newContext({ viewport: PHONE, locale: 'en-US', reducedMotion: 'reduce', hasTouch: true });
  const page = await context.newPage();
  await page.goto(inject('address'));
  return { page, close: () => context.close() };
}

test('on a phone, by touch: from the one orange way in to the debrief, pressing only what is marked', async () => {
  const { page, close } = await openPhone();
  await page.locator('.guided-start .act').tap();
  await drawnReady(page);
  const ideas: string[] = [];
  for (let presses = 0; presses < 40 && ideas.at(-1) !== 'close'; presses += 1) {
    if ((await page.locator('.caution-strip').count()) > 0) await readCaution(page);
    const idea = (await guide(page).getAttribute('data-idea')) ?? '';
    if (ideas.at(-1) !== idea) {
      ideas.push(idea);
      await picture(page, `guided-${idea}-phone`);
    }
    const before = `${await steps(page)} ${await page.locator('body').innerHTML()}`;
    await tapMarked(page);
    if (idea !== 'close') await soon(async () => `${await steps(page)} ${await page.locator('body').innerHTML()}`).not.toBe(before);
  }
  expect(ideas).toEqual(['furnace', 'volts', 'red', 'black', 'look', 'name', 'repair', 'outdoor', 'close']);
  await page.getByTestId('total').waitFor({ timeout: 60_000 });
  expect(Number(await page.getByTestId('total').textContent())).toBeGreaterThanOrEqual(90);
  await soon(() => page.locator('.guided-end').textContent()).toContain(t('ticket:fanButNoCooling.title'));
  // Who has finished a ticket is no newcomer: the guide is still there, and no longer the one thing to do.
  await page.goto(inject('address'));
  await page.locator('.guided-start .button').waitFor();
  await soon(() => page.locator('.ticket-best', { hasText: '100' }).count()).toBe(1);
  expect(await page.locator('.guided-start .act').count()).toBe(0);
  await close();
});

test('on a phone a sheet shows its tools and what is marked, and makes way for the other bench and for what the guide goes to', async () => {
  const { page, close } = await openPhone();
  await page.locator('.guided-start .act').tap();
  await drawnReady(page);
  const meter = page.getByRole('button', { name: t('app:dock.meter'), exact: true });
  const sheet = () => page.locator('.bench').getAttribute('data-sheet');
  // Nobody has scrolled: every tool stands in the sheet's own room.
  await meter.tap();
  const room = await page.locator('.rail-right').boundingBox();
  for (const tool of ['hand', 'lift', 'jumper', 'clamp', 'look', 'tug']) {
    const box = await page.getByRole('button', { name: t(`app:tools.${tool}`), exact: true }).boundingBox();
    expect(box?.y, tool).toBeGreaterThanOrEqual(room?.y ?? Number.NaN);
    expect((box?.y ?? 0) + (box?.height ?? 0), tool).toBeLessThanOrEqual((room?.y ?? 0) + (room?.height ?? 0));
  }
  await page.getByRole('button', { name: t('app:head.kind.list'), exact: true }).tap();
  expect(await sheet()).toBeNull();

  // The idea of the leads is one on the list itself: with the meter's sheet over it, the guide's way there closes the sheet.
  await page.locator('.dock-place').tap();
  await marked(page).first().tap();
  await meter.tap();
  await marked(page).first().tap();
  await soon(() => guide(page).getAttribute('data-idea')).toBe('red');
  expect(await sheet()).toBe('meter');
  await page.getByRole('button', { name: t('guided:goThere'), exact: true }).tap();
  await soon(sheet).toBeNull();
  // The focus follows when the sheet is gone.
  const focused = () =>
    page.evaluate(() => document.activeElement?.closest('.work [data-marked]')?.getBoundingClientRect().toJSON());
  await soon(focused).toBeDefined();
  expect(await uncovered(page, await focused())).toBe('inside button');
  await close();
});

test('on a phone the drawing keeps at least 45 % of the height in every guided step', async () => {
  const { page, close } = await openPhone();
  await page.locator('.guided-start .act').tap();
  await drawnReady(page);
  for (let presses = 0; presses < 40; presses += 1) {
    const idea = (await guide(page).getAttribute('data-idea')) ?? '';
    const share = (await page.locator('.drawn').boundingBox())?.height ?? 0;
    expect(share / PHONE.height, idea).toBeGreaterThanOrEqual(0.45);
    if (idea === 'close') break;
    const before = await page.locator('body').innerHTML();
    await tapMarked(page);
    await soon(() => page.locator('body').innerHTML()).not.toBe(before);
  }
  expect(await guide(page).getAttribute('data-idea')).toBe('close');
  await close();
});

/** Tab until the focus is on something marked, or in a group in which something is; what the keyboard cannot reach fails here. */
async function tabToMarked(page: Page): Promise<void> {
  for (let presses = 0; presses < 600; presses += 1) {
    await page.keyboard.press('Tab');
    const there = await page.evaluate(() => {
      const focused = document.activeElement;
      if (focused instanceof HTMLInputElement && focused.type === 'radio')
        return focused.closest('fieldset')?.querySelector('[data-marked]') != null;
      return focused?.closest('[data-marked]') != null;
    });
    if (there) return;
  }
  throw new Error('the keyboard does not reach what is marked');
}

test('on a laptop, by keyboard on the list bench: the same way to the same end, each idea read out', async () => {
  const { page, errors, close } = await openPage(browser, '', LAPTOP);
  await page.evaluate(() => localStorage.setItem('bellwire.bench', 'list'));
  await page.locator('.guided-start .act').focus();
  await page.keyboard.press('Enter');
  await guide(page).waitFor();
  const ideas: string[] = [];
  for (let presses = 0; presses < 40 && ideas.at(-1) !== 'close'; presses += 1) {
    const idea = (await guide(page).getAttribute('data-idea')) ?? '';
    if (ideas.at(-1) !== idea) {
      ideas.push(idea);
      const said = page.locator('.guided-words[aria-live=polite]');
      expect(await said.textContent()).toContain(t(`guided:idea.${idea}.what`));
      expect(await said.textContent()).toContain(t(`guided:idea.${idea}.why`));
    }
    if (idea !== 'name' && presses % 2 === 0) {
      // The guide leads the focus to what it speaks of, and presses nothing.
      const before = await steps(page);
      await page.getByRole('button', { name: t('guided:goThere'), exact: true }).focus();
      await page.keyboard.press('Enter');
      await soon(() => page.evaluate(() => document.activeElement?.getAttribute('data-marked'))).toBe('true');
      expect(await steps(page)).toBe(before);
    } else await tabToMarked(page);
    await pressMarked(page);
    if (idea !== 'name' && idea !== 'close') await soon(() => guide(page).getAttribute('data-idea')).not.toBe(idea);
  }
  expect(ideas).toEqual(['furnace', 'volts', 'red', 'black', 'look', 'name', 'repair', 'outdoor', 'close']);
  await page.getByTestId('total').waitFor({ timeout: 60_000 });
  expect(Number(await page.getByTestId('total').textContent())).toBeGreaterThanOrEqual(90);
  expect(errors).toEqual([]);
  await close();
});

/** Enter on a button, Space on a box, the arrows in a list or a group: as the focused thing asks. */
async function pressMarked(page: Page): Promise<void> {
  const kind = await page.evaluate(() => {
    const focused = document.activeElement;
    return focused instanceof HTMLInputElement ? focused.type : (focused?.tagName.toLowerCase() ?? '');
  });
  if (kind === 'select') {
    for (let presses = 0; presses < 60; presses += 1) {
      const now = await page.evaluate(() => (document.activeElement as HTMLSelectElement).selectedOptions[0]?.textContent?.trim());
      if (now === t('rig:part.drainPan')) return;
      await page.keyboard.press('ArrowDown');
    }
    throw new Error('no drain pan to choose');
  }
  if (kind === 'radio') {
    // Of a group Tab reaches one; the arrows go on from there, and choose as they go.
    const choosing = () => page.evaluate(() => document.activeElement?.closest('fieldset')?.querySelector('[data-marked]') != null);
    await page.keyboard.press('Space');
    for (let presses = 0; presses < 10 && (await choosing()); presses += 1) await page.keyboard.press('ArrowDown');
    return;
  }
  await page.keyboard.press(kind === 'checkbox' ? 'Space' : 'Enter');
}

test('left, the guide is gone from the bench; taken up again it goes on from where the job stands', async () => {
  const { page, close } = await openPage(browser, '', LAPTOP);
  await page.locator('.guided-start .act').click();
  await drawnReady(page);
  await marked(page).first().click();
  await soon(() => guide(page).getAttribute('data-idea')).toBe('volts');
  await page.getByRole('button', { name: t('guided:leave'), exact: true }).click();
  expect(await guide(page).count()).toBe(0);
  expect(await page.locator('[data-marked], .drawn-mark').count()).toBe(0);
  await page.getByRole('button', { name: t('meter:key.voltsAc'), exact: true }).click();
  await page.reload();
  await page.getByTestId('steps').waitFor();
  expect(await guide(page).count()).toBe(0);
  await page.getByRole('button', { name: t('guided:takeUp'), exact: true }).click();
  expect(await guide(page).getAttribute('data-idea')).toBe('red');
  await page.reload();
  await soon(() => guide(page).getAttribute('data-idea')).toBe('red');
  await close();
});

test('the guided bench holds up to axe-core and runs off no side, with a caution and without', async () => {
  for (const size of [LAPTOP, PHONE]) {
    const { page, close } = await openPage(browser, '', size);
    await page.locator('.guided-start .act').click();
    await drawnReady(page);
    expect(await accessFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    await close();
  }
});

test('a caution comes at the first entry and at first sight, waits for nobody, and comes once', async () => {
  const { page, close } = await openPage(browser, '#/bench/humsOutside', LAPTOP);
  await page.getByTestId('steps').waitFor();
  const due = page.locator('.caution-card');
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
  expect(await due.getAttribute('data-caution')).toBe('entry');
  await press(t('app:head.kind.list'));
  // Nothing waits for it: the job goes on under it.
  await press(t('rig:place.furnace'));
  expect(await steps(page)).toBe(1);
  // Which of the two it is stands on it.
  expect(await due.textContent()).toContain(t('cautions:count', { number: 1, of: 2 }));
  await press(t('cautions:read'));
  expect(await due.getAttribute('data-caution')).toBe('lineVoltage');
  expect(await due.textContent()).toContain(t('cautions:count', { number: 2, of: 2 }));
  // The next one in the same place does not take the second half of a double press.
  const read = due.getByRole('button');
  expect(await read.getAttribute('aria-disabled')).toBe('true');
  await read.evaluate((button: HTMLButtonElement) => button.click());
  expect(await due.getAttribute('data-caution')).toBe('lineVoltage');
  await press(t('cautions:read'));
  expect(await due.count()).toBe(0);
  await press(t('action:do.coverOpen', { cover: t('rig:cover.burnerDoor') }));
  expect(await due.getAttribute('data-caution')).toBe('gas');
  // Out of its place it waits there.
  await press(t('rig:place.outdoor'));
  expect(await due.count()).toBe(0);
  await press(t('action:do.coverOpen', { cover: t('rig:cover.outdoorPanel') }));
  expect(await due.getAttribute('data-caution')).toBe('charge');
  await press(t('cautions:read'));
  expect(await due.count()).toBe(0);
  await press(t('rig:place.furnace'));
  expect(await due.getAttribute('data-caution')).toBe('gas');
  await press(t('cautions:read'));
  expect(await due.count()).toBe(0);
  await page.reload();
  await page.getByTestId('steps').waitFor();
  expect(await due.count()).toBe(0);
  // They can be read again.
  await press(t('app:head.ticket'));
  for (const each of ['entry', 'lineVoltage', 'gas', 'charge'])
    await page
      .getByRole('dialog')
      .getByText(t(`cautions:${each}.text`), { exact: true })
      .waitFor();
  await close();
});

test('the guided ticket is one of the board, and the guide shows on no other', async () => {
  const { page, close } = await openPage(browser, '#/bench/warmUpstairs', LAPTOP);
  await page.evaluate(() => localStorage.setItem('bellwire.guided', 'on'));
  await page.reload();
  await page.getByTestId('steps').waitFor();
  expect(await guide(page).count()).toBe(0);
  await page.goto(new URL(`#/ticket/${GUIDED_TICKET}`, inject('address')).href);
  await page.getByRole('link', { name: t('guided:begin'), exact: true }).click();
  await guide(page).waitFor();
  await close();
});
