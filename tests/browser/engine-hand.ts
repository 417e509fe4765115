/** What the page's engine said, and the same worked out here from the same log. */
import type { Browser, Page } from 'playwright-core';
import { type Attempt, logOf } from '../../src/attempt/attempt.ts';
import { start, take } from '../scenario/shipped.ts';
import { SOLUTIONS } from '../score/solutions.ts';
import { type OpenPage, openPage } from './harness.ts';
import { put } from './store.ts';

/** Opens a page that keeps, as JSON, each answer of its worker in the order in which they came, by the name of the question. */
export async function openListening(browser: Browser, route: string, size?: { width: number; height: number }): Promise<OpenPage> {
  const opened = await openPage(browser, '', size);
  await opened.page.addInitScript(() => {
    const told: { name: string; json: string }[] = [];
    Object.assign(window, { told });
    const Plain = Worker;
    window.Worker = class extends Plain {
      constructor(address: string | URL, options?: WorkerOptions) {
        super(address, options);
        this.addEventListener('message', ({ data }) => told.push({ name: data.name, json: JSON.stringify(data.answer) }));
      }
    };
  });
  await opened.page.goto(new URL(route, opened.page.url()).href);
  await opened.page.reload();
  return opened;
}

/** The JSON of every answer to one kind of question so far. */
export function answers(page: Page, name: string): Promise<string[]> {
  return page.evaluate(
    (wanted) =>
      (window as unknown as { told: { name: string; json: string }[] }).told
        .filter((each) => each.name === wanted)
        .map((each) => each.json),
    name,
  );
}

/** A ticket's written solution, played here to the end. */
export function solved(id: string): Attempt {
  const solution = SOLUTIONS[id];
  if (solution === undefined) throw new Error(`no solution for ${id}`);
  const attempt = start(id);
  take(attempt, ...solution.search);
  const evidence = attempt.steps.filter((step) => step.observation.reading !== undefined).map((step) => step.view.number);
  take(attempt, { name: 'name', ...solution.name, evidence }, ...solution.after);
  return attempt;
}

/** Puts a closed attempt into the browser's keeping, as the bench would. */
export function keepClosed(page: Page, attempt: Attempt, mode = 'practice'): Promise<void> {
  return put(page, `closed:${attempt.job.id}`, { mode, log: logOf(attempt) });
}
