/** The rooms' import rule, turned from the list of rooms into rules for dependency-cruiser. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { cruise, type ICruiseResult, type IFlattenedRuleSet } from 'dependency-cruiser';
import ts from 'typescript';
import { BELOW_THE_LINE, LIBRARIES_BELOW_THE_LINE, NOT_FOR_PAGES, ROOMS } from './rooms.ts';

/** One name per room, as a regular expression that matches any file in any of them. */
const inside = (rooms: readonly string[]): string => `^src/(${rooms.join('|')})/`;

function ruleSet(): IFlattenedRuleSet {
  const forbidden: NonNullable<IFlattenedRuleSet['forbidden']> = ROOMS.slice(1).map((room, index) => ({
    name: `${room}-imports-upwards`,
    severity: 'error',
    from: { path: inside([room]) },
    to: { path: inside(ROOMS.slice(0, index + 1)) },
  }));
  forbidden.push(
    {
      name: 'pages-import-no-process',
      severity: 'error',
      from: { path: inside(['app', 'stage', 'sound']) },
      to: { path: inside(NOT_FOR_PAGES) },
    },
    {
      name: 'library-below-the-line',
      severity: 'error',
      from: { path: inside(BELOW_THE_LINE) },
      to: { pathNot: `^src/|(^|/)node_modules/(${LIBRARIES_BELOW_THE_LINE.join('|')})/` },
    },
    {
      name: 'source-imports-its-surroundings',
      comment: 'tests import src, never the other way about',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^tests/' },
    },
    { name: 'nothing-there', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: '^virtual:' } },
    { name: 'circle', severity: 'error', from: { path: '^src/' }, to: { circular: true } },
  );
  return { forbidden };
}

/** Lines below the line that reach for chance or the clock by a member of a global, which the linter cannot restrict. */
function hiddenInputs(root: string): string[] {
  const found: string[] = [];
  for (const room of BELOW_THE_LINE) {
    for (const path of sourceFiles(root, `src/${room}`)) {
      const lines = readFileSync(join(root, path), 'utf8').split('\n');
      lines.forEach((line, index) => {
        if (/\bMath\s*(\.|\?\.)\s*random\b|\bDate\s*\.\s*now\b/.test(line)) {
          found.push(`${path}:${index + 1}: chance and time come in as arguments here (${line.trim()})`);
        }
      });
    }
  }
  return found;
}

/** Paths of the TypeScript files under `folder`, relative to `root`; none where the folder is missing. */
export function sourceFiles(root: string, folder: string): string[] {
  const entries = (() => {
    try {
      return readdirSync(join(root, folder), { recursive: true, withFileTypes: true });
    } catch {
      return [];
    }
  })();
  return entries
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1))
    .sort();
}

/**
 * What breaks the rooms' import rule under `root`, one sentence each; empty when the house is in order.
 * Throws when the checker read fewer files than there are, so that it can't pass by not reading TypeScript.
 */
export async function importFaults(root: string): Promise<string[]> {
  const files = sourceFiles(root, 'src');
  const config = ts.readConfigFile(join(root, 'tsconfig.json'), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config.config, ts.sys, root);
  const reply = await cruise(
    files,
    {
      baseDir: root,
      validate: true,
      ruleSet: ruleSet(),
      // `import type` is an import too: a type from upstairs ties a room to it as a value would.
      tsPreCompilationDeps: true,
      doNotFollow: { path: 'node_modules' },
      enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'] },
    },
    undefined,
    { tsConfig: { options } as never },
  );
  const { modules, summary } = reply.output as ICruiseResult;
  const read = new Set(modules.map((module) => module.source));
  const unread = files.filter((file) => !read.has(file));
  if (unread.length > 0) throw new Error(`the import rule could not read ${unread.join(', ')}`);
  const faults = summary.violations.map((each) => `${each.from} imports ${each.to}: ${each.rule.name}`);
  const homeless = files.filter((file) => !new RegExp(inside(ROOMS)).test(file));
  return [...homeless.map((file) => `${file}: there is no such room, see tests/tools/rooms.ts`), ...faults, ...hiddenInputs(root)];
}
