/** The engine's worker, from its own file beside the page. */
export const startWorker = (): Worker => new Worker(new URL('./work.ts', import.meta.url), { type: 'module' });
