import type { Ticket } from '../scenario/ticket.ts';
import { rigOf } from './library.ts';
import { hasWords, positionName, t } from './words.ts';

/** What the ticket says; shared by the ticket page and the bench. */
export function TicketText({ ticket }: { readonly ticket: Ticket }) {
  const rig = rigOf(ticket);
  const plates = rig.parts.filter((part) => hasWords(`rig:plate.${part.id}`));
  return (
    <>
      <blockquote class="complaint">{t(`ticket:${ticket.id}.complaint`)}</blockquote>
      <dl class="ticket-facts">
        <dt>{t('app:ticket.site')}</dt>
        <dd>{t(`ticket:${ticket.id}.site`)}</dd>
        <dt>{t('app:ticket.system')}</dt>
        <dd>{t(`rig:name.${ticket.rig}`)}</dd>
        {plates.map((part) => (
          <div key={part.id}>
            <dt>{t(`rig:part.${part.id}`)}</dt>
            <dd>{t(`rig:plate.${part.id}`)}</dd>
          </div>
        ))}
        <dt>{t('app:ticket.weather')}</dt>
        <dd>
          {t('app:ticket.outside', { temperature: positionName(ticket.weather.outdoorFahrenheit ?? rig.room.outdoorFahrenheit) })}
        </dd>
        <dt>{t('app:ticket.allowed')}</dt>
        <dd>{t('app:ticket.allows')}</dd>
      </dl>
      {hasWords(`ticket:${ticket.id}.tasks`) && <p>{t(`ticket:${ticket.id}.tasks`)}</p>}
    </>
  );
}
