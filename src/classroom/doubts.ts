import type { Action } from '../attempt/actions.ts';
import type { Assignment } from './assignment.ts';
import { secondsOf } from './instant.ts';
import { ownSeal } from './seal.ts';

export const DOUBTS = [
  /** Made by a Bellwire whose rules are others. */
  'otherRules',
  /** Not this assignment, or one that was changed since. */
  'otherAssignment',
  /** The item is none of the assignment's. */
  'noItem',
  /** Not the ticket that this trainee draws. */
  'otherTicket',
  /** The rig is wired or labelled otherwise than here. */
  'otherRig',
  /** The log is another trainee's. */
  'othersLog',
  /** The log is of another of the trainee's own tickets or attempts. */
  'otherWorksLog',
  /** The log is no log at all. */
  'brokenLog',
  /** A step cannot be taken there. */
  'refused',
  'removed',
  'added',
  'reordered',
  'changed',
  /** A step's second on the job is another. */
  'retimed',
  /** The end is missing. */
  'truncated',
  /** What the seal says was seen is not what this ticket shows. */
  'seenOtherwise',
  /** The score that it says was shown is not what the log is worth. */
  'scoreEdited',
  /** Something else that it says was changed after it was sealed. */
  'edited',
  /** The notes of the clock cannot be. */
  'impossibleTimes',
  /** Longer than the assignment allows. */
  'overTime',
  'outsideHours',
  'tooManyAttempts',
  /** Another file says that it is this very attempt, and holds something else. */
  'handedInTwice',
  /** As another trainee's, by more than chance explains. */
  'sameLog',
  /** Not the questions that this trainee gets. */
  'otherPaper',
  /** Other answers than there are questions. */
  'brokenAnswers',
  /** As another trainee's, wrong ones and all. */
  'sameAnswers',
] as const;
export type DoubtCode = (typeof DOUBTS)[number];

/** Why a submission is not simply believed: `code` is a key in locales/, `step` the first step that it is about. */
export interface Doubt {
  readonly code: DoubtCode;
  readonly step?: number | undefined;
  readonly values: Readonly<Record<string, string | number>>;
}

export function doubt(code: DoubtCode, step?: number, values: Doubt['values'] = {}): Doubt {
  return { code, ...(step === undefined ? {} : { step }), values };
}

/** Nobody takes ten steps within this many seconds: a hand that presses one button as fast as it can comes to six or seven a second; common practice, no source. */
const TEN_STEPS_SECONDS = 1;
/** Clocks differ, and handing in takes a moment. */
const GRACE_SECONDS = 120;

/** When something was done, by the trainee's clock: seconds from the beginning to each step. */
interface Timed {
  readonly stamps: readonly number[];
  readonly began: string;
  readonly attempt: number;
}
type Limits = Pick<Assignment, 'attempts' | 'minutes' | 'opens' | 'closes'>;

/** Doubts about when it was done. */
export function timeDoubts(submission: Timed, assignment: Limits, steps: number): Doubt[] {
  const { stamps, began, attempt } = submission;
  const found: Doubt[] = [];
  if (attempt > assignment.attempts) found.push(doubt('tooManyAttempts', undefined, { attempt, allowed: assignment.attempts }));
  const backwards = stamps.findIndex((stamp, index) => stamp < (stamps[index - 1] ?? 0));
  const rushed = stamps.findIndex((stamp, index) => index >= 10 && stamp - (stamps[index - 10] ?? 0) < TEN_STEPS_SECONDS);
  if (stamps.length !== steps) found.push(doubt('impossibleTimes', Math.min(stamps.length, steps) + 1));
  else {
    const first = [backwards, rushed].filter((index) => index >= 0);
    if (first.length > 0) found.push(doubt('impossibleTimes', Math.min(...first) + 1));
  }
  const took = stamps.at(-1) ?? 0;
  if (assignment.minutes !== undefined && took > assignment.minutes * 60 + GRACE_SECONDS)
    found.push(doubt('overTime', undefined, { minutes: Math.ceil(took / 60), allowed: assignment.minutes }));
  const from = secondsOf(began);
  const early = assignment.opens !== undefined && from < secondsOf(assignment.opens) - GRACE_SECONDS;
  const late = assignment.closes !== undefined && from + took > secondsOf(assignment.closes) + GRACE_SECONDS;
  if (early || late) found.push(doubt('outsideHours'));
  return found;
}

/** What was done to a list of steps since it was sealed, by the seals of the actions alone; undefined where they agree. */
export function listDoubt(actions: readonly Action[], seals: readonly string[]): Doubt | undefined {
  const now = actions.map(ownSeal);
  const then = seals.map((seal) => seal.slice(0, 8));
  const first = now.findIndex((own, index) => own !== then[index]);
  const at = first < 0 ? Math.min(now.length, then.length) : first;
  if (first < 0 && now.length === then.length) return undefined;
  if (first < 0 && now.length < then.length) return doubt('truncated', now.length);
  if (isWithin(now, then)) return doubt('removed', at + 1);
  if (isWithin(then, now)) return doubt('added', at + 1);
  if (now.length === then.length && [...now].sort().join() === [...then].sort().join()) return doubt('reordered', at + 1);
  return doubt('changed', at + 1);
}

/** Whether all of `few` stand in `many`, in order. */
function isWithin(few: readonly string[], many: readonly string[]): boolean {
  let at = 0;
  for (const each of many) if (each === few[at]) at += 1;
  return at === few.length;
}
