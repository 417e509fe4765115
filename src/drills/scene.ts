import type { Action } from '../attempt/actions.ts';
import type { HistoryAct } from '../attempt/job.ts';
import type { MeterFunction } from '../meter/functions.ts';
import type { Fault } from '../rig/faults.ts';
import type { House } from '../rig/house.ts';
import type { Weather } from '../world/world.ts';

/** A circuit as somebody stands before it: the house, what is really wrong, and what was done since they came. */
export interface Scene {
  /** The rig by its id, before the house is laid over it. */
  readonly rig: string;
  readonly house: House;
  readonly weather: Weather;
  readonly tools: readonly MeterFunction[] | undefined;
  readonly history: readonly HistoryAct[];
  readonly faults: readonly Fault[];
  readonly actions: readonly Action[];
}
