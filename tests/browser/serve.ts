/** Once before the browser tests: finds a Chromium, builds the app and serves it; `inject('address')` says where. */
import { rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { findChromium } from './chromium.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built app is served, ending in a slash. */
    readonly address: string;
    /** The folder of the built app. */
    readonly built: string;
  }
}

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  findChromium();
  // A folder of this process' own: `npm start` may be serving dist at this moment, and another run of the tests its own build.
  const outDir = `node_modules/.bellwire/browser-tests-${process.pid}`;
  await build({ logLevel: 'warn', mode: 'production', build: { outDir, emptyOutDir: true } });
  const server = await preview({
    logLevel: 'warn',
    build: { outDir },
    preview: { port: 4973, strictPort: false, host: '127.0.0.1' },
  });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('the server has no address');
  project.provide('address', address);
  project.provide('built', resolve(outDir));
  return async () => {
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  };
}
