import EngineWorker from './work.ts?worker&inline';

/** The engine's worker out of the page itself, for the app in one file: a page from a disk may load no other file. */
export const startWorker = (): Worker => new EngineWorker();
