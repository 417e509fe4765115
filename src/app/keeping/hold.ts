import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { profileNow } from './profile-now.ts';

/** Whose an attempt is: this tab's, another tab's, or it was this tab's until another took it over. */
export type Hold = 'asking' | 'mine' | 'elsewhere' | 'taken';

/** A reload asks before the page that it replaces has quite let go. Milliseconds. */
const PATIENCE = 500;

/**
 * One tab at a time works on an attempt: it holds a lock of the browser's, which dies with the tab.
 * Where the browser has no locks (an address that is neither https nor localhost), every tab works, and the last step kept counts.
 */
export function useHold(ticket: string): { readonly hold: Hold; readonly takeOver: () => void } {
  const [hold, setHold] = useState<Hold>('asking');
  const release = useRef<() => void>();
  const claim = useCallback(
    (options: LockOptions) => {
      let current = true;
      let got = false;
      const kept = new Promise<void>((resolve) => {
        release.current = () => {
          current = false;
          resolve();
        };
      });
      navigator.locks
        .request(`bellwire ${profileNow()} ${ticket}`, options, () => {
          if (!current) return undefined;
          got = true;
          setHold('mine');
          return kept;
        })
        .catch(() => current && setHold(got ? 'taken' : 'elsewhere'));
    },
    [ticket],
  );
  useEffect(() => {
    if (navigator.locks === undefined) {
      setHold('mine');
      return undefined;
    }
    claim({ signal: AbortSignal.timeout(PATIENCE) });
    return () => release.current?.();
  }, [claim]);
  return { hold, takeOver: () => claim({ steal: true }) };
}
