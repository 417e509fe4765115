import type { PartState } from './part.ts';

/** Whether any field but `due` differs between two states of one part. */
export function differs(a: PartState, b: PartState): boolean {
  for (const field in b) if (field !== 'due' && a[field] !== b[field]) return true;
  return false;
}
