import type { Section } from '../parts/part.ts';
import { posterior } from './field.ts';
import { type Following, leftNow } from './follow.ts';

/** How much of what is still possible lies in a section or a part; the failures themselves are not told. */
export interface StillPossible {
  readonly section: Section;
  readonly target: string;
  /** Failures of this part or wire that are still possible. */
  readonly count: number;
  /** Probability that it is one of these, 0…1. */
  readonly share: number;
}

/** What is still possible, by part and wire, likeliest first: what coaching shows. */
export function stillPossible(following: Following): StillPossible[] {
  const parts = new Map<string, { section: Section; count: number; share: number }>();
  for (const [hypothesis, probability] of posterior(following.field, leftNow(following))) {
    const naming = following.field.hypotheses[hypothesis];
    if (!naming) continue;
    const known = parts.get(naming.target) ?? { section: naming.section, count: 0, share: 0 };
    known.count += 1;
    known.share += probability;
    parts.set(naming.target, known);
  }
  return [...parts]
    .map(([target, part]) => ({ target, ...part }))
    .sort((a, b) => b.share - a.share || (a.target < b.target ? -1 : 1));
}
