/** What makes the built app one that can be installed: its service worker's list of files (and the same for who packs it), the manifest, and the icons from assets/icon.svg. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import type { Plugin } from 'vite';
import { APP_FILES } from '../../src/classroom/lms/package.ts';
import { COLOURS } from '../../src/stage/tokens.ts';

const WORKER = 'sw.js';
const PLACE = '__BELLWIRE_FILES__';
const icon = readFileSync(new URL('../../assets/icon.svg', import.meta.url), 'utf8');

/** Launchers cut a maskable icon to a shape of their own; within four fifths of its width nothing is cut. */
const maskable =
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" fill="${COLOURS.ground}"/>` +
  `${icon.replace('<svg ', '<svg x="4" y="4" width="24" height="24" ')}</svg>`;

const ICONS = [192, 512].flatMap((size) => [
  { file: `icon-${size}.png`, size, purpose: 'any', drawing: icon },
  { file: `icon-${size}-maskable.png`, size, purpose: 'maskable', drawing: maskable },
]);

const manifest = {
  name: 'Bellwire',
  short_name: 'Bellwire',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: COLOURS.ground,
  theme_color: COLOURS.bar,
  icons: [
    { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
    ...ICONS.map(({ file, size, purpose }) => ({ src: file, sizes: `${size}x${size}`, type: 'image/png', purpose })),
  ],
};

const link = (rel: string, href: string) => ({ tag: 'link', attrs: { rel, href }, injectTo: 'head' as const });

/** Of use only to a build that is served: a single file has nothing beside it. */
export function offline(): Plugin {
  return {
    name: 'bellwire-offline',
    enforce: 'post',
    apply: 'build',
    config: () => ({
      build: {
        rolldownOptions: {
          input: { index: 'index.html', worker: 'src/app/offline/worker.ts' },
          output: { entryFileNames: ({ name }) => (name === 'worker' ? WORKER : 'assets/[name]-[hash].js') },
        },
      },
    }),
    transformIndexHtml: () => [
      link('manifest', './manifest.webmanifest'),
      link('apple-touch-icon', './icon-192.png'),
      { tag: 'meta', attrs: { name: 'theme-color', content: COLOURS.bar }, injectTo: 'head' },
    ],
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const emit = (fileName: string, source: string | Uint8Array) => this.emitFile({ type: 'asset', fileName, source });
        emit('manifest.webmanifest', JSON.stringify(manifest));
        emit('icon.svg', icon);
        for (const { file, size, drawing } of ICONS)
          emit(file, new Resvg(drawing, { fitTo: { mode: 'width', value: size } }).render().asPng());
        const worker = bundle[WORKER];
        const page = bundle['index.html'];
        const entry = Object.values(bundle).find(
          (each) => each.type === 'chunk' && each.isEntry && each.fileName !== WORKER,
        )?.fileName;
        if (worker?.type !== 'chunk' || page?.type !== 'asset' || entry === undefined)
          this.error('the build lacks a page or its worker');
        const beside = [...Object.keys(bundle), 'manifest.webmanifest', 'icon.svg', ...ICONS.map(({ file }) => file)]
          .filter((name) => name !== WORKER && name !== 'index.html' && !name.endsWith('.map'))
          .filter((name, index, all) => all.indexOf(name) === index)
          .sort();
        // For whoever packs the app for a learning system, where nothing is kept for later.
        emit(APP_FILES, JSON.stringify({ entry, files: beside }));
        const files = [...beside, APP_FILES];
        // The other files have their content's hash in their names.
        const version = createHash('sha256')
          .update(JSON.stringify([files, String(page.source), manifest, icon, worker.code]))
          .digest('hex')
          .slice(0, 16);
        if (!worker.code.includes(PLACE)) this.error(`${WORKER} has no place for its list of files`);
        worker.code = worker.code.replace(PLACE, () => JSON.stringify({ version, entry, files }));
      },
    },
  };
}
