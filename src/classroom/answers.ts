import { z } from 'zod';
import { MOST_QUESTIONS } from '../drills/exam.ts';
import { shapeError } from '../rig/errors.ts';
import { type Assignment, migrated } from './assignment.ts';
import { canonical, digestOf, hashOf } from './digest.ts';
import { digestSchema, HANDED } from './handed.ts';
import type { Paper } from './papers.ts';
import { RULES } from './seal.ts';
import type { Submission } from './submission.ts';

export const answersSchema = z.strictObject({
  format: z.literal('bellwire-answers'),
  ...HANDED,
  /** Of the questions that were asked. */
  paper: digestSchema,
  /** By question: the place of the choice, null where there is none. */
  choices: z.array(z.int().min(0).max(9).nullable()).max(MOST_QUESTIONS),
  /** By question: seconds by the clock from the beginning to that choice. */
  stamps: z.array(z.number().min(0).max(10_000_000).nullable()).max(MOST_QUESTIONS),
});

/** One finished attempt at a paper of an assignment, to be handed in. */
export type Answers = z.infer<typeof answersSchema>;

/** Checks the shape of what was handed in; nothing in it is believed. @throws DataError with the path inside the file */
export function loadAnswers(json: unknown): Answers {
  const parsed = answersSchema.safeParse(migrated(json));
  if (parsed.success) return parsed.data;
  throw shapeError(parsed.error.issues);
}

/** What closes an answer sheet: all that it says, but for the trainee's name, of this very paper. */
export function sealAnswers({ seal: _, trainee, ...rest }: Answers, code = trainee.code): string {
  return hashOf(`${code} ${canonical(rest)}`).slice(0, 32);
}

export interface Answered extends Pick<Answers, 'trainee' | 'attempt' | 'began' | 'ended'>, Partial<Pick<Answers, 'shown'>> {
  readonly assignment: Assignment;
  readonly paper: Paper;
  readonly choices: readonly (number | null)[];
  readonly stamps: readonly (number | null)[];
}

/** Makes an answer sheet of an attempt that is over. */
export function answersOf({ assignment, trainee, paper, attempt, began, choices, stamps, ended, shown }: Answered): Answers {
  const answers: Answers = {
    format: 'bellwire-answers',
    version: 1,
    rules: RULES,
    assignment: { id: assignment.id, digest: digestOf(assignment) },
    trainee,
    item: paper.item,
    attempt,
    paper: paper.digest,
    began,
    choices: [...choices],
    stamps: [...stamps],
    ended,
    ...(shown === undefined ? {} : { shown }),
    seal: '',
  };
  return { ...answers, seal: sealAnswers(answers) };
}

/** Whatever is handed in: work at a ticket, or at a paper. */
export type Submitted = Submission | Answers;

export const isAnswers = (submitted: Submitted): submitted is Answers => submitted.format === 'bellwire-answers';
