/** Exercises and exams as an instructor puts them together. No browser in here. */
import { type Assignment, type AssignmentItem, MOST_ITEMS, type PaperSetting, placesOf } from '../../classroom/assignment.ts';
import { minutesFor } from '../../classroom/papers.ts';
import type { Blueprint } from '../../drills/exam.ts';
import { type Posted, ticketCount, ticketsOf } from '../../drills/examBench.ts';
import { DRILL_SKILLS, type DrillKind, type DrillSkill } from '../../drills/item.ts';
import { DRILL_KINDS } from '../../drills/kinds.ts';

const MOST_PAPERS = 10;
/** Lots of an exam. */
const LOTS = 1_000_000;
/** For one exercise; common practice, no source. */
export const EXERCISE_SECONDS = 40;

export type ExamSetting = Extract<PaperSetting, { kind: 'exam' }>;

/** How many more papers an assignment may have. */
export const roomFor = (assignment: Assignment): number =>
  Math.min(MOST_PAPERS - (assignment.papers?.length ?? 0), MOST_ITEMS - placesOf(assignment));

/**
 * An exam that ships, as it goes into an assignment: its questions alone, for bench tickets are tickets of the assignment. Of its time
 * they have their share by number.
 */
export function examPaper({ id, items, minutes, pass, skills, bench }: Blueprint): ExamSetting {
  const own = Math.ceil((minutes * items) / (items + ticketCount(bench)));
  return { kind: 'exam', exam: { id, items, minutes: own, pass, skills: { ...skills } } };
}

/** The bench tickets of an exam that ships, as an assignment's own: the same for everybody, and such as it does not have yet where there are some. */
export function benchTickets({ bench }: Blueprint, { items, seed }: Assignment, posted: readonly Posted[]): AssignmentItem[] {
  if (bench === undefined) return [];
  const known = new Set(items.flatMap((item) => (item.kind === 'shipped' ? [item.ticket] : [])));
  return ticketsOf(bench, posted, known, seed % LOTS).map((ticket) => ({ kind: 'shipped', ticket }));
}

/** The kinds by the skill that they ask for, in the skills' own order. */
export const KINDS_BY_SKILL: readonly { readonly skill: DrillSkill; readonly kinds: readonly DrillKind[] }[] = DRILL_SKILLS.flatMap(
  (skill) => {
    const kinds = DRILL_KINDS.filter((kind) => kind.skill === skill);
    return kinds.length === 0 ? [] : [{ skill, kinds }];
  },
);

/** These kinds with some in or out, in the order in which kinds are listed. */
export function ticked(chosen: readonly string[], ids: readonly string[], isIn: boolean): string[] {
  return DRILL_KINDS.map(({ id }) => id).filter((id) => (ids.includes(id) ? isIn : chosen.includes(id)));
}

/** A list with one of its members a place further up (-1) or down (1), as far as it goes. */
export function moved<T>(list: readonly T[], at: number, by: -1 | 1): T[] {
  const to = at + by;
  const next = [...list];
  const [one, other] = [next[at], next[to]];
  if (one === undefined || other === undefined) return next;
  next[at] = other;
  next[to] = one;
  return next;
}

export const questionsIn = (setting: PaperSetting): number => (setting.kind === 'exam' ? setting.exam.items : setting.count);

/** Minutes that a paper takes: an exam all that it may, exercises about so many, if nothing ends them before. */
export function minutesTaken(assignment: Assignment, setting: PaperSetting): number {
  const limit = minutesFor(assignment, setting);
  const about = setting.kind === 'exam' ? setting.exam.minutes : Math.ceil((setting.count * EXERCISE_SECONDS) / 60);
  return Math.min(about, limit ?? about);
}

/** What all papers of an assignment come to. */
export interface Load {
  readonly questions: number;
  /** Minutes that exams may take, undefined without one; that exercises take, likewise. */
  readonly exams: number | undefined;
  readonly drills: number | undefined;
}

export function loadOf(assignment: Assignment): Load {
  const { papers = [] } = assignment;
  const minutes = (kind: PaperSetting['kind']) => {
    const own = papers.filter((each) => each.kind === kind);
    return own.length === 0 ? undefined : own.reduce((sum, each) => sum + minutesTaken(assignment, each), 0);
  };
  return {
    questions: papers.reduce((sum, each) => sum + questionsIn(each), 0),
    exams: minutes('exam'),
    drills: minutes('drills'),
  };
}
