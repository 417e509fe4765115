/** Exercises and exams on the lab host: drawn there, answered one by one, kept, taken up again, and graded. */
import Papa from 'papaparse';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createGrader } from '../../src/classroom/grade.ts';
import { papersOf, rigsOf } from '../../src/classroom/papers.ts';
import { type FromHost, fromHostSchema } from '../../src/classroom/protocol.ts';
import { toInstructorSchema } from '../../src/classroom/room.ts';
import { createBank } from '../../src/drills/draw.ts';
import type { Item } from '../../src/drills/item.ts';
import { itemOf, itemsOf } from '../../src/drills/paper.ts';
import { backup, openDatabase, restore } from '../../src/host/database.ts';
import type { Host } from '../../src/host/host.ts';
import { exportOf, gradebookCsv, submissionsOf } from '../../src/host/results.ts';
import { type Browser, browserAt, enrol, type Hands, newFolder, openLab, paperAssignment, seated, smallLibrary } from './lab.ts';

let place: ReturnType<typeof newFolder>;
let hands: Hands;
let host: Host;

const openHere = (folder: string) => openLab(folder, hands, { library: smallLibrary });

async function fresh(): Promise<void> {
  place = newFolder();
  hands = { at: Date.UTC(2026, 2, 2, 13) };
  host = await openHere(place.folder);
  enrol(host, 3);
  host.room.putUp(paperAssignment());
}
async function gone(): Promise<void> {
  await host.close();
  place.remove();
}
async function restart(): Promise<void> {
  await host.close();
  host = await openHere(place.folder);
}

const DRILLS = 2;
const EXAM = 3;
const open = (item: number, again = false) =>
  ({ kind: 'open', assignment: 'week-9', item, ...(again ? { fresh: true } : {}) }) as const;
const choose = (question: number, choice: number) => ({ kind: 'choose', question, choice }) as const;

/** The same items, drawn here. */
function itemsFor(trainee: string, item: number): readonly (Item | undefined)[] {
  const paper = papersOf(paperAssignment(), trainee, smallLibrary).find((each) => each.item === item)!;
  const bank = createBank(rigsOf(smallLibrary).map((id) => smallLibrary.rigs.get(id)!));
  return itemsOf(paper.questions, (question) => itemOf(bank, question));
}

async function again(token: string): Promise<Browser> {
  const browser = browserAt(host);
  browser.send({ kind: 'hello', token });
  return browser;
}

describe('a paper on the host', () => {
  beforeEach(fresh);
  afterEach(gone);

  it('stands in the list beside the tickets, with what it asks for', async () => {
    const ana = seated(host, 't1');
    const [listed] = ana.last('welcome').assignments;
    expect(fromHostSchema.safeParse(ana.messages[0]).success).toBe(true);
    expect(listed?.papers).toMatchObject([
      { item: DRILLS, setting: { kind: 'drills' }, questions: 4, used: 0, state: 'new' },
      { item: EXAM, setting: { kind: 'exam' }, questions: 5, minutes: 10 },
    ]);
    expect(listed?.papers[0]).not.toHaveProperty('minutes');
    await ana.ask(open(DRILLS));
    const left = await ana.ask({ kind: 'leave' });
    expect(left).toMatchObject({ assignments: [{ papers: [{ used: 1, state: 'running' }, { state: 'new' }] }] });
    expect(await ana.ask(open(4))).toMatchObject({ code: 'lab.noItem' });
    expect(await ana.ask({ kind: 'ask', question: 0 })).toMatchObject({ code: 'lab.nothingOpen' });
    const unknown = paperAssignment({ id: 'unknown', papers: [{ kind: 'drills', drills: ['mindReading'], count: 4 }] });
    expect(() => host.room.putUp(unknown)).toThrow(expect.objectContaining({ code: 'classroom.noKind' }));
  });

  it('keeps a choice before it says so, and goes on where it was on another PC and after the host is started anew', async () => {
    const ana = seated(host, 't1');
    expect(await ana.ask(open(DRILLS))).toMatchObject({ kind: 'paper', number: 1, choices: [null, null, null, null] });
    hands.at += 20_000;
    expect(await ana.ask(choose(1, 2))).toEqual({ kind: 'chosen', question: 1, choice: 2 });
    const [row] = host.records.attemptsOf('t1', 'week-9');
    expect(host.records.answers(row!.id)).toEqual([{ question: 1, choice: 2, stamp: hands.at }]);
    hands.at += 20_000;
    // Sent again, and then otherwise: the latest counts.
    expect(await ana.ask(choose(1, 2))).toEqual({ kind: 'chosen', question: 1, choice: 2 });
    expect(await ana.ask(choose(1, 0))).toEqual({ kind: 'chosen', question: 1, choice: 0 });
    await restart();
    const elsewhere = await again(ana.token);
    expect(await elsewhere.ask(open(DRILLS))).toMatchObject({ kind: 'paper', number: 1, choices: [null, 0, null, null] });
    expect(await elsewhere.ask(choose(4, 0))).toMatchObject({ code: 'lab.noQuestion', question: 4 });
    expect(await elsewhere.ask(choose(0, 9))).toMatchObject({
      code: 'lab.noChoice',
      question: 0,
      values: { choice: 10, count: 4 },
    });
    expect(await elsewhere.ask({ kind: 'ask', question: 4 })).toMatchObject({ code: 'lab.noQuestion' });
    // It is nobody else's.
    const ben = seated(host, 't2');
    expect(await ben.ask(choose(0, 1))).toMatchObject({ code: 'lab.nothingOpen' });
    expect(await ben.ask(open(DRILLS))).toMatchObject({ choices: [null, null, null, null] });
  });

  it('is over when it is handed in, and tried as often as the assignment allows', async () => {
    const ana = seated(host, 't1');
    await ana.ask(open(DRILLS));
    await ana.ask(choose(0, 1));
    expect(await ana.ask({ kind: 'handIn' })).toEqual({ kind: 'paperOver', how: 'closed' });
    expect(await ana.ask(choose(1, 1))).toMatchObject({ code: 'lab.over' });
    expect(await ana.ask({ kind: 'ask', question: 0 })).toMatchObject({ code: 'lab.over' });
    expect(await ana.ask({ kind: 'handIn' })).toMatchObject({ code: 'lab.over' });
    expect(await ana.ask(open(DRILLS))).toMatchObject({ number: 1, over: 'closed', choices: [1, null, null, null] });
    expect(await ana.ask(open(DRILLS, true))).toMatchObject({ number: 2, choices: [null, null, null, null] });
    expect(ana.last('paper')).not.toHaveProperty('over');
    await ana.ask({ kind: 'handIn' });
    expect(await ana.ask(open(DRILLS, true))).toMatchObject({ code: 'lab.noAttemptsLeft' });
  });

  it('has the host’s time: it stands still in a pause, more is added, and it is over for who is there and who is not', async () => {
    const [ana, ben] = [seated(host, 't1'), seated(host, 't2')];
    expect(await ana.ask(open(EXAM))).toMatchObject({ secondsLeft: 600 });
    await ben.ask(open(EXAM));
    await ben.ask(choose(0, 0));
    hands.at += 60_000;
    host.hub.setPaused(true);
    expect(await ana.ask(choose(0, 0))).toMatchObject({ code: 'lab.paused', question: 0 });
    expect(await ana.ask({ kind: 'ask', question: 0 })).toMatchObject({ code: 'lab.paused' });
    hands.at += 300_000;
    host.hub.setPaused(false);
    expect(ana.last('resumed')).toEqual({ kind: 'resumed', secondsLeft: 540 });
    host.attempts.extend('week-9', 't1', 60);
    host.hub.tellTime('t1');
    expect(ana.last('time')).toEqual({ kind: 'time', secondsLeft: 600 });
    ben.seat.gone();
    host.hub.left(ben.seat);
    hands.at += 599_000;
    host.tick();
    expect(ana.messages.some(({ kind }) => kind === 'paperOver')).toBe(false);
    hands.at += 1000;
    host.sessions.find(ana.token);
    host.tick();
    expect(ana.last('paperOver')).toEqual({ kind: 'paperOver', how: 'timeOver' });
    expect(await ana.ask(choose(0, 0))).toMatchObject({ code: 'lab.over' });
    const handedIn = submissionsOf(host, 'week-9');
    expect(handedIn).toMatchObject([
      { trainee: { code: 't1' }, ended: 'timeOver', choices: [null, null, null, null, null] },
      { trainee: { code: 't2' }, ended: 'timeOver', choices: [0, null, null, null, null], stamps: [0, null, null, null, null] },
    ]);
  });

  it('is seen by the instructor, exported and erased with its trainee', async () => {
    const ana = seated(host, 't1');
    await ana.ask(open(EXAM));
    await ana.ask(choose(3, 1));
    hands.at += 30_000;
    ana.send({ kind: 'ask', question: 2 });
    const seat = () => {
      const room = toInstructorSchema.parse(JSON.parse(JSON.stringify(host.hub.room())));
      return room.kind === 'room' ? room.seats[0]?.at : undefined;
    };
    expect(seat()).toEqual({
      ...{ assignment: 'week-9', item: EXAM, number: 1, steps: 1, question: { at: 3, of: 5 } },
      ...{ phase: 'working', idleSeconds: 30, secondsLeft: 570 },
    });
    await ana.ask({ kind: 'handIn' });
    expect(seat()).toMatchObject({ phase: 'closed' });
    expect(exportOf(host.records, host.clock, ['week-9'], 't1')).toMatchObject({
      attempts: [{ item: EXAM, steps: [], answers: [{ question: 3, choice: 1, at: '2026-03-02T13:00:00.000Z' }] }],
    });
    const [row] = host.records.attemptsOf('t1', 'week-9');
    expect(host.records.erase('t1')).toBe(true);
    expect(host.records.answers(row!.id)).toEqual([]);
  });

  it('is in a copy of the lab’s file; a file from before there were papers opens, and a copy of it is put back', async () => {
    const ana = seated(host, 't1');
    await ana.ask(open(DRILLS));
    await ana.ask(choose(2, 1));
    const copy = `${place.folder}/copies/monday.sqlite`;
    await backup(place.folder, copy);
    await ana.ask(choose(2, 0));
    await host.close();
    await restore(place.folder, copy);
    host = await openHere(place.folder);
    expect(await (await again(ana.token)).ask(open(DRILLS))).toMatchObject({ choices: [null, null, 1, null] });

    await host.close();
    const db = await openDatabase(place.folder);
    db.exec('DROP TABLE answers');
    db.pragma('user_version = 1');
    db.close();
    await backup(place.folder, copy);
    await restore(place.folder, copy);
    host = await openHere(place.folder);
    const before = await again(ana.token);
    expect(await before.ask(open(DRILLS))).toMatchObject({ number: 1, choices: [null, null, null, null] });
    expect(await before.ask(choose(2, 1))).toMatchObject({ kind: 'chosen' });
  });
});

describe('a paper that is drawn and graded', () => {
  let ana: Browser;
  let said: readonly Extract<FromHost, { kind: 'question' }>[];

  beforeAll(async () => {
    await fresh();
    ana = seated(host, 't1');
    await ana.ask(open(DRILLS));
    const all: Extract<FromHost, { kind: 'question' }>[] = [];
    for (let question = 0; question < 4; question++) {
      const answer = await ana.ask({ kind: 'ask', question });
      if (answer.kind !== 'question') throw new Error(JSON.stringify(answer));
      all.push(answer);
    }
    said = all;
  }, 120_000);
  afterAll(gone);

  it('asks what anybody draws from its lot', () => {
    const items = itemsFor('t1', DRILLS);
    expect(items.every((item) => item !== undefined)).toBe(true);
    expect(said.map(({ question, face }) => [question, face?.kind, face?.ask, face?.given, face?.choices])).toEqual(
      items.map((item, place) => [place, item!.kind, item!.ask, item!.given, item!.choices.map((each) => each.said)]),
    );
  });

  it('comes to what was right of it, without a doubt, in the grader’s hands and in the host’s table', async () => {
    const items = itemsFor('t1', DRILLS);
    for (const [question, item] of items.entries()) {
      hands.at += 15_000;
      const choice = question === 0 ? (item!.right + 1) % item!.choices.length : item!.right;
      expect(await ana.ask(choose(question, choice))).toMatchObject({ kind: 'chosen' });
    }
    hands.at += 5000;
    await ana.ask({ kind: 'handIn' });
    const assignment = host.room.assignment('week-9')!;
    const submissions = submissionsOf(host, 'week-9');
    expect(submissions).toMatchObject([{ format: 'bellwire-answers', item: DRILLS, stamps: [15, 30, 45, 60], ended: 'closed' }]);
    const graded = createGrader(assignment, smallLibrary, ['t1', 't2']).grade(JSON.parse(JSON.stringify(submissions[0])));
    expect(graded.doubts).toEqual([]);
    expect(graded.paper).toMatchObject({ right: 3, asked: 4, total: 75 });
    const csv = await gradebookCsv(host, assignment, submissions, ['t1', 't2']);
    const { data } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });
    expect(data.find(({ item }) => item === String(DRILLS + 1))).toMatchObject({
      ...{ trainee: 't1', points: '75', replayed: '75', answersRight: '3', answersAsked: '4', doubts: '' },
    });
  }, 120_000);
});
