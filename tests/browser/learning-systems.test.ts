/**
 * Packages run in a real browser: against somebody else's SCORM runtime, both editions, and by cmi5 against a record store whose statements
 * somebody else's validator reads. Each is begun, left in the middle, taken up again on another PC and completed.
 */
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import validate from 'xapi-validation';
import { resumeIn } from '../../src/app/lms/resume.ts';
import { number, t } from '../../src/app/words.ts';
import type { Action } from '../../src/attempt/actions.ts';
import type { AttemptLog } from '../../src/attempt/attempt.ts';
import { PACKAGE_KINDS, type PackageKind } from '../../src/classroom/lms/manifests.ts';
import { VERBS } from '../../src/classroom/lms/statements.ts';
import { packageFile } from '../../src/cli/package.ts';
import { speakEnglish } from '../app/english.ts';
import { type RecordStore, startRecordStore } from '../classroom/lms/record-store.ts';
import { start, ticket } from '../scenario/shipped.ts';
import { pull } from '../score/solutions.ts';
import { launch } from './chromium.ts';
import { type FolderServer, serveFolder } from './folder-server.ts';
import { button, openPage, PHONE, picture } from './harness.ts';
import { byKeys } from './keys-hand.ts';

type Shadow = ReturnType<typeof start>;

const TICKET = 'fanButNoCooling';
const ASSIGNMENT = {
  format: 'bellwire-assignment',
  version: 1,
  id: 'week-9',
  title: 'Week nine',
  mode: 'graded',
  attempts: 1,
  seed: 1,
  items: [{ kind: 'shipped', ticket: TICKET, weight: 3 }],
  papers: [{ kind: 'drills', drills: ['contacts', 'loadCurrent'], count: 3 }],
};
const STEPS: readonly Action[] = [pull('thermostat')];

const KINDS = {
  scorm12: {
    script: 'scorm12.min.js',
    install: `window.API = new Scorm12API({ autocommit: false, logLevel: 5 });
      window.API.loadFromJSON({ cmi: { core: { student_id: 'ana.7@school', student_name: 'Ana' }, student_data: { mastery_score: '80' } } }, '');`,
    read: `({ status: API.lmsGetValue('cmi.core.lesson_status'), score: API.lmsGetValue('cmi.core.score.raw'), objectives: API.cmi.objectives.childArray.map(({ id, score }) => ({ id, raw: score.raw, max: score.max })) })`,
    kept: `API.cmi.suspend_data`,
    over: `API.isTerminated()`,
    again: (kept: string) => `window.API.loadFromJSON({ cmi: { suspend_data: ${JSON.stringify(kept)} } }, '');`,
    status: { begun: 'incomplete', done: ['passed', 'failed'] },
  },
  scorm2004: {
    script: 'scorm2004.min.js',
    install: `window.API_1484_11 = new Scorm2004API({ autocommit: false, logLevel: 5 });
      window.API_1484_11.loadFromJSON({ cmi: { learner_id: 'ana.7@school', learner_name: 'Ana' } }, '');`,
    read: `({ status: API_1484_11.lmsGetValue('cmi.completion_status'), score: API_1484_11.lmsGetValue('cmi.score.raw'), objectives: API_1484_11.cmi.objectives.childArray.map(({ id, score }) => ({ id, raw: score.raw, max: score.max })) })`,
    kept: `API_1484_11.cmi.suspend_data`,
    over: `API_1484_11.isTerminated()`,
    again: (kept: string) => `window.API_1484_11.loadFromJSON({ cmi: { suspend_data: ${JSON.stringify(kept)} } }, '');`,
    status: { begun: 'incomplete', done: ['completed'] },
  },
} as const;

let browser: Browser;
let folder: string;
let server: FolderServer;
let store: RecordStore;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
  folder = mkdtempSync(join(tmpdir(), 'bellwire-lms-'));
  const assignment = join(folder, 'week-9.json');
  writeFileSync(assignment, JSON.stringify(ASSIGNMENT));
  for (const kind of PACKAGE_KINDS) {
    await packageFile(kind, assignment, join(folder, `${kind}.zip`), { language: 'en', passAt: 80, app: inject('built') });
    for (const [name, bytes] of Object.entries(packed(kind))) {
      mkdirSync(dirname(join(folder, kind, name)), { recursive: true });
      writeFileSync(join(folder, kind, name), bytes);
    }
    if (kind === 'cmi5') continue;
    copyFileSync(
      new URL(`../../node_modules/scorm-again/dist/${KINDS[kind].script}`, import.meta.url),
      join(folder, kind, 'runtime.js'),
    );
    writeFileSync(join(folder, kind, 'school.html'), '<!doctype html><title>School</title><script src="runtime.js"></script>');
  }
  server = await serveFolder(folder);
  store = await startRecordStore();
}, 180_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
  store?.stop();
  rmSync(folder, { recursive: true, force: true });
});

const packed = (kind: PackageKind) => unzipSync(readFileSync(join(folder, `${kind}.zip`)));

/** A school's page with its runtime, and the course in a window that it opened. */
async function launchCourse(context: BrowserContext, kind: keyof typeof KINDS, kept = ''): Promise<{ school: Page; course: Page }> {
  const school = await context.newPage();
  await school.goto(`${server.address}${kind}/school.html`);
  await school.evaluate(KINDS[kind].install);
  if (kept !== '') await school.evaluate(KINDS[kind].again(kept));
  const opening = context.waitForEvent('page');
  await school.evaluate(`void window.open('index.html')`);
  const course = await opening;
  await course.getByRole('heading', { level: 1, name: ASSIGNMENT.title }).waitFor();
  return { school, course };
}

/** Chooses the first answer to the question that is open, of the three there are. */
async function answer(course: Page, at: number): Promise<void> {
  await course.getByText(t('drill:exam.place', { at: number(at), of: number(3) }), { exact: true }).waitFor();
  await course.locator('.drill-choice').first().click();
}

/** Takes the work on, answers the first of its exercises, and does the first steps of its ticket. */
async function beginWork(course: Page, code: string): Promise<Shadow> {
  expect(await course.getByLabel(t('take:who.code')).inputValue()).toBe(code);
  await course.getByRole('checkbox', { name: t('take:privacy.agree') }).check();
  await button(course, t('take:who.go')).click();
  const begin = course.getByRole('button', { name: t('take:item.begin'), exact: true });
  await begin.last().click();
  await answer(course, 1);
  await course.getByRole('link', { name: t('take:back'), exact: true }).click();
  await begin.click();
  await course.getByTestId('steps').waitFor();
  await button(course, t('app:head.kind.list')).click();
  const shadow = start(ticket(TICKET).id);
  for (const action of STEPS) await byKeys(course, shadow, action);
  return shadow;
}

/** Takes the work up where it was left: ends the exercises at the second, and the ticket with a wrong naming. */
async function finishWork(course: Page, shadow: Shadow): Promise<void> {
  const resume = course.getByRole('link', { name: t('take:item.resume'), exact: true });
  await resume.last().click();
  await answer(course, 2);
  await button(course, t('take:paper.end')).click();
  await course.getByText(t('drill:exam.open', { count: 1 })).waitFor();
  await button(course, t('drill:exam.handIn')).click();
  await resume.click();
  await course.getByTestId('steps').waitFor();
  expect(await course.getByTestId('steps').textContent()).toBe(String(STEPS.length));
  await byKeys(course, shadow, { name: 'name', target: 'statY', mode: 'open', evidence: [] });
  await button(course, t('app:head.close')).click();
}

interface Objective {
  readonly id: string;
  readonly raw: string;
  readonly max: string;
}

/** What right of asked in each skill comes to over all of them, of 100 to the tenth. */
function exercisesTotal(scores: readonly (readonly [right: unknown, asked: unknown])[]): number {
  const sum = (values: readonly unknown[]) => values.reduce<number>((all, each) => all + Number(each), 0);
  return Math.round((sum(scores.map(([right]) => right)) / sum(scores.map(([, asked]) => asked))) * 1000) / 10;
}

/** Three parts of the ticket's points, one of the exercises'. */
async function totalOf(course: Page): Promise<number> {
  const [points, exercises] = await Promise.all(
    [0, 1].map(async (item) => Number(await course.getByTestId(`total-${item}-1`).getAttribute('data-total'))),
  );
  return Math.round((3 * points! + exercises!) / 4);
}

/** How much of the work begun lies in what is kept: steps of the ticket, answers to the exercises. */
function keptOf(text: string): readonly [steps: number | undefined, answers: number | undefined] {
  const resume = resumeIn(text);
  const steps = (resume?.works[0]?.log as AttemptLog | undefined)?.steps;
  return [steps?.length, resume?.papers[0]?.choices.filter((each) => each !== null).length];
}

const newContext = () => browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', reducedMotion: 'reduce' });

describe.each(['scorm12', 'scorm2004'] as const)('%s', (kind) => {
  const { read, over, kept, status } = KINDS[kind];
  test('sets completion and score, suspends and resumes on another PC', { timeout: 240_000 }, async () => {
    const first = await newContext();
    const { school, course } = await launchCourse(first, kind);
    expect(await school.evaluate(read)).toMatchObject({ status: status.begun });
    const shadow = await beginWork(course, 'ana-7-school');
    await expect.poll(async () => keptOf((await school.evaluate(kept)) as string), { timeout: 30_000 }).toEqual([STEPS.length, 1]);
    await course.close();
    await expect.poll(() => school.evaluate(over)).toBe(true);
    const text = (await school.evaluate(kept)) as string;
    expect(text.length).toBeLessThanOrEqual(4096);
    await first.close();

    const second = await newContext();
    const again = await launchCourse(second, kind, text);
    await finishWork(again.course, shadow);
    await expect
      .poll(() => again.school.evaluate(read), { timeout: 120_000 })
      .toMatchObject({ status: expect.stringMatching(status.done.join('|')) });
    const told = (await again.school.evaluate(read)) as { readonly score: string; readonly objectives: readonly Objective[] };
    expect(Number(told.score)).toBe(await totalOf(again.course));
    const drills = told.objectives.filter(({ id }) => id.startsWith('drill-'));
    expect(drills.length).toBeGreaterThan(0);
    const exercises = Number(await again.course.getByTestId('total-1-1').getAttribute('data-total'));
    if (kind === 'scorm2004') expect(exercisesTotal(drills.map(({ raw, max }) => [raw, max]))).toBe(exercises);
    else for (const { raw } of drills) expect(Number(raw)).toBeLessThanOrEqual(100);
    await picture(again.course, `course-${kind}`);
    await second.close();
  });
});

test('cmi5: says what was begun, completed and failed, in valid statements, and goes on on another PC', {
  timeout: 240_000,
}, async () => {
  const verbs = () => store.statements().map(({ verb }) => verb.id);
  const launchAu = async (context: BrowserContext): Promise<Page> => {
    const course = await context.newPage();
    await course.goto(`${server.address}cmi5/index.html?${store.launch()}`);
    await course.getByRole('heading', { level: 1, name: ASSIGNMENT.title }).waitFor();
    return course;
  };
  const first = await newContext();
  const course = await launchAu(first);
  expect(verbs()).toEqual([VERBS.initialized]);
  const shadow = await beginWork(course, 'ana-7');
  const keptThere = () => keptOf(store.asked.findLast(({ method }) => method === 'PUT')?.body ?? '');
  await expect.poll(keptThere, { timeout: 30_000 }).toEqual([STEPS.length, 1]);
  await course.close();
  await expect.poll(verbs).toEqual([VERBS.initialized, VERBS.terminated]);
  await first.close();

  const second = await newContext();
  const again = await launchAu(second);
  await finishWork(again, shadow);
  await expect.poll(verbs, { timeout: 120_000 }).toContain(VERBS.completed);
  const total = await totalOf(again);
  const exercises = Number(await again.getByTestId('total-1-1').getAttribute('data-total'));
  await again.close();
  await expect.poll(() => verbs().at(-1)).toBe(VERBS.terminated);
  const own: readonly string[] = [VERBS.demonstrated, VERBS.scored];
  expect(verbs().filter((each) => !own.includes(each))).toEqual([
    VERBS.initialized,
    VERBS.terminated,
    VERBS.initialized,
    VERBS.completed,
    total >= 80 ? VERBS.passed : VERBS.failed,
    VERBS.terminated,
  ]);
  const judged = store.statements().find(({ verb }) => verb.id === VERBS.failed || verb.id === VERBS.passed);
  expect(judged?.result?.score?.raw).toBe(total);
  const scores = store.statements().filter(({ verb }) => verb.id === VERBS.scored);
  expect(exercisesTotal(scores.map(({ result }) => [result?.score?.raw, result?.score?.max]))).toBe(exercises);
  for (const statement of store.statements()) expect(validate(statement)).toEqual([]);
  await second.close();
});

test('the page makes the same packages as the command line, file for file', async () => {
  const { page, errors, close } = await openPage(browser, '#/assign');
  await page
    .locator('.make-head input[type="file"]')
    .setInputFiles({ name: 'week-9.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(ASSIGNMENT)) });
  await page.getByText(t('builder:assign.ready'), { exact: true }).waitFor();
  await page.getByLabel(t('builder:package.pass')).fill('80');
  for (const kind of PACKAGE_KINDS) {
    await page.getByLabel(t('builder:package.kind')).selectOption(kind);
    const [file] = await Promise.all([page.waitForEvent('download'), button(page, t('builder:package.make')).click()]);
    expect(file.suggestedFilename()).toBe(`week-9-${kind}.zip`);
    const files = unzipSync(readFileSync(await file.path()));
    expect(Object.keys(files)).toEqual(Object.keys(packed(kind)));
    const other = Object.entries(packed(kind)).filter(([name, bytes]) => Buffer.compare(bytes, files[name] ?? Buffer.of()) !== 0);
    expect(other.map(([name]) => name)).toEqual([]);
  }
  await picture(page, 'package');
  await page.setViewportSize(PHONE);
  await page.locator('.make-package').scrollIntoViewIfNeeded();
  await picture(page, 'package-phone');
  expect(errors).toEqual([]);
  await close();
});
