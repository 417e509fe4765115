import { expect, test } from 'vitest';
import { joinExams } from '../../src/app/drills/exam-keep.ts';
import { fileText, parseFile } from '../../src/app/keeping/file.ts';
import { fits, isPin, newPin } from '../../src/app/keeping/pin.ts';
import { type Finished, finishedIn, type Result } from '../../src/app/keeping/records.ts';
import { nextOf, skillsOf } from '../../src/app/keeping/skills.ts';
import { finishedKey, onShelf, shelved } from '../../src/app/keeping/store.ts';
import { logOf } from '../../src/attempt/attempt.ts';
import { wordsOf } from '../../src/cli/files.ts';
import { DRILL_KINDS } from '../../src/drills/kinds.ts';
import { answered } from '../../src/drills/practice.ts';
import type { DataError } from '../../src/rig/errors.ts';
import { library, start, take } from '../scenario/shipped.ts';
import { pull } from '../score/solutions.ts';

const line = (points: number, of: number) => ({ points, of });
const result = (isolation: number, safety = 15, proof = 10): Result => ({
  total: isolation + 25 + safety + proof,
  right: isolation === 50,
  steps: 9,
  wasted: 1,
  minutes: 12,
  items: { isolation: line(isolation, 50), economy: line(25, 25), safety: line(safety, 15), proof: line(proof, 10) },
});
const done = (number: number, ticket: string, of: Result | undefined, when = 0): Finished => ({
  number,
  ticket,
  mode: 'practice',
  log: {},
  when,
  ...(of && { result: of }),
});

function attemptLog() {
  const attempt = start('warmUpstairs');
  take(attempt, pull('thermostat'));
  return logOf(attempt);
}

function faultOf(text: string): Pick<DataError, 'code' | 'path'> {
  try {
    parseFile(text);
  } catch (error) {
    const { code, path } = error as DataError;
    return { code, path };
  }
  throw new Error('the file was taken');
}

test('attempts stand in the order in which they were finished, though the clock was set back', () => {
  const shelf = new Map<string, unknown>(
    [done(10, 'a', undefined, 5), done(9, 'a', undefined, 9000), done(2, 'a', undefined, 8000)].map((each) => [
      finishedKey(each.number),
      each,
    ]),
  );
  shelf.set('finished:3', { number: 'three' }).set('running:a', {});
  expect(finishedIn(shelf).map((each) => each.number)).toEqual([2, 9, 10]);
});

test('a profile keeps to its own shelf', () => {
  for (const profile of ['own', 'p1', 'p12']) {
    for (const other of ['own', 'p1', 'p12']) {
      expect(onShelf(other, shelved(profile, 'count'))).toBe(other === profile ? 'count' : undefined);
    }
  }
  expect(onShelf('own', '/profiles')).toBeUndefined();
});

test('a file is read as it was written', () => {
  const attempt = { ticket: 'warmUpstairs', mode: 'coached' as const, log: attemptLog() };
  const profile = {
    name: 'Ana',
    finished: [{ ...attempt, when: 7, words: 'Done.\n<b>Ok</b>' }],
    running: [attempt],
    habits: { bench: 'list' },
  };
  expect(parseFile(fileText([profile]))).toEqual([profile]);
});

test('practice and exams go out and come back with a profile, two places’ exams join, and bad ones are refused with their path', () => {
  const [kind] = DRILL_KINDS;
  const drills = answered(
    { lot: 3, families: {}, skills: {} },
    { kind: kind!, rig: 'longRun', right: true, seconds: 20, now: 1e12 },
  );
  const sitting = (when: number) => ({
    blueprint: 'controlsCore',
    lot: 5,
    when,
    answers: [{ skill: 'sums' as const, right: true }],
  });
  const exams = { sittings: [sitting(1), sitting(2)] };
  const profile = { name: 'Ana', finished: [], running: [], habits: {}, drills, exams };
  expect(parseFile(fileText([profile]))).toEqual([profile]);
  expect(joinExams(exams, { sittings: [sitting(2), sitting(3)] }).sittings.map(({ when }) => when)).toEqual([1, 2, 3]);
  const bad = { ...profile, exams: { sittings: [{ ...sitting(1), answers: [{ skill: 'luck', right: true }] }] } };
  expect(faultOf(fileText([bad as unknown as typeof profile])).path).toBe('profiles[0].exams.sittings[0].answers[0].skill');
});

test('a bad file is refused with the path of what does not fit', () => {
  const attempt = { ticket: 'warmUpstairs', mode: 'practice' as const, log: attemptLog(), when: 7 };
  const good = JSON.parse(fileText([{ name: '', finished: [attempt, attempt], running: [], habits: {} }]));
  const changed = (change: (file: typeof good) => void) => {
    const file = structuredClone(good);
    change(file);
    return faultOf(JSON.stringify(file));
  };
  expect(faultOf('{"format":')).toEqual({ code: 'data.notJson', path: '(file)' });
  expect(changed((file) => (file.version = 2))).toEqual({ code: 'keeping.newer', path: 'version' });
  expect(changed((file) => (file.format = 'other'))).toEqual({ code: 'data.value', path: 'format' });
  expect(changed((file) => (file.profiles[0].finished[1].mode = 'easy')).path).toBe('profiles[0].finished[1].mode');
  expect(changed((file) => (file.profiles[0].finished[1].result = { total: 100 })).code).toBe('data.unknownKey');
  expect(changed((file) => (file.profiles[0].finished[1].words = 'x'.repeat(1001))).path).toBe('profiles[0].finished[1].words');
  expect(changed((file) => (file.profiles[0].finished[1].words = { html: 'x' })).path).toBe('profiles[0].finished[1].words');
  expect(changed((file) => (file.profiles[0].finished[1].log.steps[0].at = 'soon'))).toEqual({
    code: 'log.shape',
    path: 'profiles[0].finished[1].log.steps[0].at',
  });
});

const TICKETS = [
  { id: 'a', skills: ['supplyFirst', 'proveTheRepair'] },
  { id: 'b', skills: ['isolateTheCable', 'proveTheRepair'] },
  { id: 'c', skills: ['flameCurrent'] },
];

test('a skill is its share of points over the latest three attempts that ask for it', () => {
  const finished = [0, 50, 50, 50].map((points, index) => done(index + 1, 'a', result(points, 15, 5)));
  const skills = Object.fromEntries(skillsOf(TICKETS, finished).map((each) => [each.id, each]));
  expect(skills.supplyFirst).toMatchObject({ level: 1, attempts: 3, points: 225, of: 225 });
  expect(skills.proveTheRepair).toMatchObject({ level: 0.5, points: 15, of: 30 });
  expect(skills.flameCurrent).toMatchObject({ level: undefined, attempts: 0 });
});

test('next comes the first ticket, then the weakest skill, then what was never tried, then what was left longest', () => {
  expect(nextOf(TICKETS, [])).toMatchObject({ ticket: 'a', why: 'first' });
  const weak = [done(1, 'a', result(50)), done(2, 'b', result(0))];
  expect(nextOf(TICKETS, weak)).toMatchObject({ ticket: 'b', why: 'weakest', skill: { id: 'isolateTheCable' } });
  const sound = [done(1, 'a', result(50)), done(2, 'b', result(50))];
  expect(nextOf(TICKETS, sound)).toMatchObject({ ticket: 'c', why: 'untried', skill: { id: 'flameCurrent' } });
  expect(nextOf(TICKETS, [done(3, 'c', result(50)), ...sound])).toMatchObject({ why: 'longest', ticket: 'c' });
});

test('for a weak skill comes a ticket never finished, else the one that went worst the last time, however long ago', () => {
  const proof = (points: number) => result(50, 15, points);
  expect(nextOf(TICKETS, [done(1, 'a', proof(0))])).toMatchObject({ why: 'weakest', ticket: 'b', latest: undefined });
  const both = [done(1, 'b', proof(10)), done(2, 'a', proof(0)), done(3, 'c', proof(10))];
  expect(nextOf(TICKETS, both)).toMatchObject({ why: 'weakest', ticket: 'a', latest: { total: 90 } });
  expect(nextOf(TICKETS, [...both, done(4, 'b', proof(2)), done(5, 'a', proof(5))])).toMatchObject({ ticket: 'b' });
});

test('what an exam asks for is not suggested, and still tells of a skill', () => {
  expect(nextOf(TICKETS, [], new Set(['a']))).toMatchObject({ ticket: 'b', why: 'first' });
  const weak = [done(1, 'a', result(50)), done(2, 'b', result(0))];
  expect(nextOf(TICKETS, weak, new Set(['b']))).toMatchObject({ ticket: 'c', why: 'untried' });
  const unproved = [done(1, 'a', result(50, 15, 0))];
  const next = nextOf(TICKETS, unproved, new Set(['a']));
  expect(next).toMatchObject({ ticket: 'b', why: 'weakest', skill: { id: 'proveTheRepair', points: 0, of: 10 } });
  const all = [...weak, done(3, 'c', result(50))].map((each) => ({ ...each, result: result(50) }));
  expect(nextOf(TICKETS, all, new Set(['a']))).toMatchObject({ ticket: 'b', why: 'longest' });
  expect(nextOf(TICKETS, all, new Set(['a', 'b', 'c']))).toBeUndefined();
});

test('an attempt without a result counts for nothing', () => {
  expect(nextOf(TICKETS, [done(1, 'a', undefined)])).toMatchObject({ why: 'first' });
});

test('every ticket that ships asks for skills, and every skill has words', () => {
  const words = wordsOf('en') as { keeping: { skill: Record<string, string> } };
  for (const ticket of library.tickets) {
    expect(ticket.skills?.length, ticket.id).toBeGreaterThan(0);
    for (const skill of ticket.skills ?? []) expect(words.keeping.skill[skill], skill).toBeTruthy();
  }
});

test('a PIN opens by itself alone, and is not kept as it is', async () => {
  const pin = await newPin('2468');
  expect([await fits(pin, '2468'), await fits(pin, '2469')]).toEqual([true, false]);
  expect(JSON.stringify(pin)).not.toContain('2468');
  expect(['123', '1234', '12345678', '123456789', '12a4'].map(isPin)).toEqual([false, true, true, false, false]);
});
