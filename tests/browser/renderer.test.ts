/** Which way the stage draws, found out by itself: with the graphics card where there is one, else on a plain canvas. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { launch } from './chromium.ts';
import { drawnReady, openPage } from './harness.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** Opens a drawn bench in a browser whose WebGL calls itself `renderer`; tells what kind of canvas it is drawn on. */
async function drawnOn(renderer: string): Promise<string> {
  const { page, close } = await openPage(browser, '');
  await page.addInitScript((name) => {
    const { getContext } = HTMLCanvasElement.prototype;
    const { getParameter } = WebGLRenderingContext.prototype;
    const UNMASKED_RENDERER = 0x9246;
    // The browser itself refuses a software context to whoever will not have a slow one: here the name alone must decide.
    HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, options?: object) {
      return getContext.call(this, kind, { ...options, failIfMajorPerformanceCaveat: false });
    } as typeof getContext;
    WebGLRenderingContext.prototype.getParameter = function (asked) {
      return asked === UNMASKED_RENDERER ? name : getParameter.call(this, asked);
    };
  }, renderer);
  await page.goto(new URL('#/bench/fanButNoCooling', inject('address')).href);
  await page.reload();
  await drawnReady(page);
  const kind = await page.locator('.drawn-host canvas').evaluate((canvas: HTMLCanvasElement) => {
    if (canvas.getContext('2d') !== null) return 'plain canvas';
    return canvas.getContext('webgl') === null ? 'neither' : 'WebGL';
  });
  await close();
  return kind;
}

test('WebGL that a processor draws is passed over for a plain canvas', async () => {
  expect(await drawnOn('ANGLE (Google, Vulkan 1.3.0 (SwiftShader Device (Subzero)), SwiftShader driver)')).toBe('plain canvas');
});

test('WebGL of a graphics card is used', async () => {
  expect(await drawnOn('ANGLE (Intel, Mesa Intel(R) UHD Graphics 620, OpenGL 4.6)')).toBe('WebGL');
});
