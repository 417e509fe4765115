import i18next from 'i18next';
import { habit, keepHabit } from './storage.ts';

interface Loaded {
  readonly files: Readonly<Record<string, Record<string, unknown>>>;
}

/** Each language by its folder in locales/: its own name for itself, and how its words are fetched: the first page's, and all others. */
const LANGUAGES: Readonly<
  Record<string, { readonly ownName: string; readonly first: () => Promise<Loaded>; readonly rest: () => Promise<Loaded> }>
> = {
  en: { ownName: 'English', first: () => import('./languages/en.ts'), rest: () => import('./languages/en-rest.ts') },
  es: { ownName: 'Español', first: () => import('./languages/es.ts'), rest: () => import('./languages/es-rest.ts') },
  fr: { ownName: 'Français', first: () => import('./languages/fr.ts'), rest: () => import('./languages/fr-rest.ts') },
};

export const languages: readonly { readonly id: string; readonly ownName: string }[] = Object.entries(LANGUAGES).map(
  ([id, { ownName }]) => ({ id, ownName }),
);

const primary = (tag: string): string => tag.toLowerCase().split('-')[0] ?? '';

/** The language chosen before on this machine, else the first of `wanted` (BCP 47 tags, best first) that there is, else English. */
export function pickLanguage(chosen: string, wanted: readonly string[]): string {
  return [chosen, ...wanted.map(primary)].find((each) => Object.hasOwn(LANGUAGES, each)) ?? 'en';
}

async function wordsOf(language: string, part: 'first' | 'rest'): Promise<Record<string, Record<string, unknown>>> {
  const { files } = (await LANGUAGES[language]?.[part]()) ?? { files: {} };
  return Object.fromEntries(
    Object.entries(files).map(([path, words]) => [path.slice(path.lastIndexOf('/') + 1, -'.json'.length), words]),
  );
}

/** Adds words to those that are there; what is there stays, such as names that were worked out. */
function add(language: string, words: Record<string, Record<string, unknown>>): void {
  for (const [namespace, each] of Object.entries(words)) i18next.addResourceBundle(language, namespace, each, true, false);
}

/** Whether a page beside the first has asked for its words: another language then comes with all of its own. */
let all = false;

/** Loads the words that the first page does without, for whatever page comes after it. @throws when they cannot be fetched */
export async function loadAllWords(): Promise<void> {
  all = true;
  const { language } = i18next;
  add(language, await wordsOf(language, 'rest'));
  // Whoever puts names together from them can do so now.
  i18next.emit('loaded', { [language]: true });
}

/**
 * Loads the first page's words in the language that the trainee chose or the browser asks for, and in no other: the `locales` check
 * holds that none lacks a key. English steps in where a language cannot be fetched.
 */
export async function startLanguage(): Promise<void> {
  let language = pickLanguage(habit('language', ''), navigator.languages);
  let words: Record<string, Record<string, unknown>>;
  try {
    words = await wordsOf(language, 'first');
  } catch (error) {
    if (language === 'en') throw error;
    language = 'en';
    words = await wordsOf(language, 'first');
  }
  await i18next.init({
    lng: language,
    fallbackLng: 'en',
    defaultNS: 'app',
    resources: { [language]: words },
    // Preact escapes what it renders.
    interpolation: { escapeValue: false },
    returnNull: false,
    // A key without words is then seen whole, and found by the tests.
    appendNamespaceToMissingKey: true,
  });
  document.documentElement.lang = language;
}

/** Speaks this language from now on. Where its words cannot be fetched, all stays as it is. */
async function speak(language: string): Promise<void> {
  if (language === i18next.language) return;
  const parts = await Promise.all([wordsOf(language, 'first'), ...(all ? [wordsOf(language, 'rest')] : [])]);
  for (const words of parts) add(language, words);
  document.documentElement.lang = language;
  await i18next.changeLanguage(language);
}

/** Keeps the choice and speaks that language at once: an attempt is taken up where it was. */
export async function chooseLanguage(language: string): Promise<void> {
  keepHabit('language', language);
  await speak(language);
}

/** Speaks the language that is kept or asked for now: after the settings were reset or read in. */
export const takeUpLanguage = (): Promise<void> => speak(pickLanguage(habit('language', ''), navigator.languages));
