/** Profiles renamed and deleted, a PIN that was forgotten, and everything out to a file and into an empty browser. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import { logOf } from '../../src/attempt/attempt.ts';
import { speakEnglish } from '../app/english.ts';
import { start } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { accessFaults, address, button, openPage, PHONE, picture } from './harness.ts';
import { stepsOf, takeStep } from './shadow.ts';
import { allRecords, put } from './store.ts';

const TICKET = 'clicksButWontStart';
const LINE = { points: 5, of: 10 };
const RESULT = {
  total: 50,
  right: true,
  steps: 9,
  wasted: 1,
  minutes: 12,
  items: { isolation: LINE, economy: LINE, safety: LINE, proof: LINE },
};

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

const said = (page: Page, words: string) => page.getByTestId('profiles-said').getByText(words, { exact: true }).waitFor();
const atWork = (page: Page, name: string) => page.locator('p b').getByText(name, { exact: true }).waitFor();

function logAfter(steps: number) {
  const shadow = start(TICKET);
  for (const action of stepsOf(TICKET).slice(0, steps)) takeStep(shadow, action);
  return logOf(shadow);
}

/** Lays finished attempts and one under way on a profile's shelf; `prefix` is its id and a slash, or nothing. */
async function fill(page: Page, prefix: string, words: readonly (string | undefined)[]): Promise<void> {
  const attempt = { mode: 'practice', log: logAfter(Number.POSITIVE_INFINITY) };
  for (const [index, each] of words.entries()) {
    const own = each === undefined ? {} : { words: each };
    const record = { ...attempt, ticket: TICKET, number: index + 1, when: 1_790_000_000_123 - index, result: RESULT, ...own };
    await put(page, `${prefix}finished:${index + 1}`, record);
  }
  await put(page, `${prefix}closed:${TICKET}`, attempt);
  await put(page, `${prefix}count`, words.length);
  await put(page, `${prefix}running:${TICKET}`, { mode: 'coached', log: logAfter(4) });
}

interface Everything {
  readonly records: readonly (readonly [string, unknown])[];
  readonly local: readonly (readonly [string, string])[];
}

/** All that lies in the browser's two stores. */
async function allKept(page: Page): Promise<Everything> {
  return { records: await allRecords(page), local: await page.evaluate(() => Object.entries(localStorage)) };
}

async function profilesIn(page: Page): Promise<readonly { id: string; name: string }[]> {
  const { records } = await allKept(page);
  return records.find(([key]) => key === '/profiles')?.[1] as { id: string; name: string }[];
}

async function save(page: Page, words: string): Promise<string> {
  const saving = page.waitForEvent('download');
  await button(page, words).click();
  return readFileSync(await (await saving).path(), 'utf8');
}

async function readIn(page: Page, text: string, count: number): Promise<void> {
  const file = { name: 'all.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('input[type=file]').setInputFiles(file);
  await page.getByText(t('keeping:file.done', { count })).waitFor();
}

async function addAna(page: Page): Promise<string> {
  await page.getByLabel(t('keeping:profiles.name'), { exact: true }).fill('Ana');
  await button(page, t('keeping:profiles.add')).click();
  await said(page, t('keeping:profiles.added', { name: 'Ana' }));
  return (await profilesIn(page)).find((each) => each.name === 'Ana')?.id ?? '';
}

async function rename(page: Page, name: string): Promise<void> {
  await page.getByLabel(t('keeping:profiles.ownName'), { exact: true }).fill(name);
  await button(page, t('keeping:profiles.rename')).click();
}

test('a profile is renamed; deleted, it takes all of its own with it and nothing else, and its other tab leaves', async () => {
  const { page, errors, close } = await openPage(browser, '#/progress');
  const ana = await addAna(page);
  await rename(page, 'Ana');
  await said(page, t('keeping:profiles.taken', { name: 'Ana' }));
  await rename(page, 'Bo');
  await said(page, t('keeping:profiles.renamed', { name: 'Bo' }));
  await page.evaluate((id) => {
    localStorage.setItem('bellwire.bench', 'list');
    localStorage.setItem(`bellwire.${id}/bench`, 'list');
  }, ana);
  await fill(page, '', ['one', undefined]);
  await fill(page, `${ana}/`, ['hers']);
  const hers = (await allKept(page)).records.filter(([key]) => key.startsWith(ana));
  const other = await page.context().newPage();
  await other.goto(address('#/progress'));
  await atWork(other, 'Bo');
  await button(page, t('keeping:profiles.remove')).click();
  await page.getByText(t('keeping:remove.finished', { count: 2 })).waitFor();
  await page.getByText(t('keeping:remove.running', { count: 1 })).waitFor();
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, 'profile-remove');
  const saved = JSON.parse(await save(page, t('keeping:remove.save'))) as { profiles: { name: string }[] };
  expect(saved.profiles.map((each) => each.name)).toEqual(['Bo']);
  await button(page, t('keeping:remove.keep')).click();
  await said(page, t('keeping:remove.kept', { name: 'Bo' }));
  expect((await allKept(page)).records.some(([key]) => key === 'finished:2')).toBe(true);
  await button(page, t('keeping:profiles.remove')).click();
  await button(page, t('keeping:remove.remove', { name: 'Bo' })).click();
  for (const each of [page, other]) await atWork(each, 'Ana');
  const left = await allKept(page);
  expect(left.records.filter(([key]) => key.startsWith(ana))).toEqual(hers);
  expect(left.records.filter(([key]) => !key.startsWith(ana))).toEqual([['/profiles', [{ id: ana, name: 'Ana' }]]]);
  expect(left.local.map(([key]) => key).filter((key) => key.startsWith('bellwire.'))).toEqual([`bellwire.${ana}/bench`]);
  expect(errors).toEqual([]);
  await close();
});

test('a forgotten PIN: the work can be saved, the profile deleted, and the work read in anew', async () => {
  const { page, close } = await openPage(browser, '#/progress', PHONE);
  const ana = await addAna(page);
  await fill(page, `${ana}/`, ['hers']);
  await button(page, t('keeping:profiles.use', { name: 'Ana' })).click();
  await atWork(page, 'Ana');
  await page.getByLabel(t('keeping:profiles.pin'), { exact: true }).fill('2468');
  await button(page, t('keeping:profiles.setPin')).click();
  await said(page, t('keeping:profiles.pinSet'));
  const gate = await page.context().newPage();
  await gate.goto(address(''));
  await button(gate, t('keeping:profiles.use', { name: 'Ana' })).click();
  await button(gate, t('keeping:profiles.forgot')).click();
  await gate.getByText(t('keeping:remove.pin')).waitFor();
  expect(await accessFaults(gate)).toEqual([]);
  expect(await gate.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  await picture(gate, 'profile-forgot-phone');
  const text = await save(gate, t('keeping:remove.save'));
  await button(gate, t('keeping:remove.remove', { name: 'Ana' })).click();
  await gate.getByText(t('app:home.headline')).waitFor();
  expect((await allKept(gate)).records.filter(([key]) => key.includes(ana))).toEqual([]);
  await gate.goto(address('#/progress'));
  await readIn(gate, text, 2);
  await gate.goto(address(`#/report/${TICKET}`));
  await expect.poll(() => gate.getByRole('textbox', { name: t('report:words.title') }).inputValue()).toBe('hers');
  await close();
});

test('all profiles out to a file and into an empty browser: the same to the bit', async () => {
  const { page, close } = await openPage(browser, '#/progress');
  const ana = await addAna(page);
  await rename(page, 'Bo');
  await said(page, t('keeping:profiles.renamed', { name: 'Bo' }));
  await fill(page, '', [undefined, 'Two lines,\nand <b>markup</b>, é 🔧']);
  await fill(page, `${ana}/`, ['hers']);
  await page.evaluate((id) => {
    localStorage.setItem('bellwire.bench', 'list');
    localStorage.setItem(`bellwire.${id}/sound`, 'off');
  }, ana);
  const text = await save(page, t('keeping:file.saveAll'));
  const before = await allKept(page);
  await close();
  const fresh = await openPage(browser, '#/progress');
  await readIn(fresh.page, text, 5);
  expect(await save(fresh.page, t('keeping:file.saveAll'))).toBe(text);
  const list = await profilesIn(fresh.page);
  expect(list.map((each) => each.name)).toEqual(['Bo', 'Ana']);
  // Ids are the browser's own, and results and best scores are worked out again; all else is as it was.
  const bare = ({ records, local }: Everything, id: string) => ({
    records: records
      .filter(([key]) => key !== '/profiles' && !key.includes('best:'))
      .map(([key, value]) => {
        const { result: _, ...rest } = value as Record<string, unknown>;
        return [key.replace(id, 'ana'), typeof value === 'number' ? value : rest];
      })
      .sort(),
    habits: local.flatMap(([key, value]) => (key.startsWith('bellwire.') ? [[key.replace(id, 'ana'), value]] : [])).sort(),
  });
  expect(bare(await allKept(fresh.page), list[1]?.id ?? '')).toEqual(bare(before, ana));
  // Read in again, nothing is there twice.
  await readIn(fresh.page, text, 0);
  expect(await save(fresh.page, t('keeping:file.saveAll'))).toBe(text);
  await fresh.close();
});
