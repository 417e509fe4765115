/** A walk past every page of the app and every state of the bench, in any language: the buttons are found by that language's words. */
import type { Locator, Page } from 'playwright-core';
import { inject } from 'vitest';
import blueprint from '../../scenarios/exams/controlsCore.json' with { type: 'json' };
import { METER_KEYS } from '../../src/app/bench/use-leads.ts';
import { wordsOf } from '../../src/cli/files.ts';
import { drawnReady } from './harness.ts';
import { put } from './store.ts';

const TICKET = 'clicksButWontStart';
/** A job that begins at a thermostat that can be taken off. */
const HALLWAY = 'fanButNoCooling';

/** Whoever practises by this lot is asked the same each time. */
const LOT = 7;
/** The kinds of exercise that are looked at: of the usual tour one with a drawing of wires. */
const kindsToSee = (): readonly string[] =>
  process.env.BELLWIRE_FULL === undefined ? ['vaSum'] : Object.keys((wordsOf('en').drill as { readonly kind: object }).kind);

/** What is to be done where the tour halts. `small`: only a narrow screen shows this. */
export type Halt = (what: string, small?: boolean) => Promise<void>;

/** Words of one language by key, without filling in. */
export function wordsIn(language: string): (key: string) => string {
  const files = wordsOf(language) as Readonly<Record<string, unknown>>;
  return (key) => {
    const [file = '', path = ''] = key.split(':');
    let found: unknown = files[file];
    for (const each of path.split('.')) found = (found as Record<string, unknown> | undefined)?.[each];
    if (typeof found !== 'string') throw new Error(`no words for ${key}`);
    return found;
  };
}

async function settled(page: Page): Promise<void> {
  await page.getByRole('heading', { level: 1 }).first().waitFor();
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

async function go(page: Page, route: string): Promise<void> {
  await page.goto(new URL(route === '' ? '#/' : route, inject('address')).href);
  await settled(page);
}

async function pressAll(buttons: Locator): Promise<void> {
  for (const each of await buttons.all()) await each.click();
}

const openAll = (page: Page) =>
  page.evaluate(() => {
    for (const each of document.querySelectorAll('details')) each.open = true;
  });

/** The pages that are read, with nothing kept yet. */
async function readingPages(page: Page, halt: Halt): Promise<void> {
  for (const [what, route] of [
    ['tickets', ''],
    ['ticket', `#/ticket/${TICKET}`],
    ['guide', '#/guide'],
    ['unknown', '#/ticket/nobodyWroteThis'],
    ['progress-empty', '#/progress'],
    ['settings', '#/settings'],
    ['drills', '#/drills'],
    ['exams', '#/exams'],
    ['gradebook', '#/gradebook'],
  ] as const) {
    await go(page, route);
    await openAll(page);
    await halt(what);
  }
}

/** An exercise before and after its answer, and a question of an exam. */
async function exercises(page: Page, words: (key: string) => string, halt: Halt): Promise<void> {
  for (const kind of kindsToSee()) {
    await put(page, 'drills', { lot: LOT, families: {}, skills: {} });
    // From another page, so that what was kept is read.
    await go(page, '#/exams');
    await go(page, '#/drills');
    await page.getByRole('button', { name: words(`drill:kind.${kind}.name`), exact: true }).click();
    await page.locator('.drill-choice').first().waitFor();
    await halt(`exercise-${kind}`);
    await page.locator('.drill-choice').first().click();
    await page.locator('.drill-why').waitFor();
    await halt(`exercise-${kind}-told`);
    await page.locator('.drill-bar button').click();
  }
  const answers = Array.from({ length: blueprint.items }, () => null);
  const running = { blueprint: blueprint.id, lot: LOT, began: Date.now(), used: 0, answers, flagged: [] };
  await put(page, 'exams', { running, sittings: [] });
  await go(page, '#/exams');
  await page.getByRole('button', { name: words('drill:exam.resume'), exact: true }).click();
  await page.locator('.drill-choice').first().waitFor();
  await halt('exam-question', true);
}

/** The guided ticket: its panel over the work, and the caution at the first sight of a bench, folded and open. */
async function guidedBench(page: Page, halt: Halt): Promise<void> {
  await go(page, '');
  await page.locator('.guided-start .act').click();
  await drawnReady(page);
  await page.getByTestId('guide').waitFor();
  await halt('guided');
  await openAll(page);
  await halt('caution-open', true);
  await page.locator('.caution-card[data-ready=true] button').click();
}

/** The drawn bench of a coached job: its windows, its sheets on a small screen, and what it says to a press that does nothing. */
async function drawnBench(page: Page, words: (key: string) => string, halt: Halt): Promise<void> {
  const button = (key: string) => page.getByRole('button', { name: words(key), exact: true });
  await go(page, `#/ticket/${HALLWAY}`);
  await page.getByRole('radio').first().check();
  await go(page, `#/bench/${HALLWAY}`);
  await drawnReady(page);
  await page.locator('.coach[aria-busy=false] .coach-sections').waitFor({ timeout: 60_000 });
  await page.locator('summary.coach-row').first().click();
  await halt('drawn-coached');
  for (const sheet of ['house', 'meter', 'coach'] as const) {
    await page.locator('.bench').evaluate((bench, name) => bench.setAttribute('data-sheet', name), sheet);
    await halt(`sheet-${sheet}`, true);
    await page.locator('.bench').evaluate((bench) => bench.removeAttribute('data-sheet'));
  }
  await button('app:tools.lift').click();
  await page.locator('.drawn-host').click({ position: { x: 12, y: 12 } });
  await page.locator('.drawn-told').waitFor();
  await halt('drawn-told');
  await button('app:head.ticket').click();
  await halt('window-ticket');
  await button('app:back').click();
  await button('app:hint.open').click();
  await halt('window-hint');
  await page.locator('.hint-depths button').last().click();
  await page.getByTestId('hint').waitFor({ timeout: 60_000 });
  await halt('window-hint-told');
  await button('app:back').click();
}

/** The list bench from the hallway to the open furnace: a refusal, the picker, the clamp, the naming, the repair. */
async function listBench(page: Page, words: (key: string) => string, halt: Halt): Promise<void> {
  const button = (key: string) => page.getByRole('button', { name: words(key), exact: true });
  await button('app:head.kind.list').click();
  await page.locator('.control [aria-pressed=true]').first().click();
  await page.locator('.note-refused').waitFor();
  await halt('list-refused');
  await button('action:do.pull').click();
  await page.locator('#part-subbase').waitFor();
  await halt('list-hallway');
  await page.locator('.house-section .room').nth(2).click();
  await pressAll(page.locator('.list-covers button'));
  await page.keyboard.press('1');
  await page.keyboard.press('r');
  await page.getByRole('listbox').waitFor();
  await halt('picker');
  await page.keyboard.press('Enter');
  await page.locator('.lead-black').first().click();
  await page.locator('.terminals li').nth(2).locator('.lead-black').click();
  await page.locator('.list-noticed, .strip-steps .last').first().waitFor();
  await halt('list-furnace');
  await page.keyboard.press(String(METER_KEYS.indexOf('ampsAc') + 1));
  await page.locator('.clamp select').waitFor();
  await halt('clamp');
  await button('app:head.name').click();
  const window = page.getByRole('dialog');
  await halt('window-naming');
  await window.getByRole('radio').last().click();
  await window.locator('select').first().selectOption({ index: 2 });
  await window.locator('fieldset').nth(1).getByRole('radio').first().click();
  await window.getByRole('checkbox').first().check();
  await halt('window-naming-filled');
  await window.locator('button[type=submit]').click();
  await window.waitFor({ state: 'detached' });
  await halt('prove-list');
  await button('app:head.kind.drawn').click();
  await drawnReady(page);
  await halt('prove-drawn');
}

/** The debrief with every fold open, the circuit after it, and the pages that tell of what was done. */
async function afterwards(page: Page, words: (key: string) => string, halt: Halt): Promise<void> {
  await page.getByRole('button', { name: words('app:prove.replace'), exact: true }).click();
  await page.getByRole('button', { name: words('app:head.close'), exact: true }).click();
  await page.getByTestId('total').waitFor({ timeout: 60_000 });
  await halt('debrief');
  await openAll(page);
  await page
    .locator('.tree')
    .first()
    .waitFor({ timeout: 60_000 })
    .catch(() => undefined);
  await halt('debrief-open');
  await go(page, `#/live/${HALLWAY}`);
  await drawnReady(page);
  await halt('live');
  await go(page, `#/report/${HALLWAY}`);
  await page.getByRole('textbox').waitFor();
  await halt('report');
  await go(page, '#/progress');
  await page.getByTestId('results').waitFor({ timeout: 60_000 });
  await halt('progress');
  await go(page, '');
  await halt('tickets-tried');
}

/** The gate that stands before every page of a profile with a PIN. */
async function pinGate(page: Page, halt: Halt): Promise<void> {
  await page.evaluate(() => {
    localStorage.setItem('bellwire/profile', 'own');
    localStorage.setItem('bellwire/locked', 'own');
    sessionStorage.removeItem('bellwire/opened');
  });
  await page.reload();
  await settled(page);
  await halt('gate');
}

/** Walks past everything once. The page's context must be a fresh one, in the language, with a laptop's screen. */
export async function tour(page: Page, language: string, halt: Halt): Promise<void> {
  const words = wordsIn(language);
  await readingPages(page, halt);
  await exercises(page, words, halt);
  await guidedBench(page, halt);
  await drawnBench(page, words, halt);
  await listBench(page, words, halt);
  await afterwards(page, words, halt);
  await pinGate(page, halt);
}
