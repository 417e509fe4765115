import type { Column, Field } from './field.ts';

/** Hypotheses that are left when nothing is known but these steps' readings (and what was plain on arrival). */
export function leftByEvidence(field: Field, arrival: Column, columns: readonly (Column | undefined)[]): ReadonlySet<number> {
  const left = new Set<number>();
  field.twins.forEach((twin, index) => {
    if (!arrival.matched[index]) return;
    if (columns.every((column) => column?.matched[index] === true)) left.add(twin.hypothesis);
  });
  return left;
}
