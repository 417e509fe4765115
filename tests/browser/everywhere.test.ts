/**
 * Every page and every state of the bench, in every language: nothing is cut or lies on another thing at any of the sizes, nothing
 * runs off the side, and axe-core finds nothing at WCAG 2.2 AA, on a laptop and on a phone.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launch } from './chromium.ts';
import { crowdedControls } from './crowd.ts';
import { cutTexts } from './cut.ts';
import { accessFaults, LAPTOP, openPage, PHONE, picture } from './harness.ts';
import { tour } from './tour.ts';

interface Size {
  readonly width: number;
  readonly height: number;
  /** The setting of the size of text, per cent. */
  readonly text?: string;
}

/** All sizes in all languages; else fewer, and outside English a phone alone, where other words are cut or in the way and axe-core is told the same again. */
const FULL = process.env.BELLWIRE_FULL !== undefined;
/** 1024 by 768 and 1366 by 768 stand in schools; twice the text is what WCAG 2.2, 1.4.4 asks for. BELLWIRE_FULL=1 looks at all of them. */
const SIZES: readonly Size[] = [
  { width: 360, height: 640 },
  PHONE,
  ...(FULL
    ? [
        { width: 1024, height: 768 },
        { width: 1920, height: 1080 },
      ]
    : []),
  LAPTOP,
  { ...LAPTOP, text: '200' },
];
const NARROW = 900;
/** Pictures of all of it, in English, are kept for people to look at when they ask for them: they take their time. */
const PICTURES = process.env.BELLWIRE_PICTURES !== undefined;

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** Waits until what follows the window's size and the size of text has followed. */
async function resize(page: Page, { width, height, text = '100' }: Size): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.evaluate(async (size) => {
    localStorage.setItem('bellwire.text', size);
    dispatchEvent(new Event('storage'));
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  }, text);
}

describe.concurrent('every page', () => {
  test.each([
    ['en', 'en-US'],
    ['es', 'es-MX'],
    ['fr', 'fr-CA'],
  ])('in "%s"', { timeout: 400_000 }, async (language, locale) => {
    const { page, errors, close } = await openPage(browser, '', LAPTOP, { locale });
    const faults: string[] = [];
    await tour(page, language, async (what, small = false) => {
      const sizes = language === 'en' || FULL ? SIZES : SIZES.filter((each) => each === PHONE);
      for (const size of sizes.filter((each) => !small || each.width <= NARROW || each.text !== undefined)) {
        await resize(page, size);
        const where = `${what} ${size.width}x${size.height}${size.text === undefined ? '' : ` at ${size.text} %`}`;
        if (PICTURES && language === 'en') await picture(page, where.replaceAll(' ', '-'));
        const found = [...(await cutTexts(page)), ...(await crowdedControls(page))];
        const asked = size === PHONE || (size === LAPTOP && !small);
        if (asked && (language === 'en' || FULL)) found.push(...(await accessFaults(page)));
        faults.push(...found.map((each) => `${where}: ${each}`));
      }
      await resize(page, LAPTOP);
    });
    expect(faults).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('the measures are awake', () => {
  test('axe-core finds a picture without words', async () => {
    const { page, close } = await openPage(browser, '');
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.evaluate(() => document.querySelector('main')?.append(document.createElement('img')));
    expect(await accessFaults(page)).toEqual(['image-alt: img']);
    await close();
  });

  test('a control on another, one on words, one out of the screen and one too small are found', async () => {
    const { page, close } = await openPage(browser, '');
    await page.setContent(
      '<style>* { margin: 0; font: 16px/20px sans-serif } button { position: absolute; width: 60px; height: 30px }</style>' +
        '<button>one</button><button style="left: 50px">other</button>' +
        '<p style="position: absolute; top: 100px">some words</p><button style="top: 95px">on them</button>' +
        '<button style="top: 200px; left: calc(100vw - 20px)">out</button><button style="top: 300px; width: 20px">tiny</button>',
    );
    expect((await crowdedControls(page)).map((each) => each.split(/[:,]/)[0])).toEqual([
      'sticks out of the screen',
      'too small to press',
      'one control on another',
      'a control on words',
    ]);
    await close();
  });

  test('words that are cut, turned words on turned words and a page that is too wide are found; an end that says itself is not', async () => {
    const { page, close } = await openPage(browser, '');
    const cut = 'width: 60px; overflow: hidden; white-space: nowrap; text-overflow: ellipsis';
    const turned = (y: number) => `<text transform="translate(20 ${y}) rotate(40)">turned words</text>`;
    await page.setContent(
      `<p style="${cut}">words that are cut</p><p style="${cut}" title="words that say themselves">words that say themselves</p>` +
        `<svg width="200" height="300">${turned(20)}${turned(28)}${turned(120)}</svg><p style="width: 200vw">wide</p>`,
    );
    expect((await cutTexts(page)).map((each) => each.split(/ "| \d/)[0])).toEqual([
      'cut at the side: p.',
      'overlap: text.',
      'the page is',
    ]);
    await close();
  });
});
