/** Exercises and exams at home: what a choice makes of an attempt, and what is handed in of it. */
import { strFromU8, unzipSync } from 'fflate';
import { beforeAll, expect, test } from 'vitest';
import { fileName, handInAll, handInPaper } from '../../src/app/taking/hand-in.ts';
import { assignedId, openText } from '../../src/app/taking/open.ts';
import { type Assigned, type KeptPaper, keptPaperSchema } from '../../src/app/taking/records.ts';
import { begunPaper, isAt, withChoice, withFlag } from '../../src/app/taking/sheet.ts';
import { itemStatus, rulesFor, settled, tellsAtOnce, tellsScore } from '../../src/app/taking/status.ts';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { paperResult } from '../../src/classroom/gradeAnswers.ts';
import { type Paper, papersOf, rigsOf } from '../../src/classroom/papers.ts';
import { createBank } from '../../src/drills/draw.ts';
import { itemOf } from '../../src/drills/paper.ts';
import type { Library } from '../../src/scenario/library.ts';
import { library as whole } from '../scenario/shipped.ts';

/** The smallest systems alone, so that a paper is drawn in a moment. */
const library: Library = {
  rigs: new Map(['trainingBoard', 'twoWireHeat'].map((id) => [id, whole.rigs.get(id)!])),
  tickets: whole.tickets,
};
const BEGAN = '2026-03-02T13:00:00Z';
const AT = Date.parse(BEGAN) / 1000;
const plain = {
  format: 'bellwire-assignment',
  version: 1,
  id: 'week-10',
  title: 'Week ten',
  mode: 'graded',
  attempts: 2,
  minutes: 40,
  seed: 3,
  items: [],
  papers: [
    { kind: 'drills', drills: ['contacts', 'loadCurrent'], count: 6 },
    { kind: 'exam', exam: { id: 'own', items: 5, minutes: 30, pass: 0.7, skills: { contacts: 1 } } },
  ],
};
const assignment = loadAssignment(plain);
const assigned: Assigned = { id: assignedId(assignment, 'a1'), assignment, trainee: { code: 'a1', name: '' }, agreed: BEGAN };
let papers: Paper[];
let drills: Paper;
let exam: Paper;
let begun: KeptPaper;
beforeAll(() => {
  papers = papersOf(assignment, 'a1', library);
  [drills, exam] = papers as [Paper, Paper];
  begun = begunPaper(drills, 1, BEGAN);
});

test('a file that sets a kind of exercise that there is not is refused with its place', () => {
  const papers = [{ kind: 'drills', drills: ['mindReading'], count: 5 }];
  expect(() => openText(JSON.stringify({ ...plain, papers }), library)).toThrow(
    expect.objectContaining({ code: 'classroom.noKind', path: 'papers[0].drills[0]' }),
  );
});

test('a choice is kept with its second, a changed one with its own; the first stays where it is told at once', () => {
  const once = withChoice(begun, 2, 1, AT + 7.26, false);
  expect([once.choices[2], once.stamps[2]]).toEqual([1, 7.3]);
  expect(once.choices.filter((each) => each !== null)).toHaveLength(1);
  const twice = withChoice(once, 2, 0, AT + 9, false);
  expect([twice.choices[2], twice.stamps[2]]).toEqual([0, 9]);
  expect(withChoice(once, 2, 1, AT + 9, false)).toBe(once);
  expect(withChoice(once, 2, 0, AT + 9, true)).toBe(once);
  expect(withChoice(begun, 99, 0, AT, false)).toBe(begun);
  expect(begun.choices.every((each) => each === null)).toBe(true);
});

test('a clock that is set back puts no choice before another', () => {
  const one = withChoice(begun, 0, 1, AT + 60, false);
  expect(withChoice(one, 1, 1, AT - 600, false).stamps.slice(0, 2)).toEqual([60, 60]);
  expect(withChoice(begun, 1, 1, AT - 600, false).stamps[1]).toBe(0);
});

test('a question is flagged, and not any more', () => {
  const flagged = withFlag(withFlag(begun, 3), 1);
  expect(flagged.flagged).toEqual([3, 1]);
  expect(withFlag(flagged, 3).flagged).toEqual([1]);
});

test('what is kept is believed only where it has the shape of an attempt at these questions', () => {
  const kept = JSON.parse(JSON.stringify(withChoice(begun, 0, 1, AT + 1, false)));
  expect(keptPaperSchema.parse(kept)).toEqual(kept);
  for (const broken of [
    { choices: [1] },
    { choices: Array(6).fill(10) },
    { stamps: Array(6).fill('a') },
    { paper: 'x' },
    { more: 1 },
  ])
    expect(keptPaperSchema.safeParse({ ...kept, ...broken }).success).toBe(false);
  expect(isAt(begun, drills)).toBe(true);
  expect(isAt(begun, exam)).toBe(false);
  expect(isAt({ ...begun, choices: [], stamps: [] }, drills)).toBe(false);
});

test('an exam is over with its own minutes, exercises with the assignment’s, also while nobody looks', () => {
  const at = (paper: Paper, now: number) => settled(rulesFor(assignment, paper), begunPaper(paper, 1, BEGAN), now).ended;
  expect([1799, 1800].map((seconds) => at(exam, AT + seconds))).toEqual([undefined, 'timeOver']);
  expect([2399, 2400].map((seconds) => at(drills, AT + seconds))).toEqual([undefined, 'timeOver']);
  expect(itemStatus(rulesFor(assignment, exam), [begunPaper(exam, 1, BEGAN)], AT + 60).left).toBe(1740);
});

test('nothing is told before the end where it is graded, nor on any exam; points once no attempt is left', () => {
  expect(['graded', 'coached', 'practice'].map((mode) => tellsAtOnce({ mode } as never, drills))).toEqual([false, true, true]);
  expect(tellsAtOnce({ mode: 'practice' }, exam)).toBe(false);
  const ended = { ...begun, ended: 'closed' } as const;
  expect(tellsScore(rulesFor(assignment, drills), { ended: [ended] }, AT)).toBe(false);
  expect(tellsScore(rulesFor(assignment, drills), { ended: [ended, { ...ended, number: 2 }] }, AT)).toBe(true);
});

test('what was chosen is handed in, broken off or not, and graded to what was shown without a doubt', () => {
  const bank = createBank(rigsOf(library).map((id) => library.rigs.get(id)!));
  const items = drills.questions.map((question) => itemOf(bank, question));
  let kept = begun;
  for (const [place, item] of items.entries()) {
    if (!item || place === 4) continue;
    kept = withChoice(kept, place, place === 1 ? (item.right + 1) % item.choices.length : item.right, AT + 20 * place + 5, false);
  }
  const { total } = paperResult(drills.setting, items, kept.choices);
  expect(total).toBe(Math.round(1000 * (4 / 6)) / 10);
  const over: KeptPaper = { ...withFlag(kept, 2), ended: 'closed', shown: total };
  const broken: KeptPaper = { ...begun, number: 2, ended: 'timeOver' };
  const grader = createGrader(assignment, library);
  expect(grader.grade(JSON.parse(JSON.stringify(handInPaper(assigned, drills, over))))).toMatchObject({
    doubts: [],
    paper: { total },
  });
  expect(grader.grade(handInPaper(assigned, drills, broken))).toMatchObject({ doubts: [], paper: { total: 0 } });
  const running = begunPaper(exam, 1, BEGAN);
  const files = unzipSync(handInAll({ assigned, works: [], kept: [], papers, keptPapers: [over, broken, running] }));
  expect(Object.keys(files)).toEqual(['week-10-a1-1-1.bellwire.json', 'week-10-a1-1-2.bellwire.json']);
  const zipped = JSON.parse(strFromU8(files[fileName(assigned, over)]!));
  expect(zipped).toEqual(JSON.parse(JSON.stringify(handInPaper(assigned, drills, over))));
  expect(zipped).toMatchObject({ shown: total, ended: 'closed', choices: kept.choices });
  expect(zipped).not.toHaveProperty('flagged');
});
