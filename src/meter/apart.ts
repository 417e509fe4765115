import type { MeterFunction } from './functions.ts';
import { accuracyOf, type Reading } from './read.ts';

/** How keen the eye is. A harder level may have a keener one. */
export interface Discernment {
  /** Numbers closer than this share of the larger one look alike. */
  readonly share: number;
  /** Numbers closer than this look alike, by function, in the function's unit without prefix. */
  readonly floors: Readonly<Record<MeterFunction, number>>;
}

/** A technician's eye: common practice, no source. */
export const DISCERNMENT: Discernment = {
  share: 0.1,
  floors: {
    off: 0,
    voltsAc: 1.5,
    // Cells: 2.1 V is a dead pair where 3.1 V is a fresh one, and anybody sees it.
    voltsDc: 0.3,
    voltsLoaded: 1.5,
    ohms: 2,
    tone: 2,
    ampsAc: 0.1,
    microampsDc: 0.3,
    capacitance: 1e-6,
  },
};

/**
 * Whether a technician would call two readings of one measurement different: they differ in kind (number, OL, tone,
 * live), or by more than the meter's accuracy, more than a tenth, and more than a floor.
 */
export function toldApart(a: Reading, b: Reading, discernment: Discernment = DISCERNMENT): boolean {
  if (a.fn !== b.fn || a.kind !== b.kind || a.tone !== b.tone) return true;
  if (a.kind !== 'number') return false;
  const apart = Math.abs(a.value - b.value);
  const larger = Math.max(Math.abs(a.value), Math.abs(b.value));
  const accuracy = Math.max(accuracyOf(a), accuracyOf(b));
  const least = Math.max(accuracy, discernment.share * larger, discernment.floors[a.fn]);
  // Displayed decimals such as 0.4 − 0.3 are not exact: at the limit itself they still look alike.
  return apart > least + 1e-9 * larger;
}
