/** What a gradebook page holds, and what can be done with it. No browser and no clock in here. */
import { isAnswers } from '../../classroom/answers.ts';
import type { Assignment } from '../../classroom/assignment.ts';
import { canonical, digestOf } from '../../classroom/digest.ts';
import { drawnFor, workWith } from '../../classroom/draw.ts';
import { type Entry, entryOf, pointsIn } from '../../classroom/entry.ts';
import type { Counts } from '../../classroom/gradebook.ts';
import type { GradebookFile } from '../../classroom/gradebookFile.ts';
import { secondsOf } from '../../classroom/instant.ts';
import type { Overrule } from '../../classroom/overrules.ts';
import { papersOf } from '../../classroom/papers.ts';
import type { Submission } from '../../classroom/submission.ts';
import { gradingOrder } from '../../classroom/submitted.ts';
import { dataError } from '../../rig/errors.ts';
import { inFile, type Library } from '../../scenario/library.ts';
import type { Marked } from '../engine/grading.ts';
import { type Content, type HandedIn, MOST_SUBMISSIONS } from './contents.ts';

export interface Book {
  /** Undefined until its file has come; submissions may come before it. */
  readonly assignment: Assignment | undefined;
  /** By their keys. */
  readonly handedIn: ReadonlyMap<string, HandedIn>;
  /** What is graded so far, by the keys of what was handed in. */
  readonly entries: ReadonlyMap<string, Entry>;
  /** In the order in which they were made; the last for an item is in force. */
  readonly overrules: readonly Overrule[];
  readonly counts: Counts;
}

export const EMPTY: Book = { assignment: undefined, handedIn: new Map(), entries: new Map(), overrules: [], counts: 'best' };

/**
 * The book with a file's contents in it. What is there already comes in once.
 * @throws DataError where they belong to another assignment, or there are too many
 */
export function withContent(book: Book, content: Content): Book {
  switch (content.kind) {
    case 'assignment':
      return withAssignment(book, content.assignment);
    case 'handedIn':
      return withHandedIn(book, [content.handedIn]);
    case 'overrules': {
      const { assignment: of, overrules } = content.overrules;
      if (book.assignment === undefined) throw dataError('classroom.noAssignment', 'assignment', { assignment: of });
      if (of !== book.assignment.id)
        throw dataError('classroom.otherOverrules', 'assignment', { assignment: of, own: book.assignment.id });
      return { ...book, overrules: joined(book.overrules, overrules) };
    }
    case 'gradebook': {
      const opened = withHandedIn(withAssignment(book, content.assignment), content.handedIn);
      const counts = book.assignment === undefined ? (content.counts ?? book.counts) : book.counts;
      return { ...opened, overrules: joined(book.overrules, content.overrules), counts };
    }
  }
}

/** @throws DataError where an item's ticket, rig or kind of exercise is not there, or its house does not fit */
export function checkWorks(assignment: Assignment, library: Library): void {
  for (const [index, item] of assignment.items.entries()) {
    const drawn = item.kind === 'drawn' ? item.pool.map(({ ticket }) => ticket) : [drawnFor(assignment, '', index, library)];
    for (const ticket of drawn) inFile(`items[${index}]`, () => workWith(assignment, index, ticket, library));
  }
  papersOf(assignment, '', library);
}

export const isSameAssignment = (a: Assignment, b: Assignment): boolean => digestOf(a) === digestOf(b);

function withAssignment(book: Book, assignment: Assignment): Book {
  if (book.assignment === undefined) return { ...book, assignment };
  if (!isSameAssignment(book.assignment, assignment))
    throw dataError('classroom.anotherOpen', 'id', { assignment: assignment.id, own: book.assignment.id });
  return book;
}

function withHandedIn(book: Book, more: readonly HandedIn[]): Book {
  const handedIn = new Map(book.handedIn);
  for (const each of more) if (!handedIn.has(each.key)) handedIn.set(each.key, each);
  if (handedIn.size > MOST_SUBMISSIONS) throw dataError('classroom.tooMany', '(file)', { most: MOST_SUBMISSIONS });
  return { ...book, handedIn };
}

/** Overrules from two places, each once. Where both have some, the clock says which was last. */
function joined(own: readonly Overrule[], more: readonly Overrule[]): readonly Overrule[] {
  const known = new Set(own.map(canonical));
  const fresh = more.filter((each) => !known.has(canonical(each)));
  if (own.length === 0 || fresh.length === 0) return [...own, ...fresh];
  return [...own, ...fresh].sort((a, b) => secondsOf(a.at) - secondsOf(b.at));
}

/** What is not graded yet, item by item and ticket by ticket, so that what is the same for a ticket is worked out once. */
export function dueOf({ assignment, handedIn, entries }: Book): readonly HandedIn[] {
  if (assignment === undefined) return [];
  return [...handedIn.values()]
    .filter(({ key }) => !entries.has(key))
    .map((each) => ({ each, at: gradingOrder(each.submission) }))
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
    .map(({ each }) => each);
}

/** Codes of everybody who handed something in. */
export const codesOf = ({ handedIn }: Book): string[] => [
  ...new Set([...handedIn.values()].map(({ submission }) => submission.trainee.code)),
];

/** A host's own clock kept the time: what its instructor added or paused is no doubt. */
export function gradedEntry({ file, submission, hosted }: HandedIn, { doubts, ...marked }: Marked): Entry {
  const told = hosted ? doubts.filter(({ code }) => code !== 'overTime') : doubts;
  return entryOf(file, { submission, doubts: told, ...marked });
}

/** The submission that an entry was graded from; undefined for answers to a paper. */
export function submissionOf({ handedIn }: Book, entry: Entry): Submission | undefined {
  const isIt = ({ file, submission: { trainee, item, attempt, seal } }: HandedIn) =>
    file === entry.file &&
    seal === entry.seal &&
    trainee.code === entry.trainee.code &&
    item === entry.item &&
    attempt === entry.attempt;
  const found = [...handedIn.values()].find(isIt)?.submission;
  return found && !isAnswers(found) ? found : undefined;
}

/** The book without one trainee: neither what they handed in nor what was said of it. */
export function withoutTrainee(book: Book, code: string): Book {
  const isTheirs = ({ trainee }: { readonly trainee: { readonly code: string } }) => trainee.code === code;
  return {
    ...book,
    handedIn: new Map([...book.handedIn].filter(([, { submission }]) => !isTheirs(submission))),
    entries: new Map([...book.entries].filter(([, entry]) => !isTheirs(entry))),
    overrules: book.overrules.filter(({ trainee }) => trainee !== code),
  };
}

/** All that the book is made of, to be saved; no grade is in it. */
export function fileOf({ assignment, handedIn, overrules, counts }: Book): GradebookFile | undefined {
  if (assignment === undefined) return undefined;
  const submissions = [...handedIn.values()].map(({ file, submission, hosted }) => ({ file, submission, hosted }));
  return { format: 'bellwire-gradebook', version: 1, assignment, counts, submissions, overrules: [...overrules] };
}

/**
 * All that the book has of one trainee, for themselves: their own work, grades and overrules. Nobody else is named in it, and no fault of
 * the assignment's stands in it.
 */
export function personOf({ assignment, handedIn, entries, overrules }: Book, code: string): object {
  const own = [...handedIn.values()].filter(({ submission }) => submission.trainee.code === code);
  return {
    format: 'bellwire-person',
    version: 1,
    trainee: own[0]?.submission.trainee ?? { code, name: '' },
    assignment: { id: assignment?.id, title: assignment?.title },
    submissions: own.map(({ key, file, submission }) => {
      const entry = entries.get(key);
      return {
        file,
        submission,
        points: entry && pointsIn(entry),
        items: entry?.result?.items,
        answers: entry?.paper?.answers.map(({ kind, right, choice }) => ({ kind, right, choice })),
        doubts: entry?.doubts.map((each) => ({ code: each.code, step: each.step })),
      };
    }),
    overrules: overrules.filter(({ trainee }) => trainee === code),
  };
}
