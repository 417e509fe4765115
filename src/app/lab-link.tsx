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

/** The way to the lab, where there is one. */
export function LabLink() {
  const [shown, setShown] = useState(found === true);
  useEffect(() => {
    if (found !== undefined) return undefined;
    const timer = setTimeout(async () => {
      found = await isServedByHost();
      setShown(found);
    }, PATIENCE);
    return () => clearTimeout(timer);
  }, []);
  return shown ? (
    <a class="back" href="#/lab">
      {t('lab:enter')}
    </a>
  ) : null;
}
