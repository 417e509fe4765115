import { z } from 'zod';
import type { Attempt, AttemptLog } from '../attempt/attempt.ts';
import { logOf, phaseOf } from '../attempt/attempt.ts';
import { shapeError } from '../rig/errors.ts';
import { type Assignment, migrated } from './assignment.ts';
import { digestOf } from './digest.ts';
import type { Work } from './draw.ts';
import { digestSchema, HANDED } from './handed.ts';
import { RULES, SEAL_PATTERN, type SealedTo, sealRest, sealSteps } from './seal.ts';

export const submissionSchema = z.strictObject({
  format: z.literal('bellwire-submission'),
  ...HANDED,
  ticket: z.strictObject({ id: z.string().min(1).max(40), digest: digestSchema }),
  rig: digestSchema,
  /** Seconds by the clock from there to each step; notes beside the log that nothing is computed from. */
  stamps: z.array(z.number().min(0).max(10_000_000)).max(600),
  /** The attempt's log, looked at step by step when it is graded. */
  log: z.unknown(),
  seals: z.array(z.string().regex(SEAL_PATTERN)).max(600),
  /** The trainee's own words in the service report. */
  words: z.string().max(4000).optional(),
});

/** One finished attempt at one ticket of an assignment, to be handed in. */
export type Submission = z.infer<typeof submissionSchema>;

/** Checks the shape of what was handed in; nothing in it is believed. @throws DataError with the path inside the file */
export function loadSubmission(json: unknown): Submission {
  const parsed = submissionSchema.safeParse(migrated(json));
  if (parsed.success) return parsed.data;
  throw shapeError(parsed.error.issues);
}

/** What an attempt at this work is sealed to. */
export function sealedTo(assignment: Assignment, trainee: string, { item, ticket, rig }: Work, attempt: number): SealedTo {
  return { assignment: digestOf(assignment), trainee, item, attempt, ticket: digestOf(ticket), rig: digestOf(rig) };
}

/** All of a submission but its seal, in the form in which that is sealed. */
export function restOf({ seal: _, seals: __, log: ___, ...rest }: Submission): unknown {
  return rest;
}

export interface Handed {
  readonly assignment: Assignment;
  readonly trainee: Submission['trainee'];
  readonly work: Work;
  /** From 1. */
  readonly number: number;
  readonly attempt: Attempt;
  readonly began: string;
  readonly stamps: readonly number[];
  readonly words?: string | undefined;
  readonly shown?: number | undefined;
}

/** Makes a submission of an attempt that is over. */
export function submissionOf({ assignment, trainee, work, number, attempt, began, stamps, words, shown }: Handed): Submission {
  const to = sealedTo(assignment, trainee.code, work, number);
  const log: AttemptLog = logOf(attempt);
  const seals = sealSteps(to, attempt.steps);
  const submission: Submission = {
    format: 'bellwire-submission',
    version: 1,
    rules: RULES,
    assignment: { id: assignment.id, digest: to.assignment },
    trainee,
    item: work.item,
    attempt: number,
    ticket: { id: work.ticket.id, digest: to.ticket },
    rig: to.rig,
    began,
    stamps: [...stamps],
    log,
    seals,
    ended: phaseOf(attempt) === 'closed' ? 'closed' : 'timeOver',
    ...(words === undefined || words === '' ? {} : { words }),
    ...(shown === undefined ? {} : { shown }),
    seal: '',
  };
  return { ...submission, seal: sealRest(to, seals, restOf(submission)) };
}
