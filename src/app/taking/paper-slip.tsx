import { useState } from 'preact/hooks';
import type { Paper } from '../../classroom/papers.ts';
import { paperName } from '../paper-words.ts';
import { go, questionsHref } from '../router.ts';
import { number, t } from '../words.ts';
import { EndedPaper } from './ended-paper.tsx';
import { ItemState, stateOf } from './item-state.tsx';
import { paperAbout } from './paper-about.ts';
import { begunPaper } from './sheet.ts';
import { itemStatus, rulesFor, tellsAtOnce } from './status.ts';
import { keepPaperBegun } from './store.ts';
import { type Taken, wallClock } from './use-assigned.ts';

interface Props {
  readonly taken: Taken;
  readonly paper: Paper;
  readonly now: number;
  readonly onChange: () => Promise<void>;
}

/** One paper: what it asks for, how far it is, and what can be done with it now. */
export function PaperSlip({ taken, paper, now, onChange }: Props) {
  const [wrong, setWrong] = useState('');
  const { id, assignment } = taken.assigned;
  const { item, minutes } = paper;
  const rules = rulesFor(assignment, paper);
  const status = itemStatus(
    rules,
    taken.keptPapers.filter((each) => each.item === item),
    now,
  );
  const { ended, next } = status;
  const start = async () => {
    if (next === undefined) return;
    const began = new Date(wallClock() * 1000).toISOString();
    const done = await keepPaperBegun(id, begunPaper(paper, next, began));
    if (done === 'kept') go(questionsHref(id, item));
    else setWrong(t(done === 'full' ? 'keeping:full' : 'keeping:denied'));
  };
  return (
    <article class="slip take-item" aria-labelledby={`item-${item}`} data-state={stateOf(status)}>
      <h3 id={`item-${item}`}>{t('take:item.title', { number: number(item + 1), title: paperName(paper.setting) })}</h3>
      <p>{paperAbout(paper)}</p>
      <p>{t(tellsAtOnce(assignment, paper) ? 'take:paper.told' : 'take:paper.quiet')}</p>
      <ItemState
        assignment={assignment}
        item={item}
        status={status}
        minutes={minutes}
        now={now}
        href={questionsHref(id, item)}
        onStart={() => void start()}
        onTimeOver={() => void onChange()}
      />
      {wrong !== '' && <p role="alert">{wrong}</p>}
      {ended.map((each) => (
        <EndedPaper key={each.number} taken={taken} paper={paper} kept={each} status={status} now={now} onChange={onChange} />
      ))}
    </article>
  );
}
