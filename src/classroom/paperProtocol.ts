/**
 * What a trainee's browser and the lab host say to each other about exercises and exams. Items are drawn on the host: what crosses is what
 * somebody needs to choose, one question at a time; which choice is right, and all from which it could be drawn anew, stays there.
 */
import { z } from 'zod';
import type { Action } from '../attempt/actions.ts';
import type { DrillSkill, Sentence } from '../drills/item.ts';
import type { Said } from '../drills/said.ts';
import type { Point } from '../rig/points.ts';
import { codeSchema } from './assignment.ts';

/** An item's public face. */
export interface QuestionFace {
  /** The kind's id. */
  readonly kind: string;
  readonly skill: DrillSkill;
  /** The rig's id. It is shown as it left the factory: in which house it hangs would say which item it is. */
  readonly rig: string;
  /** Where somebody stands, and what they have open and in hand: ways, covers and bodies alone, from the door. */
  readonly moves: readonly Action[];
  readonly ask: Sentence;
  readonly given: readonly Sentence[];
  readonly choices: readonly Said[];
  /** Points that the picture marks. */
  readonly marked: readonly Point[];
}

/** A paper's questions are no more than an exam may have (exam.ts), and a question's choices no more than an item may (item.ts). */
const question = z.int().min(0).max(119);
const choice = z.int().min(0).max(9);
const ending = z.enum(['closed', 'timeOver']);

/** With `open` of protocol.ts, whose item is a paper's place. */
export const paperMessages = [
  /** A question of the paper that is open. */
  z.strictObject({ kind: z.literal('ask'), question }),
  /** Chooses, or chooses otherwise; a message that is sent again, because no answer came, is answered again. */
  z.strictObject({ kind: z.literal('choose'), question, choice }),
  z.strictObject({ kind: z.literal('handIn') }),
] as const;

/** @param clock what is left of the time, as all messages have it */
export const paperAnswers = <Clock extends z.ZodRawShape>(clock: Clock) =>
  [
    /** The answer to `open` where the item is a paper. */
    z.strictObject({
      kind: z.literal('paper'),
      assignment: codeSchema,
      item: z.int().min(0).max(29),
      /** Which attempt, from 1. */
      number: z.int().min(1),
      /** What is kept, by question; null where nothing was chosen. */
      choices: z.array(choice.nullable()),
      over: ending.optional(),
      ...clock,
    }),
    /** Null: the question's system has nothing to ask, and it does not count. */
    z.strictObject({
      kind: z.literal('question'),
      question,
      face: z.custom<QuestionFace>((value) => typeof value === 'object' && value !== null).nullable(),
    }),
    /** The choice is on the disk. */
    z.strictObject({ kind: z.literal('chosen'), question, choice }),
    /** The open paper is handed in, or its time is over. What it is worth is the instructor's. */
    z.strictObject({ kind: z.literal('paperOver'), how: ending }),
  ] as const;
