/**
 * `npm run screens`: takes the pictures of the README anew, from the app as it is. What they show is played, drawn and graded here; nothing is
 * painted. They come out alike, but for the day that a page prints and an exam's own lot.
 */
import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { build, preview } from 'vite';
import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, logOf, perform } from '../../src/attempt/attempt.ts';
import { launch } from '../browser/chromium.ts';
import { put } from '../browser/store.ts';
import { diceOf, honest, smallAssignment } from '../classroom/crowd.ts';
import { start } from '../scenario/shipped.ts';
import { look, SOLUTIONS } from '../score/solutions.ts';

const FOLDER = 'assets/screens';
const JOB = 'fanButNoCooling';
const LAPTOP = { width: 1366, height: 768 };
const PHONE = { width: 390, height: 844 };

function played(actions: readonly Action[], attempt: Attempt = start(JOB)): Attempt {
  for (const action of actions) {
    const { ok } = perform(attempt, action);
    if (!ok) throw new Error(`refused: ${JSON.stringify(action)}`);
  }
  return attempt;
}

/** In the middle of the search, with the leads on, and the whole job with a look too many. */
function jobs(): { readonly running: unknown; readonly closed: unknown } {
  const solution = SOLUTIONS[JOB];
  if (!solution) throw new Error(`no solution of ${JOB}`);
  const mode = 'practice';
  const lastProbe = solution.search.findLastIndex(({ name }) => name === 'probe');
  const running = played(solution.search.slice(0, lastProbe + 1));
  const closed = played([look('thermostat'), ...solution.search]);
  const evidence = closed.steps.flatMap(({ view }, index) => (view.reading === undefined ? [] : [index + 1]));
  played([{ name: 'name', ...solution.name, evidence }, ...solution.after], closed);
  return { running: { mode, log: logOf(running) }, closed: { mode, log: logOf(closed) } };
}

async function shoot(page: Page, name: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  await page.screenshot({ path: `${FOLDER}/${name}.jpg`, type: 'jpeg', quality: 82 });
  if (process.env.PNG) await page.screenshot({ path: `/tmp/sc-${name}.png` });
  console.log(`${FOLDER}/${name}.jpg`);
}

async function withPage(browser: Browser, size: typeof LAPTOP, work: (page: Page) => Promise<void>): Promise<void> {
  const context = await browser.newContext({ viewport: size, locale: 'en-US', reducedMotion: 'reduce', serviceWorkers: 'block' });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await work(page);
  await context.close();
}

await build({ logLevel: 'warn' });
const server = await preview({ preview: { port: 4199, strictPort: false }, logLevel: 'warn' });
const home = server.resolvedUrls?.local[0];
if (home === undefined) throw new Error('the server has no address');
const browser = await launch();
mkdirSync(FOLDER, { recursive: true });
try {
  const { running, closed } = jobs();
  const go = async (page: Page, route: string) => {
    await page.goto(new URL(route, home).href);
    await page.reload();
    await page.getByRole('heading', { level: 1 }).first().waitFor();
  };
  const bench = async (page: Page) => {
    await go(page, '');
    await put(page, `running:${JOB}`, running);
    await page.goto(new URL(`#/bench/${JOB}`, home).href);
    await page.locator('.drawn-host canvas').waitFor();
    await page.locator('.drawn-wait').waitFor({ state: 'detached' });
    await page.waitForTimeout(1500);
    // A small screen keeps it folded.
    const caution = page.locator('.caution-card[data-ready=true] button');
    if (await caution.isVisible()) await caution.click();
  };
  await withPage(browser, LAPTOP, async (page) => {
    await bench(page);
    await shoot(page, 'bench');
  });
  await withPage(browser, PHONE, async (page) => {
    await bench(page);
    await shoot(page, 'bench-phone');
  });
  await withPage(browser, LAPTOP, async (page) => {
    await go(page, '');
    await put(page, `closed:${JOB}`, closed);
    await go(page, `#/debrief/${JOB}`);
    await page.getByTestId('total').waitFor();
    await shoot(page, 'debrief');
  });
  await withPage(browser, LAPTOP, async (page) => {
    await go(page, '');
    await put(page, 'drills', { lot: 7, families: {}, skills: {} });
    await go(page, '#/drills');
    await page.locator('.drill-kinds button').first().click();
    await page.locator('.drill-choice').first().click();
    await page.locator('.drill-why').waitFor();
    await page.evaluate(() => scrollTo(0, 0));
    await shoot(page, 'exercise');
  });
  await withPage(browser, LAPTOP, async (page) => {
    const assignment = smallAssignment();
    const dice = diceOf(5);
    const handed = Array.from({ length: 6 }, (_, index) =>
      [0, 1].map((item) => honest(assignment, `t${index + 1}`, item, dice)),
    ).flat();
    await go(page, '#/gradebook');
    const files = [assignment, ...handed].map((json, index) => [`${index}.json`, JSON.stringify(json)] as const);
    await page.evaluate((all) => {
      const dataTransfer = new DataTransfer();
      for (const [name, text] of all) dataTransfer.items.add(new File([text], name, { type: 'application/json' }));
      for (const kind of ['dragover', 'drop'])
        document.body.dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true }));
    }, files);
    await page.locator('.book-table tbody tr').nth(5).waitFor();
    await page.waitForTimeout(3000);
    await page.locator('.book-table').scrollIntoViewIfNeeded();
    await shoot(page, 'gradebook');
  });
} finally {
  await browser.close();
  await server.close();
}
