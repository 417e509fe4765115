/** All of a lab host but its wires: what is kept, who is there, what they work on. */
import type { Library } from '../scenario/library.ts';
import { type Attempts, createAttempts } from './attempts.ts';
import { type Class, createClass } from './class.ts';
import { type Clock, createClock } from './clock.ts';
import { createCommitter } from './committer.ts';
import { openDatabase } from './database.ts';
import { createDrawer, type Drawer } from './drawer.ts';
import { createExaminer, type Examiner } from './examiner.ts';
import { createGuard, type Guard } from './guard.ts';
import { createHub, type Hub } from './hub.ts';
import { createPapers, type Papers } from './papers.ts';
import { createRecords, type Records } from './records.ts';
import { createSeat, type Seat } from './seat.ts';
import { hashSecret, makeCode } from './secrets.ts';
import { createSessions, type Sessions } from './sessions.ts';

export interface HostOptions {
  /** Folder of the lab's file. */
  readonly data: string;
  readonly library: Library;
  /** Milliseconds since 1970; the PC's clock where left out. */
  readonly now?: () => number;
  readonly idleSeconds?: number;
  readonly pace?: { readonly perSecond: number; readonly atOnce: number };
}

export interface Host {
  readonly records: Records;
  readonly clock: Clock;
  readonly guard: Guard;
  readonly sessions: Sessions;
  readonly room: Class;
  readonly attempts: Attempts;
  readonly papers: Papers;
  readonly drawer: Drawer;
  readonly examiner: Examiner;
  readonly hub: Hub;
  readonly idleSeconds: number;
  readonly classCode: string;
  /** The instructor's, when it has just been made: it is kept as a hash. */
  readonly password: string | undefined;
  seat(send: (text: string) => void, hangUp: () => void): Seat;
  /** Once a second. */
  tick(): void;
  close(): Promise<void>;
}

const IDLE_SECONDS = 15 * 60;
/** Nobody's hands are faster for long; common practice, no source. */
const PACE = { perSecond: 10, atOnce: 40 };
/** Ticks between two signs of life in the file. */
const BEAT = 5;

/** Opens the lab in a folder, and makes it there the first time. @throws DataError */
export async function openHost(options: HostOptions): Promise<Host> {
  const { data, library, now = Date.now, idleSeconds = IDLE_SECONDS, pace = PACE } = options;
  const db = await openDatabase(data);
  const records = createRecords(db);
  const password = records.setting('password') === undefined ? makeCode(12) : undefined;
  if (password !== undefined) {
    records.setSetting('class', makeCode(6));
    records.setSetting('password', await hashSecret(password));
  }
  const clock = createClock(db, now);
  const committer = createCommitter(db);
  const guard = createGuard(now);
  const sessions = createSessions(records, now, idleSeconds * 1000);
  const room = createClass(records, library, clock);
  const attempts = createAttempts(records, room, clock, committer);
  const examiner = createExaminer(library, attempts.find);
  const drawer = createDrawer(library);
  const papers = createPapers(records, room, clock, committer, drawer);
  const hub = createHub(records, attempts, papers, clock, examiner);
  let ticks = 0;
  clock.beat();
  papers.prepare(records.trainees().map(({ code }) => code));

  return {
    records,
    clock,
    guard,
    sessions,
    room,
    attempts,
    papers,
    drawer,
    examiner,
    hub,
    idleSeconds,
    classCode: records.setting('class') ?? '',
    password,
    seat: (send, hangUp) => createSeat({ sessions, room, attempts, papers, drawer, clock, pace, seated: hub.seated }, send, hangUp),
    tick() {
      hub.tick();
      drawer.tick();
      ticks += 1;
      if (ticks % BEAT !== 0) return;
      clock.beat();
      sessions.keep();
      sessions.sweep();
    },
    async close() {
      committer.flush();
      sessions.keep();
      clock.beat();
      await Promise.all([examiner.close(), drawer.close()]);
      db.close();
    },
  };
}
