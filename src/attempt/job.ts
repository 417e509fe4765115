import type { MeterFunction } from '../meter/functions.ts';
import type { Fault } from '../rig/faults.ts';
import type { Weather } from '../world/world.ts';
import type { ActionOf } from './actions.ts';

/** What the customer did before calling: the only acts that need no technician. */
export type HistoryAct = ActionOf<'operate'> | ActionOf<'set'> | ActionOf<'wait'>;

/** What the customer saw or heard in the end: a sign of a part, and whether it stood so. */
export interface Observed {
  readonly part: string;
  readonly sign: string;
  readonly is: string | number;
}

/** Hypotheses beyond the single lasting faults, where a ticket asks for them. */
export interface SuspectOptions {
  /** Conductors that make contact only for a while after they were stirred, and parts that open when they are warm. */
  readonly intermittents?: boolean | undefined;
  /** Faults that may stand beside any other. */
  readonly pairs?: readonly Fault[] | undefined;
}

/** Whether hints are there for the asking, at a price, or not at all. */
export const JOB_MODES = ['coached', 'practice', 'graded'] as const;

/** The part of a ticket that the physics needs. */
export interface Job {
  readonly id: string;
  readonly rig: string;
  /** A graded job gives no hints; left out: practice. */
  readonly mode?: (typeof JOB_MODES)[number];
  readonly faults: readonly Fault[];
  readonly weather: Weather;
  /** What else must be thought of on this job, beside every single lasting fault. */
  readonly suspects?: SuspectOptions | undefined;
  /** Functions of this technician's meter; all where left out. */
  readonly tools?: readonly MeterFunction[] | undefined;
  readonly complaint: {
    readonly history: readonly HistoryAct[];
    readonly observed: readonly Observed[];
    /** What stands so when the call that was complained of works again. */
    readonly works: readonly Observed[];
  };
}
