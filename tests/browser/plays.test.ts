/** Tickets that ship are played from the complaint to the debrief by a mouse, by a finger on a phone, and by the keyboard alone. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import { viewOf } from '../../src/attempt/attempt.ts';
import { speakEnglish } from '../app/english.ts';
import { library, oneOfEachRig, start } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { byHand, handAt } from './drawn-hand.ts';
import { drawnReady, LAPTOP, openPage, PHONE, picture, ticketRow } from './harness.ts';
import { byKeys, tabTo } from './keys-hand.ts';
import { fingerOn, mouseOn, type Pointer } from './pointer.ts';
import { expectDebrief, stepsOf } from './shadow.ts';

/** A good technician's points, whatever hand did the work. */
const GOOD = 85;
/** Three plays share two cores, and each works its debrief out twice; milliseconds. */
const LONG = 400_000;

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

/** The first so many tickets of each rig. */
const firstOfEachRig = (count: number) =>
  library.tickets.filter((each, index) => library.tickets.slice(0, index).filter(({ rig }) => rig === each.rig).length < count);

/**
 * BELLWIRE_FULL=1 plays every ticket by every hand, BELLWIRE_PLAYS=2 two tickets of every rig; else the first rig's is played by all three,
 * and two other rigs' by one of them.
 */
const ticketsFor = (hand: number): readonly string[] =>
  (process.env.BELLWIRE_FULL
    ? library.tickets
    : process.env.BELLWIRE_PLAYS
      ? firstOfEachRig(Number(process.env.BELLWIRE_PLAYS))
      : oneOfEachRig.filter((_, place) => place === 0 || (place % 4 === 0 && place % 3 === hand))
  ).map((each) => each.id);

/** From the first page to the debrief, and back to see the points there. */
async function playDrawn(pointer: Pointer, id: string): Promise<void> {
  const { page } = pointer;
  const shadow = start(id);
  const rowNow = () => ticketRow(page, id, pointer.press);
  await pointer.press((await rowNow()).locator('a'));
  await pointer.press(page.getByRole('link', { name: t('app:ticket.begin'), exact: true }));
  await drawnReady(page);
  const hand = handAt(pointer, shadow);
  for (const action of stepsOf(id)) {
    await byHand(hand, action).catch(async (cause: unknown) => {
      await picture(page, `play-${id}-${pointer.touch ? 'finger' : 'mouse'}`);
      throw new Error(`step ${viewOf(shadow).steps.length}, ${JSON.stringify(action)}`, { cause });
    });
  }
  const total = await expectDebrief(page, shadow);
  expect(total).toBeGreaterThanOrEqual(GOOD);
  await pointer.press(page.getByRole('link', { name: t('app:toTickets'), exact: true }));
  await (await rowNow()).getByText(t('app:home.best', { score: total }), { exact: true }).waitFor();
}

describe.concurrent('with the mouse on the drawn bench', () => {
  test.each(ticketsFor(0))('%s', { timeout: LONG }, async (id) => {
    const { page, errors, close } = await openPage(browser, '', LAPTOP);
    await playDrawn(mouseOn(page), id);
    expect(errors).toEqual([]);
    await close();
  });
});

describe.concurrent('with a finger on a phone', () => {
  test.each(ticketsFor(1))('%s', { timeout: LONG }, async (id) => {
    const { page, errors, close } = await openPage(browser, '', PHONE, { hasTouch: true, isMobile: true });
    const finger = await fingerOn(page);
    await playDrawn(finger, id);
    expect(finger.small).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });
});

describe.concurrent('with the keyboard alone on the list bench', () => {
  test.each(ticketsFor(2))('%s', { timeout: LONG }, async (id) => {
    const { page, errors, close } = await openPage(browser, '', LAPTOP);
    const shadow = start(id);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await ticketRow(page, id, async (fold) => {
      await tabTo(page, { words: (await fold.textContent()) ?? '' });
      await page.keyboard.press('Enter');
    });
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
    expect(await expectDebrief(page, shadow)).toBeGreaterThanOrEqual(GOOD);
    expect(errors).toEqual([]);
    await close();
  });
});

test('opening and reading a caution leaves the drawing where the finger has put it on the page', async () => {
  const { page, close } = await openPage(browser, `#/bench/${ticketsFor(0)[0]}`, PHONE, { hasTouch: true, isMobile: true });
  await drawnReady(page);
  const finger = await fingerOn(page);
  /** The scene's scale and where its corner lies on the page; and the bench's height. */
  const lies = () =>
    page.locator('.drawn-host').evaluate((host) => {
      const [unit = 1, left = 0, top = 0] = (host as HTMLElement).dataset.sight?.split(' ').map(Number) ?? [];
      const box = host.getBoundingClientRect();
      const scene = [unit * 100, box.left - left * unit, box.top - top * unit].map(Math.round).join(' ');
      return { scene, height: Math.round(box.height) };
    });
  const wait = { timeout: 10_000 };
  const opened = await lies();
  await finger.drag({ x: 250, y: 500 }, { x: 170, y: 430 });
  await expect.poll(lies, wait).not.toEqual(opened);
  const put = await lies();
  const strip = page.locator('.caution-strip').first();
  await finger.press(strip.locator('summary'));
  await expect.poll(async () => (await lies()).height, wait).toBeLessThan(put.height - 50);
  await expect.poll(async () => (await lies()).scene, wait).toBe(put.scene);
  const title = await strip.locator('summary').textContent();
  await finger.press(strip.locator('button:not([aria-disabled=true])'));
  await page.locator('.caution-strip', { hasText: title ?? '' }).waitFor({ state: 'detached' });
  await expect.poll(async () => (await lies()).height, wait).toBeGreaterThanOrEqual(put.height);
  await expect.poll(async () => (await lies()).scene, wait).toBe(put.scene);
  await close();
});

test('a finger tells what is smaller than a thumb, and does not press what something lies over', async () => {
  const { page, close } = await openPage(browser, '', PHONE, { hasTouch: true, isMobile: true });
  const style = 'position: absolute; left: 100px; width: 60px;';
  await page.setContent(
    `<meta name="viewport" content="width=device-width"><button style="${style} top: 100px; height: 44px">large</button>` +
      `<button style="${style} top: 200px; height: 26px">small</button>` +
      `<button style="${style} top: 300px; height: 44px">beneath</button><div style="${style} top: 300px; height: 44px"></div>`,
  );
  const finger = await fingerOn(page);
  await finger.press(page.getByRole('button', { name: 'large' }));
  expect(finger.small).toEqual([]);
  await finger.press(page.getByRole('button', { name: 'small' }));
  expect(finger.small).toEqual(['button "small": 28']);
  await expect(finger.press(page.getByRole('button', { name: 'beneath' }))).rejects.toThrow('something lies over');
  await close();
});
