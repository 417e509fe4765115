/**
 * Words against their keys: every key that the source names has English words, all words are named by the source, and
 * every other language has the same keys, its own plural forms, and the same blanks to fill in.
 *
 * A key is a literal `namespace:path` whose namespace is a file of locales/en. A template such as `rig:part.${id}` names
 * all keys of that form; where a key is put together out of sight of this check, a comment declares it: `// keys: score:item.*`.
 * Whether a template's keys exist is for a unit test over the values it takes: see `wordKeys`.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import ts from 'typescript';
import { sourceFiles } from './import-rule.ts';

/** Plural forms differ from language to language; a key stands for all of its forms. */
const PLURAL = /_(zero|one|two|few|many|other)$/;

/** The keys of one language as `namespace:path`, without plural endings. Throws where a value is not words. */
export function wordKeys(root: string, language: string): Set<string> {
  return new Set([...wordsByKey(root, language).keys()].map((key) => key.replace(PLURAL, '')));
}

/** All words of one language by `namespace:path`, each plural form by itself. */
function wordsByKey(root: string, language: string): Map<string, string> {
  const words = new Map<string, string>();
  const folder = join(root, 'locales', language);
  const collect = (value: unknown, key: string): void => {
    if (typeof value === 'string') words.set(key, value);
    else if (typeof value === 'object' && value !== null) {
      for (const [name, inner] of Object.entries(value)) collect(inner, key.endsWith(':') ? `${key}${name}` : `${key}.${name}`);
    } else throw new Error(`locales/${language}: ${key} is neither words nor a group of them`);
  };
  for (const file of existsSync(folder) ? readdirSync(folder) : []) {
    collect(JSON.parse(readFileSync(join(folder, file), 'utf8')), `${basename(file, '.json')}:`);
  }
  return words;
}

const blanks = (words: string): string => [...new Set(words.match(/\{\{[^}]*\}\}/g))].sort().join(' ');

/**
 * Plural forms that a language lacks or has too many, by the categories of its grammar (CLDR's, through Intl: English has one and
 * other, Spanish and French have many as well), and words whose blanks are not those of the English words. Where English
 * has plural forms, the count itself may be told in words in some of them ("the only fault").
 */
function formFaults(root: string, language: string): string[] {
  const english = wordsByKey(root, 'en');
  const words = wordsByKey(root, language);
  const forms = new Intl.PluralRules(language).resolvedOptions().pluralCategories;
  const plurals = new Set([...english.keys()].filter((key) => PLURAL.test(key)).map((key) => key.replace(PLURAL, '')));
  const faults: string[] = [];
  for (const key of plurals) {
    for (const form of forms) if (!words.has(`${key}_${form}`)) faults.push(`locales/${language}: ${key}_${form} is missing`);
  }
  for (const [key, text] of words) {
    const bare = key.replace(PLURAL, '');
    const plural = plurals.has(bare);
    if (plural && !forms.some((form) => key === `${bare}_${form}`))
      faults.push(`locales/${language}: ${key} is no form of its grammar`);
    const counted = (each: string) => blanks(plural ? each.replaceAll('{{count}}', '') : each);
    const original = english.get(plural ? `${bare}_other` : key);
    if (original !== undefined && counted(text) !== counted(original)) {
      faults.push(`locales/${language}: ${key} has the blanks "${blanks(text)}", English has "${blanks(original)}"`);
    }
  }
  return faults;
}

interface Mention {
  readonly key: string;
  readonly at: string;
}

interface Mentions {
  /** Keys written out in full. */
  readonly exact: Mention[];
  /** Keys with a blank in them: `*` stands for one or more characters. */
  readonly patterns: Mention[];
}

function mentions(root: string, namespaces: ReadonlySet<string>): Mentions {
  const exact: Mention[] = [];
  const patterns: Mention[] = [];
  const known = (text: string) => namespaces.has(text.slice(0, text.indexOf(':'))) && /^\w+:[\w.*-]+$/.test(text);
  for (const path of sourceFiles(root, 'src')) {
    const text = readFileSync(join(root, path), 'utf8');
    const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
    const at = (position: number) => `${path}:${source.getLineAndCharacterOfPosition(position).line + 1}`;
    const visit = (node: ts.Node): void => {
      if (ts.isStringLiteralLike(node)) {
        if (known(node.text)) exact.push({ key: node.text, at: at(node.getStart()) });
        else if (isAsked(node))
          exact.push({ key: node.text.includes(':') ? node.text : `app:${node.text}`, at: at(node.getStart()) });
      } else if (ts.isTemplateExpression(node)) {
        const pattern = node.head.text + node.templateSpans.map((span) => `*${span.literal.text}`).join('');
        if (known(pattern)) patterns.push({ key: pattern, at: at(node.getStart()) });
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
    for (const declared of text.matchAll(/\/\/ keys: (.+)/g)) {
      for (const key of declared[1]?.split(/[\s,]+/) ?? []) patterns.push({ key, at: at(declared.index) });
    }
  }
  return { exact, patterns };
}

/** Whether a literal is the first argument of `t(…)` or `i18next.t(…)`: then it is a key whatever its namespace. */
function isAsked(node: ts.StringLiteralLike): boolean {
  const call = node.parent;
  if (!ts.isCallExpression(call) || call.arguments[0] !== node) return false;
  const callee = call.expression;
  return ts.isIdentifier(callee) ? callee.text === 't' : ts.isPropertyAccessExpression(callee) && callee.name.text === 't';
}

const expression = (pattern: string) => new RegExp(`^${pattern.replaceAll('.', '\\.').replaceAll('*', '.+')}$`);

/** What is wrong with the words under `root`, one sentence each; empty when keys and words agree. */
export function localeFaults(root: string): string[] {
  const english = wordKeys(root, 'en');
  const namespaces = new Set([...english].map((key) => key.slice(0, key.indexOf(':'))));
  const { exact, patterns } = mentions(root, namespaces);
  const faults: string[] = [];
  for (const { key, at } of exact) if (!english.has(key)) faults.push(`${at}: ${key} has no words in locales/en`);
  const named = new Set(exact.map((mention) => mention.key));
  const forms = patterns.map((mention) => ({ ...mention, form: expression(mention.key) }));
  for (const { key, at, form } of forms) {
    if (![...english].some((each) => form.test(each))) faults.push(`${at}: no key in locales/en looks like ${key}`);
  }
  for (const key of english) {
    if (!named.has(key) && !forms.some(({ form }) => form.test(key))) faults.push(`locales/en: nothing uses ${key}`);
  }
  const languages = readdirSync(join(root, 'locales'), { withFileTypes: true }).filter((entry) => entry.isDirectory());
  for (const { name } of languages) faults.push(...formFaults(root, name));
  for (const { name } of languages.filter((entry) => entry.name !== 'en')) {
    const keys = wordKeys(root, name);
    for (const key of english) if (!keys.has(key)) faults.push(`locales/${name}: ${key} is missing`);
    for (const key of keys) if (!english.has(key)) faults.push(`locales/${name}: ${key} is not in locales/en`);
  }
  return faults;
}
