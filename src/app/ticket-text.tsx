import type { RigData } from '../rig/schema.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { rigOf } from './library.ts';
import { length, temperature } from './units.ts';
import { complaintText, hasWords, t } from './words.ts';

/** Codes of the control's status light, as its door has them printed. */
const LIGHT_CODES = ['steady', '1', '2', '4', '5', '6', '7'] as const;

const platesOf = (rig: RigData) => rig.parts.filter((part) => hasWords(`rig:plate.${part.id}`));

/** What is printed on the nameplates of a rig's parts, and its cables. */
export function Plates({ rig }: { readonly rig: RigData }) {
  return (
    <dl class="ticket-facts">
      {platesOf(rig).map((part) => (
        <div key={part.id}>
          <dt>{t(`rig:part.${part.id}`)}</dt>
          <dd>{t(`rig:plate.${part.id}`)}</dd>
        </div>
      ))}
      {rig.cables.map(({ id }) => (
        <div key={id}>
          <dt>{t(`rig:cable.${id}`)}</dt>
          <dd>{cableText(rig, id)}</dd>
        </div>
      ))}
    </dl>
  );
}

/** How long a cable is, and how many conductors it has. */
function cableText(rig: RigData, cable: string): string {
  const conductors = rig.wires.filter((wire) => wire.cable === cable);
  const feet = Math.max(...conductors.map((wire) => wire.feet));
  return t('app:ticket.cable', { count: conductors.length, length: length(feet) });
}

/** What the ticket says; shared by the ticket page and the bench. */
export function TicketText({ ticket }: { readonly ticket: Ticket }) {
  const rig = rigOf(ticket);
  return (
    <>
      <blockquote class="complaint">{complaintText(ticket)}</blockquote>
      <dl class="ticket-facts">
        <dt>{t('app:ticket.site')}</dt>
        <dd>{t(`ticket:${ticket.id}.site`)}</dd>
        <dt>{t('app:ticket.system')}</dt>
        <dd>{t(`rig:name.${ticket.rig}`)}</dd>
        <dt>{t('app:ticket.weather')}</dt>
        <dd>
          {t('app:ticket.outside', { temperature: temperature(ticket.weather.outdoorFahrenheit ?? rig.room.outdoorFahrenheit) })}
        </dd>
        <dt>{t('app:ticket.allowed')}</dt>
        <dd>{t('app:ticket.allows')}</dd>
      </dl>
      {platesOf(rig).length > 0 && (
        <details class="light-codes">
          <summary>{t('app:ticket.plates')}</summary>
          <Plates rig={rig} />
        </details>
      )}
      <details class="light-codes">
        <summary>{t('app:ticket.codes')}</summary>
        <dl class="ticket-facts">
          {LIGHT_CODES.map((code) => (
            <div key={code}>
              <dt>{t(code === 'steady' ? 'app:ticket.steady' : 'app:ticket.flashes', { count: Number(code) || 0 })}</dt>
              <dd>{t(`parts:code.${code}`)}</dd>
            </div>
          ))}
        </dl>
      </details>
    </>
  );
}
