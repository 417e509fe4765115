/** The words of each language are fetched in two parts: together they must be all, and none twice. */
import { expect, test } from 'vitest';
import { wordsOf } from '../../src/cli/files.ts';
import { firstWords, restWords } from '../tools/first-page.ts';

type Words = Parameters<typeof firstWords>[1];

const flat = (words: Words, path: string): string[] =>
  Object.entries(words).flatMap(([name, value]) =>
    typeof value === 'string' ? [`${path}.${name}=${value}`] : flat(value, `${path}.${name}`),
  );

test.each(['en', 'es', 'fr'])('what the first page says in "%s" and the rest are all words, each once', (language) => {
  for (const [namespace, words] of Object.entries(wordsOf(language) as Record<string, Words>)) {
    const parts = [firstWords(namespace, words), restWords(namespace, words)].flatMap((part) => flat(part, namespace));
    expect(parts.sort()).toEqual(flat(words, namespace).sort());
  }
});

test('titles and sites are the first page’s, complaints are not', () => {
  const words = { anOrder: { title: 'a title', site: 'a site', complaint: '“It hums.”' } };
  expect(firstWords('ticket', words)).toEqual({ anOrder: { title: 'a title', site: 'a site' } });
  expect(restWords('ticket', words)).toEqual({ anOrder: { complaint: '“It hums.”' } });
  expect(restWords('offline', { kept: 'kept' })).toEqual({});
});
