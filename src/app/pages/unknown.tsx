import { hrefOf } from '../router.ts';
import { PageHead } from '../shell.tsx';
import { t } from '../words.ts';

export function UnknownPage() {
  return (
    <>
      <PageHead />
      <main class="sheet">
        <h1 tabIndex={-1}>{t('app:unknown.title')}</h1>
        <p>{t('app:unknown.text')}</p>
        <p>
          <a href={hrefOf('home')}>{t('app:toTickets')}</a>
        </p>
      </main>
    </>
  );
}
