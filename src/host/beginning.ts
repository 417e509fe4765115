import type { Assignment } from '../classroom/assignment.ts';
import { RULES } from '../classroom/seal.ts';
import { dataError } from '../rig/errors.ts';
import type { Class } from './class.ts';
import type { Clock } from './clock.ts';
import type { AttemptRow, Records } from './records.ts';

/** An assignment that is up. @throws DataError where it is none, or was taken down */
export function assignmentUp(room: Class, id: string): Assignment {
  const assignment = room.assignment(id);
  if (!assignment || !room.isUp(id)) throw dataError('lab.noAssignment', 'assignment', { id });
  return assignment;
}

interface Needs {
  readonly records: Records;
  readonly room: Class;
  readonly clock: Clock;
}

/** Begins the next attempt at an item, and gives its id. @param tried those before it @throws DataError where the assignment does not allow it */
export function beginNext(
  { records, room, clock }: Needs,
  assignment: Assignment,
  trainee: string,
  item: number,
  tried: readonly AttemptRow[],
): number {
  const { id, attempts } = assignment;
  if (!room.isOpen(assignment)) throw dataError('lab.closedNow', 'assignment', { id });
  if (tried.length >= attempts) throw dataError('lab.noAttemptsLeft', 'item', { allowed: attempts });
  return records.beginAttempt({ assignment: id, trainee, item, number: tried.length + 1, rules: RULES, began: clock.now() });
}
