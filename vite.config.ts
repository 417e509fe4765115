import { defineConfig } from 'vitest/config';
import { firstPage } from './tests/tools/first-page.ts';
import { fonts } from './tests/tools/fonts.ts';
import { offline } from './tests/tools/offline.ts';

/** The app's build and, below it, the three kinds of test. See DEVELOPERS.md, "Tests". */
export default defineConfig({
  base: './',
  plugins: [firstPage(), fonts(), offline()],
  build: {
    target: 'es2022',
    // Phaser alone is over a megabyte; it is loaded with the bench, not with the first page.
    chunkSizeWarningLimit: 2000,
    // How long each plugin took is of no use to whoever only starts the app.
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  // The debrief is worked out in a worker that shares the rooms' modules with the pages.
  worker: { format: 'es' },
  server: { host: '127.0.0.1' },
  preview: { host: '127.0.0.1' },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/reference/**', 'tests/browser/**'],
          testTimeout: 120_000,
          // By itself it would leave one of two cores idle. The browser's tests come after.
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
          // The rooms keep nothing in their modules that one file could leave to the next, and loading them anew took a fifth of the time.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'reference',
          include: ['tests/reference/**/*.test.ts'],
          testTimeout: 300_000,
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/serve.ts'],
          // One file alone leaves a third of two cores idle, waiting for pages.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
          isolate: false,
          // Plays that run side by side: a page, its worker and the shadow keep two cores busy.
          maxConcurrency: 3,
          testTimeout: 120_000,
          hookTimeout: 300_000,
          // A second, which is what it would be by itself, is little where other plays keep both cores busy.
          expect: { poll: { timeout: 30_000 } },
        },
      },
    ],
  },
});
