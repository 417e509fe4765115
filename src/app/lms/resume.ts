/** What a learning system keeps of an assignment, so that it goes on from another PC. No browser in here. */
import { z } from 'zod';
import type { AnswerResult } from '../../classroom/gradeAnswers.ts';
import { SKILLS, type Skill } from '../../scenario/skills.ts';
import { assignedSchema, type KeptPaper, type KeptWork, keptPaperSchema, keptWorkSchema } from '../taking/records.ts';
import type { Taken } from '../taking/use-assigned.ts';
import { packResume, unpackResume } from './session.ts';

/** What an attempt that is over came to. */
export interface Result {
  readonly total: number;
  readonly skills: readonly Skill[];
  /** Of a paper: each answer's skill, and whether it was right. */
  readonly answers?: readonly Pick<AnswerResult, 'skill' | 'right'>[];
}
/** By item and number of the attempt: {@link resultKey}. */
export type Results = Map<string, Result>;
export const resultKey = ({ item, number }: Pick<KeptWork, 'item' | 'number'>): string => `${item} ${number}`;

/** The attempt that counts: of equal ones the first; undefined where there is none. */
export const bestOfResults = (results: readonly Result[]): Result | undefined =>
  results.reduce<Result | undefined>((best, each) => (best === undefined || each.total > best.total ? each : best), undefined);

/** Thirty places, twenty attempts at each. */
const MOST_ATTEMPTS = 600;

const resumeSchema = z.strictObject({
  trainee: assignedSchema.shape.trainee,
  agreed: assignedSchema.shape.agreed,
  works: z.array(keptWorkSchema).max(MOST_ATTEMPTS),
  papers: z.array(keptPaperSchema).max(MOST_ATTEMPTS).default([]),
  /** Of attempts whose log was too much to be kept. */
  results: z
    .record(
      z.string().regex(/^\d{1,2} \d{1,2}$/),
      z.strictObject({ total: z.number().min(0).max(100), skills: z.array(z.enum(SKILLS)).max(SKILLS.length) }),
    )
    .default({}),
});
export type Resume = z.infer<typeof resumeSchema>;

/** What was kept; undefined for anything else. */
export const resumeIn = (text: string): Resume | undefined => resumeSchema.safeParse(unpackResume(text)).data;

/** Whether an attempt went on elsewhere after it was left here, or was never here. */
export function isFurther<Kept extends KeptWork | KeptPaper>(there: Kept, here: readonly Kept[]): boolean {
  const same = here.find((each) => each.item === there.item && each.number === there.number);
  if (same === undefined) return true;
  if (same.ended !== undefined || there.ended !== undefined) return same.ended === undefined;
  const last = ({ stamps }: Kept) => Math.max(0, ...stamps.map((each) => each ?? 0));
  return last(there) > last(same);
}

/**
 * All that is needed to go on, in as many characters as are kept: where it is too much, the logs of what is over go, and what they
 * came to stays.
 */
export function resumeOf({ assigned, kept, keptPapers }: Taken, results: Results, limit: number): string {
  const { trainee, agreed } = assigned;
  const all: Resume = { trainee, agreed, works: [...kept], papers: [...keptPapers], results: {} };
  const text = packResume(all);
  if (text.length <= limit) return text;
  const short = ({ log, stamps: _, ...work }: KeptWork): KeptWork => ({ ...work, stamps: [], log: { ...log, steps: [] } });
  const over = kept.filter(({ ended }) => ended !== undefined);
  const known = over.flatMap((work) => {
    const result = results.get(resultKey(work));
    return result === undefined ? [] : [[resultKey(work), { total: result.total, skills: [...result.skills] }] as const];
  });
  const works = kept.map((work) => (work.ended === undefined ? work : short(work)));
  return packResume({ ...all, works, results: Object.fromEntries(known) });
}
