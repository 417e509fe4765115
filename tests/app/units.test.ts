import i18next from 'i18next';
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { doneText, doText } from '../../src/app/action-words.ts';
import {
  bareDegrees,
  length,
  measureIn,
  ohmsByLength,
  pressed,
  settingOf,
  shownDegrees,
  shownRange,
  temperature,
  type Units,
} from '../../src/app/units.ts';
import { complaintText, positionName, refusalText, signText, stageWords } from '../../src/app/words.ts';
import { perform, viewOf } from '../../src/attempt/attempt.ts';
import { wordsOf } from '../../src/cli/files.ts';
import { library, start, ticket } from '../scenario/shipped.ts';

const CELSIUS: Units = { degrees: 'celsius', lengths: 'metres' };
const FAHRENHEIT: Units = { degrees: 'fahrenheit', lengths: 'feet' };
const LANGUAGES = ['en', 'es', 'fr'] as const;

const range = (control: string) => {
  const found = viewOf(start('warmUpstairs'))
    .parts.find((part) => part.id === 'thermostat')
    ?.controls.find((each) => each.id === control)?.range;
  if (found === undefined) throw new Error(`no ${control}`);
  return found;
};

beforeAll(async () => {
  await i18next.init({
    lng: 'en',
    defaultNS: 'app',
    resources: Object.fromEntries(LANGUAGES.map((each) => [each, wordsOf(each) as Record<string, Record<string, unknown>>])),
    interpolation: { escapeValue: false },
  });
});
afterEach(async () => {
  measureIn(FAHRENHEIT);
  await i18next.changeLanguage('en');
});

describe('the thermostat in °C', () => {
  test.each(['setHeat', 'setCool'])('%s shows each half degree that was entered as it was entered', (control) => {
    measureIn(CELSIUS);
    const { from, to, step } = shownRange(range(control));
    expect(step).toBe(0.5);
    for (let entered = from; entered <= to; entered += step) {
      const set = settingOf(entered, range(control));
      expect(shownDegrees(set), String(entered)).toBe(entered);
      const outcome = perform(start('warmUpstairs'), { name: 'set', part: 'thermostat', control, value: set });
      expect(outcome.ok || outcome.refusal.code === 'alreadySo', String(entered)).toBe(true);
    }
  });

  test('22.5 °C is 72.5 °F, and a key moves it by half a degree', () => {
    measureIn(CELSIUS);
    const setCool = range('setCool');
    expect(settingOf(22.5, setCool)).toBe(72.5);
    expect([pressed(72.5, 1, setCool), pressed(72.5, -1, setCool)].map(shownDegrees)).toEqual([23, 22]);
    expect(pressed(setCool.to, 1, setCool)).toBe(setCool.to);
  });

  test('a whole °F, as a ticket has it, is met again by entering what is shown of it', () => {
    measureIn(CELSIUS);
    const setCool = range('setCool');
    for (let fahrenheit = setCool.from; fahrenheit <= setCool.to; fahrenheit += 1)
      expect(settingOf(shownDegrees(fahrenheit), setCool)).toBe(fahrenheit);
  });

  test('its limits can be entered, and nothing beyond them', () => {
    measureIn(CELSIUS);
    const limits = shownRange(range('setHeat'));
    expect(limits).toEqual({ from: 7.5, to: 32, step: 0.5 });
    expect(settingOf(5, range('setHeat'))).toBe(45);
    expect(settingOf(99, range('setHeat'))).toBe(90);
  });
});

test('in °F whole degrees are shown, and a key moves by one whatever was set in °C', () => {
  const setCool = range('setCool');
  expect(shownRange(setCool)).toEqual({ from: 50, to: 95, step: 1 });
  expect(bareDegrees(72.5)).toBe('73');
  expect([pressed(72, 1, setCool), pressed(72.5, 1, setCool), pressed(72.5, -1, setCool)]).toEqual([73, 74, 72]);
});

test('temperatures and lengths are written as the language writes them', async () => {
  expect([temperature(72), length(50), length(2.5)]).toEqual(['72°F', '50 ft', '2.5 ft']);
  measureIn(CELSIUS);
  // 0 °F is −17.8 °C; 31 °F is −0.6 °C; 32 °F is freezing, and no minus stands before nothing.
  expect([0, 31, 31.9, 32, 72.5, 212].map(temperature)).toEqual(['-18°C', '-0.5°C', '0°C', '0°C', '22.5°C', '100°C']);
  expect([length(50), length(2)]).toEqual(['15 m', '0.6 m']);
  // There and back at 20.95 Ω/km, 51 ft are 0.651 Ω: with 16 m a sum by hand would come to 0.670, with 15.5 m to 0.649.
  expect(length(51, 1)).toBe('15.5 m');
  // 6.385 Ω per 1000 ft of 304.8 m.
  expect(ohmsByLength(6.385)).toBe('20.95 Ω/km');
  await i18next.changeLanguage('fr');
  expect(temperature(72.5)).toMatch(/^22,5\s°C$/);
});

/** Every text that tells a temperature, from what the ticket says to what a screen reader is told. */
function temperatureTexts(): Map<string, string> {
  const texts = new Map<string, string>();
  const put = (name: string, words: string) => texts.set(name, words);
  put('a position', positionName(72.5));
  for (const { key } of [{ key: 'set' }, { key: 'room' }]) put(`the sign ${key}`, signText(key, 77));
  put('outOfRange', refusalText({ code: 'outOfRange', values: { from: 50, to: 95 } }));
  const attempt = start('warmUpstairs');
  const set = { name: 'set', part: 'thermostat', control: 'setCool', value: 68 } as const;
  put('what to set', doText(viewOf(attempt), set));
  const outcome = perform(attempt, set);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  put('what was set', doneText(viewOf(attempt), set));
  return texts;
}

describe.each(LANGUAGES)('in "%s"', (language) => {
  test('every text with a temperature tells °C to whoever reads °C, and °F to whoever reads °F', async () => {
    await i18next.changeLanguage(language);
    for (const [units, sign, other] of [
      [CELSIUS, '°C', '°F'],
      [FAHRENHEIT, '°F', '°C'],
    ] as const) {
      measureIn(units);
      for (const [name, words] of temperatureTexts()) {
        expect(words, name).toContain(sign);
        expect(words, name).not.toContain(other);
      }
    }
  });

  test('the face, its keys and the customer tell degrees without a letter, on the same scale', async () => {
    await i18next.changeLanguage(language);
    measureIn(CELSIUS);
    const half = language === 'en' ? '22.5' : '22,5';
    expect(stageWords('stage:thermostat.degrees', { value: 72.5 })).toBe(`${half}°`);
    expect(stageWords('stage:thermostat.set', { value: 72.5 })).toContain(`${half}°`);
    for (const key of ['up', 'down']) expect(stageWords(`stage:handle.${key}`)).toMatch(/\b0[.,]5°/);
    expect(refusalText({ code: 'betweenSteps', values: { step: 0.5 } })).toMatch(/\b0[.,]5°/);
    expect(complaintText(ticket('warmUpstairs'))).toMatch(/\b22\b/);
    expect(complaintText(ticket('warmUpstairs'))).not.toMatch(/72|\{\{/);
    measureIn(FAHRENHEIT);
    expect(complaintText(ticket('warmUpstairs'))).toMatch(/\b72\b/);
    expect(stageWords('stage:handle.up')).toMatch(/\b1°/);
  });

  test('no words hold a temperature or a length of their own, nor a unit', () => {
    const own = /\d\s?°|°\s?[FC]\b|\b\d+\s?(ft|feet|foot|pies?|pieds?|m|metres?|metros?|mètres?)\b/i;
    const words = (value: unknown, path: string): string[] =>
      typeof value === 'string'
        ? own.test(value)
          ? [`${path}: ${value}`]
          : []
        : Object.entries(value as Record<string, unknown>).flatMap(([key, each]) => words(each, `${path}.${key}`));
    expect(words(wordsOf(language), language)).toEqual([]);
  });

  test('what a customer says that they set is in the history of their ticket', async () => {
    await i18next.changeLanguage(language);
    for (const each of library.tickets) expect(complaintText(ticket(each.id)), each.id).not.toMatch(/\{\{|\bset(Heat|Cool)\b/);
  });
});
