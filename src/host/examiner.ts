/** Asks the process that reasons, one question at a time: gradings first, then benches in the order in which they last changed. */
import type { Assignment } from '../classroom/assignment.ts';
import type { Graded } from '../classroom/grade.ts';
import type { Submission } from '../classroom/submission.ts';
import type { Library } from '../scenario/library.ts';
import type { Running } from './attempts.ts';
import { processBeside } from './beside.ts';
import type { Answer, Followed, Question } from './examiner-process.ts';

export interface Examiner {
  /** Wants to know of a bench after so many steps, by and by. */
  watch(id: number, steps: number): void;
  /** What was found out last of a bench. */
  followed(id: number): Followed | undefined;
  /** Undefined where a submission cannot be graded at all. */
  grade(assignment: Assignment, trainees: readonly string[], submission: Submission): Promise<Graded | undefined>;
  close(): Promise<void>;
}

/** So many benches are remembered. */
const MOST_REMEMBERED = 2000;

/** @param bench an attempt by its id; undefined where it is gone */
export function createExaminer(library: Library, bench: (id: number) => Running | undefined): Examiner {
  const waiting = new Set<number>();
  /** After how many steps a bench was asked about last. */
  const asked = new Map<number, number>();
  const found = new Map<number, Followed>();
  const gradings: { readonly question: Question; readonly done: (graded: Graded | undefined) => void }[] = [];
  const beside = processBeside<Question, Answer>('./examiner-process.ts', library);

  function ask(question: Question, done: (answer: Answer) => void): void {
    beside.ask(question, (answer = { failed: true }) => {
      done(answer);
      next();
    });
  }

  function next(): void {
    if (beside.isBusy) return;
    const grading = gradings.shift();
    if (grading) {
      ask(grading.question, (answer) => grading.done('graded' in answer ? answer.graded : undefined));
      return;
    }
    const [id] = waiting;
    if (id === undefined) return;
    waiting.delete(id);
    const running = bench(id);
    if (!running) {
      setImmediate(next);
      return;
    }
    const { ticket, rig } = running.given.work;
    ask({ kind: 'follow', ticket, rig, actions: running.attempt.steps.map(({ action }) => action) }, (answer) => {
      if (!('followed' in answer)) return;
      found.delete(id);
      found.set(id, answer.followed);
      const [oldest] = found.keys();
      if (found.size <= MOST_REMEMBERED || oldest === undefined) return;
      found.delete(oldest);
      asked.delete(oldest);
    });
  }

  return {
    watch(id, steps) {
      if (asked.get(id) === steps) return;
      asked.set(id, steps);
      waiting.add(id);
      next();
    },
    followed: (id) => found.get(id),
    grade: (assignment, trainees, submission) =>
      new Promise((done) => {
        gradings.push({ question: { kind: 'grade', assignment, trainees, submission }, done });
        next();
      }),
    close() {
      waiting.clear();
      return beside.close();
    },
  };
}
