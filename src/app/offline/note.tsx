import { useEffect, useState } from 'preact/hooks';
import { readFinished } from '../storage.ts';
import { t } from '../words.ts';
import { isSingleFile, type OfflineState, watchOffline } from './register.ts';

/** One calm line on the first page: whether Bellwire is kept on this device, and whether a newer one waits. */
export function OfflineNote() {
  const [state, setState] = useState<OfflineState>('none');
  useEffect(() => watchOffline(setState), []);
  if (isSingleFile) return <SingleFileNote />;
  return (
    <p class="offline-note" role="status">
      {state === 'kept' && t('offline:kept')}
      {state === 'renewed' && t('offline:renewed')}
    </p>
  );
}

/** A stick is carried about; what is kept stays behind in the browser, if the browser keeps anything for a page from a disk. */
function SingleFileNote() {
  const [denied, setDenied] = useState(false);
  useEffect(() => {
    readFinished().catch(() => setDenied(true));
  }, []);
  return (
    <p class="offline-note" role="status">
      {denied ? t('keeping:denied') : t('offline:single')}
    </p>
  );
}
