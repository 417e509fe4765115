/** A person without a Chromium gets Debian's where that can be, and is told what to do where it can't. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { findChromium } from '../browser/chromium.ts';

afterEach(() => {
  vi.unstubAllEnvs();
});

test('the Chromium that a person names is the one', () => {
  vi.stubEnv('BELLWIRE_CHROMIUM', process.execPath);
  expect(findChromium()).toBe(process.execPath);
});

test('a named Chromium that is not there is said to be missing, not passed over', () => {
  vi.stubEnv('BELLWIRE_CHROMIUM', '/nowhere/chromium');
  expect(() => findChromium()).toThrow('BELLWIRE_CHROMIUM names /nowhere/chromium, and nothing is there.');
});

test('with none on the PATH and no way to install one, the message says how to get one', () => {
  vi.stubEnv('BELLWIRE_CHROMIUM', '');
  vi.stubEnv('PATH', '/nowhere');
  expect(() => findChromium()).toThrow(/Install one .* or set BELLWIRE_CHROMIUM/);
});

const root = process.getuid?.() === 0;

/** A folder with nothing but an apt-get that writes down what it is asked, then runs `onInstall`. */
function aptGet(onInstall: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'apt-get-'));
  const script = `#!/bin/sh\ncd ${folder}\necho "$@" >> asked\nif [ "$1" = install ]; then ${onInstall}; fi\n`;
  writeFileSync(join(folder, 'apt-get'), script, { mode: 0o755 });
  vi.stubEnv('BELLWIRE_CHROMIUM', '');
  vi.stubEnv('PATH', folder);
  return folder;
}

test.runIf(root)('as root on Debian the distribution’s Chromium is installed, once', () => {
  const folder = aptGet('/bin/cp apt-get chromium');
  expect(findChromium()).toBe(join(folder, 'chromium'));
  expect(findChromium()).toBe(join(folder, 'chromium'));
  expect(readFileSync(join(folder, 'asked'), 'utf8').trim().split('\n')).toEqual([
    '--version',
    'update',
    'install -y --no-install-recommends chromium',
  ]);
  rmSync(folder, { recursive: true });
});

test.runIf(root)('an installation that fails is said to have failed', () => {
  const folder = aptGet('exit 100');
  expect(() => findChromium()).toThrow('apt-get could not install one');
  expect(existsSync(join(folder, 'chromium'))).toBe(false);
  rmSync(folder, { recursive: true });
});
