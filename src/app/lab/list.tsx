import type { Listed } from '../../classroom/protocol.ts';
import { number, t } from '../words.ts';
import { failureText } from './api.ts';
import { moment } from './moment.ts';
import { SeatHead } from './seat-head.tsx';
import type { Seat } from './seat-state.ts';
import { useStore } from './store.ts';

/** What there is to do, and how far it is. */
export function AssignmentList({ seat }: { readonly seat: Seat }) {
  const { assignments, failed, signedIn, paused } = useStore(seat);
  return (
    <>
      <SeatHead seat={seat} />
      <main class="sheet lab">
        <h1 tabIndex={-1}>{t('lab:list.title', { name: signedIn?.name ?? '' })}</h1>
        <div role="alert">
          {failed !== undefined && <p class="lab-wrong">{failureText(failed)}</p>}
          {paused && <p class="lab-why">{t('lab:paused.title')}</p>}
        </div>
        {assignments.length === 0 && <p>{t('lab:list.none')}</p>}
        {assignments.map((each) => (
          <AssignmentSlip key={each.id} assignment={each} seat={seat} />
        ))}
      </main>
    </>
  );
}

function AssignmentSlip({ assignment, seat }: { readonly assignment: Listed; readonly seat: Seat }) {
  const { id, title, note, mode, attempts, minutes, opens, closes, isOpen, items, atHome } = assignment;
  return (
    <section class="slip lab-assignment" aria-labelledby={`assignment-${id}`}>
      <h2 id={`assignment-${id}`}>{title}</h2>
      {note !== undefined && <p class="lab-note">{note}</p>}
      <ul class="lab-terms">
        <li>{t(`app:mode.${mode}`)}</li>
        <li>{t('lab:list.attempts', { count: attempts })}</li>
        {minutes !== undefined && <li>{t('lab:list.minutes', { count: minutes })}</li>}
        {opens !== undefined && <li>{t('lab:list.opens', { when: moment(opens) })}</li>}
        {closes !== undefined && <li>{t('lab:list.closes', { when: moment(closes) })}</li>}
        {!isOpen && <li>{t('lab:list.closedNow')}</li>}
      </ul>
      <ol class="lab-items">
        {items.map((each) => (
          <ItemRow key={each.item} item={each} assignment={assignment} seat={seat} />
        ))}
      </ol>
      {atHome > 0 && <p class="lab-why">{t('lab:list.atHome')}</p>}
    </section>
  );
}

interface RowProps {
  readonly item: Listed['items'][number];
  readonly assignment: Listed;
  readonly seat: Seat;
}

function ItemRow({ item: { item, rig, used, state }, assignment, seat }: RowProps) {
  const { id, isOpen, attempts } = assignment;
  const isOver = state === 'closed' || state === 'timeOver';
  const title = t('lab:list.ticket', { number: number(item + 1) });
  const open = (fresh: boolean) => () => seat.openItem(id, item, fresh);
  const named = (words: string) => t('lab:list.named', { what: words, title, assignment: assignment.title });
  return (
    <li>
      <div>
        <b>{title}</b>
        <span>{t(`rig:name.${rig}`)}</span>
      </div>
      <span class="lab-state">
        {t(`lab:state.${state}`)}
        {used > 0 && attempts > 1 && ` · ${t('lab:list.used', { used: number(used), of: number(attempts) })}`}
      </span>
      <div class="lab-buttons">
        {(isOver || isOpen) && (
          <button
            type="button"
            class={isOver ? 'button' : 'button act'}
            aria-label={named(t(`lab:open.${state}`))}
            onClick={open(false)}
          >
            {t(`lab:open.${state}`)}
          </button>
        )}
        {isOver && isOpen && used < attempts && (
          <button type="button" class="button act" aria-label={named(t('lab:open.fresh'))} onClick={open(true)}>
            {t('lab:open.fresh')}
          </button>
        )}
      </div>
    </li>
  );
}
