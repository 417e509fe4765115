import { useState } from 'preact/hooks';
import { begin, logOf } from '../../attempt/attempt.ts';
import type { Work } from '../../classroom/draw.ts';
import { assignedHref, go } from '../router.ts';
import { siteOf, titleOf } from '../ticket-words.ts';
import { clock, number, t } from '../words.ts';
import { EndedAttempt } from './ended.tsx';
import { hoursAt, itemStatus } from './status.ts';
import { keepBegun } from './store.ts';
import { guestFor, type Taken, wallClock } from './use-assigned.ts';

interface Props {
  readonly taken: Taken;
  readonly work: Work;
  readonly now: number;
  readonly onChange: () => Promise<void>;
}

/** One item: what it is, how far it is, and what can be done with it now. */
export function ItemSlip({ taken, work, now, onChange }: Props) {
  const [wrong, setWrong] = useState('');
  const { assigned, kept } = taken;
  const { assignment } = assigned;
  const status = itemStatus(
    assignment,
    kept.filter((each) => each.item === work.item),
    now,
  );
  const guest = guestFor(assigned, work, status.running?.number ?? status.next ?? Math.max(1, status.ended.length));
  const { running, ended, next, left } = status;
  const start = async () => {
    if (next === undefined) return;
    const id = guestFor(assigned, work, next);
    const log = logOf(begin({ ...work.ticket, id }, work.rig));
    const began = new Date(wallClock() * 1000).toISOString();
    const done = await keepBegun(assigned.id, { item: work.item, number: next, began, stamps: [], log });
    if (done === 'kept') go(assignedHref(assigned.id, work.item));
    else setWrong(t(done === 'full' ? 'keeping:full' : 'keeping:denied'));
  };
  const state = running !== undefined ? 'running' : ended.length > 0 ? 'ended' : 'fresh';
  return (
    <article class="slip take-item" aria-labelledby={`item-${work.item}`} data-state={state}>
      <h3 id={`item-${work.item}`}>{t('take:item.title', { number: number(work.item + 1), title: titleOf(guest) })}</h3>
      <p>{siteOf(guest)}</p>
      <p data-testid={`state-${work.item}`}>
        {t(`take:item.${state}`, {
          used: number(ended.length),
          of: number(assignment.attempts),
          number: number(running?.number ?? 1),
        })}
        {left !== undefined && ` ${t('take:item.left', { time: clock(left) })}`}
      </p>
      <p class="progress-buttons">
        {running !== undefined && (left === undefined || left > 0) && (
          <a class="button act" href={assignedHref(assigned.id, work.item)}>
            {t('take:item.resume')}
          </a>
        )}
        {running !== undefined && left === 0 && (
          <button type="button" class="button" onClick={() => void onChange()}>
            {t('take:item.timeOver')}
          </button>
        )}
        {next !== undefined && (
          <button type="button" class={ended.length === 0 ? 'button act' : 'button'} onClick={() => void start()}>
            {t(ended.length === 0 ? 'take:item.begin' : 'take:item.again', { number: number(next) })}
          </button>
        )}
        {next !== undefined && assignment.minutes !== undefined && (
          <span>{t('take:item.clockStarts', { count: assignment.minutes })}</span>
        )}
        {state === 'fresh' && next === undefined && <span>{t(`take:hours.${hoursAt(assignment, now)}`)}</span>}
      </p>
      {wrong !== '' && <p role="alert">{wrong}</p>}
      {ended.map((each) => (
        <EndedAttempt key={each.number} taken={taken} work={work} kept={each} status={status} now={now} onChange={onChange} />
      ))}
    </article>
  );
}
