import { z } from 'zod';
import { codeSchema } from './assignment.ts';
import { instantSchema } from './instant.ts';

export const digestSchema = z.string().regex(/^[0-9a-f]{32}$/);

/** What everything that is handed in says, whatever was worked at. */
export const HANDED = {
  version: z.literal(1),
  rules: z.int().min(1),
  assignment: z.strictObject({ id: codeSchema, digest: digestSchema }),
  trainee: z.strictObject({ code: codeSchema, name: z.string().trim().max(80).default('') }),
  /** Place in the assignment: its papers are counted on from its items. */
  item: z.int().min(0).max(29),
  /** Which of the attempts that are allowed, from 1. */
  attempt: z.int().min(1).max(20),
  /** When it was begun, by the trainee's clock. */
  began: instantSchema,
  /** Closed by the trainee, or broken off when its time was over. */
  ended: z.enum(['closed', 'timeOver']),
  /** The score that the trainee was shown; a grader works it out anew. */
  shown: z.number().min(0).max(100).optional(),
  seal: digestSchema,
} as const;
