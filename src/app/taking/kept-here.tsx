import { useState } from 'preact/hooks';
import { download, whyNot } from '../keeping/file-section.tsx';
import { go } from '../router.ts';
import { t } from '../words.ts';
import { Privacy } from './consent.tsx';
import { fileText, handInAll } from './hand-in.ts';
import { amendPaper, amendWork, eraseAssigned } from './store.ts';
import type { Taken } from './use-assigned.ts';
import { readTaken } from './use-assigned.ts';

interface Props {
  readonly taken: Taken;
  readonly onChange: () => Promise<void>;
}

/** Handing in all of it at once; what is kept here, out to a file, and away. */
export function KeptHere({ taken, onChange }: Props) {
  const [asking, setAsking] = useState(false);
  const [wrong, setWrong] = useState('');
  const { assigned } = taken;
  const { assignment, trainee, id } = assigned;
  const base = `${assignment.id}-${trainee.code}`;
  const ended = [...taken.kept, ...taken.keptPapers].filter((each) => each.ended !== undefined);
  const guarded = async (what: () => Promise<void>) => {
    try {
      await what();
      setWrong('');
    } catch (error) {
      setWrong(whyNot(error, `${base}.zip`));
    }
  };
  // Read anew: words may have been written since.
  const now = async () => (await readTaken(id)) ?? taken;
  const saveAll = async () => {
    const all = await now();
    download(handInAll(all), `${base}.zip`);
    for (const each of all.kept) if (each.ended !== undefined) await amendWork(id, each, { saved: true });
    for (const each of all.keptPapers) if (each.ended !== undefined) await amendPaper(id, each, { saved: true });
    await onChange();
  };
  const saveKept = async () => {
    const { kept, keptPapers } = await now();
    download(fileText({ assigned, works: kept, papers: keptPapers }), `${base}-kept.json`);
  };
  const erase = async () => {
    await eraseAssigned(id);
    go('#/take', true);
  };
  return (
    <>
      {ended.length > 0 && (
        <section class="slip" aria-labelledby="all-title">
          <h2 id="all-title">{t('take:all.title')}</h2>
          <p>{t('take:all.text', { count: ended.length })}</p>
          <p class="progress-buttons">
            <button type="button" class="button act" onClick={() => void guarded(saveAll)}>
              {t('take:all.save')}
            </button>
          </p>
        </section>
      )}
      <section class="slip" aria-labelledby="privacy-title">
        <h2 id="privacy-title">{t('take:privacy.title')}</h2>
        <Privacy />
        <p class="progress-buttons">
          <button type="button" class="button" onClick={() => void guarded(saveKept)}>
            {t('take:privacy.export')}
          </button>
          {!asking && (
            <button type="button" class="button" onClick={() => setAsking(true)}>
              {t('take:privacy.eraseAll')}
            </button>
          )}
        </p>
        {asking && (
          <div class="remove-profile">
            <p role="alert">{t('take:privacy.sure')}</p>
            <p class="progress-buttons">
              <button type="button" class="button" onClick={() => void guarded(erase)}>
                {t('take:privacy.yes')}
              </button>
              <button type="button" class="button" onClick={() => setAsking(false)}>
                {t('take:privacy.no')}
              </button>
            </p>
          </div>
        )}
        {wrong !== '' && <p role="alert">{wrong}</p>}
      </section>
    </>
  );
}
