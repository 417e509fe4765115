/** The page's side of SCORM against a runtime of somebody else's, both editions. */
import { Scorm12API, Scorm2004API } from 'scorm-again';
import { describe, expect, it } from 'vitest';
import { clockOf, findScorm, type WindowLike } from '../../../src/app/lms/scorm.ts';
import { MOST_QUESTIONS } from '../../../src/drills/exam.ts';
import { DRILL_SKILLS } from '../../../src/drills/item.ts';
import { SKILLS } from '../../../src/scenario/skills.ts';

const reached = { total: 84, seconds: 700, skills: ['supplyFirst', 'hopscotch'] as const, drills: [] };

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

describe('drills of a paper, by skill', () => {
  const papers = {
    ...reached,
    drills: [
      { skill: 'readings', right: 2, asked: 3 },
      { skill: 'sums', right: 0, asked: 4 },
    ] as const,
  };
  /** Every skill that there is, at the most that a paper may ask. */
  const all = {
    ...reached,
    skills: SKILLS,
    drills: DRILL_SKILLS.map((skill) => ({ skill, right: MOST_QUESTIONS, asked: MOST_QUESTIONS })),
  };

  it('are objectives with a score of 100 in SCORM 1.2, none of them passed or failed; a better attempt takes the place of the first', () => {
    const api = new Scorm12API({ autocommit: false, logLevel: 5 });
    const course = findScorm({ API: api })!;
    const objective = (at: number) =>
      ['id', 'status', 'score.raw', 'score.min', 'score.max'].map((name) => api.lmsGetValue(`cmi.objectives.${at}.${name}`));
    course.report(papers, false);
    expect(objective(0).slice(0, 2)).toEqual(['supplyFirst', 'passed']);
    expect(objective(2)).toEqual(['drill-readings', 'completed', '66.7', '0', '100']);
    expect(objective(3)).toEqual(['drill-sums', 'completed', '0', '0', '100']);
    course.report({ ...papers, drills: [{ skill: 'sums', right: 3, asked: 4 }] }, true);
    expect(objective(3)).toEqual(['drill-sums', 'completed', '75', '0', '100']);
    expect(Number(api.lmsGetValue('cmi.objectives._count'))).toBe(4);
    expect(api.lmsGetLastError()).toBe('0');
  });

  it('are objectives with right of asked in SCORM 2004, also beside those of an earlier session', () => {
    const api = new Scorm2004API({ autocommit: false, logLevel: 5 });
    api.loadFromJSON({ cmi: { objectives: [{ id: 'whole' }, { id: 'drill-sums' }] } }, '');
    const course = findScorm({ API_1484_11: api })!;
    course.report(papers, false);
    const objective = (at: number) =>
      ['id', 'completion_status', 'success_status', 'score.raw', 'score.min', 'score.max', 'score.scaled'].map((name) =>
        api.lmsGetValue(`cmi.objectives.${at}.${name}`),
      );
    expect(objective(1)).toEqual(['drill-sums', 'completed', 'unknown', '0', '0', '4', '0']);
    expect(objective(4)).toEqual(['drill-readings', 'completed', 'unknown', '2', '0', '3', '0.6666667']);
    expect(Number(api.lmsGetValue('cmi.objectives._count'))).toBe(5);
    expect(api.lmsGetLastError()).toBe('0');
  });

  // SCORM 2004 4th Edition RTE: a system keeps 100 objectives at least; SCORM 1.2: a name of 255 characters (both from memory).
  it.each([Scorm12API, Scorm2004API])(
    'are taken without an error where there are all of them, within what the standard has room for',
    (Runtime) => {
      const api = new Runtime({ autocommit: false, logLevel: 5 });
      const refused: string[] = [];
      const watched = Object.fromEntries(
        ['Initialize', 'GetValue', 'SetValue', 'Commit', 'Terminate'].map((name) => {
          const call = (...values: [string, string]) => {
            const answer = (api[`lms${name === 'Terminate' ? 'Finish' : name}` as 'lmsSetValue'] as (...all: string[]) => unknown)(
              ...values,
            );
            if (name === 'SetValue' && String(answer) !== 'true') refused.push(values.join(' '));
            return answer;
          };
          return [Runtime === Scorm12API ? `LMS${name}` : name, call];
        }),
      );
      findScorm(Runtime === Scorm12API ? { API: watched } : { API_1484_11: watched })!.report(all, true);
      expect(refused).toEqual([]);
      const count = Number(api.lmsGetValue('cmi.objectives._count'));
      expect(count).toBe(SKILLS.length + DRILL_SKILLS.length);
      expect(count).toBeLessThanOrEqual(100);
      const names = Array.from({ length: count }, (_, at) => String(api.lmsGetValue(`cmi.objectives.${at}.id`)));
      expect(new Set(names).size).toBe(count);
      for (const name of names) expect(name).toMatch(/^[!-~]{1,255}$/);
    },
  );
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
