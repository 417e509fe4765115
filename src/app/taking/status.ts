/** Where a trainee stands in an assignment. Moments are seconds since 1970. */
import type { Assignment } from '../../classroom/assignment.ts';
import { secondsOf } from '../../classroom/instant.ts';
import type { Paper } from '../../classroom/papers.ts';
import type { KeptAttempt } from './records.ts';

type Rules = Pick<Assignment, 'mode' | 'attempts' | 'minutes' | 'opens' | 'closes'>;

/** The rules for a paper: an exam has minutes of its own. */
export const rulesFor = (assignment: Assignment, { minutes }: Pick<Paper, 'minutes'>): Rules => ({ ...assignment, minutes });

/** Whether each answer is told at once, and so the first one counts: exercises where nothing is graded. */
export const tellsAtOnce = ({ mode }: Pick<Rules, 'mode'>, { setting }: Pick<Paper, 'setting'>): boolean =>
  setting.kind === 'drills' && mode !== 'graded';

export function hoursAt({ opens, closes }: Rules, now: number): 'early' | 'open' | 'over' {
  if (opens !== undefined && now < secondsOf(opens)) return 'early';
  return closes !== undefined && now >= secondsOf(closes) ? 'over' : 'open';
}

/** When an attempt must be over: its minutes are up, or the hours are; undefined where nothing limits it. */
export function deadlineOf({ minutes, closes }: Rules, { began }: Pick<KeptAttempt, 'began'>): number | undefined {
  const limits = [
    ...(minutes === undefined ? [] : [secondsOf(began) + minutes * 60]),
    ...(closes === undefined ? [] : [secondsOf(closes)]),
  ];
  return limits.length === 0 ? undefined : Math.min(...limits);
}

/** The attempt as it stands now: one whose time ran out while nobody looked is over. */
export function settled<Kept extends KeptAttempt>(rules: Rules, work: Kept, now: number): Kept {
  const deadline = deadlineOf(rules, work);
  return work.ended === undefined && deadline !== undefined && now >= deadline ? { ...work, ended: 'timeOver' } : work;
}

export interface ItemStatus<Kept extends KeptAttempt = KeptAttempt> {
  readonly running: Kept | undefined;
  /** In order of their numbers. */
  readonly ended: readonly Kept[];
  /** Number of the attempt that may be begun now; undefined where none may. */
  readonly next: number | undefined;
  /** Until the running attempt must be over, seconds. */
  readonly left: number | undefined;
}

/** @param works attempts at one item, settled */
export function itemStatus<Kept extends KeptAttempt>(rules: Rules, works: readonly Kept[], now: number): ItemStatus<Kept> {
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
