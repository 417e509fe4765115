/** Plays the list bench with the keyboard alone: Tab to what is named, then Enter or Space; R and B for the leads; digits for the meter. */
import type { CDPSession, Page } from 'playwright-core';
import { doText } from '../../src/app/action-words.ts';
import { METER_KEYS } from '../../src/app/bench/use-leads.ts';
import { partName, placeName, pointName, positionName, t, thingName, wireName } from '../../src/app/words.ts';
import type { Action, ActionOf } from '../../src/attempt/actions.ts';
import { type Attempt, viewOf } from '../../src/attempt/attempt.ts';
import { evidenceLabel, expectSteps, namingOfAction, takeStep } from './shadow.ts';

/** More presses of a key than any page has stops or any list has lines. */
const MOST_STOPS = 600;

interface Wanted {
  /** Its visible words, or its label. */
  readonly words: string | RegExp;
  /** Words of the heading or label of the section that it stands in. */
  readonly within?: string;
}

interface Asked {
  readonly exact: string | undefined;
  readonly source: string | undefined;
  readonly within: string | undefined;
}

/**
 * How many stops it should be to what is wanted, forwards and backwards; 0 when the focus is on it; undefined when there is no such
 * thing. Only an estimate of where Tab leads: Tab is pressed, and asked again.
 */
function stopsTo({ exact, source, within }: Asked): { readonly forwards: number; readonly backwards: number } | undefined {
  const wordsOf = (element: HTMLElement) => {
    const labels = element instanceof HTMLInputElement || element instanceof HTMLSelectElement ? [...(element.labels ?? [])] : [];
    const label = labels[0]?.textContent ?? element.getAttribute('aria-label') ?? element.textContent;
    return (label ?? '').replace(/\s+/g, ' ').trim();
  };
  const meant = (element: HTMLElement) => {
    const words = wordsOf(element);
    if (source === undefined ? words !== exact : !new RegExp(source).test(words)) return false;
    if (within === undefined) return true;
    const section = element.closest('[aria-labelledby], fieldset[aria-label], nav[aria-label], li');
    const title =
      section?.getAttribute('aria-label') ??
      document.getElementById(section?.getAttribute('aria-labelledby') ?? '')?.textContent ??
      section?.textContent;
    return (title ?? '').includes(within);
  };
  const focused = document.activeElement;
  if (focused instanceof HTMLElement && focused !== document.body && meant(focused)) return { forwards: 0, backwards: 0 };
  const root = document.querySelector('dialog[open]') ?? document.body;
  const stop = (element: HTMLElement) => {
    if (element.tabIndex < 0 || !element.checkVisibility({ visibilityProperty: true })) return false;
    if ('disabled' in element && element.disabled === true) return false;
    if (!(element instanceof HTMLInputElement) || element.type !== 'radio') return true;
    // Of a group of choices Tab meets one.
    const group = [...root.querySelectorAll<HTMLInputElement>(`input[type=radio][name="${element.name}"]`)];
    return element === (group.find((each) => each.checked) ?? group[0]);
  };
  const asked = 'a[href], button, input, select, summary, textarea, [tabindex]';
  const stops = [...root.querySelectorAll<HTMLElement>(asked)].filter(stop);
  const at = stops.findIndex(meant);
  if (at < 0) return undefined;
  const before = stops.filter(
    (each) =>
      focused !== null && (each === focused || (each.compareDocumentPosition(focused) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0),
  ).length;
  const onStop = focused instanceof HTMLElement && stops.includes(focused);
  const here = focused === document.body ? 0 : before;
  const forwards = at >= here ? at - here + 1 : at - here + 1 + stops.length;
  const backwards = at < here ? here - at - (onStop ? 1 : 0) : stops.length;
  return { forwards: Math.max(1, forwards), backwards: Math.max(1, backwards) };
}

const sessions = new WeakMap<Page, CDPSession>();

const KEYS = {
  Tab: { key: 'Tab', code: 'Tab', windowsVirtualKeyCode: 9 },
  ArrowDown: { key: 'ArrowDown', code: 'ArrowDown', windowsVirtualKeyCode: 40 },
  ArrowUp: { key: 'ArrowUp', code: 'ArrowUp', windowsVirtualKeyCode: 38 },
} as const;

/** Presses a key so many times, without waiting for each. */
async function pressTimes(page: Page, name: keyof typeof KEYS, times: number, shift = false): Promise<void> {
  const devtools = sessions.get(page) ?? (await page.context().newCDPSession(page));
  sessions.set(page, devtools);
  const modifiers = shift ? 8 : 0;
  const sent: Promise<unknown>[] = [];
  for (let each = 0; each < times; each += 1) {
    sent.push(devtools.send('Input.dispatchKeyEvent', { type: 'rawKeyDown', ...KEYS[name], modifiers }));
    sent.push(devtools.send('Input.dispatchKeyEvent', { type: 'keyUp', ...KEYS[name], modifiers }));
  }
  await Promise.all(sent);
}

/** Presses Tab, with Shift where that is shorter, until the focus is on what is wanted; what the keyboard cannot reach fails here. */
export async function tabTo(page: Page, wanted: Wanted): Promise<void> {
  const source = typeof wanted.words === 'string' ? undefined : wanted.words.source;
  const asked = { exact: typeof wanted.words === 'string' ? wanted.words : undefined, source, within: wanted.within };
  let presses = 0;
  for (let rounds = 0; presses < MOST_STOPS; rounds += 1) {
    const stops = await page.evaluate(stopsTo, asked);
    if (stops?.forwards === 0) return;
    // Estimates that led nowhere are given up for single steps; what is not there yet is waited for so long.
    const { forwards, backwards } = stops === undefined || rounds > 6 ? { forwards: 1, backwards: 2 } : stops;
    const times = Math.min(forwards, backwards);
    presses += times;
    await pressTimes(page, 'Tab', times, backwards < forwards);
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
    await page.keyboard.press({ ' ': 'Space', '−': '-' }[key] ?? key);
    if ((await page.getByRole('listbox').count()) === 0) return;
  }
  const away = await page.evaluate(
    (wanted) => [...document.querySelectorAll('[role=option]')].findIndex((each) => each.textContent === wanted),
    words.replace(', ', ' '),
  );
  if (away < 0) throw new Error(`the picker does not offer ${words}`);
  for (let presses = 0; presses < away; presses += 1) await page.keyboard.press('ArrowDown');
  expectChosen(await page.locator('[role=option][aria-selected=true]').textContent(), words.replace(', ', ' '));
  await page.keyboard.press('Enter');
}

function expectChosen(now: string | null | undefined, wanted: string): void {
  if (now !== wanted) throw new Error(`the arrows lead to ${now}, not to ${wanted}`);
}

/** Chooses an option of a list that has the focus. */
async function choose(page: Page, words: string): Promise<void> {
  const away = await page.evaluate((wanted) => {
    const list = document.activeElement as HTMLSelectElement;
    return [...list.options].findIndex((each) => each.textContent?.trim() === wanted) - list.selectedIndex;
  }, words);
  await pressTimes(page, away < 0 ? 'ArrowUp' : 'ArrowDown', Math.abs(away));
  const now = () => page.evaluate(() => (document.activeElement as HTMLSelectElement).selectedOptions[0]?.textContent?.trim());
  expectChosen(await now(), words);
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

/** Writes a number into the field of a control. */
async function setControl(page: Page, action: ActionOf<'set'>): Promise<void> {
  await tabTo(page, { words: t(`parts:control.${action.control}`), within: partName(action.part) });
  await page.keyboard.press('Control+a');
  await page.keyboard.type(String(action.value));
  await page.keyboard.press('Enter');
}

async function fitJumper(page: Page, view: ReturnType<typeof viewOf>, action: ActionOf<'jumper'>): Promise<void> {
  if (!action.on) return press(page, doText(view, action));
  for (const [label, point] of [
    ['app:jumper.from', action.from],
    ['app:jumper.to', action.to],
  ] as const) {
    await tabTo(page, { words: t(label) });
    await choose(page, pointName(view, point));
  }
  await press(page, t('app:jumper.fit'));
}

/** Does one action on the page with the keyboard, the same on the shadow, and holds the page's count of steps and clock to it. */
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
    case 'set':
      await setControl(page, action);
      break;
    case 'jumper':
      await fitJumper(page, view, action);
      break;
    case 'lift':
    case 'land':
    case 'tug':
      await press(page, doText(view, action), wireName(action.wire));
      break;
    case 'clamp':
      await press(page, doText(view, action), thingName(action.around ?? view.meter.clamp ?? ''));
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
