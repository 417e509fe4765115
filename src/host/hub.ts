/** Everybody who is connected: one seat a trainee, and the instructor's pages that look on. */

import { phaseOf } from '../attempt/attempt.ts';
import type { Seat as SeatSeen, ToInstructor } from '../classroom/room.ts';
import type { Attempts } from './attempts.ts';
import type { Clock } from './clock.ts';
import type { Examiner } from './examiner.ts';
import type { PaperPlace } from './paper-seat.ts';
import type { Papers } from './papers.ts';
import type { Records } from './records.ts';
import type { Seat } from './seat.ts';

export interface Watcher {
  send(message: ToInstructor): void;
  /** Closes it where its token is no longer good. */
  tick(): void;
}

export interface Hub {
  readonly watchers: Set<Watcher>;
  /** A trainee sat down: any other seat of theirs is closed. */
  seated(seat: Seat): void;
  left(seat: Seat): void;
  setPaused(paused: boolean): void;
  /** Tells trainees of time that was added. */
  tellTime(trainee: string | undefined): void;
  /** Closes a trainee's seat. */
  signOut(trainee: string, why: 'ended' | 'elsewhere'): void;
  room(): ToInstructor;
  /** Once a second. */
  tick(): void;
}

export function createHub(records: Records, attempts: Attempts, papers: Papers, clock: Clock, examiner: Examiner): Hub {
  const seats = new Map<string, Seat>();
  const watchers = new Set<Watcher>();

  const benchOf = (seat: Seat | undefined) => (seat?.at === undefined ? undefined : attempts.find(seat.at));

  const left = (seat: Seat): { secondsLeft?: number } => {
    const running = benchOf(seat);
    const sheet = seat.paper && papers.find(seat.paper.id);
    const secondsLeft = running ? attempts.secondsLeft(running) : sheet && papers.secondsLeft(sheet);
    return secondsLeft === undefined ? {} : { secondsLeft };
  };

  /** Somebody at a paper. */
  function atPaper(seat: Seat, { id, question }: PaperPlace): SeatSeen['at'] {
    const sheet = papers.find(id);
    if (!sheet) return undefined;
    const { row, paper } = sheet;
    const { made, last } = papers.progress(sheet);
    return {
      assignment: row.assignment,
      item: row.item,
      number: row.number,
      steps: made,
      question: { at: question + 1, of: paper.questions.length },
      phase: row.ended === null ? 'working' : 'closed',
      idleSeconds: clock.worked(last ?? row.began, clock.now()),
      ...left(seat),
    };
  }

  function seen(code: string, name: string): SeatSeen {
    const seat = seats.get(code);
    const base = { trainee: code, name, connected: seat !== undefined };
    const answering = seat?.paper && atPaper(seat, seat.paper);
    if (answering) return { ...base, at: answering };
    const running = benchOf(seat);
    if (!seat || !running) return base;
    const { row, attempt, stamps } = running;
    const followed = examiner.followed(row.id);
    const since = (stamp: number | undefined) => clock.worked(stamp ?? row.began, clock.now());
    return {
      ...base,
      at: {
        assignment: row.assignment,
        item: row.item,
        number: row.number,
        steps: attempt.steps.length,
        phase: phaseOf(attempt),
        idleSeconds: since(stamps.at(-1)),
        ...left(seat),
        ...(followed
          ? {
              suspects: {
                steps: followed.steps,
                left: followed.left,
                atStart: followed.atStart,
                stuckSeconds: since(followed.learnt === 0 ? undefined : stamps[followed.learnt - 1]),
              },
            }
          : {}),
      },
    };
  }

  const room = (): ToInstructor => ({
    kind: 'room',
    paused: clock.paused(),
    seats: records.trainees().map(({ code, name }) => seen(code, name)),
  });

  return {
    watchers,
    seated(seat) {
      if (seat.trainee === undefined) return;
      const other = seats.get(seat.trainee);
      seats.set(seat.trainee, seat);
      if (other !== seat) other?.close('elsewhere');
    },
    left(seat) {
      if (seat.trainee !== undefined && seats.get(seat.trainee) === seat) seats.delete(seat.trainee);
    },
    setPaused(paused) {
      if (clock.paused() === paused) return;
      clock.setPaused(paused);
      for (const seat of seats.values()) seat.say(paused ? { kind: 'paused' } : { kind: 'resumed', ...left(seat) });
    },
    tellTime(trainee) {
      for (const seat of seats.values())
        if (trainee === undefined || seat.trainee === trainee) seat.say({ kind: 'time', ...left(seat) });
    },
    signOut: (trainee, why) => seats.get(trainee)?.close(why),
    room,
    tick() {
      for (const seat of [...seats.values()]) seat.tick();
      for (const watcher of [...watchers]) watcher.tick();
      if (watchers.size === 0) return;
      for (const seat of seats.values()) {
        const running = benchOf(seat);
        if (running) examiner.watch(running.row.id, running.attempt.steps.length);
      }
      const message = room();
      for (const watcher of watchers) watcher.send(message);
    },
  };
}
