import { z } from 'zod';
import { DRILL_SKILLS } from '../../drills/item.ts';
import { mine } from '../keeping/profile-now.ts';
import { type Kept, read, tryTransact } from '../keeping/store.ts';

const blueprintId = z.string().regex(/^[a-z][A-Za-z0-9]{0,39}$/);
const instant = z.number().min(0).max(8.64e15);
const tally = z.strictObject({ skill: z.enum(DRILL_SKILLS), right: z.boolean() });

const runningSchema = z.strictObject({
  blueprint: blueprintId,
  lot: z.int().min(0).max(1_000_000),
  /** By this PC's clock, milliseconds since 1970. */
  began: instant,
  /** Seconds of the exam that were used up by the last answer: a clock that was set does not give any back. */
  used: z.number().min(0).max(1e6),
  /** By question: the place of the choice. */
  answers: z.array(z.int().min(0).max(9).nullable()).max(120),
  flagged: z.array(z.int().min(0).max(119)).max(120),
});
export type RunningExam = z.infer<typeof runningSchema>;

const sittingSchema = z.strictObject({
  blueprint: blueprintId,
  lot: runningSchema.shape.lot,
  when: instant,
  answers: z.array(tally).max(120),
});
/** An exam that was sat to its end. */
export type Sitting = z.infer<typeof sittingSchema>;

export const keptExamsSchema = z.strictObject({ running: runningSchema.optional(), sittings: z.array(sittingSchema).max(200) });
export type KeptExams = z.infer<typeof keptExamsSchema>;

/** Where a profile's exams lie on its shelf. */
export const EXAMS = 'exams';
const NONE: KeptExams = { sittings: [] };

export const examsIn = (value: unknown): KeptExams => keptExamsSchema.safeParse(value).data ?? NONE;

/** Exams of two places together: those that were sat, each once, and the one under way here before the one there. */
export function joinExams(here: KeptExams, there: KeptExams): KeptExams {
  const all = new Map([...there.sittings, ...here.sittings].map((each) => [`${each.when} ${each.lot}`, each]));
  const running = here.running ?? there.running;
  return { ...(running ? { running } : {}), sittings: [...all.values()].sort((a, b) => a.when - b.when).slice(-200) };
}

/** @throws when the browser denies its storage */
export const readExams = async (): Promise<KeptExams> => examsIn(await read(mine(EXAMS)));

export const keepExams = (change: (before: KeptExams) => KeptExams): Promise<Kept> =>
  tryTransact([mine(EXAMS)], (found) => new Map([[mine(EXAMS), change(examsIn(found.get(mine(EXAMS))))]]));
