import { z } from 'zod';
import { shapeError } from '../rig/errors.ts';
import { assignmentSchema, migrated } from './assignment.ts';
import { COUNTS } from './gradebook.ts';
import { overruleSchema } from './overrules.ts';

export const gradebookFileSchema = z.strictObject({
  format: z.literal('bellwire-gradebook'),
  version: z.literal(1),
  assignment: assignmentSchema,
  /** Which of a trainee's attempts at an item counts. */
  counts: z.enum(COUNTS).default('best'),
  /** What was handed in, to be graded anew: no grade is kept, so none can be changed in the file. */
  submissions: z
    .array(
      z.strictObject({
        file: z.string().min(1).max(300),
        submission: z.unknown(),
        /** A host's clock kept its time, so that over time is no doubt. */
        hosted: z.boolean().default(false),
      }),
    )
    .max(20_000),
  overrules: z.array(overruleSchema).max(10_000).default([]),
});

/** All that a gradebook is made of, in one file. */
export type GradebookFile = z.infer<typeof gradebookFileSchema>;

/** @throws DataError with the path inside the file */
export function loadGradebookFile(json: unknown): GradebookFile {
  const parsed = gradebookFileSchema.safeParse(migrated(json));
  if (parsed.success) return parsed.data;
  throw shapeError(parsed.error.issues);
}
