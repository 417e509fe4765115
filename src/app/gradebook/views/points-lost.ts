/** The points that were not given, each with the reason and the steps that show it. */
import { type Debrief, SCORE_ITEMS, type ScoreItem, type ScoreReason } from '../../../score/debrief.ts';
import type { Rubric } from '../../../score/rubric.ts';

export interface Loss extends ScoreReason {
  /** All the steps that it happened at; `step` is the first. */
  readonly steps: readonly number[];
}

/** What a reason would have given if all had been well; those that only take give nothing. */
const WORTH: Readonly<Record<string, (rubric: Rubric) => number>> = {
  notNamed: ({ section, part, failure }) => section + part + failure,
  sectionRight: ({ section }) => section,
  sectionWrong: ({ section }) => section,
  partRight: ({ part }) => part,
  partGuessed: ({ part }) => part,
  partWrong: ({ part, failure }) => part + failure,
  failureRight: ({ failure }) => failure,
  failureGuessed: ({ failure }) => failure,
  failureWrong: ({ failure }) => failure,
  noSteps: ({ waste, pace }) => waste + pace,
  timeUsed: ({ waste }) => waste,
  pace: ({ pace }) => pace,
  paceFull: ({ pace }) => pace,
  safeStart: ({ safety }) => safety,
  evidenceProves: ({ evidence }) => evidence,
  evidenceAlsoFits: ({ evidence }) => evidence,
  evidenceNone: ({ evidence }) => evidence,
  callProved: ({ call }) => call,
  callNotProved: ({ call }) => call,
};

/** Less than this is nobody's loss: halves of a tenth that are shown as none. */
const LEAST = 0.05;

/**
 * By part of the score, and for hints. In each part they come to what is missing from its points, and to more only where it stands at
 * nothing and more was taken than there was.
 */
export function lossesOf({ items, hints }: Pick<Debrief, 'items' | 'hints'>, rubric: Rubric): Record<ScoreItem | 'hints', Loss[]> {
  const losses = { hints: gathered(hints, rubric) } as Record<ScoreItem | 'hints', Loss[]>;
  for (const item of SCORE_ITEMS) losses[item] = gathered(items[item].reasons, rubric);
  return losses;
}

/** The same reason at several steps is one. */
function gathered(reasons: readonly ScoreReason[], rubric: Rubric): Loss[] {
  const all = new Map<string, Loss>();
  for (const reason of reasons) {
    const lost = reason.points - (WORTH[reason.code]?.(rubric) ?? 0);
    const key = `${reason.code} ${JSON.stringify(reason.values)}`;
    const known = all.get(key);
    const steps = [...(known?.steps ?? []), ...(reason.step === undefined ? [] : [reason.step])];
    all.set(key, { ...reason, step: steps[0], points: (known?.points ?? 0) + lost, steps });
  }
  return [...all.values()].filter(({ points }) => points <= -LEAST);
}
