import type { SuspectOptions } from '../attempt/job.ts';
import type { Section } from '../parts/part.ts';
import { type Fault, type PossibleFault, possibleFaults } from '../rig/faults.ts';
import type { RigData } from '../rig/schema.ts';

/** A fault as people name it: the section it lies in, a part or wire of the rig, and one of its modes; with a second one in a pair. */
export interface Naming {
  readonly section: Section;
  readonly target: string;
  readonly mode: string;
  readonly also?: { readonly target: string; readonly mode: string };
}

/** One way for the rig to be wrong: its name, how common it is, and its members, each with all the faults that are then in force. */
export interface Hypothesis {
  readonly naming: Naming;
  readonly weight: number;
  readonly members: readonly (readonly Fault[])[];
}

/** How much rarer it is that a second fault stands beside a first, on top of its own weight; common practice, no source. */
const PAIR_WEIGHT = 0.1;

/** Every hypothesis of a rig: each single fault, and what a ticket asks to be thought of besides. */
export function hypothesesOf(rig: RigData, options: SuspectOptions = {}): Hypothesis[] {
  const single = possibleFaults(rig, options.intermittents === true);
  const hypotheses = single.map(
    (fault): Hypothesis => ({ naming: namingOf(fault), weight: fault.weight, members: fault.members.map((member) => [member]) }),
  );
  for (const second of options.pairs ?? []) {
    const weight = single.find((each) => sameNaming(each, second))?.weight ?? 1;
    for (const first of single) {
      if (first.target === second.target) continue;
      hypotheses.push({
        naming: { ...namingOf(first), also: { target: second.target, mode: second.mode } },
        weight: first.weight * weight * PAIR_WEIGHT,
        members: first.members.map((member) => [member, second]),
      });
    }
  }
  return hypotheses;
}

/** Every fault that can be named, pairs included where a ticket asks for them. */
export function namingsOf(rig: RigData, options: SuspectOptions = {}): Naming[] {
  return hypothesesOf(rig, options).map(({ naming }) => naming);
}

function namingOf(fault: PossibleFault): Naming {
  return { section: fault.section, target: fault.target, mode: fault.mode };
}

/** The same fault, or the same pair in either order. */
export function sameNaming(a: Pick<Naming, 'target' | 'mode' | 'also'>, b: Pick<Naming, 'target' | 'mode' | 'also'>): boolean {
  if (a.also === undefined && b.also === undefined) return a.target === b.target && a.mode === b.mode;
  return keyOf(a) === keyOf(b);
}

function keyOf({ target, mode, also }: Pick<Naming, 'target' | 'mode' | 'also'>): string {
  return [`${target} ${mode}`, ...(also ? [`${also.target} ${also.mode}`] : [])].sort().join(' + ');
}
