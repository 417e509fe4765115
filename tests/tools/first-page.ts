/**
 * What the first page needs of the files that every page reads, so that it does not fetch the rest: a JSON file that is imported with
 * `?first`, `?rest` or `?listed` is that part of it.
 */
import { readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

/** The words that are asked for before any page but the first, with all that stands under each key; `*` is one name. */
const FIRST_WORDS = [
  'app:name',
  'app:language',
  'app:loading',
  'app:loadFailed',
  'app:toTickets',
  'app:unknown',
  'app:cautions',
  'app:home',
  'app:grade',
  'app:ticket.system',
  'guide:link',
  'guided:start',
  'keeping:link',
  'keeping:denied',
  'lab:enter',
  'lab:enterWhat',
  'offline:*',
  'rig:name',
  'settings:job',
  'settings:menu.title',
  'settings:title',
  'ticket:*.title',
  'ticket:*.site',
];

/** What the list tells of a ticket: `Listed` in src/app/board.ts. */
const LISTED = ['id', 'rig', 'mode', 'order', 'told', 'skills'];

type Words = { readonly [name: string]: string | Words };

const FIRST = FIRST_WORDS.map((key) => key.split(/[:.]/));

const isFirst = (path: readonly string[]): boolean =>
  FIRST.some((key) => key.length === path.length && key.every((name, index) => name === '*' || name === path[index]));

/** The words of one file that the first page says (`first`), or all others. A group without any is left out. */
function wordsPart(words: Words, first: boolean, path: readonly string[]): Words {
  const kept = Object.entries(words).flatMap(([name, value]): [string, string | Words][] => {
    const here = [...path, name];
    if (isFirst(here)) return first ? [[name, value]] : [];
    if (typeof value === 'string') return first ? [] : [[name, value]];
    const part = wordsPart(value, first, here);
    return Object.keys(part).length === 0 ? [] : [[name, part]];
  });
  return Object.fromEntries(kept);
}

/** Words of `namespace` as the first page needs them, or as all others need them beside. */
export const firstWords = (namespace: string, words: Words): Words => wordsPart(words, true, [namespace]);
export const restWords = (namespace: string, words: Words): Words => wordsPart(words, false, [namespace]);

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Marks a module that is made here, so that no other plugin reads it as JSON. */
const MADE = '\0first-page:';

export function firstPage(): Plugin {
  return {
    name: 'bellwire-first-page',
    enforce: 'pre',
    resolveId(source, importer = ROOT) {
      const [path = '', part = ''] = source.split('?');
      if (!path.endsWith('.json') || !['first', 'rest', 'listed'].includes(part)) return undefined;
      return `${MADE}${part}:${path.startsWith('/') ? join(ROOT, path) : resolve(dirname(importer), path)}`;
    },
    load(id) {
      if (!id.startsWith(MADE)) return undefined;
      const made = id.slice(MADE.length);
      const part = made.slice(0, made.indexOf(':'));
      const file = made.slice(part.length + 1);
      this.addWatchFile(file);
      const json = JSON.parse(readFileSync(file, 'utf8'));
      const words = part === 'first' ? firstWords : restWords;
      const kept =
        part === 'listed' ? Object.fromEntries(LISTED.map((name) => [name, json[name]])) : words(basename(file, '.json'), json);
      return { code: `export default ${JSON.stringify(kept)}`, moduleType: 'js' };
    },
  };
}
