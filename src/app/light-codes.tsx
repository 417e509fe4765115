import type { RigData } from '../rig/schema.ts';
import { assembledOf } from './library.ts';
import { partName, t } from './words.ts';

/** What each status light's flashes mean, as its maker prints them on the door. @param place of the lights that stand there; of all where left out */
export function LightCodes({ rig, place }: { readonly rig: RigData; readonly place?: string }) {
  return assembledOf(rig)
    .parts.filter(({ codes, data }) => Object.keys(codes).length > 0 && (place === undefined || data.place === place))
    .map((part) => (
      <details key={part.id} class="light-codes">
        <summary>{t('app:ticket.codes', { part: partName(part.id) })}</summary>
        <dl class="ticket-facts">
          <div>
            <dt>{t('app:ticket.steady')}</dt>
            <dd>{t('parts:code.steady')}</dd>
          </div>
          {Object.entries(part.codes)
            .sort(([, a], [, b]) => a - b)
            .map(([code, count]) => (
              <div key={code}>
                <dt>{t('app:ticket.flashes', { count })}</dt>
                <dd>{t(`parts:code.${code}`)}</dd>
              </div>
            ))}
        </dl>
      </details>
    ));
}
