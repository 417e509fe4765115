import { useState } from 'preact/hooks';
import type { Pins } from '../../classroom/room.ts';
import { number, t } from '../words.ts';
import { download } from './download.ts';
import { FileButton } from './file-button.tsx';
import { PinList } from './pin-list.tsx';
import type { ClassRoom } from './use-class.ts';

/** The class list: PINs, and what is kept of one person. */
export function RosterSlip({ place }: { readonly place: ClassRoom }) {
  const { room, run, api } = place;
  const [pins, setPins] = useState<Pins['pins']>([]);
  const [erasing, setErasing] = useState('');
  const put = async (file: File | undefined) => {
    if (file === undefined) return;
    const csv = await file.text();
    const answer = await run(
      () => api.putRoster(csv),
      ({ added, changed }) => t('lab:roster.taken', { added: number(added), changed: number(changed) }),
    );
    if (answer !== undefined) setPins(answer.pins);
  };
  return (
    <section class="slip" aria-labelledby="roster-title">
      <h2 id="roster-title">{t('lab:roster.title')}</h2>
      <p>{t('lab:roster.what')}</p>
      <FileButton words={t('lab:roster.file')} accept=".csv,text/csv" onFile={put} />
      {pins.length > 0 && <PinList pins={pins} onDone={() => setPins([])} />}
      <ul class="lab-people">
        {(room?.trainees ?? []).map(({ code, name }) => (
          <li key={code} data-trainee={code}>
            <span>
              <b>{name || code}</b> {name !== '' && <small>{code}</small>}
            </span>
            <div class="lab-buttons">
              <button
                type="button"
                class="button small"
                aria-label={t('lab:roster.named', { what: t('lab:roster.newPin'), name: name || code })}
                onClick={async () => {
                  const answer = await run(() => api.newPin(code));
                  if (answer !== undefined) setPins(answer.pins);
                }}
              >
                {t('lab:roster.newPin')}
              </button>
              <button
                type="button"
                class="button small"
                aria-label={t('lab:roster.named', { what: t('lab:roster.export'), name: name || code })}
                onClick={async () => {
                  const text = await run(() => api.exportOne(code));
                  if (text !== undefined) download(`${code}.json`, text, 'application/json');
                }}
              >
                {t('lab:roster.export')}
              </button>
              <button
                type="button"
                class="button small"
                aria-label={t('lab:roster.named', { what: t('lab:roster.erase'), name: name || code })}
                onClick={() => setErasing(code)}
              >
                {t('lab:roster.erase')}
              </button>
            </div>
            {erasing === code && (
              <div class="lab-sure" role="alert">
                <p>{t('lab:roster.sure', { name: name || code })}</p>
                <button
                  type="button"
                  class="button"
                  onClick={() => {
                    setErasing('');
                    void run(
                      () => api.eraseOne(code),
                      () => t('lab:roster.erased', { name: name || code }),
                    );
                  }}
                >
                  {t('lab:roster.eraseNow', { name: name || code })}
                </button>
                <button type="button" class="button" onClick={() => setErasing('')}>
                  {t('app:back')}
                </button>
              </div>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
