import { basename } from 'node:path';
import { loadAssignment } from '../classroom/assignment.ts';
import { type Entry, entryOf } from '../classroom/entry.ts';
import { createGrader } from '../classroom/grade.ts';
import { COUNTS, type Counts, type Gradebook, gradebookOf } from '../classroom/gradebook.ts';
import { loadOverrules, type Overrule } from '../classroom/overrules.ts';
import { gradingOrder, loadSubmitted } from '../classroom/submitted.ts';
import { type DataError, dataError, isDataError } from '../rig/errors.ts';
import { inFile } from '../scenario/library.ts';
import { jsonFiles, readJson, shippedLibrary } from './files.ts';

export interface GradedFolder {
  readonly gradebook: Gradebook;
  /** Files that are no submission at all, each with why. */
  readonly broken: readonly { readonly file: string; readonly error: DataError }[];
}

/**
 * Grades all submissions in a folder. Files are read twice, so that no more than one log is in memory: first for what each is, then
 * ticket by ticket, so that what is the same for a ticket is worked out once.
 * @throws DataError where the assignment, the overrules or the folder cannot be read
 */
export function gradeFolder(assignmentFile: string, folder: string, overrulesFile?: string, counts = 'best'): GradedFolder {
  if (!isCounts(counts)) throw dataError('data.value', '--attempt', { options: COUNTS.join(', ') });
  const json = readJson(assignmentFile);
  const assignment = inFile(assignmentFile, () => loadAssignment(json));
  const overrules = overrulesFile === undefined ? [] : overrulesIn(overrulesFile, assignment.id);
  const broken: { file: string; error: DataError }[] = [];
  const attempted = <T>(file: string, work: () => T): T[] => {
    try {
      return [inFile(file, work)];
    } catch (error) {
      if (!isDataError(error)) throw error;
      broken.push({ file, error });
      return [];
    }
  };
  const found = jsonFiles(folder).flatMap((file) =>
    attempted(file, () => {
      const content = readWithin(file);
      if (isOtherOfOurs(content)) return undefined;
      const submitted = loadSubmitted(content);
      return { file, code: submitted.trainee.code, order: gradingOrder(submitted) };
    }).filter((each) => each !== undefined),
  );
  const grader = createGrader(assignment, shippedLibrary(), [...new Set(found.map(({ code }) => code))]);
  const entries = found
    .sort((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : 0))
    .flatMap(({ file }): Entry[] => attempted(file, () => entryOf(basename(file), grader.grade(readWithin(file)))));
  return { gradebook: gradebookOf({ assignment, entries, overrules, counts }), broken };
}

/** 2 where a file could not be read, whatever else there is: then not everything was graded. Else 1 while a doubt is left. */
export function exitCodeOf({ openDoubts }: Gradebook, broken: GradedFolder['broken']): 0 | 1 | 2 {
  if (broken.length > 0) return 2;
  return openDoubts > 0 ? 1 : 0;
}

const isCounts = (text: string): text is Counts => COUNTS.some((each) => each === text);

/** The file's name is put before the path by whoever calls. */
function readWithin(file: string): unknown {
  try {
    return readJson(file);
  } catch (error) {
    if (isDataError(error)) throw dataError(error.code, '(file)', error.values);
    throw error;
  }
}

/** An assignment or a gradebook may lie beside the submissions. */
function isOtherOfOurs(json: unknown): boolean {
  const format = typeof json === 'object' && json !== null && 'format' in json ? json.format : undefined;
  return format === 'bellwire-assignment' || format === 'bellwire-gradebook' || format === 'bellwire-overrules';
}

function overrulesIn(file: string, assignment: string): readonly Overrule[] {
  const json = readJson(file);
  return inFile(file, () => {
    const { overrules, assignment: of } = loadOverrules(json);
    if (of !== assignment) throw dataError('classroom.otherOverrules', 'assignment', { assignment: of, own: assignment });
    return overrules;
  });
}
