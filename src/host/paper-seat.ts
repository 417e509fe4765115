/** What a trainee's connection says of the paper that is open on it. */
import type { FromBrowser, FromHost } from '../classroom/protocol.ts';
import { type DataError, dataError, isDataError } from '../rig/errors.ts';
import type { Clock } from './clock.ts';
import type { Drawer } from './drawer.ts';
import type { Papers, Sheet } from './papers.ts';

/** The attempt that is open, by its id, and the question that was asked for last, from 0. */
export interface PaperPlace {
  readonly id: number;
  readonly question: number;
}

type Said<Kind extends FromBrowser['kind']> = Extract<FromBrowser, { kind: Kind }>;

export interface PaperSeat {
  readonly at: PaperPlace | undefined;
  open(trainee: string, message: Said<'open'>): void;
  /** @throws DataError where nothing is open */
  answer(message: Said<'ask' | 'choose' | 'handIn'>): void;
  leave(): void;
  /** Looks at the clock. */
  tick(): void;
}

interface Needs {
  readonly papers: Papers;
  readonly drawer: Drawer;
  readonly clock: Clock;
}

export function createPaperSeat(
  { papers, drawer, clock }: Needs,
  say: (message: FromHost) => void,
  fail: (error: DataError, about?: { readonly question: number }) => void,
): PaperSeat {
  let at: PaperPlace | undefined;
  let over = false;

  /** Tells once that the open attempt is over. */
  function tellEnd(id: number): void {
    if (over || at?.id !== id) return;
    over = true;
    say({ kind: 'paperOver', how: papers.get(id).row.ended === 'timeOver' ? 'timeOver' : 'closed' });
  }

  function left(sheet: Sheet): { secondsLeft?: number } {
    const secondsLeft = papers.secondsLeft(sheet);
    return secondsLeft === undefined ? {} : { secondsLeft };
  }

  function ask(id: number, question: number): void {
    const { paper, row } = papers.get(id);
    const { length } = paper.questions;
    if (question >= length) throw dataError('lab.noQuestion', 'question', { question: question + 1, count: length });
    if (row.ended !== null) throw dataError('lab.over', 'attempt');
    at = { id, question };
    void drawer.question(paper, question).then((face) => {
      if (at?.id !== id) return;
      if (face === undefined) fail(dataError('lab.notDrawn', 'question', { question: question + 1 }), { question });
      else say({ kind: 'question', question, face });
    });
  }

  function act(id: number, message: Said<'ask' | 'choose' | 'handIn'>): void {
    if (clock.paused()) throw dataError('lab.paused', 'kind');
    if (message.kind === 'ask') ask(id, message.question);
    else if (message.kind === 'handIn') {
      papers.handIn(id);
      tellEnd(id);
    } else {
      const { question, choice } = message;
      papers.choose(id, question, choice, (error) => {
        if (error) fail(error, { question });
        else say({ kind: 'chosen', question, choice });
      });
    }
  }

  return {
    get at() {
      return at;
    },
    open(trainee, { assignment, item, fresh }) {
      const sheet = papers.open(trainee, assignment, item, fresh === true);
      const { row, paper } = sheet;
      at = { id: row.id, question: 0 };
      over = row.ended !== null;
      if (!over) drawer.prepare(paper);
      const choices = papers.choices(sheet);
      const ended = row.ended === null ? {} : { over: row.ended };
      say({ kind: 'paper', assignment, item, number: row.number, choices, ...ended, ...left(sheet) });
    },
    answer(message) {
      if (at === undefined) throw dataError('lab.nothingOpen', 'kind');
      const { id } = at;
      try {
        act(id, message);
      } catch (error) {
        if (!isDataError(error)) throw error;
        fail(error, 'question' in message ? { question: message.question } : undefined);
        if (error.code === 'lab.over') tellEnd(id);
      }
    },
    leave() {
      at = undefined;
    },
    tick() {
      if (at !== undefined && !over && papers.settle(papers.get(at.id))) tellEnd(at.id);
    },
  };
}
