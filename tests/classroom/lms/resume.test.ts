/** What a learning system keeps of exercises and exams, and how much of it is sure to fit. */
import { describe, expect, it, test } from 'vitest';
import { bestOfResults, isFurther, type Results, resultKey, resumeIn, resumeOf } from '../../../src/app/lms/resume.ts';
import { type Assigned, type KeptPaper, type KeptWork, MOST_NAME } from '../../../src/app/taking/records.ts';
import type { Taken } from '../../../src/app/taking/use-assigned.ts';
import { type Assignment, loadAssignment } from '../../../src/classroom/assignment.ts';
import { PACKAGE_KINDS } from '../../../src/classroom/lms/manifests.ts';
import { answersIn, KEPT_CHARACTERS, papersFit } from '../../../src/classroom/lms/room.ts';
import { randomOf } from '../../../src/scenario/random.ts';

const BEGAN = '2026-03-02T13:00:00.123Z';
const setWork = (attempts: number, counts: readonly number[], items: object[] = []): Assignment =>
  loadAssignment({
    format: 'bellwire-assignment',
    version: 1,
    id: 'week-10',
    title: 'Week ten',
    mode: 'graded',
    attempts,
    seed: 3,
    items,
    papers: counts.map((count) => ({ kind: 'drills', drills: ['reading'], count })),
  });

/** Every attempt at every paper, answered and flagged by lot, over more than a day: as much as there can be. */
function answered(assignment: Assignment): KeptPaper[] {
  const random = randomOf(7);
  const lot = (most: number) => Math.floor(random() * most);
  const papers = (assignment.papers ?? []).map((each) => (each.kind === 'drills' ? each.count : each.exam.items));
  return papers.flatMap((count, index) =>
    Array.from({ length: assignment.attempts }, (_, attempt): KeptPaper => {
      const places = Array.from({ length: count }, (_each, place) => place);
      return {
        item: assignment.items.length + index,
        number: attempt + 1,
        began: new Date(Date.parse(BEGAN) + lot(1e9)).toISOString(),
        paper: Array.from({ length: 32 }, () => lot(16).toString(16)).join(''),
        choices: places.map(() => lot(6)),
        stamps: places.map(() => lot(999_999) / 10),
        flagged: places.filter(() => lot(4) === 0),
        ended: 'closed',
        shown: lot(1000) / 10,
        passed: lot(2) === 0,
        saved: true,
      };
    }),
  );
}

const takenOf = (assignment: Assignment, kept: KeptWork[], keptPapers: KeptPaper[]): Taken => {
  const trainee = { code: 'x'.repeat(40), name: 'Ångström-Núñez y Ölçer, Łucja '.repeat(4).slice(0, MOST_NAME) };
  const assigned: Assigned = { id: '0'.repeat(32), assignment, trainee, agreed: BEGAN };
  return { assigned, works: [], kept, papers: [], keptPapers };
};

describe('the room that a learning system has', () => {
  it.each<[string, Assignment, string[]]>([
    ['one set of exercises', setWork(1, [20]), [...PACKAGE_KINDS]],
    ['three long sets, tried twice', setWork(2, [20, 20, 20]), [...PACKAGE_KINDS]],
    ['as much as SCORM 1.2 keeps', setWork(1, [60, 60, 60, 60, 49]), [...PACKAGE_KINDS]],
    ['more than SCORM 1.2 keeps', setWork(8, [60]), ['scorm2004', 'cmi5']],
    ['more than SCORM 2004 keeps', setWork(20, Array(10).fill(60)), ['cmi5']],
  ])('%s fits where it is said to, whatever is chosen', (_, assignment, kinds) => {
    expect(PACKAGE_KINDS.filter((kind) => papersFit(assignment, kind))).toEqual(kinds);
    const keptPapers = answered(assignment);
    expect(keptPapers.reduce((all, { choices }) => all + choices.length, 0)).toBe(answersIn(assignment));
    const text = resumeOf(takenOf(assignment, [], keptPapers), new Map(), 1e9);
    for (const kind of kinds) expect(text.length).toBeLessThanOrEqual(KEPT_CHARACTERS[kind as 'cmi5']);
    expect(resumeIn(text)?.papers).toEqual(keptPapers);
  });

  it('counts tickets beside them', () => {
    const counts = [60, 60, 60];
    expect(papersFit(setWork(1, counts), 'scorm12')).toBe(true);
    expect(papersFit(setWork(1, counts, [{ kind: 'shipped', ticket: 'blankWall' }]), 'scorm12')).toBe(false);
  });
});

test('of several attempts the best one’s answers are told, and of equal ones the first’s', () => {
  const attempt = (total: number, right: boolean) => ({ total, skills: [], answers: [{ skill: 'sums', right } as const] });
  const [poor, good, alike] = [attempt(40, false), attempt(80, true), attempt(80, false)];
  expect(bestOfResults([poor, good, alike])).toBe(good);
  expect(bestOfResults([alike, good])).toBe(alike);
  expect(bestOfResults([])).toBeUndefined();
});

describe('what is kept to go on from', () => {
  const assignment = setWork(2, [5], [{ kind: 'shipped', ticket: 'blankWall' }]);
  const random = randomOf(1);
  const steps = Array.from({ length: 400 }, () => ({ at: random(), action: { name: 'wait', seconds: random() } }));
  const work = (more: Partial<KeptWork>): KeptWork => ({
    item: 0,
    number: 1,
    began: BEGAN,
    stamps: steps.map(({ at }) => at),
    log: { ticket: 'guest', steps },
    ...more,
  });
  const over = work({ ended: 'closed' });
  const running = work({ number: 2, stamps: [1], log: { ticket: 'guest', steps: [] } });
  const papers = answered(assignment);
  const results: Results = new Map([[resultKey(over), { total: 73.5, skills: [] }]]);

  it('is all of it where there is room; where not, the logs of what is over go, and neither what they came to nor any choice', () => {
    const taken = takenOf(assignment, [over, running], papers);
    const whole = resumeIn(resumeOf(taken, results, 1e9));
    expect(whole).toMatchObject({ works: [over, running], papers, results: {} });
    const text = resumeOf(taken, results, KEPT_CHARACTERS.scorm12);
    expect(text.length).toBeLessThanOrEqual(KEPT_CHARACTERS.scorm12);
    expect(resumeIn(text)).toMatchObject({
      works: [{ ended: 'closed', stamps: [], log: { steps: [] } }, running],
      papers,
      results: { '0 1': { total: 73.5 } },
    });
  });

  it('is nothing where it is not of that shape', () => {
    const broken = papers.map((each) => ({ ...each, choices: [] }));
    expect(resumeIn(resumeOf(takenOf(assignment, [], broken), new Map(), 1e9))).toBeUndefined();
    expect(resumeIn('')).toBeUndefined();
  });

  it('is taken up where the attempt went on elsewhere, not where it is further here', () => {
    const [paper] = papers as [KeptPaper];
    const { ended: _, ...open } = paper;
    const earlier = { ...open, stamps: open.stamps.map((each, place) => (place === 0 ? each : null)) };
    const first = { ...open, stamps: open.stamps.map(() => 1) };
    expect(isFurther(paper, [])).toBe(true);
    expect(isFurther(open, [{ ...first }])).toBe(true);
    expect(isFurther(first, [open])).toBe(false);
    expect(isFurther(paper, [open])).toBe(true);
    expect(isFurther(open, [paper])).toBe(false);
    expect(isFurther(paper, [paper])).toBe(false);
    expect(isFurther(open, [open])).toBe(false);
    expect(isFurther(earlier, papers.slice(1))).toBe(true);
  });
});
