import type { Par } from '../score/debrief.ts';

export const GRADES = ['apprentice', 'journeyman', 'master'] as const;
/** How hard a ticket is, measured on its short way. */
export type Grade = (typeof GRADES)[number];

/**
 * Where the grades part, from the distribution over 66 tickets of seven rigs (thirds at 94 s and 208 s, 0.44 and 0.75 bits): a third of them have short ways up to `quickSeconds`, two thirds up
 * to `longSeconds`; in a third of them a step tells less than `littleBits`, in two thirds less than `muchBits`. A way is quick or long
 * by the clock on the job, and it is plain or dark by how much each of its steps tells.
 */
export const GRADE_FIGURES = { quickSeconds: 95, longSeconds: 210, littleBits: 0.45, muchBits: 0.75 } as const;

/** What a grade is measured by. */
export interface Measure {
  /** Of the short way, on the job. */
  readonly seconds: number;
  /** What a step of it tells, on average. */
  readonly bitsPerStep: number;
}

export function measureOf(par: Par): Measure {
  return { seconds: par.seconds, bitsPerStep: par.actions.length === 0 ? 0 : par.gainBits / par.actions.length };
}

/** 0, 1 or 2: by time and by what a step tells, each a third of the tickets that ship. Both together decide, and time comes first where they differ by one. */
export function gradeOf(par: Par): Grade {
  const { seconds, bitsPerStep } = measureOf(par);
  const { quickSeconds, longSeconds, littleBits, muchBits } = GRADE_FIGURES;
  const long = seconds <= quickSeconds ? 0 : seconds <= longSeconds ? 1 : 2;
  const dark = bitsPerStep >= muchBits ? 0 : bitsPerStep >= littleBits ? 1 : 2;
  const sum = 2 * long + dark;
  return sum <= 2 ? 'apprentice' : sum <= 4 ? 'journeyman' : 'master';
}
