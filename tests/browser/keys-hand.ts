/** Plays the list bench with the keyboard alone: Tab to what is named, then Enter or Space; R and B for the leads; digits for the meter. */
import type { Page } from 'playwright-core';
import { doText } from '../../src/app/action-words.ts';
import { METER_KEYS } from '../../src/app/bench/use-leads.ts';
import { partName, placeName, pointName, positionName, t, thingName, wireName } from '../../src/app/words.ts';
import type { Action, ActionOf } from '../../src/attempt/actions.ts';
import { type Attempt, viewOf } from '../../src/attempt/attempt.ts';
import { evidenceLabel, expectSteps, namingOfAction, takeStep } from './shadow.ts';

/** More presses of Tab than any page has stops. */
const MOST_STOPS = 600;

interface Wanted {
  /** Its visible words, or its label. */
  readonly words: string | RegExp;
  /** Words of the heading or label of the section that it stands in. */
  readonly within?: string;
}

/** Presses Tab until the focus is on what is wanted; what the keyboard cannot reach fails here. */
export async function tabTo(page: Page, wanted: Wanted): Promise<void> {
  const source = typeof wanted.words === 'string' ? undefined : wanted.words.source;
  const asked = { exact: typeof wanted.words === 'string' ? wanted.words : undefined, source, within: wanted.within };
  for (let presses = 0; presses < MOST_STOPS; presses += 1) {
    await page.keyboard.press('Tab');
    const there = await page.evaluate(({ exact, source: pattern, within }) => {
      const focused = document.activeElement;
      if (!(focused instanceof HTMLElement)) return false;
      const labels = focused instanceof HTMLInputElement || focused instanceof HTMLSelectElement ? [...(focused.labels ?? [])] : [];
      const label = labels[0]?.textContent ?? focused.getAttribute('aria-label') ?? focused.textContent;
      const words = (label ?? '').replace(/\s+/g, ' ').trim();
      if (pattern === undefined ? words !== exact : !new RegExp(pattern).test(words)) return false;
      if (within === undefined) return true;
      const section = focused.closest('[aria-labelledby], fieldset[aria-label], nav[aria-label], li');
      const title =
        section?.getAttribute('aria-label') ??
        document.getElementById(section?.getAttribute('aria-labelledby') ?? '')?.textContent ??
        section?.textContent;
      return (title ?? '').includes(within);
    }, asked);
    if (there) return;
  }
  throw new Error(`the keyboard does not reach ${wanted.words} in ${wanted.within ?? 'the page'}`);
}

async function press(page: Page, words: string | RegExp, within?: string): Promise<void> {
  await tabTo(page, within === undefined ? { words } : { words, within });
  await page.keyboard.press('Enter');
}

/** R or B, then the terminal's letter, then the arrows until the one that is meant is chosen. */
async function placeLead(page: Page, shadow: Attempt, action: ActionOf<'probe'>): Promise<void> {
  const words = pointName(viewOf(shadow), action.at ?? '');
  const letter = words.slice(0, words.indexOf(', '));
  await page.keyboard.press(action.lead === 'red' ? 'r' : 'b');
  await page.getByRole('combobox', { name: t(`app:picker.${action.lead}`) }).waitFor();
  for (const key of letter) {
    await page.keyboard.press(key === ' ' ? 'Space' : key);
    if ((await page.getByRole('listbox').count()) === 0) return;
  }
  for (let presses = 0; presses < MOST_STOPS; presses += 1) {
    const chosen = await page.locator('[role=option][aria-selected=true]').textContent();
    if (chosen === words.replace(', ', ' ')) {
      await page.keyboard.press('Enter');
      return;
    }
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`the picker does not offer ${words}`);
}

/** Chooses an option of a list that has the focus. */
async function choose(page: Page, words: string): Promise<void> {
  for (let presses = 0; presses < MOST_STOPS; presses += 1) {
    const now = await page.evaluate(() => (document.activeElement as HTMLSelectElement).selectedOptions[0]?.textContent?.trim());
    if (now === words) return;
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`no ${words} to choose`);
}

/** Ticks or chooses what the focus comes to. */
async function tick(page: Page, words: string | RegExp): Promise<void> {
  await tabTo(page, { words });
  await page.keyboard.press('Space');
}

/** One of a group of buttons of which Tab reaches only one: the arrows go on from there. */
async function pickRadio(page: Page, words: string): Promise<void> {
  for (let presses = 0; presses < MOST_STOPS; presses += 1) {
    const now = await page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent?.trim());
    if (now === words) {
      await page.keyboard.press('Space');
      return;
    }
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`no ${words} to choose`);
}

async function nameFault(page: Page, shadow: Attempt, action: ActionOf<'name'>): Promise<void> {
  const words = namingOfAction(shadow, action);
  await press(page, t('app:head.name'));
  await page.getByRole('dialog').waitFor();
  await tabTo(page, { words: t('app:section.supply') });
  await pickRadio(page, words.section);
  await tabTo(page, { words: t('app:naming.target') });
  await choose(page, words.target);
  await page.keyboard.press('Tab');
  await pickRadio(page, words.mode);
  for (const number of action.evidence) await tick(page, evidenceLabel(shadow, number));
  await press(page, words.confirm);
}

/** Does one action on the page with the keyboard, the same on the shadow, and holds the page's count of steps to it. */
export async function byKeys(page: Page, shadow: Attempt, action: Action): Promise<void> {
  const view = viewOf(shadow);
  switch (action.name) {
    case 'walk':
      await press(page, placeName(action.to), t('app:house.walk'));
      break;
    case 'meter':
      await page.keyboard.press(String(METER_KEYS.map(String).indexOf(action.fn) + 1));
      break;
    case 'probe':
      await placeLead(page, shadow, action);
      break;
    case 'operate':
      await press(page, positionName(action.position), `${partName(action.part)}: ${t(`parts:control.${action.control}`)}`);
      break;
    case 'lift':
    case 'land':
    case 'tug':
      await press(page, doText(view, action), wireName(action.wire));
      break;
    case 'wait':
      await press(page, t(action.seconds === 300 ? 'app:strip.wait300' : 'app:strip.wait15'));
      break;
    case 'replace':
      await tabTo(page, { words: t('app:prove.which') });
      await choose(page, thingName(action.target));
      await press(page, t('app:prove.replace'));
      break;
    case 'name':
      await nameFault(page, shadow, action);
      break;
    case 'close':
      await press(page, t('app:head.close'));
      break;
    case 'cover':
      await press(page, doText(view, action));
      break;
    case 'look':
    case 'pull':
    case 'turn':
    case 'mat':
    case 'seat':
    case 'plug':
    case 'unplug':
      await press(page, doText(view, action), partName(action.part));
      break;
    default:
      throw new Error(`no way with keys for ${action.name}`);
  }
  takeStep(shadow, action);
  if (action.name !== 'close') await expectSteps(page, shadow);
}
