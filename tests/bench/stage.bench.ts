import type { Page } from 'playwright-core';
import { build, preview } from 'vite';
import { viewOf } from '../../src/attempt/attempt.ts';
import { sceneOf } from '../../src/stage/layout.ts';
import { opening } from '../../src/stage/sight.ts';
import { REST, regionsOf } from '../../src/stage/targets.ts';
import { launch } from '../browser/chromium.ts';
import { start, take } from '../scenario/shipped.ts';
import type { BenchFigure } from './circuit.bench.ts';

const SECONDS = 4;

/** Frames a second that the page comes to while `meanwhile` goes on. */
async function framesPerSecond(page: Page, meanwhile: (until: number) => Promise<void>): Promise<number> {
  // As text: the compiler that runs this file adds helpers to functions which the page does not have.
  const counted = page.evaluate<number>(`new Promise((resolve) => {
    const began = performance.now();
    let frames = 0;
    requestAnimationFrame(function frame(now) {
      if (now - began >= ${SECONDS * 1000}) resolve(frames / ((now - began) / 1000));
      else {
        frames += 1;
        requestAnimationFrame(frame);
      }
    });
  })`);
  await meanwhile(performance.now() + SECONDS * 1000);
  return counted;
}

/** The drawn bench of the built app in software rendering: a furnace with its blower turning, still and with a lead in hand. */
export async function bench(): Promise<BenchFigure[]> {
  // Its own folder: `npm start` may be serving dist at this moment.
  const outDir = 'node_modules/.bellwire/stage-bench';
  await build({ logLevel: 'error', build: { outDir, emptyOutDir: true } });
  const server = await preview({
    logLevel: 'error',
    build: { outDir },
    preview: { port: 4983, strictPort: false, host: '127.0.0.1' },
  });
  const browser = await launch();
  try {
    const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
    await page.goto(`${server.resolvedUrls?.local[0] ?? ''}#/ticket/fanButNoCooling`);
    await page.getByRole('link', { name: 'Begin', exact: true }).click();
    await page.locator('.drawn-host canvas').waitFor();
    await page.locator('.drawn-wait').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /furnace closet/i }).click();

    const attempt = start('fanButNoCooling');
    take(attempt, { name: 'walk', to: 'furnace' });
    const box = await page.locator('.drawn-host').boundingBox();
    if (box === null) throw new Error('no drawn bench');
    const sight = opening(box.width, box.height);
    const onPage = (x: number, y: number) => [box.x + (x - sight.left) * sight.unit, box.y + (y - sight.top) * sight.unit] as const;
    const work = async (name: string, thing: string) => {
      const view = viewOf(attempt);
      const region = regionsOf(sceneOf(view), view).find(
        (each) => each.name === name && Object.values(each.values).includes(thing),
      );
      if (region === undefined) throw new Error(`nothing does ${name} to ${thing}`);
      await page.mouse.click(...onPage(region.box.x + region.box.width / 2, region.box.y + region.box.height / 2));
      take(attempt, region.action);
    };
    await work('stage:handle.open', 'burnerDoor');
    await work('stage:handle.open', 'blowerDoor');
    // An open door stops everything: the switch that it leans on is held in by hand.
    await work('stage:handle.plunger', 'doorSwitch');
    await page.getByRole('button', { name: 'Wait 15 s', exact: true }).click();
    take(attempt, { name: 'wait', seconds: 15 });
    const running = viewOf(attempt).parts.find((part) => part.id === 'blower')?.signs.running;
    if (running !== 'cool') throw new Error('the blower does not turn');

    const turning = await framesPerSecond(page, async () => {});
    await page.mouse.click(...onPage(REST.red.x + 40, REST.red.y));
    const held = await framesPerSecond(page, async (until) => {
      for (let step = 0; performance.now() < until; step += 1) {
        await page.mouse.move(...onPage(420 + 220 * Math.sin(step / 11), 320 + 180 * Math.cos(step / 17)));
      }
    });
    return [
      { name: 'drawn bench, software rendering, 1366×768: blower turning', value: turning, unit: 'frames/s' },
      { name: 'drawn bench, software rendering, 1366×768: blower turning, lead in hand', value: held, unit: 'frames/s' },
    ];
  } finally {
    await browser.close();
    await server.close();
  }
}
