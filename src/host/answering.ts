/** The other end of {@link processBeside}: what such a process is made of. */
import { setPriority } from 'node:os';
import type { Library } from '../scenario/library.ts';
import type { LibraryMessage } from './beside.ts';

interface Asked<Question> {
  readonly kind?: undefined;
  readonly number: number;
  readonly question: Question;
}

/**
 * Answers what the host asks, until the host is gone.
 * @param answer whatever it throws is told as `failed`
 * @param failed what is told, after tidying up
 */
export function answerHost<Question, Answer>(answer: (question: Question, library: Library) => Answer, failed: () => Answer): void {
  let library: Library | undefined;
  // What the room is waiting for goes first.
  setPriority(10);
  process.on('disconnect', () => process.exit(0));
  process.on('message', (message: LibraryMessage | Asked<Question>) => {
    if (message.kind === 'library') {
      library = message.library;
      return;
    }
    const { number, question } = message;
    let told: Answer;
    try {
      if (!library) throw new Error('no library');
      told = answer(question, library);
    } catch {
      told = failed();
    }
    process.send?.({ number, answer: told });
  });
}
