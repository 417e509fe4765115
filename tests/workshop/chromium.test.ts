/** A person without a Chromium is told what to do. That one is installed where it can be is seen on a bare machine only. */
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
