/** Packages run in a real browser against somebody else's SCORM runtime, both editions: begun, left in the middle, taken up again, completed. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import type { Action } from '../../src/attempt/actions.ts';
import { packageOf } from '../../src/cli/package.ts';
import { speakEnglish } from '../app/english.ts';
import { start, ticket } from '../scenario/shipped.ts';
import { pull } from '../score/solutions.ts';
import { buildSingleFile } from '../tools/single-file.ts';
import { launch } from './chromium.ts';
import { type FolderServer, serveFolder } from './folder-server.ts';
import { button, picture } from './harness.ts';
import { byKeys } from './keys-hand.ts';

const TICKET = 'fanButNoCooling';
const ASSIGNMENT = {
  format: 'bellwire-assignment',
  version: 1,
  id: 'week-9',
  title: 'Week nine',
  mode: 'graded',
  attempts: 1,
  seed: 1,
  items: [{ kind: 'shipped', ticket: TICKET }],
};
const STEPS: readonly Action[] = [pull('thermostat')];

const KINDS = {
  scorm12: {
    script: 'scorm12.min.js',
    install: `window.API = new Scorm12API({ autocommit: false, logLevel: 5 });
      window.API.loadFromJSON({ cmi: { core: { student_id: 'ana.7@school', student_name: 'Ana' }, student_data: { mastery_score: '80' } } }, '');`,
    read: `({ status: API.lmsGetValue('cmi.core.lesson_status'), score: API.lmsGetValue('cmi.core.score.raw') })`,
    kept: `API.cmi.suspend_data`,
    over: `API.isTerminated()`,
    again: (kept: string) => `window.API.loadFromJSON({ cmi: { suspend_data: ${JSON.stringify(kept)} } }, '');`,
    status: { begun: 'incomplete', done: ['passed', 'failed'] },
  },
  scorm2004: {
    script: 'scorm2004.min.js',
    install: `window.API_1484_11 = new Scorm2004API({ autocommit: false, logLevel: 5 });
      window.API_1484_11.loadFromJSON({ cmi: { learner_id: 'ana.7@school', learner_name: 'Ana' } }, '');`,
    read: `({ status: API_1484_11.lmsGetValue('cmi.completion_status'), score: API_1484_11.lmsGetValue('cmi.score.raw') })`,
    kept: `API_1484_11.cmi.suspend_data`,
    over: `API_1484_11.isTerminated()`,
    again: (kept: string) => `window.API_1484_11.loadFromJSON({ cmi: { suspend_data: ${JSON.stringify(kept)} } }, '');`,
    status: { begun: 'incomplete', done: ['completed'] },
  },
} as const;

let browser: Browser;
let folder: string;
let server: FolderServer;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
  folder = mkdtempSync(join(tmpdir(), 'bellwire-scorm-'));
  await buildSingleFile(join(folder, 'built'));
  const page = readFileSync(join(folder, 'built/index.html'), 'utf8');
  for (const kind of ['scorm12', 'scorm2004'] as const) {
    mkdirSync(join(folder, kind));
    const files = unzipSync(packageOf(kind, ASSIGNMENT, page, { language: 'en', passAt: 80 }));
    for (const [name, bytes] of Object.entries(files)) writeFileSync(join(folder, kind, name), bytes);
    writeFileSync(join(folder, 'runtime.js'), '');
    writeFileSync(
      join(folder, kind, 'runtime.js'),
      readFileSync(new URL(`../../node_modules/scorm-again/dist/${KINDS[kind].script}`, import.meta.url)),
    );
    writeFileSync(join(folder, kind, 'school.html'), '<!doctype html><title>School</title><script src="runtime.js"></script>');
  }
  server = await serveFolder(folder);
}, 180_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

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

const newContext = () => browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', reducedMotion: 'reduce' });

describe.each(['scorm12', 'scorm2004'] as const)('%s', (kind) => {
  const { read, over, kept, status } = KINDS[kind];
  test('sets completion and score, suspends and resumes on another PC', { timeout: 240_000 }, async () => {
    const first = await newContext();
    const { school, course } = await launchCourse(first, kind);
    expect(await school.evaluate(read)).toMatchObject({ status: status.begun });
    expect(await course.getByLabel(t('take:who.code')).inputValue()).toBe('ana-7-school');
    await course.getByRole('checkbox', { name: t('take:privacy.agree') }).check();
    await button(course, t('take:who.go')).click();
    await course.getByRole('button', { name: t('take:item.begin'), exact: true }).click();
    await course.getByTestId('steps').waitFor();
    await button(course, t('app:head.kind.list')).click();
    const shadow = start(ticket(TICKET).id);
    for (const action of STEPS) await byKeys(course, shadow, action);
    await expect.poll(() => school.evaluate(kept), { timeout: 10_000 }).not.toBe('');
    // Whatever is told of each step is told within a moment of it.
    await course.waitForTimeout(1500);
    await course.close();
    await expect.poll(() => school.evaluate(over)).toBe(true);
    const text = (await school.evaluate(kept)) as string;
    expect(text.length).toBeLessThanOrEqual(4096);
    await first.close();

    const second = await newContext();
    const again = await launchCourse(second, kind, text);
    await again.course.getByRole('link', { name: t('take:item.resume'), exact: true }).click();
    await again.course.getByTestId('steps').waitFor();
    expect(await again.course.getByTestId('steps').textContent()).toBe(String(STEPS.length));
    await byKeys(again.course, shadow, { name: 'name', target: 'statY', mode: 'open', evidence: [] });
    await button(again.course, t('app:head.close')).click();
    await expect
      .poll(() => again.school.evaluate(read), { timeout: 120_000 })
      .toMatchObject({ status: expect.stringMatching(status.done.join('|')) });
    const told = (await again.school.evaluate(read)) as { readonly score: string };
    expect(Number(told.score)).toBe(Number(await again.course.getByTestId('total-0-1').getAttribute('data-total')));
    await picture(again.course, `course-${kind}`);
    await second.close();
  });
});
