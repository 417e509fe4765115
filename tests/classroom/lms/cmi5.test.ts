/** A launch by cmi5 against a learning record store that keeps what it is told, and validates it. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import validate from 'xapi-validation';
import { beginCmi5, cmi5Asked } from '../../../src/app/lms/cmi5.ts';
import { VERBS } from '../../../src/classroom/lms/statements.ts';
import { type RecordStore, startRecordStore } from './record-store.ts';

let store: RecordStore;
beforeAll(async () => {
  store = await startRecordStore();
});
afterAll(() => store.stop());

const launch = () => {
  let number = 0;
  const uuid = () => `00000000-0000-4000-8000-${String(++number).padStart(12, '0')}`;
  return beginCmi5(cmi5Asked(`?${store.launch()}`)!, () => '2026-03-02T13:00:00.000Z', uuid);
};
const verbs = () => store.statements().map(({ verb }) => verb.id);

describe('a launch by cmi5', () => {
  // Source: cmi5 Specification Profile for xAPI, Quartz, sections 8, 10 and 11 (from memory).
  it('fetches its token once, reads launch data and preferences, and says that it has begun before anything else', async () => {
    const course = await launch();
    expect(course.learner).toEqual({ id: 'ana-7', name: 'Ana' });
    expect(course.resume).toBe('');
    expect(store.asked.map(({ path }) => path)).toEqual([
      '/token',
      '/xapi/activities/state',
      '/xapi/agents/profile',
      '/xapi/activities/state',
      '/xapi/statements',
    ]);
    expect(store.asked[0]?.method).toBe('POST');
    for (const { headers } of store.asked.slice(1)) {
      expect(headers.authorization).toBe('Basic c2VjcmV0');
      expect(headers['x-experience-api-version']).toBe('1.0.3');
    }
    expect(verbs()).toEqual([VERBS.initialized]);
  });

  it('keeps and gives back, completes and passes once, and says goodbye once; every statement is valid', async () => {
    const course = await launch();
    expect(await course.keep('half way')).toBe(true);
    expect((await launch()).resume).toBe('half way');
    store.asked.length = 0;
    const reached = {
      total: 84,
      seconds: 700,
      skills: ['hopscotch'] as const,
      drills: [{ skill: 'sums', right: 1, asked: 4 }] as const,
    };
    await course.report(reached, false);
    const better = { ...reached, drills: [{ skill: 'sums', right: 3, asked: 4 }] as const };
    await course.report(better, true);
    await course.report(better, true);
    await course.leave(720, true);
    await course.leave(720, true);
    expect(verbs()).toEqual([VERBS.demonstrated, VERBS.scored, VERBS.scored, VERBS.completed, VERBS.passed, VERBS.terminated]);
    expect(store.statements().flatMap(({ verb, result }) => (verb.id === VERBS.scored ? [result?.score?.raw] : []))).toEqual([
      1, 3,
    ]);
    for (const statement of store.statements()) expect(validate(statement)).toEqual([]);
  });
});
