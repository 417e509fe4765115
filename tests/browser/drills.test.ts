/** Practice by touch on a phone, and a whole mock exam by the keyboard alone: what the page draws is what is drawn here. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import blueprint from '../../scenarios/exams/controlsCore.json' with { type: 'json' };
import { examined } from '../../src/app/drills/exam-keep.ts';
import { titleOf } from '../../src/app/ticket-words.ts';
import { t } from '../../src/app/words.ts';
import { type AttemptLog, begin, logOf } from '../../src/attempt/attempt.ts';
import { createBank } from '../../src/drills/draw.ts';
import { loadBlueprint, paperOf } from '../../src/drills/exam.ts';
import type { Item } from '../../src/drills/item.ts';
import { DRILL_KINDS } from '../../src/drills/kinds.ts';
import { itemOf } from '../../src/drills/paper.ts';
import { speakEnglish } from '../app/english.ts';
import { library, rigOf, ticket } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { crowdedControls } from './crowd.ts';
import { cutTexts } from './cut.ts';
import { solved } from './engine-hand.ts';
import { accessFaults, address, openPage, PHONE } from './harness.ts';
import { byKeys } from './keys-hand.ts';
import { keptLog, put } from './store.ts';

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

/** On a phone the way on is on the screen from the start, and whatever takes the focus lies between the bars. */
async function wayOnInSight(page: Page): Promise<void> {
  const before = page.viewportSize();
  await page.setViewportSize(PHONE);
  await page.evaluate(() => scrollTo(0, 0));
  const top = await page.locator('.exam-bar').boundingBox();
  const turn = await page.locator('.exam-turn').boundingBox();
  expect(turn!.y + turn!.height).toBeLessThanOrEqual(PHONE.height);
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeGreaterThan(PHONE.height * 1.5);
  for (const place of [(await choices(page).count()) - 1, 0]) {
    await page.evaluate((low) => scrollTo(0, low ? document.documentElement.scrollHeight : 0), place === 0);
    await choices(page).nth(place).focus();
    const box = await choices(page).nth(place).boundingBox();
    expect(box!.y).toBeGreaterThanOrEqual(top!.height);
    expect(box!.y + box!.height).toBeLessThanOrEqual(turn!.y);
  }
  if (before) await page.setViewportSize(before);
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
  // A set that is stopped says what its answers came to; without any there is nothing to say.
  for (const answers of [1, 0]) {
    await page.getByRole('button', { name: t('drill:page.again') }).tap();
    await choices(page).first().waitFor();
    if (answers === 1) await choices(page).first().tap();
    const fine = await page.locator('.drill-why[data-right=true]').count();
    await page.getByRole('button', { name: t('drill:page.leave') }).tap();
    if (answers === 1) await page.getByText(t('drill:page.result', { right: fine, asked: 1 })).waitFor();
    else await page.getByRole('heading', { name: t('drill:page.today') }).waitFor();
  }
  expect(errors).toEqual([]);
  await close();
});

interface KeptBench {
  readonly running: { readonly lot: number; readonly bench: readonly { readonly ticket: string; readonly log?: AttemptLog }[] };
}

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
  await wayOnInSight(page);
  const { running } = (await keptLog(page, 'exams')) as KeptBench;
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
    await press(t('drill:page.next'));
  }
  // The first ticket, by the list bench: named, taken up again after a reload, and closed.
  await page.evaluate(() => localStorage.setItem('bellwire.bench', 'list'));
  const asked = ticket(running.bench[0]!.ticket);
  const shadow = begin(examined(asked), rigOf(asked));
  await looksRight(page, 'ticket');
  await page.getByRole('link', { name: t('drill:exam.bench.begin') }).press('Enter');
  await page.getByRole('button', { name: t('app:head.name') }).waitFor();
  expect(await page.locator('.strip-hint').count()).toBe(0);
  const { target, mode } = asked.faults[0]!;
  // Nobody practises meanwhile what the exam asks.
  const beside = await page.context().newPage();
  for (const route of ['ticket', 'bench', 'debrief', 'live', 'report']) {
    await beside.goto(address(`#/${route}/${asked.id}`));
    await beside.getByText(t('keeping:inExam')).waitFor();
  }
  expect(await accessFaults(beside)).toEqual([]);
  await beside.close();
  await byKeys(page, shadow, { name: 'name', target, mode, evidence: [] });
  // A step is kept in the moment after it is told.
  const keptSteps = async () => ((await keptLog(page, 'exams')) as KeptBench).running.bench[0]?.log?.steps.length;
  await expect.poll(keptSteps).toBe(shadow.steps.length);
  await page.reload();
  await page.getByRole('button', { name: t('app:head.close') }).waitFor();
  await byKeys(page, shadow, { name: 'close' });
  await page.getByText(t('drill:exam.bench.state.closed'), { exact: true }).waitFor();
  expect(await page.locator('.drill-why, [data-mark], .debrief-total').count()).toBe(0);
  await page.reload();
  await press(t('drill:exam.resume'));
  await choices(page).first().waitFor();
  await expect.poll(() => page.locator('.exam-places [data-state=answered]').count()).toBeGreaterThanOrEqual(sure + 1);
  await press(t('drill:exam.end'));
  // What ends nothing comes first, and is what is offered.
  await expect
    .poll(() => page.locator('[aria-labelledby=ending-title] button').allTextContents())
    .toEqual([t('drill:exam.goOn'), t('drill:exam.handIn')]);
  expect(await page.locator('[aria-labelledby=ending-title] .act').textContent()).toBe(t('drill:exam.goOn'));
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('ending-title');
  await press(t('drill:exam.handIn'));
  await page.locator('.exam-result').waitFor();
  await looksRight(page, 'result');
  for (const place of known.keys()) {
    const line = page.locator('.exam-review', { has: page.getByText(new RegExp(`^\\s*${place + 1}\\. `)) }).locator('summary b');
    expect(await line.textContent(), `question ${place + 1}`).toBe(t('drill:exam.isRight'));
  }
  const [own, other] = running.bench.map((each) => page.getByTestId(`ticket-${each.ticket}`).locator('p b').last());
  expect(await own!.textContent()).toBe(t('drill:exam.isRight'));
  expect(await other!.textContent()).toBe(t('drill:exam.isWrong'));
  expect(await page.locator('.exam-result tr').last().textContent()).toContain(t('drill:page.of', { right: '1', asked: '2' }));
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: SHEET_PIXELS, height: 1000 });
  expect(await page.locator('button:visible, .page-head:visible').count()).toBe(0);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(255, 255, 255)');
  expect(errors).toEqual([]);
  await close();
});

test('an exam whose time is over ends at the bench, and says there what each ticket came to, with its debrief', {
  timeout: 120_000,
}, async () => {
  const { page, errors, close } = await openPage(browser, '', PHONE);
  const [done, open] = ['quietAfterTheStorm', 'blankWall'];
  const bench = [{ ticket: done, log: logOf(solved(done!)) }, { ticket: open }];
  // Begun before, with fewer questions: its paper stays as long as it was.
  const answers = [null, null, null, null, null];
  // The clock ran on meanwhile.
  const began = Date.now() - (blueprint.minutes * 60 - 8) * 1000;
  await put(page, 'exams', {
    running: { blueprint: blueprint.id, lot: 9, began, used: 0, answers, flagged: [6], bench },
    sittings: [],
  });
  await page.goto(address('#/exams/2'));
  await page.getByTestId('steps').waitFor();
  expect(await page.locator('.bench-counts').getByTestId('time-left').textContent()).toMatch(/^00:00:0/);
  await page.locator('.strip-waits button').first().click();
  await page.locator('.exam-result').waitFor();
  expect(new URL(page.url()).hash).toBe('#/exams');
  await looksRight(page, 'result');
  expect(await page.locator('.exam-result tr').last().textContent()).toContain(t('drill:page.of', { right: '1', asked: '2' }));
  // Five questions and a ticket were left: that is said instead of how sure the result is.
  await page.getByText(t('drill:exam.unanswered', { count: 6 })).waitFor();
  const said = await page.locator('.exam-review summary b').allTextContents();
  expect(new Set(said)).toEqual(new Set([t('drill:exam.notAnswered')]));
  await page.locator('.exam-review summary').first().click();
  expect(await page.locator('.drill-verdict').textContent()).toBe(t('drill:page.wasOpen'));
  const kept = (await keptLog(page, 'exams')) as {
    running?: unknown;
    sittings: { bench: { right: boolean; points: number | null }[] }[];
  };
  expect(kept.running).toBeUndefined();
  expect(kept.sittings[0]?.bench).toMatchObject([
    { right: true, points: expect.any(Number) },
    { right: false, points: null },
  ]);
  const told = page.getByTestId(`ticket-${done}`);
  expect(await told.textContent()).toContain(
    t('drill:exam.bench.points', { points: String(kept.sittings[0]?.bench[0]?.points), of: '100' }),
  );
  await told.getByRole('button').click();
  await page.getByTestId('total').waitFor();
  expect(await page.getByTestId('total').textContent()).toBe(String(kept.sittings[0]?.bench[0]?.points));
  expect(await page.locator('.debrief-ticket').textContent()).toContain(titleOf(done!));
  await page.getByRole('link', { name: t('app:debrief.back') }).click();
  await page.getByRole('button', { name: t('drill:exam.back') }).click();
  await page.getByText(t('drill:exam.bench.sat', { right: '1', asked: '2' })).waitFor();
  // Nothing of it stands among free practice.
  expect(await keptLog(page, `closed:${done}`)).toBeUndefined();
  expect(await keptLog(page, 'count')).toBeUndefined();
  expect(errors).toEqual([]);
  await close();
});
