import { useState } from 'preact/hooks';
import { t } from '../words.ts';
import { failedText } from './api.ts';
import { enterClass } from './class-api.ts';
import { Field } from './field.tsx';
import { takeToken } from './use-class.ts';

/** The instructor's way in, by the password that the host said when it was begun. */
export function ClassSignIn({ isEnded }: { readonly isEnded: boolean }) {
  const [password, setPassword] = useState('');
  const [wrong, setWrong] = useState('');
  const submit = async (event: Event) => {
    event.preventDefault();
    setWrong('');
    try {
      takeToken(await enterClass(password));
    } catch (error) {
      setWrong(failedText(error));
      setPassword('');
    }
  };
  return (
    <form class="slip lab-form" onSubmit={(event) => void submit(event)} aria-label={t('lab:class.signIn')}>
      <div role="status">{isEnded && <p class="lab-why">{t('lab:why.ended')}</p>}</div>
      <p>{t('lab:class.password')}</p>
      <Field label={t('lab:class.passwordField')} value={password} onValue={setPassword} secret />
      <div role="alert">{wrong !== '' && <p class="lab-wrong">{wrong}</p>}</div>
      <button type="submit" class="button act">
        {t('lab:signIn.go')}
      </button>
    </form>
  );
}
