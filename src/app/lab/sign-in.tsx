import { useState } from 'preact/hooks';
import { signedInSchema } from '../../classroom/protocol.ts';
import { hrefOf } from '../router.ts';
import { PageHead } from '../shell.tsx';
import { t } from '../words.ts';
import { askFor, failedText } from './api.ts';
import { Field } from './field.tsx';
import type { Seat } from './seat-state.ts';
import { useStore } from './store.ts';

/** Class code, one's own code and PIN, and what is kept of whoever gives them. */
export function SignIn({ seat }: { readonly seat: Seat }) {
  const { why } = useStore(seat);
  const [typed, setTyped] = useState({ class: '', trainee: '', pin: '' });
  const [agreed, setAgreed] = useState(false);
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState('');
  const submit = async (event: Event) => {
    event.preventDefault();
    setBusy(true);
    setWrong('');
    try {
      const body = { class: typed.class.trim(), trainee: typed.trainee.trim(), pin: typed.pin.trim() };
      seat.begin(await askFor(signedInSchema, '/api/sign-in', { method: 'POST', body }));
    } catch (error) {
      setWrong(failedText(error));
      setTyped({ ...typed, pin: '' });
    }
    setBusy(false);
  };
  const field = (name: keyof typeof typed) => ({
    label: t(`lab:signIn.${name}`),
    value: typed[name],
    onValue: (value: string) => setTyped({ ...typed, [name]: value }),
  });
  return (
    <>
      <PageHead>
        <a class="back" href={hrefOf('home')}>
          {t('app:toTickets')}
        </a>
        <a class="back" href="#/class">
          {t('lab:instructor')}
        </a>
      </PageHead>
      <main class="sheet lab">
        <h1 tabIndex={-1}>{t('lab:title')}</h1>
        <div role="status">{why !== undefined && <p class="lab-why">{t(`lab:why.${why}`)}</p>}</div>
        <form class="slip lab-form" onSubmit={(event) => void submit(event)} aria-label={t('lab:signIn.title')}>
          <Field {...field('class')} capitals />
          <Field {...field('trainee')} />
          <Field {...field('pin')} secret />
          <section class="lab-consent" aria-labelledby="consent-title">
            <h2 id="consent-title">{t('lab:consent.title')}</h2>
            <p>{t('lab:consent.kept')}</p>
            <p>{t('lab:consent.where')}</p>
            <p>{t('lab:consent.rights')}</p>
          </section>
          <label class="choice">
            <input type="checkbox" checked={agreed} onChange={(event) => setAgreed(event.currentTarget.checked)} />
            <span>{t('lab:consent.agree')}</span>
          </label>
          <div role="alert">{wrong !== '' && <p class="lab-wrong">{wrong}</p>}</div>
          <button type="submit" class="button act" disabled={!agreed || busy}>
            {t('lab:signIn.go')}
          </button>
        </form>
      </main>
    </>
  );
}
