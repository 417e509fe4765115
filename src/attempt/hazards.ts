import { HAZARDS, type Hazard, type PartKind } from '../parts/part.ts';
import type { BenchView } from './view.ts';

/** What a kind of part may do to whoever touches it. */
export function hazardsOf(kind: PartKind): readonly Hazard[] {
  const holds: Readonly<Record<Hazard, boolean | undefined>> = {
    lineVoltage: kind.lineVoltage,
    gas: kind.gas,
    charge: kind.keepsCharge,
  };
  return HAZARDS.filter((hazard) => holds[hazard] === true);
}

/** The hazards of the parts that lie uncovered where the trainee stands, each once. */
export function hazardsInSight(view: BenchView): readonly Hazard[] {
  return HAZARDS.filter((hazard) => view.parts.some((part) => part.visible && part.hazards.includes(hazard)));
}
