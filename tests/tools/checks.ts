/** The checks of `npm run check`, each as a function of the folder it looks at. */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { importFaults } from './import-rule.ts';
import { localeFaults } from './locale-keys.ts';

export const checkNames = ['types', 'core-types', 'lint', 'imports', 'unused', 'locales'] as const;
export type CheckName = (typeof checkNames)[number];

export function isCheckName(name: string): name is CheckName {
  return (checkNames as readonly string[]).includes(name);
}

const workshop = fileURLToPath(new URL('../..', import.meta.url));

/** Runs a tool of node_modules in `root`; gives '' when it is content, else all that it said. */
function tool(root: string, script: string, args: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(workshop, 'node_modules', script), ...args], { cwd: root });
    let said = '';
    child.stdout.on('data', (data) => {
      said += data;
    });
    child.stderr.on('data', (data) => {
      said += data;
    });
    child.on('error', reject);
    child.on('close', (code) => resolve(code === 0 ? '' : said.trim() || `${script} ended with ${code}`));
  });
}

/** What a check finds wrong under `root`, as text for a person; '' when nothing is. */
export async function runCheck(name: CheckName, root: string): Promise<string> {
  switch (name) {
    case 'types':
      return tool(root, 'typescript7/bin/tsc', ['--noEmit', '--project', 'tsconfig.json']);
    // Below the line again, without the names of browser and Node: what type-checks here needs neither.
    case 'core-types':
      return tool(root, 'typescript7/bin/tsc', ['--noEmit', '--project', 'tests/tools/tsconfig.core.json']);
    case 'lint':
      return tool(root, '@biomejs/biome/bin/biome', [
        'check',
        '--error-on-warnings',
        '--diagnostic-level=warn',
        '--max-diagnostics=200',
        '--colors=off',
        '.',
      ]);
    case 'imports':
      return (await importFaults(root)).join('\n');
    case 'unused':
      return tool(root, 'knip/bin/knip.js', ['--config', 'tests/tools/knip.json', '--no-progress']);
    case 'locales':
      return localeFaults(root).join('\n');
  }
}
