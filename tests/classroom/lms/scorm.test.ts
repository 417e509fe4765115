/** The page's side of SCORM against a runtime of somebody else's, both editions. */
import { Scorm12API, Scorm2004API } from 'scorm-again';
import { describe, expect, it } from 'vitest';
import { clockOf, findScorm, type WindowLike } from '../../../src/app/lms/scorm.ts';

const reached = { total: 84, seconds: 700, skills: ['supplyFirst', 'hopscotch'] as const };

/** A window whose grandparent has the runtime, as in a frame of a frame. */
function framed(api: Partial<WindowLike>): WindowLike {
  const top: { parent?: WindowLike | null; API?: unknown; API_1484_11?: unknown } = { ...api };
  top.parent = top;
  return { parent: { parent: top } };
}

// Source: scorm-again (npm), an independent runtime of SCORM 1.2 and 2004.
describe('SCORM 1.2', () => {
  it('begins, keeps, scores, completes and leaves; taken up again, it gives back what was kept', () => {
    const api = new Scorm12API({ autocommit: false, logLevel: 5 });
    api.loadFromJSON(
      { cmi: { core: { student_id: 'a.lópez@school', student_name: 'López, Ana' }, student_data: { mastery_score: '80' } } },
      '',
    );
    const course = findScorm(framed({ API: api }))!;
    expect(course.kind).toBe('scorm12');
    expect(course.learner).toEqual({ id: 'a.lópez@school', name: 'López, Ana' });
    expect(course.resume).toBe('');
    expect(api.lmsGetValue('cmi.core.lesson_status')).toBe('incomplete');
    expect(course.keep('x'.repeat(course.limit))).toBe(true);
    expect(course.keep('x'.repeat(course.limit + 1))).toBe(false);
    expect(course.keep('half way')).toBe(true);
    course.report({ ...reached, total: 40 }, false);
    expect(api.lmsGetValue('cmi.core.lesson_status')).toBe('incomplete');
    course.report(reached, true);
    expect(api.lmsGetValue('cmi.core.score.raw')).toBe('84');
    expect(api.lmsGetValue('cmi.core.lesson_status')).toBe('passed');
    expect(Number(api.lmsGetValue('cmi.objectives._count'))).toBe(2);
    expect(api.lmsGetValue('cmi.objectives.1.id')).toBe('hopscotch');
    course.leave(700, false);
    expect(api.isTerminated()).toBe(true);
    expect(api.cmi.suspend_data).toBe('half way');
  });

  it('fails below the mark, and only completes where there is none', () => {
    const status = (mark: string | undefined, total: number) => {
      const api = new Scorm12API({ autocommit: false, logLevel: 5 });
      if (mark !== undefined) api.loadFromJSON({ cmi: { student_data: { mastery_score: mark } } }, '');
      findScorm({ API: api })!.report({ ...reached, total }, true);
      return api.lmsGetValue('cmi.core.lesson_status');
    };
    expect(status('80', 79)).toBe('failed');
    expect(status('80', 80)).toBe('passed');
    expect(status(undefined, 10)).toBe('completed');
  });
});

describe('SCORM 2004', () => {
  it('begins, keeps, scores, completes and leaves', () => {
    const api = new Scorm2004API({ autocommit: false, logLevel: 5 });
    api.loadFromJSON({ cmi: { learner_id: 'l7', learner_name: 'Seven', scaled_passing_score: '0.9' } }, '');
    const course = findScorm(framed({ API_1484_11: api }))!;
    expect(course.kind).toBe('scorm2004');
    expect(course.learner).toEqual({ id: 'l7', name: 'Seven' });
    expect(api.lmsGetValue('cmi.completion_status')).toBe('incomplete');
    expect(course.keep('half way')).toBe(true);
    course.report(reached, true);
    expect(api.lmsGetValue('cmi.completion_status')).toBe('completed');
    expect(api.lmsGetValue('cmi.score.scaled')).toBe('0.84');
    expect(api.lmsGetValue('cmi.success_status')).toBe('failed');
    expect(api.lmsGetValue('cmi.objectives.0.success_status')).toBe('passed');
    course.leave(12.5, true);
    expect(api.isTerminated()).toBe(true);
    expect(api.cmi.suspend_data).toBe('half way');
  });
});

describe('where there is no learning system', () => {
  it('nothing is found, even where a window may not be looked into', () => {
    expect(findScorm({})).toBeUndefined();
    const foreign = {
      get parent(): never {
        throw new Error('another origin');
      },
    };
    expect(findScorm(foreign)).toBeUndefined();
  });

  it('a system that will not begin is none', () => {
    expect(findScorm({ API: { LMSInitialize: () => 'false' } })).toBeUndefined();
  });
});

// Source: CMITimespan of SCORM 1.2 (from memory).
it.each([
  [0, '00:00:00.00'],
  [59.999, '00:01:00.00'],
  [3661.25, '01:01:01.25'],
])('%d seconds are %s', (seconds, text) => {
  expect(clockOf(seconds)).toBe(text);
});
