/** English with accents on its letters and two fifths longer: what breaks a page here, breaks it in some language. */
import { readdirSync, readFileSync } from 'node:fs';

const ACCENTED: Readonly<Record<string, string>> = {
  a: 'áå',
  e: 'éë',
  i: 'ïí',
  o: 'öø',
  u: 'ûü',
  A: 'ÁÅ',
  E: 'ÉË',
  I: 'ÏÍ',
  O: 'ÖØ',
  U: 'ÛÜ',
};
const LONGER = 1.4;

/** One text, accented and at least 1.4 times as long; what is filled in (`{{…}}`) stays. */
export function pseudo(words: string): string {
  const own = words.replace(/\{\{[^}]*\}\}/g, '');
  if (!/[a-z]{2}/i.test(own)) return words;
  const long = words.replace(/\{\{[^}]*\}\}|[aeiou]/gi, (found) => ACCENTED[found] ?? found);
  const missing = Math.ceil(own.length * LONGER) - (own.length + long.length - words.length);
  // At the end of the last word, before what closes the sentence.
  return missing <= 0 ? long : long.replace(/([\p{L}}])(?=[^\p{L}}]*$)/u, `$1${'ñ'.repeat(missing)}`);
}

function pseudoWords(value: unknown): unknown {
  if (typeof value === 'string') return pseudo(value);
  return Object.fromEntries(Object.entries(value as object).map(([key, inner]) => [key, pseudoWords(inner)]));
}

/** Either module of English words as the build has them, with all pseudo words in it. What the meter's display shows is no language's. */
export function pseudoModule(): string {
  const folder = new URL('../../locales/en/', import.meta.url);
  const files = readdirSync(folder).map((file) => {
    const words = JSON.parse(readFileSync(new URL(file, folder), 'utf8'));
    const long = pseudoWords(words) as Record<string, unknown>;
    return [`/locales/en/${file}`, file === 'meter.json' ? { ...long, display: words.display } : long];
  });
  return `export const files = ${JSON.stringify(Object.fromEntries(files))};`;
}
