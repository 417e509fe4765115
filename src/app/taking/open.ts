/** Takes in an assignment from outside: every word of it is checked before anything is kept. */
import { type Assignment, loadAssignment } from '../../classroom/assignment.ts';
import { digestOf } from '../../classroom/digest.ts';
import { type Work, workOf } from '../../classroom/draw.ts';
import { papersOf } from '../../classroom/papers.ts';
import { dataError, isDataError } from '../../rig/errors.ts';
import { checkTicket } from '../../scenario/check.ts';
import type { Library } from '../../scenario/library.ts';
import { parseJson } from '../json-text.ts';
import { decodeShared } from '../sharing.ts';

/** An assignment holds tickets, no pictures; characters. */
const MOST_CHARACTERS = 5_000_000;

/** @throws DataError with the path inside the file */
export function openText(text: string, library: Library): Assignment {
  return openJson(parseJson(text, MOST_CHARACTERS), library);
}

/** @throws DataError with the path inside the link's data */
export const openLink = (data: string, library: Library): Assignment => openJson(decodeShared(data), library);

function openJson(json: unknown, library: Library): Assignment {
  const assignment = loadAssignment(json);
  workOf(assignment, 'anybody', library);
  papersOf(assignment, 'anybody', library);
  return assignment;
}

/** What the trainee is given; what did not ship was checked against its rig. @throws DataError with the path of what cannot stand so */
export function worksFor(assignment: Assignment, code: string, library: Library): Work[] {
  const works = workOf(assignment, code, library);
  for (const { item, ticket, rig } of works) {
    if (assignment.items[item]?.kind === 'shipped') continue;
    try {
      checkTicket(ticket, rig);
    } catch (error) {
      if (isDataError(error)) throw dataError(error.code, `items[${item}].ticket.${error.path}`, { ...error.values });
      throw dataError('data.shape', `items[${item}].ticket`);
    }
  }
  return works;
}

/** Under which a trainee's work on an assignment is kept. */
export const assignedId = (assignment: Assignment, code: string): string => digestOf([digestOf(assignment), code]);
