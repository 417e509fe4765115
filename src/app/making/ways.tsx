import { hrefOf } from '../router.ts';
import { t } from '../words.ts';

/** What else there is for an instructor. */
export function Ways({ to }: { readonly to: 'build' | 'assign' }) {
  return (
    <nav class="make-ways" aria-label={t('builder:ways.name')}>
      <div class="make-buttons">
        <a class="button" href={hrefOf(to)}>
          {t(to === 'build' ? 'builder:title' : 'builder:toAssign')}
        </a>
        <a class="button" href={hrefOf('gradebook')}>
          {t('app:home.gradebook')}
        </a>
      </div>
      <p>{t('builder:ways.lab')}</p>
    </nav>
  );
}
