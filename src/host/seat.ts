/** One trainee's connection: what it says is checked, done on its own attempt and answered. It knows nothing of sockets. */
import type { FromBrowser, FromHost } from '../classroom/protocol.ts';
import { fromBrowserSchema, LARGEST_MESSAGE } from '../classroom/protocol.ts';
import { type DataError, dataError, isDataError, shapeError } from '../rig/errors.ts';
import type { Attempts, Running } from './attempts.ts';
import type { Class } from './class.ts';
import type { Clock } from './clock.ts';
import type { Drawer } from './drawer.ts';
import { shown } from './face.ts';
import { createPaperSeat, type PaperPlace } from './paper-seat.ts';
import type { Papers } from './papers.ts';
import type { Session, Sessions } from './sessions.ts';

export interface Seat {
  readonly trainee: string | undefined;
  /** The open attempt at a ticket, by its id. */
  readonly at: number | undefined;
  /** The open attempt at a paper. */
  readonly paper: PaperPlace | undefined;
  /** A message as it came. Whatever it is, nothing is thrown. */
  receive(text: string): void;
  /** Of the host's own accord. */
  say(message: FromHost): void;
  /** Looks at the clock: idle, or out of time. */
  tick(): void;
  close(why: 'idle' | 'elsewhere' | 'ended'): void;
  /** The connection is gone. */
  gone(): void;
}

export interface SeatNeeds {
  readonly sessions: Sessions;
  readonly room: Class;
  readonly attempts: Attempts;
  readonly papers: Papers;
  readonly drawer: Drawer;
  readonly clock: Clock;
  /** Messages a second that one connection may send in the long run, and at once. */
  readonly pace: { readonly perSecond: number; readonly atOnce: number };
  /** A trainee has taken this seat: any other of theirs is closed. */
  readonly seated: (seat: Seat) => void;
}

/** What a connection is closed for after it was told that it is too fast so many times. */
const MOST_WARNINGS = 100;

/**
 * @param send to the browser
 * @param hangUp ends the connection
 */
export function createSeat(needs: SeatNeeds, send: (text: string) => void, hangUp: () => void): Seat {
  const { sessions, room, attempts, papers, clock, pace } = needs;
  let session: Session | undefined;
  let at: number | undefined;
  let over = false;
  let closed = false;
  let allowance = pace.atOnce;
  let allowedAt = clock.now();
  let warnings = 0;

  const say = (message: FromHost): void => {
    if (!closed) send(JSON.stringify(message));
  };
  const fail = ({ code, path, values }: DataError, about: { readonly seq?: number; readonly question?: number } = {}): void =>
    say({ kind: 'error', code, path, values: { ...values }, ...about });
  const paperSeat = createPaperSeat(needs, say, fail);

  const left = (running: Running) => {
    const secondsLeft = attempts.secondsLeft(running);
    return secondsLeft === undefined ? {} : { secondsLeft };
  };

  function isTooFast(): boolean {
    const now = clock.now();
    allowance = Math.min(pace.atOnce, allowance + ((now - allowedAt) / 1000) * pace.perSecond);
    allowedAt = now;
    if (allowance < 1) return true;
    allowance -= 1;
    return false;
  }

  /** Tells once that the open attempt is over. */
  function tellEnd(running: Running): void {
    if (over) return;
    over = true;
    say({ kind: 'ended', how: running.row.ended === 'timeOver' ? 'timeOver' : 'closed', report: attempts.report(running) });
  }

  function open(trainee: string, { assignment, item, fresh }: Extract<FromBrowser, { kind: 'open' }>): void {
    const found = attempts.open(trainee, assignment, item, fresh === true);
    const isOver = attempts.settle(found);
    const running = attempts.get(found.row.id);
    const { row, given, attempt } = running;
    at = row.id;
    over = false;
    const { still, view, options } = shown(attempt, given.face);
    say({
      kind: 'opened',
      assignment,
      item,
      number: row.number,
      rig: given.work.rig,
      ticket: given.face,
      ...(given.work.ticket.mode === 'graded' ? {} : { whole: given.work.ticket }),
      still,
      view,
      steps: attempt.steps.map((step) => step.view),
      options: [...options],
      words: row.words,
      ...left(running),
    });
    if (isOver) tellEnd(running);
  }

  function act({ seq, action }: Extract<FromBrowser, { kind: 'act' }>): void {
    if (at === undefined) throw dataError('lab.nothingOpen', 'kind');
    const id = at;
    if (clock.paused()) {
      fail(dataError('lab.paused', 'seq'), { seq });
      return;
    }
    try {
      attempts.act(id, seq, action, (answer) => {
        if (isDataError(answer)) fail(answer, { seq });
        else say(answer);
        if (!isDataError(answer) && answer.kind === 'acted' && answer.view.phase === 'closed' && at === id)
          tellEnd(attempts.get(id));
      });
    } catch (error) {
      if (!isDataError(error)) throw error;
      fail(error, { seq });
      if (error.code === 'lab.over') tellEnd(attempts.get(id));
    }
  }

  function greet(token: string): void {
    const found = sessions.find(token);
    if (found?.trainee === undefined) {
      close('ended');
      return;
    }
    session = found;
    needs.seated(seat);
    say({ kind: 'welcome', paused: clock.paused(), assignments: room.listed(found.trainee) });
    papers.prepare([found.trainee]);
  }

  function answer(message: FromBrowser): void {
    if (message.kind === 'hello') {
      if (session) throw dataError('lab.helloTwice', 'kind');
      greet(message.token);
      return;
    }
    if (!session?.trainee) throw dataError('lab.helloFirst', 'kind');
    sessions.touch(session);
    switch (message.kind) {
      case 'open':
        if (papers.isPaper(message.assignment, message.item)) {
          at = undefined;
          paperSeat.open(session.trainee, message);
        } else {
          paperSeat.leave();
          open(session.trainee, message);
        }
        break;
      case 'ask':
      case 'choose':
      case 'handIn':
        paperSeat.answer(message);
        break;
      case 'act':
        act(message);
        return;
      case 'words':
        if (at === undefined) throw dataError('lab.nothingOpen', 'kind');
        if (!room.isOpen(attempts.get(at).assignment))
          throw dataError('lab.closedNow', 'kind', { id: attempts.get(at).row.assignment });
        attempts.setWords(at, message.text);
        say({ kind: 'kept' });
        break;
      case 'leave':
        at = undefined;
        paperSeat.leave();
        say({ kind: 'left', assignments: room.listed(session.trainee) });
        break;
    }
  }

  function receive(text: string): void {
    if (closed) return;
    if (isTooFast()) {
      warnings += 1;
      fail(dataError('lab.tooFast', 'kind'));
      if (warnings > MOST_WARNINGS) close('ended');
      return;
    }
    try {
      answer(readMessage(text));
    } catch (error) {
      fail(isDataError(error) ? error : dataError('lab.fault', 'kind'));
    }
  }

  function close(why: 'idle' | 'elsewhere' | 'ended'): void {
    if (closed) return;
    say({ kind: 'signedOut', why });
    closed = true;
    hangUp();
  }

  const seat: Seat = {
    get trainee() {
      return session?.trainee;
    },
    get at() {
      return closed ? undefined : at;
    },
    get paper() {
      return closed ? undefined : paperSeat.at;
    },
    receive,
    say,
    tick() {
      if (closed || !session) return;
      if (sessions.isIdle(session)) {
        sessions.end(session);
        close('idle');
        return;
      }
      try {
        paperSeat.tick();
        if (at !== undefined && !over && attempts.settle(attempts.get(at))) tellEnd(attempts.get(at));
      } catch (error) {
        if (!isDataError(error)) throw error;
        fail(error);
        at = undefined;
        paperSeat.leave();
      }
    },
    close,
    gone() {
      closed = true;
    },
  };
  return seat;
}

/** @throws DataError where it is none of the messages that there are */
function readMessage(text: string): FromBrowser {
  if (Buffer.byteLength(text) > LARGEST_MESSAGE) throw dataError('data.large', '(message)');
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw dataError('data.notJson', '(message)');
  }
  const parsed = fromBrowserSchema.safeParse(json);
  if (parsed.success) return parsed.data;
  throw shapeError(parsed.error.issues);
}
