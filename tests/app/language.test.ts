import i18next from 'i18next';
import { afterAll, expect, test } from 'vitest';
import { pickLanguage } from '../../src/app/language.ts';
import { number, readingText, t } from '../../src/app/words.ts';
import { viewOf } from '../../src/attempt/attempt.ts';
import { wordsOf } from '../../src/cli/files.ts';
import { start, take } from '../scenario/shipped.ts';
import { black, meter, pull, red } from '../score/solutions.ts';
import { speakEnglish } from './english.ts';

afterAll(speakEnglish);

async function speak(language: string): Promise<void> {
  const words = wordsOf(language) as Record<string, Record<string, unknown>>;
  await i18next.init({ lng: language, defaultNS: 'app', resources: { [language]: words }, interpolation: { escapeValue: false } });
}

test('the language is the one chosen, else the first that the browser asks for and there is, else English', () => {
  expect(pickLanguage('', ['de-CH', 'fr-CH', 'es'])).toBe('fr');
  expect(pickLanguage('es', ['fr-CA'])).toBe('es');
  expect(pickLanguage('gone', ['de'])).toBe('en');
  // A name that every object has is no language.
  expect(pickLanguage('constructor', ['toString'])).toBe('en');
});

// Plural rules of CLDR: French counts none as one, and both have a form for millions ("un millón de fallas").
test.each([
  ['es', 0, '0 fallas'],
  ['es', 1, '1 falla'],
  ['es', 2, '2 fallas'],
  ['es', 1_000_000, '1000000 de fallas'],
  ['fr', 0, '0 panne'],
  ['fr', 1, '1 panne'],
  ['fr', 2, '2 pannes'],
  ['fr', 1_000_000, '1000000 de pannes'],
])('in "%s" %i faults are told as "%s"', async (language, count, words) => {
  await speak(language);
  expect(t('app:debrief.tree.count', { count })).toBe(words);
});

test('a reading that is written has the decimal comma of French, the one on the display a point', async () => {
  await speak('fr');
  const attempt = start('fanButNoCooling');
  take(attempt, pull('thermostat'), red('subbase.R'), black('subbase.C'), meter('voltsAc'));
  const reading = viewOf(attempt).steps.at(-1)?.reading;
  expect(reading?.text).toMatch(/^2\d\.\d\d$/);
  expect(reading && readingText(reading)).toMatch(/^2\d,\d\d V~$/);
  expect(number(2.5, 1)).toBe('2,5');
});
