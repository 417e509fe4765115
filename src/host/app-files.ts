/** The built app that the host hands out: built where that was not done since the source changed. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const SOURCES = ['src', 'locales', 'scenarios', 'assets', 'index.html', 'package.json', 'vite.config.ts'];

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
    const { build } = await import('vite');
    await build({ root: ROOT, logLevel: 'warn' });
  }
  return folder;
}

/** For the content security policy: a hash of each script that stands in the page itself. */
export function inlineScriptHashes(folder: string): string[] {
  const page = join(folder, 'index.html');
  if (!existsSync(page)) return [];
  return [...readFileSync(page, 'utf8').matchAll(/<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g)].map(
    ([, script = '']) => `'sha256-${createHash('sha256').update(script).digest('base64')}'`,
  );
}
