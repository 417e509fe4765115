import { useEffect, useState } from 'preact/hooks';
import { t } from './words.ts';

/** What a lab host says with everything that it serves. */
const SIGN = 'bellwire-lab';
/** Asked so long after the page is up, milliseconds: it has nothing to wait for. */
const PATIENCE = 300;

let found: boolean | undefined;

/** Asks once whether a lab host serves this page: for the page itself, so that no other server has anything to complain of. */
async function isServedByHost(): Promise<boolean> {
  if (!location.protocol.startsWith('http') || !navigator.onLine) return false;
  try {
    const { headers } = await fetch(location.pathname, { method: 'HEAD', cache: 'no-store' });
    return headers.has(SIGN);
  } catch {
    return false;
  }
}

/** Whether a lab host serves this page; not before it has said so. */
export function useLabHost(): boolean {
  const [isHost, setHost] = useState(found === true);
  useEffect(() => {
    if (found !== undefined) return undefined;
    const timer = setTimeout(async () => {
      found = await isServedByHost();
      setHost(found);
    }, PATIENCE);
    return () => clearTimeout(timer);
  }, []);
  return isHost;
}

/** The way to the lab: what there is to do first on a page that a lab host serves. */
export function LabStart() {
  return (
    <div class="lab-start">
      <a class="button act" href="#/lab">
        {t('lab:enter')}
      </a>
      <p>{t('lab:enterWhat')}</p>
    </div>
  );
}
