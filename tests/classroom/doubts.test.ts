/** What makes a grader look twice: the clock's notes, and lists of steps that were changed since they were sealed. */
import { describe, expect, it } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { listDoubt, timeDoubts } from '../../src/classroom/doubts.ts';
import { ownSeal } from '../../src/classroom/seal.ts';
import type { Submission } from '../../src/classroom/submission.ts';

const assignment = loadAssignment({
  format: 'bellwire-assignment',
  version: 1,
  id: 'week-9',
  title: 'Week nine',
  mode: 'graded',
  minutes: 10,
  opens: '2026-03-02T13:00:00Z',
  closes: '2026-03-02T14:00:00Z',
  seed: 1,
  items: [{ kind: 'shipped', ticket: 'fanButNoCooling' }],
});
const timed = (stamps: readonly number[], more: Partial<Submission> = {}) =>
  timeDoubts({ began: '2026-03-02T13:10:00Z', attempt: 1, stamps, ...more } as Submission, assignment, stamps.length);
const every = (seconds: number, count: number) => Array.from({ length: count }, (_, index) => seconds * index);

describe('the clock’s notes', () => {
  it('are believed where a person can have been that quick, within the hours and the minutes', () => {
    expect(timed(every(2, 30))).toEqual([]);
    expect(timed([])).toEqual([]);
  });

  it('are doubted at the first step that cannot be: a clock that goes back, or ten steps within a second; quick presses are no doubt', () => {
    expect(timed([0, 5, 4, 9])).toMatchObject([{ code: 'impossibleTimes', step: 3 }]);
    expect(timed([...every(0.08, 12), ...every(2, 3)])).toMatchObject([{ code: 'impossibleTimes', step: 11 }]);
    // Seven presses a second.
    expect(timed(every(0.14, 30))).toEqual([]);
    expect(timed([0, 9, 8, ...every(0.08, 12).map((each) => each + 20)])).toMatchObject([{ code: 'impossibleTimes', step: 3 }]);
    expect(
      timeDoubts({ began: '2026-03-02T13:10:00Z', attempt: 1, stamps: [0, 5] } as unknown as Submission, assignment, 3),
    ).toMatchObject([{ code: 'impossibleTimes', step: 3 }]);
  });

  it('tell what is too long, too early, too late and too often', () => {
    expect(timed([0, 800])).toMatchObject([{ code: 'overTime', values: { minutes: 14, allowed: 10 } }]);
    expect(timed([0, 60], { began: '2026-03-02T12:50:00Z' })).toMatchObject([{ code: 'outsideHours' }]);
    expect(timed([0, 500], { began: '2026-03-02T13:55:00Z' })).toMatchObject([{ code: 'outsideHours' }]);
    expect(timed([0, 60], { attempt: 2 })).toMatchObject([{ code: 'tooManyAttempts', values: { attempt: 2, allowed: 1 } }]);
  });
});

describe('a list of steps', () => {
  const steps: Action[] = ['R', 'C', 'W', 'Y', 'G'].map((screw) => ({ name: 'probe', lead: 'red', at: `board.${screw}` }));
  const seals = steps.map((step) => `${ownSeal(step)}.0000000000000000`);
  const [r, c, w, y, g] = steps as [Action, Action, Action, Action, Action];
  it.each([
    ['as it was', steps, undefined, undefined],
    ['without its end', [r, c, w], 'truncated', 3],
    ['without its beginning', [c, w, y, g], 'removed', 1],
    ['with one more', [r, c, c, w, y, g], 'added', 3],
    ['with one more at the end', [...steps, r], 'added', 6],
    ['in another order', [r, w, c, y, g], 'reordered', 2],
    ['with another step', [r, c, { name: 'close' }, y, g], 'changed', 3],
  ] as const)('%s', (_, now, code, step) => {
    const found = listDoubt(now, seals);
    expect(found?.code).toBe(code);
    expect(found?.step).toBe(step);
  });
});
