/** Where a trainee stands in an assignment. Moments are seconds since 1970. */
import type { Assignment } from '../../classroom/assignment.ts';
import { secondsOf } from '../../classroom/instant.ts';
import type { KeptWork } from './records.ts';

type Rules = Pick<Assignment, 'mode' | 'attempts' | 'minutes' | 'opens' | 'closes'>;

export function hoursAt({ opens, closes }: Rules, now: number): 'early' | 'open' | 'over' {
  if (opens !== undefined && now < secondsOf(opens)) return 'early';
  return closes !== undefined && now >= secondsOf(closes) ? 'over' : 'open';
}

/** When an attempt must be over: its minutes are up, or the hours are; undefined where nothing limits it. */
export function deadlineOf({ minutes, closes }: Rules, { began }: Pick<KeptWork, 'began'>): number | undefined {
  const limits = [
    ...(minutes === undefined ? [] : [secondsOf(began) + minutes * 60]),
    ...(closes === undefined ? [] : [secondsOf(closes)]),
  ];
  return limits.length === 0 ? undefined : Math.min(...limits);
}

/** The attempt as it stands now: one whose time ran out while nobody looked is over. */
export function settled(rules: Rules, work: KeptWork, now: number): KeptWork {
  const deadline = deadlineOf(rules, work);
  return work.ended === undefined && deadline !== undefined && now >= deadline ? { ...work, ended: 'timeOver' } : work;
}

export interface ItemStatus {
  readonly running: KeptWork | undefined;
  /** In order of their numbers. */
  readonly ended: readonly KeptWork[];
  /** Number of the attempt that may be begun now; undefined where none may. */
  readonly next: number | undefined;
  /** Until the running attempt must be over, seconds. */
  readonly left: number | undefined;
}

/** @param works attempts at one item, settled */
export function itemStatus(rules: Rules, works: readonly KeptWork[], now: number): ItemStatus {
  const running = works.find((each) => each.ended === undefined);
  const ended = works.filter((each) => each.ended !== undefined).sort((a, b) => a.number - b.number);
  const used = Math.max(0, ...works.map((each) => each.number));
  const may = running === undefined && used < rules.attempts && hoursAt(rules, now) === 'open';
  const deadline = running && deadlineOf(rules, running);
  return {
    running,
    ended,
    next: may ? used + 1 : undefined,
    left: deadline === undefined ? undefined : Math.max(0, deadline - now),
  };
}

/** The fault and the way to it are told where nothing is graded, and after the instructor's hours: nobody can use them any more. */
export const tellsDebrief = (rules: Rules, now: number): boolean => rules.mode !== 'graded' || hoursAt(rules, now) === 'over';

/** The points are told with the debrief, and in graded mode also once no attempt at the item is left. */
export function tellsScore(rules: Rules, { ended }: Pick<ItemStatus, 'ended'>, now: number): boolean {
  return tellsDebrief(rules, now) || ended.some((each) => each.number >= rules.attempts);
}
