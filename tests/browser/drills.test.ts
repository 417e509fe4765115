/** Practice by touch on a phone, and a whole mock exam by the keyboard alone: what the page draws is what is drawn here. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import blueprint from '../../scenarios/exams/controlsCore.json' with { type: 'json' };
import { t } from '../../src/app/words.ts';
import { createBank } from '../../src/drills/draw.ts';
import { loadBlueprint, paperOf } from '../../src/drills/exam.ts';
import type { Item } from '../../src/drills/item.ts';
import { DRILL_KINDS } from '../../src/drills/kinds.ts';
import { itemOf } from '../../src/drills/paper.ts';
import { speakEnglish } from '../app/english.ts';
import { library } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { crowdedControls } from './crowd.ts';
import { cutTexts } from './cut.ts';
import { accessFaults, openPage, PHONE } from './harness.ts';
import { keptLog } from './store.ts';

/** A sheet of A4 between margins of 15 mm, CSS pixels at 96 to the inch (ISO 216: 210 mm wide). */
const SHEET_PIXELS = Math.floor(((210 - 30) / 25.4) * 96);

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

const choices = (page: Page) => page.locator('.drill-choice');

async function looksRight(page: Page, where: string): Promise<void> {
  expect([...(await accessFaults(page)), ...(await cutTexts(page)), ...(await crowdedControls(page))], where).toEqual([]);
}

test('ten minutes by touch on a phone: every answer is told with its reason, kept, and its circuit is on the bench', {
  timeout: 240_000,
}, async () => {
  const { page, errors, close } = await openPage(browser, '#/drills', PHONE, { hasTouch: true, isMobile: true });
  await page.getByRole('heading', { name: t('drill:page.today') }).waitFor();
  await looksRight(page, 'overview');
  await page.getByRole('button', { name: t('drill:page.begin'), exact: true }).tap();
  let right = 0;
  let asked = 0;
  for (let last = false; !last; asked += 1) {
    await choices(page).first().waitFor();
    last = (await page.locator('.drill-bar p').textContent())?.match(/\d+/g)?.reduce((a, b) => (a === b ? 'same' : b)) === 'same';
    await choices(page)
      .nth(asked % 3)
      .tap();
    await page.locator('.drill-why').waitFor();
    if ((await page.locator('[data-mark=wrong]').count()) === 0) right += 1;
    expect(await page.locator('[data-mark=right]').count()).toBe(1);
    if (asked === 0) {
      await looksRight(page, 'answered');
      await page.locator('.drill-do a').tap();
      await page.getByRole('heading', { name: t('drill:page.bench') }).waitFor();
      await page.getByRole('link', { name: t('drill:page.backToDrill') }).tap();
      await page.locator('.drill-why').waitFor();
    }
    await page.locator('.drill-why .act').tap();
  }
  await page.getByText(t('drill:page.result', { right, asked })).waitFor();
  await looksRight(page, 'over');
  const kept = (await keptLog(page, 'drills')) as { readonly skills: Record<string, { asked: number; right: number }> };
  const sums = Object.values(kept.skills);
  expect(sums.reduce((sum, each) => sum + each.asked, 0)).toBe(asked);
  expect(sums.reduce((sum, each) => sum + each.right, 0)).toBe(right);
  expect(errors).toEqual([]);
  await close();
});

test('a whole exam by the keyboard alone, through a reload: the paper is the one that its lot draws here, and the result prints', {
  timeout: 240_000,
}, async () => {
  const { page, errors, close } = await openPage(browser, '#/exams');
  const press = async (name: string) => {
    await page.getByRole('button', { name, exact: true }).first().focus();
    await page.keyboard.press('Enter');
  };
  await press(t('drill:exam.begin'));
  await choices(page).first().waitFor();
  await looksRight(page, 'paper');
  const { running } = (await keptLog(page, 'exams')) as { running: { lot: number } };
  const shelf = { kinds: DRILL_KINDS, rigs: [...library.rigs.keys()].sort() };
  const paper = paperOf(loadBlueprint(blueprint), shelf, running.lot);
  const bank = createBank(shelf.rigs.map((id) => library.rigs.get(id)!));
  // A few are answered rightly, of kinds that differ: the page's worker must have drawn just these.
  const known = new Map<number, Item>();
  for (const [place, question] of paper.entries()) {
    if (known.size === 4) break;
    if ([...known.values()].some((each) => each.kind === question.kind.id)) continue;
    const item = itemOf(bank, question);
    if (item) known.set(place, item);
  }
  let sure = 0;
  for (const place of paper.keys()) {
    await page.locator(`.exam-places li:nth-child(${place + 1}) [aria-current]`).waitFor();
    await page.locator('.drill-choice, p.slip').first().waitFor();
    const item = known.get(place);
    if (item) {
      await page.keyboard.press(String(item.right + 1));
      sure += 1;
    } else if (place % 4 !== 0) await page.keyboard.press('2');
    // Nothing is told before the end.
    expect(await page.locator('.drill-why, .diagram-value, .drill-legend, [data-mark=right], [data-mark=wrong]').count()).toBe(0);
    if (place === 2) await press(t('drill:exam.flag'));
    if (place < paper.length - 1) await press(t('drill:page.next'));
  }
  await page.reload();
  await press(t('drill:exam.resume'));
  await choices(page).first().waitFor();
  expect(await page.locator('.exam-places [data-state=answered]').count()).toBeGreaterThanOrEqual(sure);
  await press(t('drill:exam.end'));
  // After the reload the paper is drawn again.
  await page.locator('section.slip .act:enabled').waitFor();
  await press(t('drill:exam.handIn'));
  await page.locator('.exam-result').waitFor();
  await looksRight(page, 'result');
  for (const place of known.keys()) {
    const line = page.locator('.exam-review', { has: page.getByText(new RegExp(`^\\s*${place + 1}\\. `)) }).locator('summary b');
    expect(await line.textContent(), `question ${place + 1}`).toBe(t('drill:exam.isRight'));
  }
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: SHEET_PIXELS, height: 1000 });
  expect(await page.locator('button:visible, .page-head:visible').count()).toBe(0);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(255, 255, 255)');
  expect(errors).toEqual([]);
  await close();
});
