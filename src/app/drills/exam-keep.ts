import { z } from 'zod';
import { type ExamSkill, MOST_QUESTIONS } from '../../drills/exam.ts';
import { MOST_TICKETS } from '../../drills/examBench.ts';
import { DRILL_SKILLS } from '../../drills/item.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { mine } from '../keeping/profile-now.ts';
import { EXAMS, type Kept, read, tryTransact } from '../keeping/store.ts';

const id = z.string().regex(/^[a-z][A-Za-z0-9]{0,39}$/);
/** Seconds; whoever comes back later than that finds their exam over as well. */
const MOST_USED = 1e6;
const MOST_PLACES = MOST_QUESTIONS + MOST_TICKETS;
const instant = z.number().min(0).max(8.64e15);
const tally = z.strictObject({ skill: z.enum(DRILL_SKILLS), right: z.boolean() });

/** A ticket as an exam sets it: no coach and no hints. */
export const examined = (ticket: Ticket): Ticket => ({ ...ticket, mode: 'graded' });

/** Work on a ticket; without a log nobody has been at its bench yet. What the log holds is checked when it is replayed. */
const workSchema = z.strictObject({
  ticket: id,
  log: z.looseObject({ steps: z.array(z.looseObject({ action: z.looseObject({ name: z.string() }) })) }).optional(),
});
export type ExamWork = z.infer<typeof workSchema>;

/** A ticket that was closed is answered, once and for all. */
export const isClosed = ({ log }: ExamWork): boolean => log?.steps.at(-1)?.action.name === 'close';

const runningSchema = z.strictObject({
  blueprint: id,
  lot: z.int().min(0).max(1_000_000),
  /** By this PC's clock, milliseconds since 1970. */
  began: instant,
  /** Seconds of the exam that were used up by the last answer: a clock that was set does not give any back. */
  used: z.number().min(0).max(MOST_USED),
  /** By question: the place of the choice. The paper has as many questions. */
  answers: z.array(z.int().min(0).max(9).nullable()).max(MOST_QUESTIONS),
  /** Places: the questions', and after them the tickets'. */
  flagged: z
    .array(
      z
        .int()
        .min(0)
        .max(MOST_PLACES - 1),
    )
    .max(MOST_PLACES),
  /** The tickets, as they were drawn when the exam was begun; left out where it has none. */
  bench: z.array(workSchema).max(MOST_TICKETS).optional(),
});
export type RunningExam = z.infer<typeof runningSchema>;

/** Seconds of an exam that are used up: its clock runs on while nobody is at it. @param now milliseconds since 1970 */
export const usedBy = ({ began, used }: Pick<RunningExam, 'began' | 'used'>, now: number): number =>
  Math.min(MOST_USED, Math.max(used, (now - began) / 1000));

/** What of an exam has no answer: its questions but those that fell out (null), and its tickets that are not closed. */
export const unanswered = (items: readonly unknown[], { answers, bench = [] }: Pick<RunningExam, 'answers' | 'bench'>) => ({
  questions: items.filter((each, place) => each !== null && answers[place] === null).length,
  tickets: bench.filter((work) => !isClosed(work)).length,
});

const benchedSchema = z.strictObject({
  ticket: id,
  right: z.boolean(),
  /** Of its debrief; null where it was not closed. */
  points: z.number().min(0).max(100).nullable(),
});
/** What a ticket came to. */
export type Benched = z.infer<typeof benchedSchema>;

const sittingSchema = z.strictObject({
  blueprint: id,
  lot: runningSchema.shape.lot,
  when: instant,
  answers: z.array(tally).max(MOST_QUESTIONS),
  bench: z.array(benchedSchema).max(MOST_TICKETS).optional(),
});
/** An exam that was sat to its end. */
export type Sitting = z.infer<typeof sittingSchema>;

/** All that counts in a sitting: its questions, and each ticket as one more. */
export const countedIn = ({ answers, bench = [] }: Sitting): readonly { readonly skill: ExamSkill; readonly right: boolean }[] => [
  ...answers,
  ...bench.map(({ right }) => ({ skill: 'bench' as const, right })),
];

export const keptExamsSchema = z.strictObject({ running: runningSchema.optional(), sittings: z.array(sittingSchema).max(200) });
export type KeptExams = z.infer<typeof keptExamsSchema>;

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
