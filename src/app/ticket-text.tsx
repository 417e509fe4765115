import type { Parameters } from '../parts/part.ts';
import { MAT_PLACE } from '../rig/points.ts';
import type { RigData } from '../rig/schema.ts';
import { assembledOf } from './library.ts';
import { LightCodes } from './light-codes.tsx';
import { siteOf } from './ticket-words.ts';
import { length, temperature } from './units.ts';
import type { JobFace } from './use-attempt.ts';
import { complaintText, hasWords, number, partName, t } from './words.ts';

const platesOf = (rig: RigData) =>
  assembledOf(rig).parts.filter((part) => part.data.place !== MAT_PLACE && hasWords(`parts:plate.${part.kind.kind}`));

/** Parameters as they are printed, numbers as the reader writes them. */
const printed = (params: Parameters) =>
  Object.fromEntries(Object.entries(params).map(([key, value]) => [key, typeof value === 'number' ? number(value) : value]));

/** What is printed on the nameplates of a rig's parts, and its cables. */
export function Plates({ rig }: { readonly rig: RigData }) {
  return (
    <dl class="ticket-facts">
      {platesOf(rig).map((part) => (
        <div key={part.id}>
          <dt>{partName(part.id)}</dt>
          <dd>{t(`parts:plate.${part.kind.kind}`, printed(part.params))}</dd>
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
export function TicketText({ ticket, rig }: { readonly ticket: JobFace; readonly rig: RigData }) {
  return (
    <>
      <blockquote class="complaint">{complaintText(ticket)}</blockquote>
      <dl class="ticket-facts">
        <dt>{t('app:ticket.site')}</dt>
        <dd>{siteOf(ticket.id, ticket.told)}</dd>
        <dt>{t('app:ticket.system')}</dt>
        <dd>{t(`rig:name.${ticket.rig}`)}</dd>
        <dt>{t('app:ticket.weather')}</dt>
        <dd>{t('app:ticket.outside', { temperature: temperature(ticket.weather.outdoorFahrenheit ?? rig.outdoorFahrenheit) })}</dd>
        <dt>{t('app:ticket.allowed')}</dt>
        <dd>{t('app:ticket.allows')}</dd>
      </dl>
      {platesOf(rig).length > 0 && (
        <details class="light-codes">
          <summary>{t('app:ticket.plates')}</summary>
          <Plates rig={rig} />
        </details>
      )}
      <LightCodes rig={rig} />
    </>
  );
}
