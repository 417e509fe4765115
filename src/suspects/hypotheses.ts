import type { Section } from '../parts/part.ts';
import { type PossibleFault, possibleFaults } from '../rig/faults.ts';
import type { RigData } from '../rig/schema.ts';

/** A fault as people name it: the section it lies in, a part or wire of the rig, and one of its modes. */
export interface Naming {
  readonly section: Section;
  readonly target: string;
  readonly mode: string;
}

/** Every single fault of the rig that can be named. */
export function namingsOf(rig: RigData): Naming[] {
  return possibleFaults(rig).map(namingOf);
}

export function namingOf(fault: PossibleFault): Naming {
  return { section: fault.section, target: fault.target, mode: fault.mode };
}

export function sameNaming(a: Pick<Naming, 'target' | 'mode'>, b: Pick<Naming, 'target' | 'mode'>): boolean {
  return a.target === b.target && a.mode === b.mode;
}
