/** The settings: in force at once and on the next load, each profile's own, reached from the bench without losing the job. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { t } from '../../src/app/words.ts';
import { logOf, viewOf } from '../../src/attempt/attempt.ts';
import { sceneOf } from '../../src/stage/layout.ts';
import { opening } from '../../src/stage/sight.ts';
import { regionsOf } from '../../src/stage/targets.ts';
import { speakEnglish } from '../app/english.ts';
import { start, take } from '../scenario/shipped.ts';
import { launch } from './chromium.ts';
import { accessFaults, address, button, drawnReady, LAPTOP, openPage, PHONE, picture } from './harness.ts';
import { tabTo } from './keys-hand.ts';
import { keptLog } from './store.ts';

const TICKET = 'warmUpstairs';

let browser: Browser;
beforeAll(async () => {
  await speakEnglish();
  browser = await launch();
});
afterAll(() => browser?.close());

const radio = (page: Page, group: string, words: string) =>
  page.getByRole('radiogroup', { name: t(`settings:name.${group}`) }).getByRole('radio', { name: words, exact: true });
const heading = (page: Page, words: string) => page.getByRole('heading', { level: 1, name: words, exact: true });
const root = (page: Page, what: 'font' | 'motion') =>
  page.evaluate(
    (asked) => (asked === 'font' ? getComputedStyle(document.documentElement).fontSize : document.documentElement.dataset.motion),
    what,
  );
const wide = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

async function toSettingsFromBench(page: Page): Promise<void> {
  await button(page, t('settings:menu.title')).click();
  await page
    .getByRole('dialog')
    .getByRole('link', { name: t('settings:title'), exact: true })
    .click();
  await heading(page, t('settings:title')).waitFor();
}

async function backToJob(page: Page): Promise<void> {
  await page.getByRole('link', { name: t('settings:job'), exact: true }).click();
  await page.getByTestId('steps').waitFor();
}

test.each([
  ['laptop', LAPTOP],
  ['phone', PHONE],
] as const)('on a %s the page and the menu of the bench hold at every size of text and with more contrast', async (name, size) => {
  const { page, errors, close } = await openPage(browser, '#/settings', size);
  await heading(page, t('settings:title')).waitFor();
  for (const [group, words] of [
    ['text', '200%'],
    ['contrast', t('settings:contrast.more')],
  ] as const) {
    await radio(page, group, words).check();
    expect(await accessFaults(page), words).toEqual([]);
    expect(await wide(page), words).toBeLessThanOrEqual(0);
    await picture(page, `settings-${words.replace('%', '')}-${name}`);
  }
  await page.goto(address(`#/bench/${TICKET}`));
  await button(page, t('settings:menu.title')).click();
  await page.getByRole('dialog').waitFor();
  expect(await accessFaults(page)).toEqual([]);
  await picture(page, `menu-${name}`);
  expect(errors).toEqual([]);
  await close();
});

test.each(['en-US', 'es-MX', 'fr-CA'])('with letters twice as large no page runs off the side of a phone (%s)', async (locale) => {
  const { page, close } = await openPage(browser, '#/settings', PHONE, { locale });
  await page.getByRole('radio', { name: '200' }).check();
  const tooWide: string[] = [];
  for (const route of [
    '',
    'progress',
    'guide',
    'drills',
    'exams',
    'build',
    'assign',
    'gradebook',
    'take',
    'lab',
    'class',
    `ticket/${TICKET}`,
  ]) {
    await page.evaluate((hash) => location.assign(hash), `#/${route}`);
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    await page.locator('main:not(.waiting) h1').first().waitFor();
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    const over = await wide(page);
    if (over > 0) tooWide.push(`${route}: ${over}`);
  }
  expect(tooWide).toEqual([]);
  await close();
});

test('with the keyboard alone: chosen by the arrows, in force at once, kept over a reload, and all put back', async () => {
  const { page, close } = await openPage(browser, '');
  await heading(page, t('app:home.headline')).waitFor();
  await tabTo(page, { words: t('settings:title') });
  await page.keyboard.press('Enter');
  await heading(page, t('settings:title')).waitFor();
  expect([await root(page, 'font'), await root(page, 'motion')]).toEqual(['16px', 'less']);
  await tabTo(page, { words: t('settings:degrees.fahrenheit') });
  await page.keyboard.press('ArrowDown');
  await page.getByText('25°C').waitFor();
  await tabTo(page, { words: '100%' });
  for (const size of ['20px', '24px', '32px']) {
    await page.keyboard.press('ArrowDown');
    expect(await root(page, 'font')).toBe(size);
  }
  await tabTo(page, { words: t('settings:motion.system'), within: t('settings:name.motion') });
  await page.keyboard.press('ArrowDown');
  expect(await root(page, 'motion')).toBe('full');
  await tabTo(page, { words: new RegExp(`^${t('settings:name.volume')}`) });
  await page.keyboard.press('ArrowLeft');
  await page.reload();
  await heading(page, t('settings:title')).waitFor();
  expect([await root(page, 'font'), await root(page, 'motion')]).toEqual(['32px', 'full']);
  expect(await radio(page, 'degrees', t('settings:degrees.celsius')).isChecked()).toBe(true);
  expect(await page.getByRole('slider').inputValue()).toBe('90');
  await tabTo(page, { words: t('settings:reset') });
  await page.keyboard.press('Enter');
  await page.getByText(t('settings:resetDone')).waitFor();
  expect([await root(page, 'font'), await root(page, 'motion')]).toEqual(['16px', 'less']);
  expect(await page.getByRole('slider').inputValue()).toBe('100');
  expect(await radio(page, 'degrees', t('settings:degrees.fahrenheit')).isChecked()).toBe(true);
  await close();
});

test('each profile has its own, and what the system asks holds where nobody chose', async () => {
  const { page, close } = await openPage(browser, '#/settings');
  await radio(page, 'text', '150%').check();
  await page.goto(address('#/progress'));
  await page.getByLabel(t('keeping:profiles.name')).fill('Bo');
  await button(page, t('keeping:profiles.add')).click();
  await button(page, t('keeping:profiles.use', { name: 'Bo' })).click();
  await page.getByText(`Bo, ${t('keeping:profiles.now')}`).waitFor();
  expect(await root(page, 'font')).toBe('16px');
  await page.emulateMedia({ reducedMotion: 'no-preference' });
  await expect.poll(() => root(page, 'motion')).toBe('full');
  await button(page, t('keeping:profiles.use', { name: t('keeping:profiles.own') })).click();
  await page.getByText(`${t('keeping:profiles.own')}, ${t('keeping:profiles.now')}`).waitFor();
  expect(await root(page, 'font')).toBe('24px');
  await close();
});

test('a larger size of text lays pages out as a smaller window would, at once and from the first paint', async () => {
  const { page, close } = await openPage(browser, '#/settings');
  const columns = () => page.locator('.home').evaluate((home) => getComputedStyle(home).gridTemplateColumns.split(' ').length);
  for (const [words, expected] of [
    ['200%', 1],
    ['100%', 2],
    ['200%', 1],
  ] as const) {
    await radio(page, 'text', words).check();
    await page.goto(address('#/'));
    await page.locator('.home').waitFor();
    expect(await columns(), words).toBe(expected);
    if (words === '200%') {
      await page.reload();
      await page.locator('.home').waitFor();
      expect(await columns(), `${words}, loaded`).toBe(expected);
    }
    await page.goto(address('#/settings'));
    await heading(page, t('settings:title')).waitFor();
  }
  await page.goto(address(`#/bench/${TICKET}`));
  await page.locator('.dock').waitFor();
  expect(await page.locator('.dock').isVisible()).toBe(true);
  await close();
});

describe('units', () => {
  test('in °C and metres nothing on the bench is in °F: a setting is entered, shown and stepped in half degrees', async () => {
    const { page, errors, close } = await openPage(browser, `#/bench/${TICKET}`);
    await page.getByTestId('steps').waitFor();
    await button(page, t('app:head.kind.list')).click();
    expect(await page.locator('.bench').textContent()).toContain('72°F');
    await toSettingsFromBench(page);
    await radio(page, 'degrees', t('settings:degrees.celsius')).check();
    await radio(page, 'lengths', t('settings:lengths.metres')).check();
    await backToJob(page);

    const text = async () => (await page.locator('.bench').textContent()) ?? '';
    expect(await text()).toContain('22°C');
    await page.getByLabel(t('parts:control.setCool'), { exact: true }).fill('22.5');
    await button(page, t('app:list.set', { control: t('parts:control.setCool') })).click();
    await page.getByTestId('steps').getByText('1').waitFor();
    expect(await page.getByLabel(t('parts:control.setCool'), { exact: true }).inputValue()).toBe('22.5');
    expect(await text()).toContain('set to 22.5°C');
    expect(await page.getByTestId('said').textContent()).toContain('22.5°C');
    expect(await text()).not.toMatch(/°F/);
    const kept = start(TICKET);
    take(kept, { name: 'set', part: 'thermostat', control: 'setCool', value: 72.5 });
    await expect.poll(() => keptLog(page, `running:${TICKET}`)).toEqual({ mode: 'practice', log: logOf(kept) });

    await button(page, t('app:head.ticket')).click();
    const ticket = page.getByRole('dialog');
    await ticket.getByText(t('app:ticket.plates')).click();
    const said = (await ticket.textContent()) ?? '';
    expect(said).toMatch(/I set it to 22 .*31°C outside.*5 conductors, 15 m/);
    expect(said).not.toMatch(/°F|\bft\b/);
    await page.keyboard.press('Escape');

    // The drawn thermostat: a press of its key is half a degree, and the face says so.
    await button(page, t('app:head.kind.drawn')).click();
    await drawnReady(page);
    const view = viewOf(kept);
    const region = regionsOf(sceneOf(view), view).find((each) => each.action.name === 'set' && each.action.value > 72.5);
    const box = await page.locator('.drawn-host').boundingBox();
    if (region === undefined || box === null) throw new Error('no key in sight');
    const sight = opening(box.width, box.height);
    await page.mouse.click(
      box.x + (region.box.x + region.box.width / 2 - sight.left) * sight.unit,
      box.y + (region.box.y + region.box.height / 2 - sight.top) * sight.unit,
    );
    await page.getByTestId('steps').getByText('2').waitFor();
    await page.locator('.strip-steps .last').getByText('23°C').waitFor();
    await picture(page, 'thermostat-celsius');

    await toSettingsFromBench(page);
    await radio(page, 'degrees', t('settings:degrees.fahrenheit')).check();
    await backToJob(page);
    await page.locator('.strip-steps .last').getByText('73°F').waitFor();
    expect(await text()).not.toMatch(/°C/);
    expect(errors).toEqual([]);
    await close();
  });
});

test('another language from the menu of the bench: no reload, no step lost, the focus stays on the choice', async () => {
  const { page, errors, close } = await openPage(browser, `#/bench/${TICKET}`);
  await page.getByTestId('steps').waitFor();
  await page.getByRole('button', { name: t('app:strip.wait15'), exact: true }).click();
  await page.evaluate(() => Object.assign(globalThis, { sameLoad: true }));
  await page.goto(address('#/settings'));
  const choice = page.getByRole('combobox');
  await choice.selectOption('es');
  await heading(page, 'Ajustes').waitFor();
  await expect.poll(() => choice.evaluate((element) => element === document.activeElement)).toBe(true);
  await page.getByRole('link', { name: 'Volver al trabajo' }).click();
  await page.getByTestId('steps').getByText('1').waitFor();
  await page.locator('.bench-head').getByRole('button', { name: 'Menú' }).click();
  await page.getByRole('dialog').getByRole('combobox').selectOption('fr');
  await page.getByRole('button', { name: 'Bon', exact: true }).waitFor();
  await page.getByTestId('steps').getByText('1').waitFor();
  expect(await page.evaluate(() => [document.documentElement.lang, 'sameLoad' in globalThis])).toEqual(['fr', true]);
  expect(errors).toEqual([]);
  await close();
});

test('settings that are read in from a file hold at once; a file with one that is none is refused whole', async () => {
  const { page, close } = await openPage(browser, '#/progress');
  const read = async (habits: Record<string, string>) => {
    const file = { format: 'bellwire-keeping', version: 1, profiles: [{ name: '', finished: [], running: [], habits }] };
    await page.locator('input[type=file]').setInputFiles({
      name: 'mine.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(file)),
    });
  };
  await read({ text: '125', degrees: 'kelvin' });
  await page.getByText('profiles[0].habits.degrees').waitFor();
  expect(await root(page, 'font')).toBe('16px');
  await read({ text: '125', degrees: 'celsius' });
  await expect.poll(() => root(page, 'font')).toBe('20px');
  await page.goto(address('#/settings'));
  await page.getByText('25°C').waitFor();
  await close();
});
