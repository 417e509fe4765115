/**
 * `virtual:fonts.css`: the typefaces as the pages need them. Each face is cut into the letters that our languages use, which every page
 * fetches, and the rest of Latin, which a page fetches when somebody's name holds such a letter.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import subsetFont from 'subset-font';
import type { Plugin } from 'vite';

type Axes = Readonly<Record<string, number | { readonly min: number; readonly max: number }>>;

interface Face {
  /** Begins the files' names. */
  readonly name: string;
  readonly family: string;
  readonly weight: string;
  readonly stretch?: string;
  readonly from: string;
  /** The part of a variable font that the style sheets and the stage ask for. */
  readonly axes?: Axes;
  /** Whether it writes what a person typed. */
  readonly typed: boolean;
}

const ARCHIVO = { family: 'Archivo Variable', from: '@fontsource-variable/archivo', axes: {} } as const;
const still = (name: string, family: string, weight: string): Face => ({
  name: `${name}-${weight}`,
  family,
  weight,
  from: `@fontsource/${name}`,
  typed: true,
});

const FACES: readonly Face[] = [
  { ...ARCHIVO, name: 'archivo', weight: '600 800', stretch: '100% 118%', axes: span(600, 800, 100, 118), typed: true },
  // The meter's keys alone are set this narrow.
  { ...ARCHIVO, name: 'archivo-narrow', weight: '700', stretch: '78% 88%', axes: span(700, 700, 78, 88), typed: false },
  still('atkinson-hyperlegible-next', 'Atkinson Hyperlegible Next', '400'),
  still('atkinson-hyperlegible-next', 'Atkinson Hyperlegible Next', '700'),
  still('atkinson-hyperlegible-mono', 'Atkinson Hyperlegible Mono', '400'),
  still('atkinson-hyperlegible-mono', 'Atkinson Hyperlegible Mono', '700'),
];

function span(light: number, heavy: number, narrow: number, wide: number): Axes {
  return { wght: light === heavy ? light : { min: light, max: heavy }, wdth: { min: narrow, max: wide } };
}

/** What Intl and the stage write beyond the words: spaces between digits, signs, arrows. */
const SIGNS = '\u00a0\u202f−±°µΩ×÷·…–—‘’“”«»←→↑↓≤≥≈';

/** What makes letters stand rightly beside each other; the fonts' ornaments stay out. */
const FEATURES = ['kern', 'mark', 'mkmk', 'ccmp', 'locl', 'liga'];

/** Copyright, licence and its address: the licence asks that they go with the letters. */
const NAMES = [0, 13, 14];

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const PUBLIC_NAME = 'virtual:fonts.css';

/** The letters that every page fetches: printable ASCII, whatever stands in the locales, and signs. */
export function commonLetters(root: string): ReadonlySet<number> {
  const letters = new Set<number>();
  const add = (text: string) => {
    for (const letter of text) letters.add(letter.codePointAt(0) ?? 0);
  };
  for (let code = 0x20; code < 0x7f; code += 1) letters.add(code);
  add(SIGNS);
  const folder = join(root, 'locales');
  for (const language of readdirSync(folder, { withFileTypes: true }).filter((each) => each.isDirectory())) {
    for (const file of readdirSync(join(folder, language.name)))
      add(readFileSync(join(folder, language.name, file), 'utf8').replace(/\n/g, ''));
  }
  return letters;
}

/** "U+41-43,U+61" as code points. */
function codesOf(range: string): number[] {
  return range.split(',').flatMap((each) => {
    const [from = '', to = from] = each.slice(2).split('-');
    const first = Number.parseInt(from, 16);
    return Array.from({ length: Number.parseInt(to, 16) - first + 1 }, (_, index) => first + index);
  });
}

/** Code points as a `unicode-range`. */
export function rangeOf(codes: Iterable<number>): string {
  const runs: [number, number][] = [];
  for (const code of [...codes].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && code === last[1] + 1) last[1] = code;
    else runs.push([code, code]);
  }
  const hex = (code: number) => code.toString(16).toUpperCase();
  return runs.map(([from, to]) => `U+${hex(from)}${to > from ? `-${hex(to)}` : ''}`).join(',');
}

const require = createRequire(import.meta.url);
const folderOf = (name: string): string => dirname(require.resolve(`${name}/package.json`));

function sourceOf(face: Face, script: string): string {
  const file = face.axes === undefined ? `${face.name.replace(/-\d+$/, '')}-${script}-${face.weight}` : `archivo-${script}-wdth`;
  return join(folderOf(face.from), 'files', `${file}-normal.woff2`);
}

/** Cuts one face; gives its rules. */
async function cut(face: Face, common: ReadonlySet<number>, folder: string): Promise<string> {
  const ranges = JSON.parse(readFileSync(join(folderOf(face.from), 'unicode.json'), 'utf8')) as Record<
    'latin' | 'latin-ext',
    string
  >;
  const latin = codesOf(ranges.latin);
  const pieces = [
    { name: face.name, script: 'latin', codes: latin.filter((code) => common.has(code)) },
    ...(face.typed
      ? [
          { name: `${face.name}-more`, script: 'latin', codes: latin.filter((code) => !common.has(code)) },
          {
            name: `${face.name}-ext`,
            script: 'latin-ext',
            codes: codesOf(ranges['latin-ext']).filter((code) => !common.has(code)),
          },
        ]
      : []),
  ];
  const rules: string[] = [];
  for (const { name, script, codes } of pieces) {
    const cutFont = await subsetFont(readFileSync(sourceOf(face, script)), String.fromCodePoint(...codes), {
      targetFormat: 'woff2',
      variationAxes: face.axes,
      keepFeatures: FEATURES,
      preserveNameIds: NAMES,
    });
    writeFileSync(join(folder, `${name}.woff2`), cutFont);
    rules.push(
      `@font-face{font-family:'${face.family}';font-style:normal;font-display:swap;font-weight:${face.weight};` +
        `${face.stretch === undefined ? '' : `font-stretch:${face.stretch};`}src:url(./${name}.woff2) format('woff2');` +
        `unicode-range:${rangeOf(codes)}}`,
    );
  }
  return rules.join('\n');
}

/** The style sheet with the cut fonts beside it, made anew when the letters, the faces or this file have changed. */
async function made(root: string): Promise<string> {
  const common = commonLetters(root);
  const versions = FACES.map((face) => readFileSync(join(folderOf(face.from), 'package.json'), 'utf8'));
  const recipe = JSON.stringify([readFileSync(fileURLToPath(import.meta.url), 'utf8'), [...common].sort(), versions]);
  const key = createHash('sha256').update(recipe).digest('hex').slice(0, 16);
  const parent = join(PROJECT, 'node_modules/.bellwire');
  const folder = join(parent, `fonts-${key}`);
  const sheet = join(folder, 'fonts.css');
  if (existsSync(sheet)) return sheet;
  // Made aside and put in place whole: another build may be at it.
  const aside = `${folder}.${process.pid}`;
  mkdirSync(aside, { recursive: true });
  const rules: string[] = [];
  for (const face of FACES) rules.push(await cut(face, common, aside));
  writeFileSync(join(aside, 'fonts.css'), `${rules.join('\n')}\n`);
  try {
    renameSync(aside, folder);
  } catch {
    rmSync(aside, { recursive: true });
  }
  return sheet;
}

/** Serves `virtual:fonts.css` to the build and to `npm run dev`. */
export function fonts(): Plugin {
  let root = PROJECT;
  return {
    name: 'bellwire-fonts',
    enforce: 'pre',
    configResolved(config) {
      root = config.root;
    },
    resolveId: (id) => (id === PUBLIC_NAME ? made(root) : undefined),
  };
}
