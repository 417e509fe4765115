import type { Pins } from '../../classroom/room.ts';
import { t } from '../words.ts';

/** PINs that were made, to be written down or printed and handed out: they are shown this once. */
export function PinList({ pins, onDone }: { readonly pins: Pins['pins']; readonly onDone: () => void }) {
  return (
    <section class="lab-pins" aria-labelledby="pins-title">
      <h3 id="pins-title">{t('lab:pins.title')}</h3>
      <p role="status">{t('lab:pins.once')}</p>
      <table class="lab-table">
        <thead>
          <tr>
            <th scope="col">{t('lab:room.who')}</th>
            <th scope="col">{t('lab:signIn.trainee')}</th>
            <th scope="col">{t('lab:signIn.pin')}</th>
          </tr>
        </thead>
        <tbody>
          {pins.map(({ code, name, pin }) => (
            <tr key={code}>
              <th scope="row">{name || code}</th>
              <td data-column={t('lab:signIn.trainee')}>{code}</td>
              <td class="lab-pin" data-column={t('lab:signIn.pin')} data-pin={code}>
                {pin}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <div class="lab-buttons">
        <button type="button" class="button" onClick={() => print()}>
          {t('settings:print')}
        </button>
        <button type="button" class="button" onClick={onDone}>
          {t('lab:pins.done')}
        </button>
      </div>
    </section>
  );
}
