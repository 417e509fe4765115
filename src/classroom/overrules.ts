import { z } from 'zod';
import { shapeError } from '../rig/errors.ts';
import { codeSchema, migrated } from './assignment.ts';
import { instantSchema } from './instant.ts';

export const overruleSchema = z.strictObject({
  trainee: codeSchema,
  /** Place in the assignment's items. */
  item: z.int().min(0).max(29),
  /** What the item is worth instead, of 100. */
  points: z.number().min(0).max(100),
  reason: z.string().trim().min(1).max(500),
  /** Who decided. */
  by: z.string().trim().min(1).max(80),
  at: instantSchema,
});
/** An instructor's own points for one item of one trainee. It settles the doubts there: somebody has looked. */
export type Overrule = z.infer<typeof overruleSchema>;

export const overrulesSchema = z.strictObject({
  /** Where this file's JSON Schema is, for editors. */
  $schema: z.string().max(200).optional(),
  format: z.literal('bellwire-overrules'),
  version: z.literal(1),
  /** The assignment's id. */
  assignment: codeSchema,
  /** In the order in which they were made; of several for the same item the last is in force, and all are kept. */
  overrules: z.array(overruleSchema).max(10_000),
});
export type Overrules = z.infer<typeof overrulesSchema>;

/** @throws DataError with the path inside the file */
export function loadOverrules(json: unknown): Overrules {
  const parsed = overrulesSchema.safeParse(migrated(json));
  if (parsed.success) return parsed.data;
  throw shapeError(parsed.error.issues);
}

/** The one in force. */
export function overruleFor(overrules: readonly Overrule[], trainee: string, item: number): Overrule | undefined {
  return overrules.findLast((each) => each.trainee === trainee && each.item === item);
}
