/** The app in one HTML file, which opens from a disk without a server. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { firstPage } from './first-page.ts';
import { fonts } from './fonts.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const icon = readFileSync(new URL('../../assets/icon.svg', import.meta.url), 'utf8');

const iconInPage = (): Plugin => ({
  name: 'bellwire-icon-in-page',
  transformIndexHtml: {
    order: 'pre',
    handler: (page) => page.replace('/assets/icon.svg', `data:image/svg+xml,${encodeURIComponent(icon)}`),
  },
});

/** Builds `outDir`/index.html, and nothing beside it. A folder is taken from the project's own. */
export async function buildSingleFile(outDir: string): Promise<void> {
  await build({
    root,
    configFile: false,
    mode: 'single',
    logLevel: 'warn',
    base: './',
    plugins: [firstPage(), fonts(), iconInPage(), viteSingleFile()],
    resolve: { alias: [{ find: './start-worker.ts', replacement: `${root}/src/app/engine/start-worker-inline.ts` }] },
    // A worker from within the page: not every browser lets such a one be a module.
    worker: { format: 'iife' },
    build: { target: 'es2022', outDir, emptyOutDir: true },
  });
}
