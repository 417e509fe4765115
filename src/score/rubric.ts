import { z } from 'zod';

const points = z.number().min(0).max(100);

/** Points as diagnosis.md has them; a ticket may weigh them anew as long as they come to 100. */
export const rubricSchema = z
  .strictObject({
    section: points.default(15),
    part: points.default(20),
    failure: points.default(15),
    /** Taken for each sound part replaced. */
    soundReplaced: points.default(10),
    /** For time that was not wasted. */
    waste: points.default(15),
    /** For being as quick as the short way. */
    pace: points.default(10),
    safety: points.default(15),
    /** Taken for each kind of unsafe act. */
    unsafe: points.default(5),
    evidence: points.default(5),
    call: points.default(5),
    /** Price of a hint, by its depth; the same hint costs again when it is asked again. */
    hints: z.strictObject({ where: points.default(2), kind: points.default(4), exact: points.default(8) }).prefault({}),
  })
  .refine(
    (rubric) =>
      rubric.section + rubric.part + rubric.failure + rubric.waste + rubric.pace + rubric.safety + rubric.evidence + rubric.call ===
      100,
    {
      error: 'rubric.sum',
    },
  );

export type Rubric = z.infer<typeof rubricSchema>;

export const DEFAULT_RUBRIC: Rubric = rubricSchema.parse({});
