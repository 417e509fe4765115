/** What a browser keeps of an assignment that came as a file or a link. Shapes only; no browser in here. */
import { z } from 'zod';
import { answersSchema } from '../../classroom/answers.ts';
import { assignmentSchema, codeSchema } from '../../classroom/assignment.ts';
import { instantSchema, secondsOf } from '../../classroom/instant.ts';
import { MOST_QUESTIONS } from '../../drills/exam.ts';

/** Longest words in the service report, characters. */
export const MOST_WORDS = 4000;
export const MOST_NAME = 80;

export const assignedSchema = z.strictObject({
  /** Follows from the assignment and the trainee's code: 32 hexadecimal digits. */
  id: z.string().regex(/^[0-9a-f]{32}$/),
  assignment: assignmentSchema,
  trainee: z.strictObject({ code: codeSchema, name: z.string().max(MOST_NAME) }),
  /** When the trainee agreed to what is kept and handed in. */
  agreed: instantSchema,
});
export type Assigned = z.infer<typeof assignedSchema>;

export const keptWorkSchema = z.strictObject({
  /** Place in the assignment's items. */
  item: z.int().min(0),
  /** Which attempt at it, from 1. */
  number: z.int().min(1),
  began: instantSchema,
  /** Seconds by the clock on the wall from there to each step; never going back. */
  stamps: z.array(z.number().min(0)),
  /** As the bench wrote it: it names the ticket by the id of the guest that it is here. */
  log: z.looseObject({ ticket: z.string() }),
  ended: z.enum(['closed', 'timeOver']).optional(),
  words: z.string().max(MOST_WORDS).optional(),
  /** The score that the trainee was shown. */
  shown: z.number().optional(),
  /** Whether its file was saved as it stands. */
  saved: z.boolean().optional(),
});
/** One attempt at one item. */
export type KeptWork = z.infer<typeof keptWorkSchema>;

const { choices, stamps, paper } = answersSchema.shape;

export const keptPaperSchema = z
  .strictObject({
    /** Place in the assignment: its papers are counted on from its items. */
    item: z.int().min(0),
    /** Which attempt at it, from 1. */
    number: z.int().min(1),
    began: instantSchema,
    /** Of the questions that were asked: another version of Bellwire may ask others. */
    paper,
    choices,
    /** By question: seconds by the clock on the wall from the beginning to that choice. */
    stamps,
    /** Places of the questions that the trainee wants to come back to. */
    flagged: z
      .array(
        z
          .int()
          .min(0)
          .max(MOST_QUESTIONS - 1),
      )
      .max(MOST_QUESTIONS),
    ended: z.enum(['closed', 'timeOver']).optional(),
    /** The share of points that the trainee was shown, and whether that passes an exam. */
    shown: z.number().optional(),
    passed: z.boolean().optional(),
    /** Whether its file was saved as it stands. */
    saved: z.boolean().optional(),
  })
  .refine(({ choices, stamps }) => choices.length === stamps.length);
/** One attempt at one paper. */
export type KeptPaper = z.infer<typeof keptPaperSchema>;

/** What attempts at tickets and at papers have alike. */
export type KeptAttempt = Pick<KeptWork, 'item' | 'number' | 'began' | 'ended' | 'shown' | 'saved'>;

/** The time of a step, seconds after the beginning, with `now` in seconds since 1970: a clock that was set back does not turn the order round. */
export function stampAt(work: Pick<KeptWork, 'began' | 'stamps'>, now: number): number {
  const since = Math.round((now - secondsOf(work.began)) * 1000) / 1000;
  return Math.max(since, work.stamps.at(-1) ?? 0);
}
