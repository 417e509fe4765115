/** Finds a Chromium for the browser tests, or installs Debian's. */
import { execFileSync, spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

function onPath(): string | undefined {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    for (const name of NAMES) {
      const file = join(folder, name);
      try {
        accessSync(file, constants.X_OK);
        return file;
      } catch {
        // Not here; the next folder may hold it.
      }
    }
  }
  return undefined;
}

/**
 * The path of a Chromium: the one that BELLWIRE_CHROMIUM names, else one on the PATH, else Debian's, installed here as root.
 * Throws with a sentence that says how to get one when there is none and none can be installed.
 */
export function findChromium(): string {
  const named = process.env.BELLWIRE_CHROMIUM;
  if (named !== undefined && named !== '') {
    if (existsSync(named)) return named;
    throw new Error(`BELLWIRE_CHROMIUM names ${named}, and nothing is there.`);
  }
  const found = onPath();
  if (found !== undefined) return found;
  const debian = process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0;
  if (debian) {
    // To stderr, so that what a script reads from stdout stays the tests' own.
    const options = { stdio: ['ignore', 2, 2] as ['ignore', 2, 2], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
    console.error('No Chromium here: installing the one of the distribution.');
    try {
      execFileSync('apt-get', ['update'], options);
      execFileSync('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], options);
    } catch (cause) {
      throw new Error('The browser tests need a Chromium, and apt-get could not install one (see above).', { cause });
    }
    const installed = onPath();
    if (installed !== undefined) return installed;
  }
  throw new Error(
    'The browser tests need a Chromium. Install one (on Debian: apt-get install chromium), or set BELLWIRE_CHROMIUM to the path of one.',
  );
}

/** Starts a headless Chromium that asks nothing of any network but the page's own server. */
export function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: findChromium(),
    args: [
      '--no-sandbox',
      '--disable-quic',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
    ],
  });
}
