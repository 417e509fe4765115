import { t } from './words.ts';

/** What stands in a page's place while it is read. */
export function Waiting() {
  return (
    <main class="waiting" aria-busy="true">
      <p role="status">{t('app:loading')}</p>
    </main>
  );
}
