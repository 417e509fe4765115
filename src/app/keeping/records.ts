/** What is kept of a profile, as it lies in the store. The first page does without: see storage.ts. */
import { z } from 'zod';
import { JOB_MODES } from '../../attempt/job.ts';
import type { Debrief } from '../../score/debrief.ts';

const line = z.strictObject({ points: z.number().min(0).max(100), of: z.number().min(0).max(100) });

/** What a debrief came to, in short. Always worked out here, from a log: never taken from a file. */
const resultSchema = z.strictObject({
  total: z.number().min(0).max(100),
  right: z.boolean(),
  steps: z.number().int().min(0),
  wasted: z.number().int().min(0),
  minutes: z.number().min(0),
  items: z.strictObject({ isolation: line, economy: line, safety: line, proof: line }),
});
export type Result = z.infer<typeof resultSchema>;

export function resultOf(debrief: Debrief): Result {
  const { isolation, economy, safety, proof } = debrief.items;
  const short = ({ points, of }: { readonly points: number; readonly of: number }) => ({ points, of });
  return {
    total: debrief.total,
    right: debrief.rightNaming,
    steps: debrief.steps.length,
    wasted: debrief.wastedSteps,
    minutes: debrief.minutes,
    items: { isolation: short(isolation), economy: short(economy), safety: short(safety), proof: short(proof) },
  };
}

/** Longest words that a trainee leaves with an attempt, characters. */
export const MOST_WORDS = 1000;

export const attemptShape = { ticket: z.string().min(1).max(80), mode: z.enum(JOB_MODES), log: z.unknown() };

export const finishedSchema = z.strictObject({
  ...attemptShape,
  /** Counts up with every attempt that is finished: the order, whatever the PC's clock says. */
  number: z.number().int().min(1),
  /** The PC's clock when it was finished, milliseconds since 1970: a note, never an order. */
  when: z.number().min(0),
  result: resultSchema.optional(),
  /** What the trainee wrote for the service report: shown as text, never anything else. */
  words: z.string().max(MOST_WORDS).optional(),
});
/** An attempt that was closed. */
export type Finished = z.infer<typeof finishedSchema>;

/** The finished attempts among what is kept, in the order in which they were finished. */
export function finishedIn(shelf: ReadonlyMap<string, unknown>): readonly Finished[] {
  return [...shelf]
    .flatMap(([key, value]) => {
      if (!key.startsWith('finished:')) return [];
      const found = finishedSchema.safeParse(value);
      return found.success ? [found.data] : [];
    })
    .sort((a, b) => a.number - b.number);
}
