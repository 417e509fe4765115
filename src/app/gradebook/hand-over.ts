/** From the instructor's page of the lab to the gradebook, in this tab's memory. */
import { loadAssignment } from '../../classroom/assignment.ts';
import type { Handed } from '../lab/class-api.ts';

let close: (() => void) | undefined;

/** Empties the gradebook if it was filled from a host: whoever signs out leaves nothing on the PC. */
export function leaveHosted(): void {
  close?.();
  close = undefined;
}

/** Fills the gradebook with what a host has. @throws DataError where the host's assignment is none */
export async function openHosted({ assignment, submissions }: Handed): Promise<void> {
  // The rigs and tickets come with it, which the page of the lab does without.
  const { closeBook, takeHosted } = await import('./store.ts');
  takeHosted(loadAssignment(assignment), submissions);
  close = closeBook;
}
