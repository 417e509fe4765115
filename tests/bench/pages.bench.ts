import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { build, preview } from 'vite';
import { launch } from '../browser/chromium.ts';
import type { BenchFigure } from './circuit.bench.ts';

const TICKET = 'fanButNoCooling';
/** How much slower than this machine the page's processor is: about a cheap phone beside a developer's PC. */
const SLOWDOWN = 4;
const RUNS = 3;

const AIMS = { firstPageKilobytes: 120, benchKilobytes: 700, beginSeconds: 1.5 };

/** What is compressed already, and goes over the wire as it is. */
const PACKED = /\.(woff2|png)$/;

interface Visit {
  readonly page: Page;
  /** Kilobytes of everything that the page has asked its server for, compressed as gzip does by default. */
  readonly kilobytes: () => Promise<number>;
  readonly close: () => Promise<void>;
}

/** A page of a profile that knows nothing yet, on a slow processor. The service worker fetches for later, so it stays out. */
async function cold(browser: Browser): Promise<Visit> {
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', serviceWorkers: 'block' });
  const page = await context.newPage();
  await (await context.newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  const sizes = new Map<string, Promise<number>>();
  context.on('response', (response) => {
    const url = response.url();
    if (!url.startsWith('http') || sizes.has(url)) return;
    const size = response.body().then((body) => (PACKED.test(url) ? body.length : gzipSync(body).length));
    // Told where the sizes are summed, not here.
    size.catch(() => undefined);
    sizes.set(url, size);
  });
  return {
    page,
    async kilobytes() {
      await page.waitForLoadState('networkidle');
      return (await Promise.all(sizes.values())).reduce((sum, bytes) => sum + bytes, 0) / 1000;
    },
    async close() {
      await page.waitForLoadState('networkidle');
      await Promise.all(sizes.values());
      await context.close();
    },
  };
}

/** Milliseconds from asking for the page until `selector` is there and the page answers. As text: see stage.bench.ts. */
function answersAfter(page: Page, selector: string): Promise<number> {
  return page.evaluate<number>(`new Promise((resolve) => {
    (function look() {
      if (document.querySelector(${JSON.stringify(selector)}) === null) setTimeout(look, 5);
      else requestAnimationFrame(() => setTimeout(() => resolve(performance.now()), 0));
    })();
  })`);
}

/** Milliseconds until anything was drawn. The browser tells it only after the picture is on the screen, which may be after the page answers. */
function firstPaint(page: Page): Promise<number> {
  return page.evaluate<number>(`new Promise((resolve, reject) => {
    new PerformanceObserver((list) => {
      for (const entry of list.getEntriesByName('first-contentful-paint')) resolve(entry.startTime);
    }).observe({ type: 'paint', buffered: true });
    setTimeout(() => reject(new Error('nothing was drawn within 30 s')), 30_000);
  })`);
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** What the pages weigh and how soon they are there, with a cold cache, from a server on this machine. */
export async function bench(): Promise<BenchFigure[]> {
  const outDir = 'node_modules/.bellwire/pages-bench';
  await build({ logLevel: 'error', build: { outDir, emptyOutDir: true } });
  const server = await preview({
    logLevel: 'error',
    build: { outDir },
    preview: { port: 4993, strictPort: false, host: '127.0.0.1' },
  });
  const address = server.resolvedUrls?.local[0] ?? '';
  const browser = await launch();
  try {
    const paints: number[] = [];
    const lists: number[] = [];
    const begins: number[] = [];
    let firstPage = 0;
    let drawnBench = 0;
    for (let run = 0; run < RUNS; run += 1) {
      const home = await cold(browser);
      await home.page.goto(address, { waitUntil: 'commit' });
      lists.push(await answersAfter(home.page, '.board-rig[open] .ticket-row a'));
      paints.push(await firstPaint(home.page));
      firstPage = await home.kilobytes();
      await home.close();

      const ticket = await cold(browser);
      await ticket.page.goto(`${address}#/ticket/${TICKET}`, { waitUntil: 'commit' });
      begins.push(await answersAfter(ticket.page, '.ticket-go .act'));
      await ticket.close();
    }
    const straight = await cold(browser);
    await straight.page.goto(`${address}#/bench/${TICKET}`);
    await straight.page.locator('.drawn-host canvas').waitFor();
    await straight.page.locator('.drawn-wait').waitFor({ state: 'detached' });
    drawnBench = await straight.kilobytes();
    await straight.close();

    const where = `${SLOWDOWN}× slower processor, cold cache`;
    return [
      { name: `first page, ${where}: first paint`, value: median(paints) / 1000, unit: 's' },
      { name: `first page, ${where}: the list of tickets answers`, value: median(lists) / 1000, unit: 's' },
      { name: `a ticket's page, ${where}: it can be begun`, value: median(begins) / 1000, unit: 's' },
      { name: 'the same to its aim', value: median(begins) / 1000 / AIMS.beginSeconds, unit: '×' },
      { name: 'first page, all that it loads, compressed, fonts too', value: firstPage, unit: 'kB' },
      { name: 'the same to its aim', value: firstPage / AIMS.firstPageKilobytes, unit: '×' },
      { name: 'drawn bench opened at once, all that it loads, compressed, Phaser and fonts too', value: drawnBench, unit: 'kB' },
      { name: 'the same to its aim', value: drawnBench / AIMS.benchKilobytes, unit: '×' },
    ];
  } finally {
    await browser.close();
    await server.close();
  }
}
