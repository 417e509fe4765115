/** A house of five files that every check is content with, in a folder of its own, for planting faults in. */
import { cpSync, mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const project = fileURLToPath(new URL('../..', import.meta.url));

/** The real configuration, so that what is proved here holds for the project. */
const CONFIGURATION = ['tsconfig.json', 'biome.jsonc', '.gitignore', 'tests/tools/tsconfig.core.json', 'tests/tools/knip.json'];

const FILES: Readonly<Record<string, string>> = {
  'package.json': `${JSON.stringify(
    {
      name: 'tiny-house',
      private: true,
      type: 'module',
      scripts: { build: 'vite build' },
      dependencies: { i18next: '*', zod: '*' },
      devDependencies: { '@types/node': '*', vite: '*' },
    },
    null,
    2,
  )}\n`,
  'index.html': '<!doctype html>\n<script type="module" src="/src/app/main.tsx"></script>\n',
  'src/circuit/ohm.ts': `/** Amperes through \`ohms\` at \`volts\`. */
export function current(volts: number, ohms: number): number {
  return volts / ohms;
}
`,
  'src/meter/read.ts': `import { z } from 'zod';
import { current } from '../circuit/ohm.ts';

const ohms = z.number().positive();

export function read(volts: number): number {
  return current(volts, ohms.parse(10));
}
`,
  'src/app/main.tsx': `import { t } from 'i18next';
import { read } from '../meter/read.ts';

const mode = document.title === '' ? 'volts' : 'ohms';
document.title = t('app:title') + t(\`meter:fn.\${mode}\`) + read(24);
`,
  'src/cli/main.ts': `import { read } from '../meter/read.ts';

console.log(read(24));
`,
  'locales/en/app.json': '{ "title": "Bellwire" }\n',
  'locales/en/meter.json': '{ "fn": { "volts": "Volts", "ohms": "Ohms" } }\n',
};

/** Runs `look` in a fresh tiny house, `planted` laid over its files, and clears the house away. */
export async function inTinyHouse<T>(planted: Readonly<Record<string, string>>, look: (root: string) => Promise<T>): Promise<T> {
  const root = realpathSync(mkdtempSync(join(tmpdir(), 'tiny-house-')));
  try {
    for (const path of CONFIGURATION) cpSync(join(project, path), join(root, path));
    symlinkSync(join(project, 'node_modules'), join(root, 'node_modules'));
    for (const [path, text] of Object.entries({ ...FILES, ...planted })) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), text);
    }
    return await look(root);
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}
