/** The gradebook that is open in this tab: in its memory alone, through a change of page or language, until the tab is closed. */
import type { Assignment } from '../../classroom/assignment.ts';
import type { Entry } from '../../classroom/entry.ts';
import type { Counts } from '../../classroom/gradebook.ts';
import type { Overrule, Overrules } from '../../classroom/overrules.ts';
import { dataError } from '../../rig/errors.ts';
import { engineAlone, leaveMaking } from '../engine/engine.ts';
import { storeOf, useStore } from '../lab/store.ts';
import { library } from '../library.ts';
import {
  type Book,
  checkWorks,
  codesOf,
  dueOf,
  EMPTY,
  fileOf,
  gradedEntry,
  isSameAssignment,
  withContent,
  withoutTrainee,
} from './book.ts';
import { type Content, contentOf, type HandedIn, hostedOf, type Problem, problemOf } from './contents.ts';
import type { DroppedFiles } from './dropped.ts';

interface State {
  readonly book: Book;
  readonly problems: readonly Problem[];
  readonly isReading: boolean;
  readonly work: 'idle' | 'grading' | 'stopped';
  /** Graded, of all that was handed in. */
  readonly done: number;
  /** There are overrules that no file has. */
  readonly isUnsaved: boolean;
  /** Who overruled last, so that it need not be typed again. */
  readonly by: string;
}

const FIRST: State = { book: EMPTY, problems: [], isReading: false, work: 'idle', done: 0, isUnsaved: false, by: '' };
const state = storeOf<State>(FIRST);

export const useBook = () => useStore(state);
export const bookNow = (): Book => state.get().book;

const warn = (event: BeforeUnloadEvent) => event.preventDefault();
state.watch(() => {
  if (state.get().isUnsaved) addEventListener('beforeunload', warn);
  else removeEventListener('beforeunload', warn);
});

/** What comes first tells what the rest belongs to. */
const ORDER: readonly Content['kind'][] = ['gradebook', 'assignment', 'handedIn', 'overrules'];

let queue: Promise<void> = Promise.resolve();

/** Reads files, after those that came before, and grades what is new in them; what cannot be taken is told, and the others go on. */
export function takeFiles(brought: Promise<DroppedFiles>): Promise<void> {
  const isFor = opened;
  queue = queue.then(async () => {
    if (isFor !== opened) return;
    state.set({ isReading: true, problems: [] });
    const read: Read[] = [];
    const found: Problem[] = [];
    try {
      const { files, problems } = await brought;
      found.push(...problems);
      for (const { name, text } of files) {
        try {
          read.push({ file: name, content: contentOf(await text(), name) });
        } catch (error) {
          found.push(problemOf(name, error));
        }
      }
    } catch {
      // The browser could not give what was dropped, such as a folder that is gone.
      found.push(problemOf('', dataError('data.unreadable', '(file)')));
    }
    if (isFor !== opened) return;
    state.set({ isReading: false });
    take(read, found);
  });
  return queue;
}

interface Read {
  readonly file: string;
  readonly content: Content;
}

function take(read: readonly Read[], found: Problem[]): void {
  pause();
  let { book } = state.get();
  for (const kind of ORDER)
    for (const { file, content } of read.filter((each) => each.content.kind === kind)) {
      try {
        if ('assignment' in content) checkWorks(content.assignment, library);
        book = withContent(book, content);
        if (content.kind === 'gradebook') found.push(...content.problems);
      } catch (error) {
        found.push(problemOf(file, error));
      }
    }
  state.set({ book, problems: found });
  void goOn();
}

/**
 * Fills the gradebook with what a host has. One of another assignment is closed for it, where nothing would be lost.
 * @throws DataError where it is no assignment
 */
export function takeHosted(assignment: Assignment, submissions: readonly unknown[]): void {
  const { book, isUnsaved } = state.get();
  const isOther = book.assignment !== undefined && !isSameAssignment(book.assignment, assignment);
  if (isOther && !isUnsaved) closeBook();
  take([{ file: assignment.id, content: hostedOf(assignment, submissions, assignment.id) }], []);
}

/** Raised whenever the book is another. */
let opened = 0;
/** Raised whenever whatever is under way is given up. */
let run = 0;

/** Gives up grading for now: the page is left, or more is coming. */
export function pause(): void {
  run += 1;
  leaveMaking();
  if (state.get().work === 'grading') state.set({ work: 'idle' });
}

/** Stops grading until a hand says otherwise. */
export function stop(): void {
  pause();
  state.set({ work: 'stopped' });
}

/** Grades what is not graded yet, one after another. */
export async function goOn(): Promise<void> {
  if (state.get().work === 'grading') return;
  const { book } = state.get();
  const due = dueOf(book);
  state.set({ done: book.entries.size });
  if (book.assignment === undefined || due.length === 0) {
    state.set({ work: 'idle' });
    return;
  }
  run += 1;
  const mine = run;
  const fresh = new Map<string, Entry>();
  const publish = () => {
    const { book: now } = state.get();
    const still = [...fresh].filter(([key]) => now.handedIn.has(key));
    fresh.clear();
    state.set({ book: { ...now, entries: new Map([...now.entries, ...still]) } });
  };
  state.set({ work: 'grading' });
  const grader = graderOf(book.assignment, codesOf(book));
  for (const each of due) {
    const entry = await grader(each, () => mine === run);
    if (mine !== run) {
      publish();
      return;
    }
    if (entry === undefined) drop(each);
    else fresh.set(each.key, entry);
    state.set({ done: state.get().done + 1 });
    // The table is worked out anew with every lot, so lots grow with it.
    if (fresh.size > state.get().book.entries.size / 8) publish();
  }
  publish();
  state.set({ work: 'idle' });
}

/** One that the grader cannot do anything with. */
function drop({ key, file }: HandedIn): void {
  const { book, problems } = state.get();
  const handedIn = new Map([...book.handedIn].filter(([each]) => each !== key));
  state.set({ book: { ...book, handedIn }, problems: [...problems, problemOf(file, dataError('classroom.notGraded', '(file)'))] });
}

type Grade = (each: HandedIn, isWanted: () => boolean) => Promise<Entry | undefined>;

/** Grades in the worker; one that fails is tried once more in a new one, since the old one may have died of something else. */
function graderOf(assignment: Assignment, trainees: readonly string[]): Grade {
  const open = async () => {
    const engine = engineAlone();
    await engine.ask('roll', { assignment, trainees, library });
    return engine;
  };
  let engine: ReturnType<typeof open> | undefined;
  return async (each, isWanted) => {
    for (let tries = 0; tries < 2 && isWanted(); tries++) {
      try {
        engine ??= open();
        return gradedEntry(each, await (await engine).ask('grade', { submission: each.submission }));
      } catch {
        engine = undefined;
      }
    }
    return undefined;
  };
}

const put = (change: (book: Book) => Book): void => state.set({ book: change(state.get().book) });

export const setCounts = (counts: Counts): void => put((book) => ({ ...book, counts }));

export function overrule(made: Overrule): void {
  put((book) => ({ ...book, overrules: [...book.overrules, made] }));
  state.set({ isUnsaved: true, by: made.by });
}

export const erase = (code: string): void => {
  put((book) => withoutTrainee(book, code));
  state.set({ done: bookNow().entries.size });
};

/** The whole book as a file's text; from then on nothing in it is unsaved. */
export function savedText(): string | undefined {
  const file = fileOf(bookNow());
  if (file === undefined) return undefined;
  state.set({ isUnsaved: false });
  return `${JSON.stringify(file, null, 1)}\n`;
}

/** The overrules alone, as the command line reads them. */
export function overrulesText(): string | undefined {
  const { assignment, overrules } = bookNow();
  if (assignment === undefined) return undefined;
  state.set({ isUnsaved: false });
  const file: Overrules = { format: 'bellwire-overrules', version: 1, assignment: assignment.id, overrules: [...overrules] };
  return `${JSON.stringify(file, null, 1)}\n`;
}

export function closeBook(): void {
  pause();
  opened += 1;
  state.set(FIRST);
}
