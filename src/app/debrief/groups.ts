/** What a step ruled out and what it left, sorted for reading. Pure, so that tests can hold it to the debrief's own counts. */
import type { Debrief, RuledOut } from '../../score/debrief.ts';
import type { Naming } from '../../suspects/hypotheses.ts';

export interface PartGroup<T extends Naming> {
  readonly target: string;
  readonly faults: readonly T[];
}

/** Faults by the part or wire that they are on, in the order in which these come up. */
export function byPart<T extends Naming>(faults: readonly T[]): readonly PartGroup<T>[] {
  const groups = new Map<string, T[]>();
  for (const fault of faults) groups.set(fault.target, [...(groups.get(fault.target) ?? []), fault]);
  return [...groups].map(([target, of]) => ({ target, faults: of }));
}

/** Faults of one part that would have shown the same, by what that is in words. */
export function byWords(faults: readonly RuledOut[], words: (fault: RuledOut) => string): ReadonlyMap<string, readonly RuledOut[]> {
  const rows = new Map<string, RuledOut[]>();
  for (const fault of faults) rows.set(words(fault), [...(rows.get(words(fault)) ?? []), fault]);
  return rows;
}

/** The faults that were still possible after a step: those left at the naming, then those that later steps ruled out, last first. */
export function leftAfter(debrief: Debrief, step: number): readonly Naming[] {
  const later = debrief.steps.filter((each) => each.number > step).reverse();
  return [...debrief.leftAtNaming, ...later.flatMap((each) => each.ruledOut)];
}
