import type { Assignment } from '../../classroom/assignment.ts';
import { sharesOf } from '../../classroom/weights.ts';
import { clock, number, percent, t } from '../words.ts';
import { hoursAt, type ItemStatus } from './status.ts';

interface Props {
  readonly assignment: Assignment;
  /** Place in the assignment. */
  readonly item: number;
  readonly status: ItemStatus;
  /** By the clock on the wall for one attempt; no limit where left out. */
  readonly minutes: number | undefined;
  readonly now: number;
  /** Where the attempt under way goes on. */
  readonly href: string;
  readonly onStart: () => void;
  readonly onTimeOver: () => void;
}

/** How far somebody is with an item, and what can be done with it now. */
export function ItemState({ assignment, item, status, minutes, now, href, onStart, onTimeOver }: Props) {
  const { running, ended, next, left } = status;
  const state = stateOf(status);
  const share = sharesOf(assignment)?.[item];
  return (
    <>
      {share !== undefined && <p data-testid={`share-${item}`}>{t('take:item.share', { share: percent(share) })}</p>}
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
          <a class="button act" href={href}>
            {t('take:item.resume')}
          </a>
        )}
        {running !== undefined && left === 0 && (
          <button type="button" class="button" onClick={onTimeOver}>
            {t('take:item.timeOver')}
          </button>
        )}
        {next !== undefined && (
          <button type="button" class={ended.length === 0 ? 'button act' : 'button'} onClick={onStart}>
            {t(ended.length === 0 ? 'take:item.begin' : 'take:item.again', { number: number(next) })}
          </button>
        )}
        {next !== undefined && minutes !== undefined && <span>{t('take:item.clockStarts', { count: minutes })}</span>}
        {state === 'fresh' && next === undefined && <span>{t(`take:hours.${hoursAt(assignment, now)}`)}</span>}
      </p>
    </>
  );
}

export const stateOf = ({ running, ended }: Props['status']): 'running' | 'ended' | 'fresh' =>
  running !== undefined ? 'running' : ended.length > 0 ? 'ended' : 'fresh';
