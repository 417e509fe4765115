/** The built app that the host hands out: built where that was not done since the source changed. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const SOURCES = ['src', 'tests/tools', 'locales', 'scenarios', 'assets', 'index.html', 'package.json', 'vite.config.ts'];

/** When anything in there changed last, milliseconds since 1970. */
function changed(path: string): number {
  if (!existsSync(path)) return 0;
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  return readdirSync(path).reduce((latest, name) => Math.max(latest, changed(join(path, name))), mtimeMs);
}

/** The folder of the built app. */
export async function builtApp(building: () => void): Promise<string> {
  const folder = join(ROOT, 'dist');
  const index = join(folder, 'index.html');
  const latest = Math.max(...SOURCES.map((name) => changed(join(ROOT, name))));
  if (!existsSync(index) || statSync(index).mtimeMs < latest) {
    building();
    await build();
  }
  return folder;
}

/** By a process of its own: what building takes in memory is given back before the room comes. @throws Error where it fails */
async function build(): Promise<void> {
  const vite = join(dirname(createRequire(import.meta.url).resolve('vite/package.json')), 'bin/vite.js');
  const building = spawn(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
    cwd: ROOT,
    // What it says is for whoever mends it, and what is asked for on stdout may be read by a program.
    stdio: ['ignore', 2, 2],
  });
  const [code] = await once(building, 'exit');
  if (code !== 0) throw new Error(`vite build: ${code}`);
}

/** For the content security policy: a hash of each script that stands in the page itself. */
export function inlineScriptHashes(folder: string): string[] {
  const page = join(folder, 'index.html');
  if (!existsSync(page)) return [];
  return [...readFileSync(page, 'utf8').matchAll(/<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g)].map(
    ([, script = '']) => `'sha256-${createHash('sha256').update(script).digest('base64')}'`,
  );
}
