import { useEffect, useState } from 'preact/hooks';
import type { Assignment } from '../../classroom/assignment.ts';
import { codeSchema } from '../../classroom/assignment.ts';
import { whyNot } from '../keeping/file-section.tsx';
import { library } from '../library.ts';
import { codeOf, courseNow } from '../lms/session.ts';
import { assignedHref, go } from '../router.ts';
import { t } from '../words.ts';
import { assignedId, worksFor } from './open.ts';
import { MOST_NAME } from './records.ts';
import { keepAssigned } from './store.ts';

/** What is kept and handed in, and where. */
export function Privacy() {
  return (
    <ul class="take-rules">
      {(['kept', 'clock', 'handed', 'sent', 'sealed', 'shared', 'erase'] as const).map((each) => (
        <li key={each}>{t(`take:privacy.${each}`)}</li>
      ))}
    </ul>
  );
}

interface Props {
  readonly assignment: Assignment;
  /** The file's name, or the link. */
  readonly from: string;
}

/** Who works on it, and that they know what becomes of it. */
export function Consent({ assignment, from }: Props) {
  const [code, setCode] = useState('');
  const [name, setName] = useState('');
  const [agreed, setAgreed] = useState(false);
  const [wrong, setWrong] = useState('');
  // A learning system knows who opened it, and keeps the work under that name.
  const [known, setKnown] = useState(false);
  useEffect(() => {
    void courseNow().then((course) => {
      if (!course) return;
      setKnown(true);
      setCode(codeOf(course.learner));
      setName(course.learner.name.slice(0, MOST_NAME));
    });
  }, []);
  const begin = async () => {
    const trimmed = code.trim();
    if (!codeSchema.safeParse(trimmed).success) {
      setWrong(t('take:who.badCode'));
      return;
    }
    if (!agreed) {
      setWrong(t('take:privacy.first'));
      return;
    }
    try {
      worksFor(assignment, trimmed, library);
    } catch (error) {
      setWrong(whyNot(error, from));
      return;
    }
    const id = assignedId(assignment, trimmed);
    const trainee = { code: trimmed, name: name.trim() };
    const kept = await keepAssigned({ id, assignment, trainee, agreed: new Date().toISOString() });
    if (kept === 'kept') go(assignedHref(id));
    else setWrong(t(kept === 'full' ? 'keeping:full' : 'keeping:denied'));
  };
  return (
    <section class="slip" aria-labelledby="who-title">
      <h2 id="who-title">{t('take:who.title')}</h2>
      <h3>{t('take:privacy.title')}</h3>
      <Privacy />
      <form
        class="take-who"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void begin();
        }}
      >
        <label class="take-field">
          <span>{t('take:who.code')}</span>
          <input
            required
            maxLength={40}
            readOnly={known}
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            aria-describedby="code-hint"
            value={code}
            onInput={(event) => setCode(event.currentTarget.value)}
          />
        </label>
        <p id="code-hint" class="quiet">
          {t('take:who.codeHint')}
        </p>
        <label class="take-field">
          <span>{t('take:who.name')}</span>
          <input maxLength={MOST_NAME} autocomplete="off" value={name} onInput={(event) => setName(event.currentTarget.value)} />
        </label>
        <label class="choice">
          <input type="checkbox" checked={agreed} onChange={(event) => setAgreed(event.currentTarget.checked)} />
          <span>{t('take:privacy.agree')}</span>
        </label>
        <p role="alert" class="take-wrong">
          {wrong}
        </p>
        <button type="submit" class="button act">
          {t('take:who.go')}
        </button>
      </form>
    </section>
  );
}
