import { expect, test } from 'vitest';
import type { Drawn } from '../../src/app/engine/making.ts';
import { loadAssignmentDraft, newAssignment, ticketsOf } from '../../src/app/making/assignment-draft.ts';
import { instantOf, localOf } from '../../src/app/making/local-time.ts';
import { drawPool, type PoolProgress } from '../../src/app/making/pool.ts';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { ticket } from '../scenario/shipped.ts';

const some = ticket('fanButNoCooling');
const made = (seconds: number): Drawn => ({ made: { ticket: some, seconds } });

function from(draws: readonly Drawn[]): () => Promise<Drawn> {
  let at = 0;
  return () => Promise.resolve(draws[at++ % draws.length] ?? { rejected: 'twice' });
}

test('a pool is full when so many are within 15 % of the shortest, whatever else was drawn', async () => {
  const told: PoolProgress[] = [];
  const draws = [made(100), made(200), { rejected: 'grade' } as const, made(114), made(50), made(108), made(101)];
  const pool = await drawPool(
    from(draws),
    3,
    () => false,
    (progress) => told.push(progress),
  );
  expect(pool.map(({ seconds }) => seconds)).toEqual([100, 108, 114]);
  expect(told.at(-1)).toEqual({ draws: 6, made: 5, alike: 3 });
});

test('what is stopped gives what there is, also when the draw under way is broken off', async () => {
  let stopped = false;
  const next = from([made(100), made(105), made(300)]);
  let asked = 0;
  const breaking = async () => {
    asked += 1;
    if (asked < 3) return next();
    stopped = true;
    throw new Error('the engine has stopped');
  };
  expect(
    await drawPool(
      breaking,
      6,
      () => stopped,
      () => {},
    ),
  ).toHaveLength(2);
});

test('a draw that fails on its own account is an error; what never comes is given up', async () => {
  const failing = () => Promise.reject(new Error('broken'));
  await expect(
    drawPool(
      failing,
      2,
      () => false,
      () => {},
    ),
  ).rejects.toThrow('broken');
  const told: PoolProgress[] = [];
  expect(
    await drawPool(
      from([{ rejected: 'skill' }]),
      2,
      () => false,
      (progress) => told.push(progress),
    ),
  ).toEqual([]);
  expect(told).toHaveLength(120);
});

test('a local time is kept as a moment in UTC and shown as that local time again', () => {
  for (const local of ['2026-11-30T08:00', '2027-07-01T23:59', '0999-01-02T03:04']) {
    const instant = instantOf(local);
    expect(instant).toMatch(/Z$/);
    expect(localOf(instant)).toBe(local);
  }
  expect(localOf(undefined)).toBe('');
  expect([instantOf(''), instantOf('soon')]).toEqual([undefined, undefined]);
  expect(localOf('2026-11-30T08:00:00+02:00')).toBe(localOf('2026-11-30T06:00:00Z'));
});

test('a new assignment lacks only title and tickets, and a draft of it comes back as it was', () => {
  const draft = newAssignment(123);
  expect(loadAssignmentDraft(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
  const full = { ...draft, title: 'Week 3', items: [{ kind: 'shipped', ticket: some.id }] };
  expect(loadAssignment(full)).toEqual(full);
  expect(() => loadAssignmentDraft({ ...draft, mode: 'easy' })).toThrow('data.value');
});

test('an item gives the tickets that it names', () => {
  expect(ticketsOf({ kind: 'shipped', ticket: some.id }).map(({ id }) => id)).toEqual([some.id]);
  expect(ticketsOf({ kind: 'shipped', ticket: 'none' })).toEqual([]);
  expect(ticketsOf({ kind: 'own', ticket: some })).toEqual([some]);
  const pool = [
    { ticket: some, seconds: 3 },
    { ticket: some, seconds: 3 },
  ];
  expect(ticketsOf({ kind: 'drawn', recipe: { rig: some.rig }, pool })).toHaveLength(2);
});
