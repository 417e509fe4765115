import { useState } from 'preact/hooks';
import { begin, logOf } from '../../attempt/attempt.ts';
import type { Work } from '../../classroom/draw.ts';
import { assignedHref, go } from '../router.ts';
import { siteOf, titleOf } from '../ticket-words.ts';
import { number, t } from '../words.ts';
import { EndedAttempt } from './ended.tsx';
import { ItemState, stateOf } from './item-state.tsx';
import { itemStatus } from './status.ts';
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
  const { ended, next } = status;
  const start = async () => {
    if (next === undefined) return;
    const id = guestFor(assigned, work, next);
    const log = logOf(begin({ ...work.ticket, id }, work.rig));
    const began = new Date(wallClock() * 1000).toISOString();
    const done = await keepBegun(assigned.id, { item: work.item, number: next, began, stamps: [], log });
    if (done === 'kept') go(assignedHref(assigned.id, work.item));
    else setWrong(t(done === 'full' ? 'keeping:full' : 'keeping:denied'));
  };
  return (
    <article class="slip take-item" aria-labelledby={`item-${work.item}`} data-state={stateOf(status)}>
      <h3 id={`item-${work.item}`}>{t('take:item.title', { number: number(work.item + 1), title: titleOf(guest) })}</h3>
      <p>{siteOf(guest)}</p>
      <ItemState
        assignment={assignment}
        item={work.item}
        status={status}
        minutes={assignment.minutes}
        now={now}
        href={assignedHref(assigned.id, work.item)}
        onStart={() => void start()}
        onTimeOver={() => void onChange()}
      />
      {wrong !== '' && <p role="alert">{wrong}</p>}
      {ended.map((each) => (
        <EndedAttempt key={each.number} taken={taken} work={work} kept={each} status={status} now={now} onChange={onChange} />
      ))}
    </article>
  );
}
