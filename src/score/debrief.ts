import type { Action } from '../attempt/actions.ts';
import type { Difference } from '../suspects/apart.ts';
import type { Naming } from '../suspects/hypotheses.ts';

export const STEP_KINDS = ['informative', 'required', 'setUp', 'wasted', 'after'] as const;
/** What a step was worth (diagnosis.md); `after`: taken when the fault had already been named. */
export type StepKind = (typeof STEP_KINDS)[number];

/** A suspect that a step ruled out, and what would have been seen instead if it were guilty. */
export interface RuledOut extends Naming {
  readonly would: Difference;
}

export interface JudgedStep {
  /** 1-based, as in the log. */
  readonly number: number;
  readonly kind: StepKind;
  readonly seconds: number;
  /** Expected gain before the step was taken, bits. */
  readonly gainBits: number;
  /** Suspects left after it. */
  readonly left: number;
  readonly ruledOut: readonly RuledOut[];
  /** The fewest earlier steps found that made a wasted step's outcome certain; none: it was certain from the start. */
  readonly because: readonly number[];
  readonly unsafe: string | undefined;
}

export const SCORE_ITEMS = ['isolation', 'economy', 'safety', 'proof'] as const;
export type ScoreItem = (typeof SCORE_ITEMS)[number];

/** Why a point was given or taken: `code` is a key in locales/ under `score:reason.`, `values` fill it in, `step` ties it to the log. */
export interface ScoreReason {
  readonly code: string;
  readonly points: number;
  readonly step: number | undefined;
  readonly values: Readonly<Record<string, string | number>>;
}

export interface ScoreLine {
  readonly points: number;
  readonly of: number;
  readonly reasons: readonly ScoreReason[];
}

/** The short way: the reference way under the true fault, with nothing wasted in it. */
export interface Par {
  readonly actions: readonly Action[];
  readonly seconds: number;
  /** What it tells in all, from arrival to its end, bits. */
  readonly gainBits: number;
  /** Suspects left after each action. */
  readonly left: readonly number[];
}

export interface Debrief {
  readonly ticket: string;
  readonly total: number;
  readonly items: Readonly<Record<ScoreItem, ScoreLine>>;
  readonly truth: Naming;
  readonly named: Naming | undefined;
  /** The fault itself was named, or one that nothing on this rig tells from it. */
  readonly rightNaming: boolean;
  /** What nothing that can be done on this rig tells from the fault that was named. */
  readonly alike: readonly Naming[];
  readonly suspectsAtStart: number;
  readonly steps: readonly JudgedStep[];
  readonly minutes: number;
  readonly par: Par;
  /** What hints cost, taken off the sum of the items. */
  readonly hints: readonly ScoreReason[];
  /** Suspects left at the moment of naming. */
  readonly leftAtNaming: readonly Naming[];
  readonly wastedSteps: number;
}
