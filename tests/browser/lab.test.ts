/** A room: an instructor puts an assignment up on a real host, two trainees work on it in browsers of their own, the results come out. */
import Papa from 'papaparse';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, begin } from '../../src/attempt/attempt.ts';
import { type Assignment, loadAssignment } from '../../src/classroom/assignment.ts';
import { type Work, workOf } from '../../src/classroom/draw.ts';
import { generate } from '../../src/cli/generate.ts';
import { solveTicket } from '../../src/scenario/solve.ts';
import { yardstickFor } from '../../src/score/score.ts';
import { speakEnglish } from '../app/english.ts';
import { newFolder } from '../host/lab.ts';
import { type HostProcess, startHost } from '../host/process.ts';
import { library } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { accessFaults, button, drawnReady, openPage, PHONE, picture } from './harness.ts';
import { byKeys } from './keys-hand.ts';
import { cellsOf } from './spreadsheet.ts';

const RIG = 'trainingBoard';

const { folder, remove } = newFolder();
let browser: Browser;
let host: HostProcess;
let address: string;
let classCode = '';
let labPassword = '';
let assignment: Assignment;

beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
  const rig = library.rigs.get(RIG);
  if (rig === undefined) throw new Error('the rig is gone');
  const { made } = generate({ rigs: [rig], skill: undefined, grade: undefined, count: 4, seed: 4 });
  const pool = made.map(({ ticket, measured }) => ({ ticket, seconds: measured.seconds }));
  assignment = loadAssignment({
    format: 'bellwire-assignment',
    version: 1,
    id: 'week-9',
    title: 'Week nine',
    mode: 'graded',
    attempts: 1,
    minutes: 45,
    seed: 11,
    items: [{ kind: 'drawn', recipe: { rig: RIG }, pool }],
  });
  host = await startHost(folder, '--app', inject('built'));
  address = `http://127.0.0.1:${host.port}/`;
});
afterAll(async () => {
  await browser?.close();
  await host?.kill();
  remove();
});

/** What the host's window says. */
async function printed(words: RegExp): Promise<string> {
  await expect.poll(() => host.printed(), { timeout: 30_000 }).toMatch(words);
  return words.exec(host.printed())?.[1] ?? '';
}

const workFor = (trainee: string): Work => {
  const [work] = workOf(assignment, trainee, library);
  if (work === undefined) throw new Error('no work');
  return work;
};

/** Told once: a host that is started anew on the same folder prints no password. */
async function readPrinted(): Promise<void> {
  classCode ||= await printed(/Class code: (\S+)/);
  labPassword ||= await printed(/password: (\S+)/);
}

/** Two codes whose draws differ. */
function twoTrainees(): readonly [string, string] {
  const codes = Array.from({ length: 20 }, (_, index) => `t${index + 1}`);
  const other = codes.find((code) => workFor(code).ticket.id !== workFor('t1').ticket.id);
  if (other === undefined) throw new Error('all draw the same');
  return ['t1', other];
}

const file = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });

async function signIn(page: Page, trainee: string, pin: string): Promise<void> {
  await page.getByLabel(t('lab:signIn.class')).fill(classCode.toLowerCase());
  await page.getByLabel(t('lab:signIn.trainee')).fill(trainee);
  await page.getByLabel(t('lab:signIn.pin')).fill(pin);
  await page.getByLabel(t('lab:consent.agree')).check();
  await button(page, t('lab:signIn.go')).click();
}

const openItem = (page: Page, state: 'new' | 'running') =>
  page.getByRole('button', { name: new RegExp(`^${t(`lab:open.${state}`)}: `) }).click();

/** The short way, named without evidence: the words of it are the shadow's business elsewhere. */
function wayOf({ ticket, rig }: Work): readonly Action[] {
  return solveTicket(ticket, rig, yardstickFor(ticket, rig)).steps.flatMap(({ action }): Action[] => {
    if (action.name === 'name') return [{ ...action, evidence: [] }];
    return action.name === 'wait' ? Array<Action>(Math.ceil(action.seconds / 15)).fill({ name: 'wait', seconds: 15 }) : [action];
  });
}

async function take(page: Page, shadow: Attempt, actions: readonly Action[]): Promise<void> {
  for (const action of actions) await byKeys(page, shadow, action);
}

const toList = (page: Page) => page.getByRole('button', { name: t('app:head.kind.list'), exact: true }).click();

/** All that a browser keeps for this host. */
const keptIn = (page: Page) =>
  page.evaluate(async () => ({
    local: { ...localStorage },
    session: { ...sessionStorage },
    databases: (await indexedDB.databases()).map(({ name }) => name),
    cookies: document.cookie,
  }));

test('an instructor sets work, two trainees get faults of their own, one reloads and goes on, and the results come out', {
  timeout: 400_000,
}, async () => {
  const [first, second] = twoTrainees();
  await readPrinted();
  const desk = await openPage(browser, '');
  await desk.page.goto(`${address}#/class`);
  await desk.page.getByLabel(t('lab:class.passwordField')).fill('wrong');
  await button(desk.page, t('lab:signIn.go')).click();
  await desk.page.getByText(t('error:lab.wrongPassword')).waitFor();
  expect(await accessFaults(desk.page)).toEqual([]);
  await desk.page.getByLabel(t('lab:class.passwordField')).fill(labPassword);
  await button(desk.page, t('lab:signIn.go')).click();
  await desk.page.getByText(classCode, { exact: true }).waitFor();
  await desk.page.getByLabel(t('lab:work.file')).setInputFiles(file('bad.json', '{'));
  await desk.page.getByText('bad.json').waitFor();
  await desk.page.getByLabel(t('lab:work.file')).setInputFiles(file('week-9.json', JSON.stringify(assignment)));
  await desk.page.getByText(t('lab:work.isUp', { id: 'week-9' })).waitFor();
  const roster = `code,name,pin\r\n${first},Ana Ruiz,123456\r\n${second},Ben Ode,\r\n`;
  await desk.page.getByLabel(t('lab:roster.file')).setInputFiles(file('class.csv', roster));
  const pin = (await desk.page.locator(`[data-pin="${second}"]`).textContent())?.trim() ?? '';
  expect(pin).toMatch(/^\d{4,}$/);
  await picture(desk.page, 'lab-class-pins');
  await button(desk.page, t('lab:pins.done')).click();
  const row = (trainee: string) => desk.page.locator(`tr[data-trainee="${trainee}"]`);

  // From the first page, where it is what there is to do first because a host serves it.
  const ana = await openPage(browser, '');
  const offered = ana.page.locator('.home-intro a');
  const asked = ana.page.waitForResponse((response) => response.request().method() === 'HEAD');
  await ana.page.reload();
  await asked;
  await ana.page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 100)));
  expect(await offered.first().textContent()).toBe(t('guided:start.first'));
  await ana.page.goto(address);
  await ana.page.getByRole('link', { name: t('lab:enter') }).waitFor();
  expect((await offered.allTextContents())[0]).toBe(t('lab:enter'));
  await expect.poll(() => ana.page.locator('main .act').allTextContents()).toEqual([t('lab:enter')]);
  await picture(ana.page, 'lab-first-page');
  await ana.page.getByRole('link', { name: t('lab:enter') }).click();
  await ana.page.getByRole('heading', { name: t('lab:consent.title') }).waitFor();
  await picture(ana.page, 'lab-sign-in');
  expect(await accessFaults(ana.page)).toEqual([]);
  await signIn(ana.page, first, '000000');
  await ana.page.getByText(t('error:lab.wrong')).waitFor();
  const before = await keptIn(ana.page);
  await signIn(ana.page, first, '123456');
  await ana.page.getByRole('heading', { name: 'Week nine' }).waitFor();
  await picture(ana.page, 'lab-list');
  expect(await accessFaults(ana.page)).toEqual([]);
  await openItem(ana.page, 'new');
  await drawnReady(ana.page);
  await picture(ana.page, 'lab-bench');
  await toList(ana.page);
  expect(await button(ana.page, t('app:hint.open')).count()).toBe(0);

  const ben = await openPage(browser, '', PHONE, { hasTouch: true, isMobile: true });
  await ben.page.goto(`${address}#/lab`);
  await signIn(ben.page, second, pin);
  await ben.page.getByRole('heading', { name: 'Week nine' }).waitFor();
  await picture(ben.page, 'lab-list-phone');
  await openItem(ben.page, 'new');
  await drawnReady(ben.page);
  await picture(ben.page, 'lab-bench-phone');
  expect(await accessFaults(ben.page)).toEqual([]);

  const works = [workFor(first), workFor(second)] as const;
  const [shadow, other] = works.map(({ ticket, rig }) => begin(ticket, rig)) as [Attempt, Attempt];
  const way = wayOf(works[0]);
  await take(ana.page, shadow, way.slice(0, 2));
  await expect.poll(() => row(first).getByTestId('steps').textContent()).toBe('2');
  await expect.poll(() => row(first).getByTestId('left').textContent(), { timeout: 60_000 }).toMatch(/^\d+ of \d+$/);
  await expect.poll(() => row(second).getByTestId('state').textContent()).toBe(t('lab:room.is.working'));

  // All stop, and go on.
  await button(desk.page, t('lab:room.pause')).click();
  await ana.page.getByRole('dialog', { name: t('lab:paused.title') }).waitFor();
  await ana.page.keyboard.press('Escape');
  await ana.page.keyboard.press('Escape');
  await expect.poll(() => ana.page.getByRole('dialog', { name: t('lab:paused.title') }).isVisible()).toBe(true);
  expect(await accessFaults(ana.page)).toEqual([]);
  await picture(ana.page, 'lab-paused');
  await button(desk.page, t('lab:room.resume')).click();
  await ana.page.getByRole('dialog', { name: t('lab:paused.title') }).waitFor({ state: 'detached' });

  // More time for one.
  const minutesOf = async (page: Page) => Number((await page.getByTestId('left').textContent())?.slice(3, 5));
  expect(await minutesOf(ana.page)).toBeLessThan(45);
  await row(first).getByRole('button').click();
  await expect.poll(() => minutesOf(ana.page)).toBeGreaterThan(45);
  expect(await minutesOf(ben.page)).toBeLessThan(45);

  // The host loses its power, and comes back: the page says so, and goes on.
  const all = [desk, ana, ben];
  // A wrong password and a wrong PIN were given: nothing else may have gone wrong, before the loss or after it.
  const unexpected = () => all.flatMap(({ errors }) => errors.filter((each) => !/status of 401/.test(each)));
  expect(unexpected()).toEqual([]);
  await host.kill();
  await ana.page.getByTestId('lost').waitFor();
  await picture(ana.page, 'lab-lost');
  host = await startHost(folder, '--app', inject('built'), '--port', String(host.port));
  await ana.page.getByTestId('lost').waitFor({ state: 'detached' });
  // What was under way when the host was killed, the browser calls refused or reset.
  for (const { errors } of all) errors.length = 0;
  await take(ana.page, shadow, way.slice(2, 4));

  // The tab is loaded anew in the middle: the host knows where it was.
  await ana.page.reload();
  await signIn(ana.page, first, '123456');
  await openItem(ana.page, 'running');
  await ana.page.getByTestId('steps').waitFor();
  await toList(ana.page);
  expect(await ana.page.getByTestId('steps').textContent()).toBe('4');
  await take(ana.page, shadow, way.slice(4));
  await ana.page.getByRole('heading', { name: t('lab:over.closed') }).waitFor();
  await ana.page.getByRole('textbox').fill('The wire was open.');
  expect(await accessFaults(ana.page)).toEqual([]);
  await button(ana.page, t('lab:handIn')).click();
  await ana.page.getByRole('heading', { name: t('lab:done.title') }).waitFor();
  await picture(ana.page, 'lab-done');

  // The other one names something and closes.
  await ben.page.setViewportSize({ width: 1366, height: 768 });
  await toList(ben.page);
  const guess: Action = {
    name: 'name',
    target: works[0].ticket.faults[0]?.target ?? '',
    mode: works[0].ticket.faults[0]?.mode ?? '',
    evidence: [],
  };
  await take(ben.page, other, [{ name: 'wait', seconds: 15 }, guess, { name: 'close' }]);
  await button(ben.page, t('lab:handIn')).click();
  await ben.page.getByRole('heading', { name: t('lab:done.title') }).waitFor();

  await expect.poll(() => row(second).getByTestId('state').textContent()).toBe(t('lab:room.is.closed'));
  await expect.poll(() => desk.page.getByTestId('finished').textContent()).toBe(t('lab:work.finished', { count: 2 }));
  await picture(desk.page, 'lab-class');
  expect(await accessFaults(desk.page)).toEqual([]);
  await desk.page.locator('.lab-room').scrollIntoViewIfNeeded();
  const [saved] = await Promise.all([
    desk.page.waitForEvent('download'),
    button(desk.page, `${t('lab:work.csv')}: Week nine`).click(),
  ]);
  const chunks: Buffer[] = [];
  for await (const chunk of await saved.createReadStream()) chunks.push(chunk as Buffer);
  const { data } = Papa.parse<Record<string, string>>(Buffer.concat(chunks).toString('utf8'), {
    header: true,
    skipEmptyLines: true,
  });
  const right = Object.fromEntries(data.map((each) => [each.trainee, each.right]));
  expect(right[first]).toBe('true');
  expect(data.map(({ trainee }) => trainee).sort()).toEqual([first, second].sort());
  expect(data.find(({ trainee }) => trainee === first)?.steps).toBe(String(way.length));

  // The gradebook fills from the host: both are there, each with a fault of their own, and a spreadsheet reads the same out of its file.
  await button(desk.page, `${t('lab:work.gradebook')}: Week nine`).click();
  await desk.page.getByRole('heading', { level: 1, name: t('gradebook:title') }).waitFor();
  const graded = desk.page.locator('.book-table tbody tr');
  await expect.poll(() => graded.count()).toBe(2);
  await expect.poll(() => graded.getByTestId('total').allTextContents()).not.toContain('–');
  const shownTotals: Record<string, string> = {};
  const faults = new Set<string>();
  for (const trainee of [first, second]) {
    const line = desk.page.locator(`.book-table tr[data-trainee="${trainee}"]`);
    shownTotals[trainee] = (await line.getByTestId('total').textContent()) ?? '';
    await line.locator('[data-item="0"] button').click();
    faults.add((await desk.page.getByTestId('fault').textContent()) ?? '');
    // A script's hands are quicker than a person's, and nothing else is held against them.
    for (const told of await desk.page.locator('.book-doubts li').allTextContents())
      expect(told).toContain(t('gradebook:doubt.impossibleTimes'));
    await desk.page.keyboard.press('Escape');
  }
  expect(faults.size).toBe(2);
  await picture(desk.page, 'lab-gradebook');
  expect(await accessFaults(desk.page)).toEqual([]);
  const [sheet] = await Promise.all([desk.page.waitForEvent('download'), button(desk.page, t('gradebook:keep.wide')).click()]);
  const [, ...lines] = await cellsOf(sheet);
  expect(Object.fromEntries(lines.map((line) => [line[0], Number(line[3]).toFixed(1)]))).toEqual(shownTotals);
  await desk.page.goBack();
  await desk.page.getByTestId('finished').waitFor();

  // Out, and nothing is left.
  await button(ana.page, t('lab:signOut')).click();
  await ana.page.getByText(t('lab:why.self')).waitFor();
  expect(await keptIn(ana.page)).toEqual(before);
  expect(await ana.page.content()).not.toContain('Ana Ruiz');

  // One is erased.
  await button(desk.page, `${t('lab:roster.erase')}: Ben Ode`).click();
  await button(desk.page, t('lab:roster.eraseNow', { name: 'Ben Ode' })).click();
  await expect.poll(() => desk.page.getByTestId('finished').textContent()).toBe(t('lab:work.finished', { count: 1 }));
  await desk.page.setViewportSize(PHONE);
  await picture(desk.page, 'lab-class-phone');
  expect(await accessFaults(desk.page)).toEqual([]);
  await button(desk.page, t('lab:signOut')).click();
  await desk.page.evaluate(() => {
    location.hash = '#/gradebook';
  });
  await desk.page.getByRole('heading', { level: 1, name: t('gradebook:title') }).waitFor();
  expect(await desk.page.locator('main').textContent()).not.toContain('Ana Ruiz');
  expect(unexpected()).toEqual([]);
  await Promise.all(all.map(({ close }) => close()));
});

test('exercises are answered on the host, go on after a reload, and are in its table', { timeout: 120_000 }, async () => {
  await readPrinted();
  const post = (path: string, body: object, token?: string) =>
    fetch(`${address}api/instructor/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...(token === undefined ? {} : { authorization: `Bearer ${token}` }) },
      body: JSON.stringify(body),
    });
  const { token } = (await (await post('sign-in', { password: labPassword })).json()) as { token: string };
  const papers = [{ kind: 'drills', drills: ['safeOrder'], count: 3 }];
  const set = { ...assignment, id: 'week-10', title: 'Week ten', items: [], papers };
  expect((await post('assignments', set, token)).status).toBe(200);
  await post('roster', { csv: 'code,name,pin\r\ncleo,Cleo Park,654321\r\n' }, token);
  const { page, errors, close } = await openPage(browser, '');
  await page.goto(`${address}#/lab`);
  const begin = async (state: 'new' | 'running') => {
    await signIn(page, 'cleo', '654321');
    await page.getByRole('button', { name: new RegExp(`^${t(`lab:open.${state}`)}: .*${set.title}`) }).click();
    await page.locator('.drill-choice').first().waitFor();
  };
  await begin('new');
  await picture(page, 'lab-paper');
  expect(await accessFaults(page)).toEqual([]);
  await page.keyboard.press('2');
  await page.locator('.exam-places [data-state="answered"]').waitFor();
  await expect.poll(() => page.getByTestId('waiting').textContent()).toBe('');
  await page.reload();
  await begin('running');
  await expect.poll(() => page.locator('.exam-places [data-state="answered"]').count()).toBe(1);
  await button(page, t('take:paper.end')).click();
  await button(page, t('drill:exam.handIn')).click();
  await page.getByRole('heading', { name: t('lab:done.title') }).waitFor();
  await page.getByText(t('lab:paper.answered', { answered: '1', of: '3' })).waitFor();
  expect(errors).toEqual([]);
  await close();
  const csv = await fetch(`${address}api/instructor/assignments/week-10/gradebook.csv`, {
    headers: { authorization: `Bearer ${token}` },
  });
  const { data } = Papa.parse<Record<string, string>>(await csv.text(), { header: true, skipEmptyLines: true });
  expect(data).toMatchObject([{ trainee: 'cleo', item: '1', answersAsked: '3', doubts: '' }]);
});
