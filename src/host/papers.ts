/** Papers as they are answered: each attempt is its choices in the file, and nothing of it is kept elsewhere. */
import { type Answers, answersOf } from '../classroom/answers.ts';
import { type Assignment, placesOf } from '../classroom/assignment.ts';
import { FORMS, type Paper } from '../classroom/papers.ts';
import { RULES } from '../classroom/seal.ts';
import { type DataError, dataError, isDataError } from '../rig/errors.ts';
import { assignmentUp, beginNext } from './beginning.ts';
import type { Class } from './class.ts';
import type { Clock } from './clock.ts';
import type { Committer } from './committer.ts';
import type { Drawer } from './drawer.ts';
import type { AnswerRow, AttemptRow, Records } from './records.ts';

/** One attempt at a paper. */
export interface Sheet {
  readonly row: AttemptRow;
  readonly assignment: Assignment;
  readonly paper: Paper;
}

export interface Papers {
  /** Whether an item is one of an assignment's papers. */
  isPaper(assignment: string, item: number): boolean;
  /** The trainee's latest at a paper, or a new one. @throws DataError where the assignment does not allow it */
  open(trainee: string, assignment: string, item: number, fresh: boolean): Sheet;
  /** @throws DataError where it is gone, or was begun by other rules */
  get(id: number): Sheet;
  /** The same; undefined in place of an error. */
  find(id: number): Sheet | undefined;
  /** Choices that are kept, by question; null where there is none. */
  choices(sheet: Sheet): (number | null)[];
  /** How many there are, and when the latest was made. */
  progress(sheet: Sheet): { readonly made: number; readonly last: number | undefined };
  /** Keeps a choice, and tells when it is on the disk. @throws DataError where there is no such choice, or the attempt is over */
  choose(id: number, question: number, choice: number, tell: (error: DataError | undefined) => void): void;
  /** Ends an attempt. @throws DataError where it is over already */
  handIn(id: number): void;
  /** Left of its time, seconds; undefined: no limit. */
  secondsLeft(sheet: Sheet): number | undefined;
  /** Ends it when its time is over. Whether it is over now. */
  settle(sheet: Sheet): boolean;
  /** The same for everybody's at an assignment, whether they are there or not. */
  settleAll(assignment: string): void;
  submission(row: AttemptRow): Answers;
  /** Has these people's papers drawn, by and by, before they are opened. */
  prepare(trainees: readonly string[]): void;
}

export function createPapers(records: Records, room: Class, clock: Clock, committer: Committer, drawer: Drawer): Papers {
  const isPaperOf = (assignment: Assignment | undefined, item: number): boolean =>
    assignment !== undefined && item >= assignment.items.length && item < placesOf(assignment);

  function sheetOf(row: AttemptRow): Sheet {
    const assignment = room.assignment(row.assignment);
    if (!assignment) throw dataError('lab.noAssignment', 'assignment', { id: row.assignment });
    if (row.rules !== RULES) throw dataError('lab.otherRules', 'rules');
    const paper = room.paper(assignment, row.trainee, row.item);
    if (!paper) throw dataError('lab.noItem', 'item', { item: row.item + 1 });
    return { row, assignment, paper };
  }

  function get(id: number): Sheet {
    const row = records.attempt(id);
    if (!row) throw dataError('lab.noAttempt', 'attempt');
    return sheetOf(row);
  }

  function secondsLeft({ row, paper }: Sheet): number | undefined {
    if (paper.minutes === undefined) return undefined;
    return Math.max(0, paper.minutes * 60 + row.extra - clock.worked(row.began, clock.now()));
  }

  /** What was chosen in time is in the file before it is closed. */
  function end({ row }: Sheet, how: 'closed' | 'timeOver'): void {
    committer.flush();
    records.endAttempt(row.id, how);
  }

  function settle(sheet: Sheet): boolean {
    if (sheet.row.ended !== null) return true;
    if (secondsLeft(sheet) !== 0 && room.isOpen(sheet.assignment)) return false;
    end(sheet, 'timeOver');
    return true;
  }

  /** One value a question, from the rows that there are. */
  function byQuestion({ row, paper }: Sheet, value: (answer: AnswerRow) => number): (number | null)[] {
    const all = paper.questions.map((): number | null => null);
    for (const answer of records.answers(row.id)) all[answer.question] = value(answer);
    return all;
  }

  const choices = (sheet: Sheet) => byQuestion(sheet, ({ choice }) => choice);

  function prepare(assignment: Assignment, item: number, trainees: readonly string[]): void {
    const forms = new Set<string>();
    try {
      for (const trainee of trainees) {
        const paper = room.paper(assignment, trainee, item);
        if (!paper || forms.has(paper.digest)) continue;
        forms.add(paper.digest);
        drawer.prepare(paper);
        if (forms.size === FORMS) return;
      }
    } catch (error) {
      // Of a kind that is no longer there: told when it is opened.
      if (!isDataError(error)) throw error;
    }
  }

  return {
    isPaper: (assignment, item) => isPaperOf(room.assignment(assignment), item),
    open(trainee, id, item, fresh) {
      const assignment = assignmentUp(room, id);
      // What was chosen before must be in the file before it is read.
      committer.flush();
      const tried = records.attemptsOf(trainee, id).filter((row) => row.item === item);
      const last = tried.at(-1);
      const latest = last && sheetOf(last);
      if (latest && !(fresh && settle(latest))) return settle(latest) ? get(latest.row.id) : latest;
      return get(beginNext({ records, room, clock }, assignment, trainee, item, tried));
    },
    get,
    find(id) {
      try {
        return get(id);
      } catch (error) {
        if (isDataError(error)) return undefined;
        throw error;
      }
    },
    choices,
    progress({ row }) {
      const answers = records.answers(row.id);
      return { made: answers.length, last: answers.length === 0 ? undefined : Math.max(...answers.map(({ stamp }) => stamp)) };
    },
    choose(id, question, choice, tell) {
      const sheet = get(id);
      const asked = sheet.paper.questions[question];
      if (!asked) throw dataError('lab.noQuestion', 'question', { question: question + 1, count: sheet.paper.questions.length });
      if (choice >= asked.kind.choices)
        throw dataError('lab.noChoice', 'choice', { choice: choice + 1, count: asked.kind.choices });
      if (settle(sheet)) throw dataError('lab.over', 'attempt');
      const stamp = clock.now();
      committer.add(
        () => records.setAnswer(id, { question, choice, stamp }),
        (isKept) => tell(isKept ? undefined : dataError('lab.notKept', 'question')),
      );
    },
    handIn(id) {
      const sheet = get(id);
      if (settle(sheet)) throw dataError('lab.over', 'attempt');
      end(sheet, 'closed');
    },
    secondsLeft,
    settle,
    settleAll(id) {
      for (const row of records.attemptsAt(id))
        if (row.ended === null && isPaperOf(room.assignment(id), row.item) && row.rules === RULES) settle(sheetOf(row));
    },
    submission(row) {
      committer.flush();
      const sheet = sheetOf(row);
      return answersOf({
        assignment: sheet.assignment,
        trainee: { code: row.trainee, name: records.trainee(row.trainee)?.name ?? '' },
        paper: sheet.paper,
        attempt: row.number,
        began: new Date(row.began).toISOString(),
        choices: choices(sheet),
        stamps: byQuestion(sheet, ({ stamp }) => clock.worked(row.began, stamp)),
        ended: row.ended ?? 'timeOver',
      });
    },
    prepare(trainees) {
      for (const assignment of room.assignments())
        for (let item = assignment.items.length; item < placesOf(assignment); item++)
          if (room.isOpen(assignment)) prepare(assignment, item, trainees);
    },
  };
}
