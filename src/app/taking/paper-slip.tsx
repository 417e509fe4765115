import { useState } from 'preact/hooks';
import type { Paper } from '../../classroom/papers.ts';
import { paperTitle } from '../paper-words.ts';
import { go, questionsHref } from '../router.ts';
import { clock, number, t } from '../words.ts';
import { EndedPaper } from './ended-paper.tsx';
import { paperAbout } from './paper-about.ts';
import { begunPaper } from './sheet.ts';
import { hoursAt, itemStatus, rulesFor, tellsAtOnce } from './status.ts';
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
  const { running, ended, next, left } = status;
  const start = async () => {
    if (next === undefined) return;
    const began = new Date(wallClock() * 1000).toISOString();
    const done = await keepPaperBegun(id, begunPaper(paper, next, began));
    if (done === 'kept') go(questionsHref(id, item));
    else setWrong(t(done === 'full' ? 'keeping:full' : 'keeping:denied'));
  };
  const state = running !== undefined ? 'running' : ended.length > 0 ? 'ended' : 'fresh';
  return (
    <article class="slip take-item" aria-labelledby={`item-${item}`} data-state={state}>
      <h3 id={`item-${item}`}>{t('take:item.title', { number: number(item + 1), title: paperTitle(paper.setting) })}</h3>
      <p>{paperAbout(paper)}</p>
      <p>{t(tellsAtOnce(assignment, paper) ? 'take:paper.told' : 'take:paper.quiet')}</p>
      <p data-testid={`state-${item}`}>
        {t(`take:item.${state}`, {
          used: number(ended.length),
          of: number(assignment.attempts),
          number: number(running?.number ?? 1),
        })}
        {left !== undefined && ` ${t('take:item.left', { time: clock(left) })}`}
      </p>
      <p class="progress-buttons">
        {running !== undefined && (left === undefined || left > 0) && (
          <a class="button act" href={questionsHref(id, item)}>
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
        {next !== undefined && minutes !== undefined && <span>{t('take:item.clockStarts', { count: minutes })}</span>}
        {state === 'fresh' && next === undefined && <span>{t(`take:hours.${hoursAt(assignment, now)}`)}</span>}
      </p>
      {wrong !== '' && <p role="alert">{wrong}</p>}
      {ended.map((each) => (
        <EndedPaper key={each.number} taken={taken} paper={paper} kept={each} status={status} now={now} onChange={onChange} />
      ))}
    </article>
  );
}
