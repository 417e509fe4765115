/** Asks the process that reasons, one question at a time: gradings first, then benches in the order in which they last changed. */
import { type ChildProcess, fork } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Assignment } from '../classroom/assignment.ts';
import type { Graded } from '../classroom/grade.ts';
import type { Submission } from '../classroom/submission.ts';
import type { Library } from '../scenario/library.ts';
import type { Running } from './attempts.ts';
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

type Numbered = Exclude<Question, { kind: 'library' }>;
type Unnumbered = { [K in Numbered['kind']]: Omit<Extract<Numbered, { kind: K }>, 'number'> }[Numbered['kind']];

/** So many benches are remembered. */
const MOST_REMEMBERED = 2000;

/** @param bench an attempt by its id; undefined where it is gone */
export function createExaminer(library: Library, bench: (id: number) => Running | undefined): Examiner {
  const waiting = new Set<number>();
  /** After how many steps a bench was asked about last. */
  const asked = new Map<number, number>();
  const found = new Map<number, Followed>();
  const gradings: { readonly question: Unnumbered; readonly done: (graded: Graded | undefined) => void }[] = [];
  let child: ChildProcess | undefined;
  let number = 0;
  let busy: ((answer: Answer) => void) | undefined;

  function start(): ChildProcess {
    const tsx = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;
    const fresh = fork(fileURLToPath(new URL('./examiner-process.ts', import.meta.url)), {
      execArgv: ['--import', tsx],
      serialization: 'advanced',
    });
    fresh.send({ kind: 'library', library } satisfies Question);
    fresh.on('message', (answer: Answer) => {
      if (answer.number !== number) return;
      finish(answer);
      next();
    });
    // One that has died is started anew for the next question.
    const lost = () => {
      if (child !== fresh) return;
      child = undefined;
      finish({ number, failed: true });
    };
    fresh.on('error', lost);
    fresh.on('exit', lost);
    return fresh;
  }

  function finish(answer: Answer): void {
    const done = busy;
    busy = undefined;
    done?.(answer);
  }

  function ask(question: Unnumbered, done: (answer: Answer) => void): void {
    child ??= start();
    number += 1;
    busy = done;
    child.send({ ...question, number } as Question);
  }

  function next(): void {
    if (busy) return;
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
    async close() {
      waiting.clear();
      const last = child;
      child = undefined;
      if (!last || last.exitCode !== null) return;
      await new Promise<void>((done) => {
        last.once('exit', () => done());
        last.kill();
      });
    },
  };
}
