import { BrandStill, LanguageChoice } from '../shell.tsx';
import { t } from '../words.ts';
import type { Seat } from './seat-state.ts';
import { signOut } from './session.ts';
import { useStore } from './store.ts';

/** Over a signed-in trainee's pages: who it is, and the way out. */
export function SeatHead({ seat }: { readonly seat: Seat }) {
  const { signedIn } = useStore(seat);
  return (
    <header class="page-head">
      <BrandStill />
      <span class="lab-who">{signedIn?.name || signedIn?.trainee}</span>
      <button type="button" class="button" onClick={signOut}>
        {t('lab:signOut')}
      </button>
      <LanguageChoice />
    </header>
  );
}
