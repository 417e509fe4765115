import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import type { Action } from '../../src/attempt/actions.ts';
import { logOf } from '../../src/attempt/attempt.ts';
import { speakEnglish } from '../app/english.ts';
import { start } from '../scenario/shipped.ts';
import { black, meter, pull, red } from '../score/solutions.ts';
import { launch } from './chromium.ts';
import { openPage } from './harness.ts';
import { byKeys } from './keys-hand.ts';
import { takeStep } from './shadow.ts';
import { keptLog, put } from './store.ts';

const TICKET = 'fanButNoCooling';
const FIRST: readonly Action[] = [pull('thermostat'), red('subbase.R'), black('subbase.C'), meter('voltsAc')];

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

async function openList(page: Page): Promise<void> {
  await page.getByTestId('steps').waitFor();
  await page.getByRole('button', { name: t('app:head.kind.list'), exact: true }).click();
}

test('a reload in the middle of a job resumes it: the same steps, place, reading and bench', async () => {
  const { page, errors, close } = await openPage(browser, `#/bench/${TICKET}`);
  await openList(page);
  const shadow = start(TICKET);
  for (const action of FIRST) await byKeys(page, shadow, action);
  const digits = await page.locator('.rail-right [data-testid=digits]').textContent();
  expect(digits).toMatch(/^2\d\.\d\d$/);
  await expect.poll(() => keptLog(page, `running:${TICKET}`)).toEqual({ mode: 'practice', log: logOf(shadow) });
  await page.reload();
  await page.getByTestId('steps').waitFor();
  expect(await page.getByTestId('steps').textContent()).toBe('4');
  expect(await page.locator('.rail-right [data-testid=digits]').textContent()).toBe(digits);
  await expect.poll(() => page.locator('.list').count()).toBe(1);
  for (const action of [black('subbase.Y')]) await byKeys(page, shadow, action);
  expect(errors).toEqual([]);
  await close();
});

test('the ticket page offers to go on with a job under way, or to begin anew', async () => {
  const { page, close } = await openPage(browser, `#/bench/${TICKET}`);
  await openList(page);
  await byKeys(page, start(TICKET), pull('thermostat'));
  await expect.poll(() => keptLog(page, `running:${TICKET}`)).toBeTruthy();
  await page.goto(new URL(`#/ticket/${TICKET}`, page.url()).href);
  await page.getByRole('link', { name: t('app:ticket.resume'), exact: true }).waitFor();
  await page.getByRole('button', { name: t('app:ticket.afresh'), exact: true }).click();
  await page.getByTestId('steps').waitFor();
  expect(await page.getByTestId('steps').textContent()).toBe('0');
  await close();
});

test('when the browser keeps nothing, that is told and the job goes on', async () => {
  const { page, close } = await openPage(browser, '');
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await page.evaluate((hash) => {
    location.hash = hash;
  }, `#/bench/${TICKET}`);
  await openList(page);
  const shadow = start(TICKET);
  for (const action of FIRST) await byKeys(page, shadow, action);
  await expect.poll(() => page.getByText(t('keeping:full')).count()).toBe(1);
  await close();
});

test('a kept log that no longer replays is told, and the job starts from the beginning', async () => {
  const { page, errors, close } = await openPage(browser, `#/bench/${TICKET}`);
  await openList(page);
  await byKeys(page, start(TICKET), pull('thermostat'));
  await expect.poll(() => keptLog(page, `running:${TICKET}`)).toBeTruthy();
  const log = { format: 'bellwire-attempt', version: 1, ticket: TICKET, rig: 'another', steps: [] };
  await put(page, `running:${TICKET}`, { mode: 'practice', log });
  await page.reload();
  await page.getByText(t('app:lost')).waitFor();
  expect(await page.getByTestId('steps').textContent()).toBe('0');
  expect(errors).toEqual([]);
  await close();
});

test('a refused action is told in words and leaves no step', async () => {
  const { page, close } = await openPage(browser, `#/bench/${TICKET}`);
  await openList(page);
  await page
    .getByRole('group', { name: `${t('rig:part.thermostat')}: ${t('parts:control.mode')}` })
    .getByRole('button', { name: t('parts:position.cool'), exact: true })
    .click();
  expect(await page.getByRole('alert').textContent()).toBe(t('refusal:alreadySo'));
  expect(await page.getByTestId('steps').textContent()).toBe('0');
  await close();
});

test('the words of the last hint come back after a reload, and are not paid again', async () => {
  const { page, errors, close } = await openPage(browser, `#/bench/${TICKET}`);
  await openList(page);
  const shadow = start(TICKET);
  for (const action of FIRST) await byKeys(page, shadow, action);
  const openHints = () => page.getByRole('button', { name: t('app:hint.open'), exact: true }).click();
  await openHints();
  await page.getByRole('button', { name: new RegExp(t('app:hint.take.exact')) }).click();
  const hint = page.getByTestId('hint');
  await hint.waitFor({ timeout: 60_000 });
  const before = await hint.textContent();
  expect(before).toContain(t('app:hint.last', { step: FIRST.length }));
  await expect.poll(async () => JSON.stringify(await keptLog(page, `running:${TICKET}`))).toContain('"hint"');
  await page.reload();
  await page.getByTestId('steps').waitFor();
  takeStep(shadow, { name: 'hint', depth: 'exact' });
  await byKeys(page, shadow, black('subbase.Y'));
  await openHints();
  await hint.waitFor({ timeout: 60_000 });
  expect(await hint.textContent()).toBe(before);
  expect(await page.getByTestId('steps').textContent()).toBe(String(FIRST.length + 2));
  expect(errors).toEqual([]);
  await close();
});
