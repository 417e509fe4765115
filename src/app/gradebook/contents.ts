/** What a file from outside is, by its `format`; nothing in it is believed. No browser in here. */

import type { Submitted } from '../../classroom/answers.ts';
import { type Assignment, loadAssignment } from '../../classroom/assignment.ts';
import { digestOf } from '../../classroom/digest.ts';
import { type GradebookFile, loadGradebookFile } from '../../classroom/gradebookFile.ts';
import { loadOverrules, type Overrules } from '../../classroom/overrules.ts';
import { loadSubmitted } from '../../classroom/submitted.ts';
import { dataError, isDataError } from '../../rig/errors.ts';
import { parseJson } from '../json-text.ts';

/** One file of a whole class is no larger, bytes. */
export const MOST_BYTES = 100_000_000;
/** One trainee's attempt, an assignment or the overrules are no longer, characters; as the command line has it. */
const MOST_CHARACTERS = 4_000_000;
/** In one gradebook. */
export const MOST_SUBMISSIONS = 5_000;
/** A file's name is kept up to here, characters; its end tells more. */
const MOST_NAME = 300;

/** Something that was handed in. */
export interface HandedIn {
  /** Equal for equal contents, whatever the file is called. */
  readonly key: string;
  /** The file that it came in, as a person knows it. */
  readonly file: string;
  readonly submission: Submitted;
  /** A host kept its time: what was added to it or paused is no doubt. */
  readonly hosted: boolean;
}

/** Something that could not be taken. */
export interface Problem {
  readonly file: string;
  readonly error: { readonly code: string; readonly path: string; readonly values: Readonly<Record<string, string | number>> };
}

export type Content =
  | { readonly kind: 'assignment'; readonly assignment: Assignment }
  | { readonly kind: 'handedIn'; readonly handedIn: HandedIn }
  | { readonly kind: 'overrules'; readonly overrules: Overrules }
  | {
      readonly kind: 'gradebook';
      readonly assignment: Assignment;
      readonly handedIn: readonly HandedIn[];
      readonly overrules: GradebookFile['overrules'];
      readonly counts: GradebookFile['counts'] | undefined;
      /** What of it is no submission; the rest stands. */
      readonly problems: readonly Problem[];
    };

/** @throws DataError where it is no submission */
function handedInOf(json: unknown, file: string | undefined, hosted: boolean): HandedIn {
  const submission = loadSubmitted(json);
  return { key: digestOf(submission), file: (file ?? usualName(submission)).slice(-MOST_NAME), submission, hosted };
}

/** What never was a file is called as it would be if it were handed in as one. */
const usualName = ({ assignment, trainee, item, attempt }: Submitted): string =>
  `${assignment.id}-${trainee.code}-${item + 1}-${attempt}.bellwire.json`;

/** Whatever was thrown, as a fault of the file: data that are nested without end make the reader itself give up. */
export const problemOf = (file: string, error: unknown): Problem => {
  const { code, path, values } = isDataError(error) ? error : dataError('data.shape', '(file)');
  return { file, error: { code, path, values } };
};

/**
 * @param text undefined where the file was too large to be read
 * @throws DataError with the path inside the file
 */
export function contentOf(text: string | undefined, file: string): Content {
  const json = parseJson(text, MOST_BYTES);
  const { format, ...fields } = (typeof json === 'object' && json !== null ? json : {}) as Readonly<Record<string, unknown>>;
  if (format === 'bellwire-gradebook') return wholeOf(loadGradebookFile(json), file);
  // As the host's page for the instructor saves what was handed in.
  if (format === undefined && Array.isArray(fields.submissions))
    return hostedOf(loadAssignment(fields.assignment), fields.submissions, file);
  if (text !== undefined && text.length > MOST_CHARACTERS) throw dataError('data.large', '(file)');
  switch (format) {
    case 'bellwire-assignment':
      return { kind: 'assignment', assignment: loadAssignment(json) };
    case 'bellwire-overrules':
      return { kind: 'overrules', overrules: loadOverrules(json) };
    case 'bellwire-submission':
    case 'bellwire-answers':
      return { kind: 'handedIn', handedIn: handedInOf(json, file, false) };
    default:
      throw dataError('classroom.format', 'format');
  }
}

function wholeOf({ assignment, submissions, overrules, counts }: GradebookFile, file: string): Content {
  const each = submissions.map(({ file: name, submission, hosted }) => ({ name, json: submission, hosted }));
  return { kind: 'gradebook', assignment, overrules, counts, ...sorted(each, file) };
}

/** What a host hands over: its own clock kept the time. */
export function hostedOf(assignment: Assignment, submissions: readonly unknown[], file: string): Content {
  const each = submissions.map((json) => ({ name: undefined, json, hosted: true }));
  return { kind: 'gradebook', assignment, overrules: [], counts: undefined, ...sorted(each, file) };
}

interface Some {
  readonly name: string | undefined;
  readonly json: unknown;
  readonly hosted: boolean;
}

function sorted(some: readonly Some[], file: string): { handedIn: HandedIn[]; problems: Problem[] } {
  const handedIn: HandedIn[] = [];
  const problems: Problem[] = [];
  for (const [index, { name, json, hosted }] of some.entries()) {
    try {
      handedIn.push(handedInOf(json, name, hosted));
    } catch (error) {
      const { error: inside } = problemOf(file, error);
      problems.push({ file, error: { ...inside, path: `submissions[${index}] › ${inside.path}` } });
    }
  }
  return { handedIn, problems };
}
