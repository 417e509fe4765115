/** A lab for tests: a folder of its own, a class, an assignment, and trainees that speak to it without a wire. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Assignment, loadAssignment } from '../../src/classroom/assignment.ts';
import type { FromBrowser, FromHost } from '../../src/classroom/protocol.ts';
import { type Host, type HostOptions, openHost } from '../../src/host/host.ts';
import type { Seat } from '../../src/host/seat.ts';
import type { Library } from '../../src/scenario/library.ts';
import { library } from '../scenario/shipped.ts';

/** Two shipped tickets of small systems; each may be tried twice. */
export function smallAssignment(more: Partial<Assignment> = {}): Assignment {
  const of = (rig: string) => library.tickets.find((each) => each.rig === rig)!.id;
  return loadAssignment({
    format: 'bellwire-assignment',
    version: 1,
    id: 'week-9',
    title: 'Week nine',
    mode: 'graded',
    attempts: 2,
    seed: 11,
    items: [
      { kind: 'shipped', ticket: of('trainingBoard') },
      { kind: 'shipped', ticket: of('twoWireHeat') },
    ],
    ...more,
  });
}

/** The two smallest systems alone, so that exercises are drawn in a moment. */
export const smallLibrary: Library = {
  rigs: new Map(['trainingBoard', 'twoWireHeat'].map((id) => [id, library.rigs.get(id)!])),
  tickets: library.tickets.filter(({ rig }) => rig === 'trainingBoard' || rig === 'twoWireHeat'),
};

/** Four exercises, and an exam of five questions and ten minutes, beside two tickets: their places are 2 and 3. */
export const paperAssignment = (more: Partial<Assignment> = {}): Assignment =>
  smallAssignment({
    papers: [
      { kind: 'drills', drills: ['reading', 'contacts'], count: 4 },
      { kind: 'exam', exam: { id: 'own', items: 5, minutes: 10, pass: 0.7, skills: { readings: 1, sums: 1 } } },
    ],
    ...more,
  });

/** A clock that a test sets. */
export interface Hands {
  at: number;
}

export function newFolder(): { readonly folder: string; readonly remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'bellwire-lab-'));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** A lab with so many trainees, t1 and on, whose PINs are not hashed for speed where nobody signs in by PIN. */
export async function openLab(folder: string, hands: Hands, more: Partial<HostOptions> = {}): Promise<Host> {
  return openHost({ data: folder, library, now: () => hands.at, pace: { perSecond: 1e6, atOnce: 1e6 }, ...more });
}

export function enrol(host: Host, count: number): void {
  host.records.setTrainees(
    Array.from({ length: count }, (_, index) => ({ code: `t${index + 1}`, name: `Trainee ${index + 1}`, pin: 'none' })),
  );
}

/** A trainee's browser without a wire: every text that came, and the last message of each kind. */
export interface Browser {
  readonly seat: Seat;
  readonly texts: string[];
  readonly messages: FromHost[];
  send(message: FromBrowser | object): void;
  /** Sends, and waits for the answer. */
  ask(message: FromBrowser): Promise<FromHost>;
  last<K extends FromHost['kind']>(kind: K): Extract<FromHost, { kind: K }>;
}

export function browserAt(host: Host): Browser {
  const texts: string[] = [];
  const messages: FromHost[] = [];
  const waiting: ((message: FromHost) => void)[] = [];
  const seat = host.seat(
    (text) => {
      texts.push(text);
      const message = JSON.parse(text) as FromHost;
      messages.push(message);
      waiting.shift()?.(message);
    },
    () => undefined,
  );
  return {
    seat,
    texts,
    messages,
    send: (message) => seat.receive(JSON.stringify(message)),
    ask: (message) =>
      new Promise((resolve) => {
        waiting.push(resolve);
        seat.receive(JSON.stringify(message));
      }),
    last: (kind) => messages.findLast((each) => each.kind === kind) as never,
  };
}

/** A browser that has said hello as a trainee, by a token that was just made. */
export function seated(host: Host, trainee: string): Browser & { readonly token: string } {
  const token = host.sessions.begin(trainee);
  const browser = browserAt(host);
  browser.send({ kind: 'hello', token });
  return { ...browser, token };
}
