import { useState } from 'preact/hooks';
import { isDataError } from '../../rig/errors.ts';
import { takeUpLanguage } from '../language.ts';
import { takeUpSettings } from '../settings.ts';
import { hasWords, t } from '../words.ts';
import { profileNow } from './profile-now.ts';
import { exportText, importText } from './transfer.ts';

/** What went wrong with a file, in words: the file, the place in it, and why. */
export function whyNot(error: unknown, file: string): string {
  if (isDataError(error) && hasWords(`error:${error.code}`))
    return t(`error:${error.code}`, { ...error.values, path: `${file} › ${error.path}` });
  return t(error instanceof Error && error.name === 'QuotaExceededError' ? 'keeping:full' : 'keeping:denied');
}

/** Lays a file into the browser's downloads. */
export function download(content: string | Uint8Array<ArrayBuffer>, name = 'bellwire.json'): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(
    new Blob([content], { type: typeof content === 'string' ? 'application/json' : 'application/zip' }),
  );
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** Everything out to one file, and back in. */
export function FileSection({ onRead }: { readonly onRead: () => void }) {
  const [said, setSaid] = useState('');
  const save = (which: string) =>
    exportText(which).then(
      (text) => download(text),
      () => setSaid(t('keeping:denied')),
    );
  const take = async (file: File) => {
    setSaid(t('keeping:file.reading'));
    try {
      const count = await importText(await file.text());
      setSaid(t('keeping:file.done', { count }));
      onRead();
      takeUpSettings();
      await takeUpLanguage();
    } catch (error) {
      setSaid(t('keeping:file.failed', { why: whyNot(error, file.name) }));
    }
  };
  return (
    <section class="slip" aria-labelledby="file-title">
      <h2 id="file-title">{t('keeping:file.title')}</h2>
      <p>{t('keeping:file.text')}</p>
      <div class="progress-buttons">
        <button type="button" class="button act" onClick={() => void save(profileNow())}>
          {t('keeping:file.save')}
        </button>
        <button type="button" class="button" onClick={() => void save('all')}>
          {t('keeping:file.saveAll')}
        </button>
        <label class="button file-button">
          {t('keeping:file.read')}
          <input
            type="file"
            class="unseen"
            accept=".json,application/json"
            onChange={(event) => {
              const input = event.currentTarget;
              const file = input.files?.[0];
              if (file !== undefined) void take(file).then(() => (input.value = ''));
            }}
          />
        </label>
      </div>
      <p role="status" data-testid="file-said">
        {said}
      </p>
    </section>
  );
}
