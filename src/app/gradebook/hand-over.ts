/** From the instructor's page of the lab to the gradebook, in this tab's memory. */
import { loadAssignment } from '../../classroom/assignment.ts';
import type { Handed } from '../lab/class-api.ts';

/** Fills the gradebook with what a host has. @throws DataError where the host's assignment is none */
export async function openHosted({ assignment, submissions }: Handed): Promise<void> {
  // The rigs and tickets come with it, which the page of the lab does without.
  const { takeHosted } = await import('./store.ts');
  takeHosted(loadAssignment(assignment), submissions);
}
