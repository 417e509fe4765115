/** A process beside the room, of lower priority, that is asked one question at a time. It has the library from the beginning. */
import { type ChildProcess, fork } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Library } from '../scenario/library.ts';

/** The first message to such a process. */
export interface LibraryMessage {
  readonly kind: 'library';
  readonly library: Library;
}

export interface Beside<Question extends object, Answer> {
  /** A question has no answer yet. */
  readonly isBusy: boolean;
  /** @param done gets the answer; undefined where the process died over it: the next question starts it anew */
  ask(question: Question, done: (answer: Answer | undefined) => void): void;
  close(): Promise<void>;
}

/** @param file the process's module, beside this one. It answers `{ number, question }` with `{ number, answer }`. */
export function processBeside<Question extends object, Answer>(file: string, library: Library): Beside<Question, Answer> {
  let child: ChildProcess | undefined;
  let number = 0;
  let waiting: ((answer: Answer | undefined) => void) | undefined;

  function finish(answer: Answer | undefined): void {
    const done = waiting;
    waiting = undefined;
    done?.(answer);
  }

  function start(): ChildProcess {
    const tsx = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;
    const fresh = fork(fileURLToPath(new URL(file, import.meta.url)), {
      execArgv: ['--import', tsx],
      serialization: 'advanced',
    });
    fresh.send({ kind: 'library', library } satisfies LibraryMessage);
    fresh.on('message', (message: { readonly number: number; readonly answer: Answer }) => {
      if (child === fresh && message.number === number) finish(message.answer);
    });
    const lost = () => {
      if (child !== fresh) return;
      child = undefined;
      finish(undefined);
    };
    fresh.on('error', lost);
    fresh.on('exit', lost);
    return fresh;
  }

  return {
    get isBusy() {
      return waiting !== undefined;
    },
    ask(question, done) {
      child ??= start();
      number += 1;
      waiting = done;
      child.send({ number, question });
    },
    async close() {
      const last = child;
      child = undefined;
      waiting = undefined;
      if (!last || last.exitCode !== null) return;
      await new Promise<void>((done) => {
        last.once('exit', () => done());
        last.kill();
      });
    },
  };
}
