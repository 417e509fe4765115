/** Each check of `npm run check` is content with a tiny house, and fails on a fault planted in it. */
import { describe, expect, test } from 'vitest';
import { type CheckName, checkNames, runCheck } from '../tools/checks.ts';
import { BELOW_THE_LINE, ROOMS } from '../tools/rooms.ts';
import coreConfig from '../tools/tsconfig.core.json' with { type: 'json' };
import { inTinyHouse } from './tiny-house.ts';

type Planted = Readonly<Record<string, string>>;

const findings = (check: CheckName, planted: Planted = {}) => inTinyHouse(planted, (root) => runCheck(check, root));

test.each(checkNames)('%s is content with a house in order', async (check) => {
  expect(await findings(check)).toBe('');
});

const OHM = 'src/circuit/ohm.ts';
const current = (line: string) => `export function current(volts: number, ohms: number): number {
  ${line}
  return volts / ohms;
}
`;

describe('types', () => {
  test('a number given as words is found', async () => {
    expect(await findings('types', { [OHM]: current("volts = 'high';") })).toContain('ohm.ts(2,3): error TS2322');
  });
  test('a file that names the browser below the line is found, as a whole program would not', async () => {
    const planted = { [OHM]: current('if (navigator.onLine) return 0;') };
    expect(await findings('types', planted)).toBe('');
    expect(await findings('core-types', planted)).toContain("Cannot find name 'navigator'");
  });
  test('a file that names Node below the line is found', async () => {
    expect(await findings('core-types', { [OHM]: current('if (Buffer.length > 9) return 0;') })).toContain(
      "Cannot find name 'Buffer'",
    );
  });
});

test('every room below the line is checked without the names of browser and Node', () => {
  expect(coreConfig.include).toEqual(BELOW_THE_LINE.map((room) => `../../src/${room}`));
});

describe('lint', () => {
  test.each<[string, string, string]>([
    ['any', 'export const anything: any = 0;\n', 'noExplicitAny'],
    ['a default export', 'export default 24;\n', 'noDefaultExport'],
    ['a barrel file', "export * from './ohm.ts';\n", 'noBarrelFile'],
    ['an import left over', "import { z } from 'zod';\n\nexport const volts = 24;\n", 'noUnusedImports'],
    ['the clock below the line', 'export const started = new Date();\n', 'noRestrictedGlobals'],
    ['a timer below the line', 'setTimeout(() => undefined, 1);\n', 'noRestrictedGlobals'],
    ['the page below the line', 'export const title = document.title;\n', 'noRestrictedGlobals'],
    ['untidy format', 'export const volts=24\n', 'Formatter would have printed'],
  ])('%s is found', async (_what, text, rule) => {
    expect(await findings('lint', { 'src/circuit/planted.ts': text })).toContain(rule);
  });
  test.each(BELOW_THE_LINE)('%s is below the line for the linter too', async (room) => {
    expect(await findings('lint', { [`src/${room}/planted.ts`]: 'export const started = new Date();\n' })).toContain(
      'noRestrictedGlobals',
    );
  });
  test('above the line a clock is allowed', async () => {
    expect(await findings('lint', { 'src/host/planted.ts': 'export const started = new Date();\n' })).toBe('');
  });
});

describe('imports', () => {
  const importing = (from: string, to: string): Planted => ({
    [`src/${from}/planted.ts`]: `import { target } from '../${to}/target.ts';\n\nexport const planted = target;\n`,
    [`src/${to}/target.ts`]: 'export const target = 1;\n',
  });
  const pairs = ROOMS.slice(1).map((room, index) => [room, ROOMS[index] ?? room] as const);
  test.each(pairs)('%s may not import from the room above it, %s', async (lower, upper) => {
    expect(await findings('imports', importing(lower, upper))).toBe(
      `src/${lower}/planted.ts imports src/${upper}/target.ts: ${lower}-imports-upwards`,
    );
  });
  test.each(pairs)('the room above %s, %s, may import from it', async (lower, upper) => {
    // The pages' rule is stricter than the order; it has a test of its own.
    expect(await findings('imports', importing(upper, lower))).toBe(
      upper === 'sound' ? 'src/sound/planted.ts imports src/cli/target.ts: pages-import-no-process' : '',
    );
  });
  test('the bottom room may not import from the top one', async () => {
    expect(await findings('imports', importing('circuit', 'app'))).toContain('circuit-imports-upwards');
  });
  test.each(['cli', 'host'])('a page may not import from %s', async (room) => {
    expect(await findings('imports', importing('app', room))).toContain('pages-import-no-process');
  });

  const planted = (text: string): Promise<string> => findings('imports', { 'src/circuit/planted.ts': text });
  test('a type from upstairs is an import too', async () => {
    expect(await planted("import type { read } from '../meter/read.ts';\n\nexport type Read = typeof read;\n")).toContain(
      'circuit-imports-upwards',
    );
  });
  test('an import at run time is one too', async () => {
    expect(await planted("export const later = () => import('../meter/read.ts');\n")).toContain('circuit-imports-upwards');
  });
  test('passing on from upstairs is one too', async () => {
    expect(await planted("export { read } from '../meter/read.ts';\n")).toContain('circuit-imports-upwards');
  });
  test.each([
    ['node:fs', "import { readFileSync } from 'node:fs';\n\nexport const read = readFileSync;\n"],
    ['preact', "import { h } from 'preact';\n\nexport const element = h;\n"],
    ['phaser', "import type { Scene } from 'phaser';\n\nexport type Bench = Scene;\n"],
  ])('%s is no library for a room below the line', async (_name, text) => {
    expect(await planted(text)).toContain('library-below-the-line');
  });
  test('two files that import each other are found', async () => {
    const found = await findings('imports', {
      'src/circuit/one.ts': "import { two } from './two.ts';\n\nexport const one = (): number => two();\n",
      'src/circuit/two.ts': "import { one } from './one.ts';\n\nexport const two = (): number => one();\n",
    });
    expect(found).toContain('circle');
  });
  test('a room that the list does not know is found', async () => {
    expect(await findings('imports', { 'src/attic/box.ts': 'export const box = 1;\n' })).toBe(
      'src/attic/box.ts: there is no such room, see tests/tools/rooms.ts',
    );
  });
  test('source that imports from tests is found', async () => {
    const found = await findings('imports', {
      'tests/figures.ts': 'export const volts = 24;\n',
      'src/circuit/planted.ts': "import { volts } from '../../tests/figures.ts';\n\nexport const supply = volts;\n",
    });
    expect(found).toContain('source-imports-its-surroundings');
  });
  test('an import of nothing is found', async () => {
    expect(await planted("import { gone } from './gone.ts';\n\nexport const planted = gone;\n")).toContain('nothing-there');
  });
  test.each(['Math.random()', 'Date.now()'])('%s below the line is found', async (call) => {
    expect(await planted(`export const chance = ${call};\n`)).toContain(
      'src/circuit/planted.ts:1: chance and time come in as arguments',
    );
  });
});

describe('unused', () => {
  test('a file that nothing imports is found', async () => {
    expect(await findings('unused', { 'src/circuit/planted.ts': 'export const planted = 1;\n' })).toContain(
      'src/circuit/planted.ts',
    );
  });
  test('a function that nothing calls is found', async () => {
    expect(await findings('unused', { [OHM]: `${current('')}\nexport const planted = 1;\n` })).toMatch(/planted .*ohm\.ts/);
  });
  test('a library that package.json does not list is found', async () => {
    const main = "import { h } from 'preact';\nimport { read } from '../meter/read.ts';\n\nconsole.log(h, read(24));\n";
    expect(await findings('unused', { 'src/cli/main.ts': main })).toMatch(/Unlisted dependencies.*\s.*preact/);
  });
});

describe('locales', () => {
  const cli = (line: string): Planted => ({ 'src/cli/main.ts': `import { t } from 'i18next';\n\n${line}\n` });
  test('a key without words is found', async () => {
    expect(await findings('locales', cli("t('app:gone');"))).toBe('src/cli/main.ts:3: app:gone has no words in locales/en');
  });
  test('a key in a file of words that is not there is found', async () => {
    expect(await findings('locales', cli("t('attic:gone');"))).toContain('attic:gone has no words');
  });
  test('a key kept in a constant is a key too', async () => {
    expect(await findings('locales', cli("export const KEY = 'app:gone';"))).toContain('app:gone has no words');
  });
  test('a key with a blank that no words fit is found', async () => {
    expect(await findings('locales', cli(`export const key = (id: string) => t(\`app:part.\${id}\`);`))).toBe(
      'src/cli/main.ts:3: no key in locales/en looks like app:part.*',
    );
  });
  test('words that nothing names are found, and a comment can name them', async () => {
    const words = { 'locales/en/app.json': '{ "title": "Bellwire", "left": { "over": "Left over" } }\n' };
    expect(await findings('locales', words)).toBe('locales/en: nothing uses app:left.over');
    expect(await findings('locales', { ...words, ...cli('// keys: app:left.*') })).toBe('');
  });
  test('the plural forms of a key are one key', async () => {
    const words = {
      'locales/en/app.json': '{ "title": "Bellwire", "steps_one": "{{count}} step", "steps_other": "{{count}} steps" }\n',
    };
    expect(await findings('locales', { ...words, ...cli("t('app:steps', { count: 2 });") })).toBe('');
  });
  test('a key that another language lacks or has too many is found', async () => {
    const found = await findings('locales', {
      'locales/es/app.json': '{ "titulo": "Bellwire" }\n',
      'locales/es/meter.json': '{ "fn": { "volts": "Voltios", "ohms": "Ohmios" } }\n',
    });
    expect(found.split('\n')).toEqual(['locales/es: app:title is missing', 'locales/es: app:titulo is not in locales/en']);
  });
  const steps = (spanish: string): Planted => ({
    ...cli("t('app:steps', { count: 2 });"),
    'locales/en/app.json':
      '{ "title": "Bellwire", "steps_one": "{{count}} step, {{place}}", "steps_other": "{{count}} steps, {{place}}" }\n',
    'locales/es/app.json': `{ "title": "Bellwire", ${spanish} }\n`,
    'locales/es/meter.json': '{ "fn": { "volts": "Voltios", "ohms": "Ohmios" } }\n',
  });
  const one = '"steps_one": "un paso, {{place}}"';
  test('a plural form that the grammar of a language has and its words lack is found', async () => {
    expect(await findings('locales', steps(`${one}, "steps_other": "{{count}} pasos, {{place}}"`))).toBe(
      'locales/es: app:steps_many is missing',
    );
  });
  test('a blank that was dropped on the way into another language is found', async () => {
    const forms = (many: string) => steps(`${one}, "steps_many": "${many}", "steps_other": "{{count}} pasos, {{place}}"`);
    expect(await findings('locales', forms('{{count}} de pasos, {{place}}'))).toBe('');
    expect(await findings('locales', forms('{{count}} de pasos'))).toBe(
      'locales/es: app:steps_many has the blanks "{{count}}", English has "{{count}} {{place}}"',
    );
  });
});
