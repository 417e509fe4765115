import type { Listed } from '../../classroom/protocol.ts';
import { paperName } from '../paper-words.ts';
import { number, percent, t } from '../words.ts';
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

function paperText({ questions, minutes }: Listed['papers'][number]): string {
  const count = t('lab:list.questions', { count: questions });
  return minutes === undefined ? count : `${count} · ${t('lab:list.time', { count: minutes })}`;
}

function AssignmentSlip({ assignment, seat }: { readonly assignment: Listed; readonly seat: Seat }) {
  const { id, title, note, mode, attempts, minutes, opens, closes, isOpen, items, papers } = assignment;
  return (
    <section class="slip lab-assignment" aria-labelledby={`assignment-${id}`}>
      <h2 id={`assignment-${id}`}>{title}</h2>
      {note !== undefined && <p class="lab-note">{note}</p>}
      <ul class="lab-terms">
        <li>{t(`app:mode.${mode}`)}</li>
        <li>{t(papers.length > 0 ? 'lab:list.each' : 'lab:list.attempts', { count: attempts })}</li>
        {minutes !== undefined && <li>{t('lab:list.minutes', { count: minutes })}</li>}
        {opens !== undefined && <li>{t('lab:list.opens', { when: moment(opens) })}</li>}
        {closes !== undefined && <li>{t('lab:list.closes', { when: moment(closes) })}</li>}
        {!isOpen && <li>{t('lab:list.closedNow')}</li>}
      </ul>
      <ol class="lab-items">
        {items.map((each) => (
          <Row
            key={each.item}
            title={t('lab:list.ticket', { number: number(each.item + 1) })}
            about={t(`rig:name.${each.rig}`)}
            item={each}
            assignment={assignment}
            seat={seat}
          />
        ))}
        {papers.map((each) => (
          <Row
            key={each.item}
            title={t('lab:list.paper', { number: number(each.item + 1), title: paperName(each.setting) })}
            about={paperText(each)}
            over={t('lab:paper.handedIn')}
            item={each}
            assignment={assignment}
            seat={seat}
          />
        ))}
      </ol>
    </section>
  );
}

interface RowProps {
  readonly title: string;
  readonly about: string;
  /** What the button says that opens an attempt that is over. */
  readonly over?: string;
  readonly item: Pick<Listed['items'][number], 'item' | 'share' | 'used' | 'state'>;
  readonly assignment: Listed;
  readonly seat: Seat;
}

function Row({ title, about, over, item: { item, share, used, state }, assignment, seat }: RowProps) {
  const { id, isOpen, attempts } = assignment;
  const isOver = state === 'closed' || state === 'timeOver';
  const opening = isOver && over !== undefined ? over : t(`lab:open.${state}`);
  const open = (fresh: boolean) => () => seat.openItem(id, item, fresh);
  const named = (words: string) => t('lab:list.named', { what: words, title, assignment: assignment.title });
  return (
    <li>
      <div>
        <b>{title}</b>
        <span>
          {about}
          {share !== undefined && ` · ${t('lab:list.share', { share: percent(share) })}`}
        </span>
      </div>
      <span class="lab-state">
        {t(`lab:state.${state}`)}
        {used > 0 && attempts > 1 && ` · ${t('lab:list.used', { used: number(used), of: number(attempts) })}`}
      </span>
      <div class="lab-buttons">
        {(isOver || isOpen) && (
          <button type="button" class={isOver ? 'button' : 'button act'} aria-label={named(opening)} onClick={open(false)}>
            {opening}
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
