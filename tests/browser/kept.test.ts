/** What is kept: through the death of the tab at every step, beside another tab, out to a file and back, behind a PIN. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import type { Action } from '../../src/attempt/actions.ts';
import { logOf } from '../../src/attempt/attempt.ts';
import { speakEnglish } from '../app/english.ts';
import { start } from '../scenario/shipped.ts';
import { black, meter, pull, red, wait } from '../score/solutions.ts';
import { launch } from './chromium.ts';
import { accessFaults, address, button, LAPTOP, openPage, PHONE, picture } from './harness.ts';
import { byKeys } from './keys-hand.ts';
import { stepsOf, takeStep } from './shadow.ts';
import { keptLog, put } from './store.ts';

const TICKET = 'fanButNoCooling';
const PROBING: readonly Action[] = [black('subbase.Y'), wait(15), black('subbase.G'), wait(15), black('subbase.C'), wait(15)];
const STEPS: readonly Action[] = [
  pull('thermostat'),
  red('subbase.R'),
  black('subbase.C'),
  meter('voltsAc'),
  ...PROBING,
  ...PROBING,
  ...PROBING,
  wait(15),
  wait(300),
  meter('ohms'),
];

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

async function openList(page: Page): Promise<void> {
  await page.getByTestId('steps').waitFor();
  await button(page, t('app:head.kind.list')).click();
}

/** A finished attempt laid into the store as the bench keeps it, so that a test need not play one. */
function finishedLog(): unknown {
  const shadow = start(TICKET);
  for (const action of stepsOf(TICKET)) takeStep(shadow, action);
  return logOf(shadow);
}

function fileOf(log: unknown): { name: string; mimeType: string; buffer: Buffer } {
  const finished = [{ ticket: TICKET, mode: 'practice', when: 0, log }];
  const file = { format: 'bellwire-keeping', version: 1, profiles: [{ name: '', finished, running: [], habits: {} }] };
  return { name: 'mine.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(file)) };
}

/** The tab dies after each so many of the steps, and after the last; BELLWIRE_FULL=1 lets it die after each one. */
const DIES_AFTER = process.env.BELLWIRE_FULL === undefined ? 4 : 1;

test(`the tab dies after steps of 25, each ${DIES_AFTER}. of them: not one is lost`, { timeout: 300_000 }, async () => {
  expect(STEPS.length).toBe(25);
  const opened = await openPage(browser, `#/bench/${TICKET}`);
  let { page } = opened;
  await openList(page);
  const shadow = start(TICKET);
  for (const [index, action] of STEPS.entries()) {
    await byKeys(page, shadow, action);
    if ((index + 1) % DIES_AFTER !== 0 && index + 1 < STEPS.length) continue;
    const crashed = page.waitForEvent('crash');
    const wire = await page.context().newCDPSession(page);
    wire.send('Page.crash').catch(() => undefined);
    await crashed;
    const next = await page.context().newPage();
    await page.close();
    page = next;
    await page.goto(address(`#/bench/${TICKET}`));
    await page.getByTestId('steps').waitFor();
    expect(await page.getByTestId('steps').textContent()).toBe(String(index + 1));
    expect(await keptLog(page, `running:${TICKET}`)).toEqual({ mode: 'practice', log: logOf(shadow) });
  }
  await opened.close();
});

test('a full store tells, keeps what it had, and keeps all again when there is room', async () => {
  const { page, close } = await openPage(browser, `#/bench/${TICKET}`);
  await openList(page);
  const shadow = start(TICKET);
  await byKeys(page, shadow, pull('thermostat'));
  const before = { mode: 'practice', log: logOf(shadow) };
  await page.evaluate(() => {
    const held = window as unknown as { put: IDBObjectStore['put'] };
    held.put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await byKeys(page, shadow, red('subbase.R'));
  await page.getByText(t('keeping:full')).waitFor();
  expect(await keptLog(page, `running:${TICKET}`)).toEqual(before);
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = (window as unknown as { put: IDBObjectStore['put'] }).put;
  });
  await byKeys(page, shadow, black('subbase.C'));
  await page.getByText(t('keeping:full')).waitFor({ state: 'detached' });
  await expect.poll(() => keptLog(page, `running:${TICKET}`)).toEqual({ mode: 'practice', log: logOf(shadow) });
  await close();
});

test('a job closed while the store is full is debriefed all the same, and its result goes to no other attempt', async () => {
  const { page, close } = await openPage(browser, '');
  const shadow = start(TICKET);
  for (const action of stepsOf(TICKET).slice(0, -1)) takeStep(shadow, action);
  await put(page, `running:${TICKET}`, { mode: 'practice', log: logOf(shadow) });
  const earlier = { number: 1, when: 0, ticket: TICKET, mode: 'practice', log: logOf(shadow) };
  await put(page, 'finished:1', earlier);
  await put(page, 'count', 1);
  await page.goto(address(`#/bench/${TICKET}`));
  await page.getByTestId('steps').waitFor();
  await page.evaluate(() => {
    const held = window as unknown as { put: IDBObjectStore['put'] };
    held.put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await button(page, t('app:head.close')).click();
  await page.waitForURL(/#\/debrief\//);
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = (window as unknown as { put: IDBObjectStore['put'] }).put;
  });
  await page.getByTestId('total').waitFor({ timeout: 60_000 });
  await expect.poll(() => keptLog(page, `best:${TICKET}`)).toBeGreaterThan(0);
  expect(await keptLog(page, 'finished:1')).toEqual(earlier);
  await page.getByRole('link', { name: t('report:link'), exact: true }).click();
  await page.getByText(t('report:words.lost')).waitFor();
  await close();
});

test('denied storage is told on the bench and on the page of progress, and the job goes on', async () => {
  const { page, close } = await openPage(browser, '#/progress');
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('denied', 'SecurityError');
    };
  });
  await page.reload();
  await page.getByText(t('keeping:denied')).first().waitFor();
  await page.goto(address(`#/bench/${TICKET}`));
  await openList(page);
  await page.getByText(t('app:notKept')).waitFor();
  await byKeys(page, start(TICKET), pull('thermostat'));
  await close();
});

test('a second tab is told, may take over with every step, the first one stops, and whoever waits goes on when the other leaves', async () => {
  const { page, errors, close } = await openPage(browser, `#/bench/${TICKET}`);
  await openList(page);
  const shadow = start(TICKET);
  await byKeys(page, shadow, pull('thermostat'));
  const second = await page.context().newPage();
  await second.goto(address(`#/bench/${TICKET}`));
  await second.getByText(t('keeping:elsewhere.text')).waitFor();
  expect(await accessFaults(second)).toEqual([]);
  await button(second, t('keeping:elsewhere.take')).click();
  await second.getByTestId('steps').waitFor();
  await page.getByText(t('keeping:elsewhere.taken')).waitFor();
  expect(await page.getByTestId('steps').count()).toBe(0);
  await byKeys(second, shadow, red('subbase.R'));
  await expect.poll(() => keptLog(second, `running:${TICKET}`)).toEqual({ mode: 'practice', log: logOf(shadow) });
  await second.close();
  await button(page, t('keeping:elsewhere.take')).click();
  await expect.poll(() => page.getByTestId('steps').textContent()).toBe('2');
  const third = await page.context().newPage();
  await third.goto(address(`#/bench/${TICKET}`));
  await third.getByText(t('keeping:elsewhere.text')).waitFor();
  await page.goto('about:blank');
  await expect.poll(() => third.getByTestId('steps').textContent()).toBe('2');
  expect(errors).toEqual([]);
  await close();
});

describe.each([
  ['laptop', LAPTOP],
  ['phone', PHONE],
] as const)('the page of progress on a %s', (name, size) => {
  test('reads a file in, works its result out, and takes it through a wipe', async () => {
    const { page, errors, close } = await openPage(browser, '#/progress', size);
    await page.getByText(t('keeping:chart.none')).waitFor();
    await page.locator('input[type=file]').setInputFiles(fileOf(finishedLog()));
    await page.getByText(t('keeping:file.done', { count: 1 })).waitFor();
    await page.getByTestId('results').locator('tbody tr').waitFor({ timeout: 60_000 });
    const before = await page.getByTestId('results').textContent();
    expect(await page.getByTestId('why').textContent()).not.toBe(t('keeping:next.first'));
    await picture(page, `progress-${name}`);
    await page.evaluate(() => scrollTo(0, 900));
    await picture(page, `progress-skills-${name}`);
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
    await picture(page, `progress-foot-${name}`);
    expect(await accessFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    const saving = page.waitForEvent('download');
    await button(page, t('keeping:file.save')).click();
    const path = await (await saving).path();
    const saved = readFileSync(path);
    await close();
    expect(JSON.parse(saved.toString()).profiles[0].finished[0].result).toBeUndefined();
    const fresh = await openPage(browser, '#/progress', size);
    await fresh.page.locator('input[type=file]').setInputFiles({ ...fileOf(0), buffer: saved });
    await fresh.page.getByTestId('results').locator('tbody tr').waitFor({ timeout: 60_000 });
    expect(await fresh.page.getByTestId('results').textContent()).toBe(before);
    // Read in a second time, nothing is there twice.
    await fresh.page.locator('input[type=file]').setInputFiles({ ...fileOf(0), buffer: saved });
    await fresh.page.getByText(t('keeping:file.done', { count: 0 })).waitFor();
    await expect.poll(() => fresh.page.getByTestId('results').locator('tbody tr').count()).toBe(1);
    expect([...errors, ...fresh.errors]).toEqual([]);
    await fresh.close();
  });
});

test('a file with an attempt that cannot have happened is refused whole, with its place', async () => {
  const { page, close } = await openPage(browser, '#/progress');
  const log = finishedLog() as { steps: { at: number }[] };
  (log.steps[1] ?? { at: 0 }).at += 1;
  await page.locator('input[type=file]').setInputFiles(fileOf(log));
  await expect
    .poll(() => page.getByTestId('file-said').textContent())
    .toContain('mine.json › profiles[0].finished[0].log.steps[1].at');
  expect(await keptLog(page, 'count')).toBeUndefined();
  await close();
});

test('with the clock set back a year, the attempt that was finished last still stands last', { timeout: 180_000 }, async () => {
  const { page, close } = await openPage(browser, '');
  const shadow = start(TICKET);
  const steps = stepsOf(TICKET);
  for (const action of steps.slice(0, -1)) takeStep(shadow, action);
  const log = logOf(shadow);
  for (const year of ['2027', '2026']) {
    await page.clock.setFixedTime(new Date(`${year}-03-01T08:00:00Z`));
    await put(page, `running:${TICKET}`, { mode: 'practice', log });
    await page.goto(address(`#/bench/${TICKET}`));
    await button(page, t('app:head.close')).click();
    await page.getByTestId('total').waitFor({ timeout: 60_000 });
    await page.goto(address('#/'));
    await page.reload();
  }
  const kept = (await Promise.all([1, 2].map((number) => keptLog(page, `finished:${number}`)))) as { when: number }[];
  expect(kept.map((each) => new Date(each.when).getUTCFullYear())).toEqual([2027, 2026]);
  await page.goto(address('#/progress'));
  await page.getByTestId('results').locator('tbody tr').nth(1).waitFor();
  expect(await page.getByTestId('results').locator('tbody td:first-child').allTextContents()).toEqual(['1', '2']);
  await close();
});

test('profiles keep apart, and a PIN is asked for before anything is shown', async () => {
  const { page, close } = await openPage(browser, `#/bench/${TICKET}`);
  await openList(page);
  await byKeys(page, start(TICKET), pull('thermostat'));
  await page.goto(address('#/progress'));
  await page.getByLabel(t('keeping:profiles.name'), { exact: true }).fill('Ana');
  await button(page, t('keeping:profiles.add')).click();
  await button(page, t('keeping:profiles.use', { name: 'Ana' })).click();
  await page.getByText('Ana', { exact: true }).waitFor();
  await page.getByLabel(t('keeping:profiles.pin'), { exact: true }).fill('2468');
  await button(page, t('keeping:profiles.setPin')).click();
  await page.getByText(t('keeping:profiles.pinSet')).waitFor();
  await page.goto(address(`#/bench/${TICKET}`));
  await page.getByTestId('steps').waitFor();
  expect(await page.getByTestId('steps').textContent()).toBe('0');
  // Another tab was never told the PIN.
  const other = await page.context().newPage();
  await other.goto(address(''));
  await button(other, t('keeping:profiles.use', { name: 'Ana' })).click();
  const tryPin = async (pin: string) => {
    await other.getByLabel(t('keeping:profiles.pin'), { exact: true }).fill(pin);
    await button(other, t('keeping:profiles.open')).click();
  };
  await tryPin('1357');
  await other.getByText(t('keeping:profiles.wrongPin')).waitFor();
  expect(await other.getByText(t('app:home.headline')).count()).toBe(0);
  await tryPin('2468');
  await other.getByText(t('app:home.headline')).waitFor();
  await close();
});
