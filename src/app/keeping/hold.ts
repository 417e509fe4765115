import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { profileNow } from './profile-now.ts';

/** Whose an attempt is: this tab's, another tab's, or it was this tab's until another took it over. */
export type Hold = 'asking' | 'mine' | 'elsewhere' | 'taken';

/** How long a reload waits in silence for the page that it replaces to let go. Milliseconds. */
const PATIENCE = 500;

/**
 * One tab at a time works on an attempt: it holds a lock of the browser's, which dies with the tab. Who finds it held waits
 * for it, and goes on as soon as the other lets go.
 * Where the browser has no locks (an address that is neither https nor localhost), every tab works, and the last step kept counts.
 */
export function useHold(ticket: string): { readonly hold: Hold; readonly takeOver: () => void } {
  const [hold, setHold] = useState<Hold>('asking');
  const leave = useRef<() => void>();
  const claim = useCallback(
    (isStolen: boolean) => {
      leave.current?.();
      const left = new AbortController();
      leave.current = () => left.abort();
      const told = (state: Hold) => !left.signal.aborted && setHold(state);
      let got = false;
      if (!isStolen) setTimeout(() => !got && told('elsewhere'), PATIENCE);
      const kept = new Promise<void>((resolve) => left.signal.addEventListener('abort', () => resolve()));
      navigator.locks
        .request(`bellwire ${profileNow()} ${ticket}`, isStolen ? { steal: true } : { signal: left.signal }, () => {
          got = true;
          told('mine');
          return kept;
        })
        .catch(() => told(got ? 'taken' : 'elsewhere'));
    },
    [ticket],
  );
  useEffect(() => {
    if (navigator.locks === undefined) {
      setHold('mine');
      return undefined;
    }
    claim(false);
    return () => leave.current?.();
  }, [claim]);
  return { hold, takeOver: () => claim(true) };
}
