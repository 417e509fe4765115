/** Whether this copy of the app was built as one file: it has no worker beside it and needs none. */
export const isSingleFile = import.meta.env.MODE === 'single';

/** Nothing is kept (yet, or here at all), all is kept, or a newer version is kept and waits for the windows to be closed. */
export type OfflineState = 'none' | 'kept' | 'renewed';

const listeners = new Set<(state: OfflineState) => void>();
let state: OfflineState = 'none';

function tell(next: OfflineState): void {
  state = next;
  for (const each of listeners) each(next);
}

/** Tells the state now and whenever it changes, until the function that comes back is called. */
export function watchOffline(listener: (state: OfflineState) => void): () => void {
  listeners.add(listener);
  listener(state);
  return () => listeners.delete(listener);
}

/**
 * Has the app's files kept on this device, from where the next visit is served. Only a built app on a server does so: `npm run dev`
 * changes its files all the time, and a page opened from a disk is there already.
 */
export function keepOffline(): void {
  const served = import.meta.env.MODE === 'production' && location.protocol.startsWith('http');
  if (!served || !('serviceWorker' in navigator)) return;
  const start = () => {
    // A browser may deny it (private windows, no https); then the app is what any page is.
    navigator.serviceWorker.register('./sw.js', { scope: './', updateViaCache: 'none' }).then(watch, () => undefined);
  };
  // The first page comes first.
  if (document.readyState === 'complete') start();
  else addEventListener('load', start, { once: true });
}

function watch(registration: ServiceWorkerRegistration | undefined): void {
  // A browser that is told to block workers may answer with nothing.
  if (registration === undefined) return;
  const look = () => {
    if (registration.active === null) return;
    tell(registration.waiting === null ? 'kept' : 'renewed');
  };
  const follow = (worker: ServiceWorker | null) => worker?.addEventListener('statechange', look);
  registration.addEventListener('updatefound', () => follow(registration.installing));
  follow(registration.installing);
  look();
}
