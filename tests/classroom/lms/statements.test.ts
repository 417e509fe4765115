/** Statements for learning record stores, looked at by a published validator that is itself conformance-tested. */
import { describe, expect, it } from 'vitest';
import validate from 'xapi-validation';
import { drillScores } from '../../../src/classroom/lms/drillScores.ts';
import {
  completed,
  demonstrated,
  durationOf,
  initialized,
  judged,
  type Launch,
  scored,
  terminated,
  VERBS,
} from '../../../src/classroom/lms/statements.ts';

const launch: Launch = {
  actor: { objectType: 'Agent', account: { homePage: 'https://school.example', name: 'learner-7' } },
  registration: '7b5a9c1e-4c1d-4a55-9f7e-0a4b9d5c2f10',
  activityId: 'tag:bellwire.example,2026:assignment/week-9/work',
  contextTemplate: {
    contextActivities: { grouping: [{ id: 'https://school.example/course/hvac' }] },
    extensions: { 'https://w3id.org/xapi/cmi5/context/extensions/sessionid': 'session-1' },
  },
  masteryScore: 0.8,
};
const stamp = { id: '0d1c2b3a-1111-4222-8333-444455556666', timestamp: '2026-03-02T13:00:00.000Z' };
const drills = [{ skill: 'readings', right: 2, asked: 3 }] as const;
const reached = { total: 87, seconds: 725.5, skills: ['supplyFirst', 'hopscotch'] as const, drills };

const all = {
  initialized: initialized(launch, stamp),
  completed: completed(launch, stamp, reached),
  passed: judged(launch, stamp, reached)!,
  failed: judged(launch, stamp, { ...reached, total: 79 })!,
  terminated: terminated(launch, stamp, 900),
  demonstrated: demonstrated(launch, stamp, 'hopscotch'),
  scored: scored(launch, stamp, drills[0]),
};

// Source: xapi-validation (npm), the validator of a conformance-tested learning record store.
describe('statements', () => {
  it.each(Object.entries(all))('%s passes the validator, as an object and through JSON', (_, statement) => {
    expect(validate(statement)).toEqual([]);
    expect(validate(JSON.parse(JSON.stringify(statement)))).toEqual([]);
  });

  it('are refused by the same validator when something is wrong with them', () => {
    expect(validate({ ...all.passed, id: 'no uuid' })).not.toEqual([]);
    expect(validate({ ...all.passed, verb: { id: 'passed' } })).not.toEqual([]);
    expect(validate({ ...all.passed, result: { score: { scaled: 1.2 } } })).not.toEqual([]);
    expect(validate(scored(launch, stamp, { skill: 'sums', right: 5, asked: 4 }))).not.toEqual([]);
  });

  // Source: cmi5 Specification Profile for xAPI, Quartz, 9.3 to 9.6 (from memory).
  it('say what cmi5 asks of each: categories, score, success, mastery score, registration, session', () => {
    const categories = (statement: object) =>
      (statement as { context: { contextActivities: { category?: { id: string }[] } } }).context.contextActivities.category?.map(
        ({ id }) => id.split('/').at(-1),
      );
    expect(categories(all.initialized)).toEqual(['cmi5']);
    expect(categories(all.terminated)).toEqual(['cmi5']);
    for (const moving of [all.completed, all.passed, all.failed]) expect(categories(moving)).toEqual(['cmi5', 'moveon']);
    for (const own of [all.demonstrated, all.scored]) expect(categories(own)).toBeUndefined();
    expect(all.completed).toMatchObject({ result: { completion: true } });
    expect(all.completed).not.toMatchObject({ result: { score: expect.anything() } });
    expect(all.passed).toMatchObject({
      verb: { id: VERBS.passed },
      result: { success: true, score: { scaled: 0.87, raw: 87, min: 0, max: 100 }, duration: 'PT0H12M5.5S' },
      context: {
        registration: launch.registration,
        extensions: {
          'https://w3id.org/xapi/cmi5/context/extensions/sessionid': 'session-1',
          'https://w3id.org/xapi/cmi5/context/extensions/masteryscore': 0.8,
        },
      },
    });
    expect(all.failed).toMatchObject({ verb: { id: VERBS.failed }, result: { success: false } });
    expect(judged({ ...launch, masteryScore: undefined }, stamp, reached)).toBeUndefined();
  });

  it('say of each skill that papers asked for how many were right, of how many, and all of it once more when the work is complete', () => {
    expect(all.scored).toMatchObject({
      object: { id: `${launch.activityId}/drill-readings` },
      result: { score: { scaled: 0.6666667, raw: 2, min: 0, max: 3 } },
    });
    expect(all.completed).toMatchObject({ result: { extensions: { 'tag:bellwire.example,2026:drills': drills } } });
    expect(JSON.stringify(completed(launch, stamp, { ...reached, drills: [] }))).not.toContain('2026:drills');
    expect(
      drillScores([
        { skill: 'sums', right: true },
        { skill: 'readings', right: false },
        { skill: 'sums', right: false },
      ]),
    ).toEqual([
      { skill: 'readings', right: 0, asked: 1 },
      { skill: 'sums', right: 1, asked: 2 },
    ]);
  });

  it.each([
    [0, 'PT0H0M0S'],
    [59.994, 'PT0H0M59.99S'],
    [3600, 'PT1H0M0S'],
    [86_461.5, 'PT24H1M1.5S'],
  ])('%d seconds are %s', (seconds, text) => {
    expect(durationOf(seconds)).toBe(text);
  });
});
