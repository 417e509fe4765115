import { strFromU8, unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { encodeShared } from '../../src/app/sharing.ts';
import { fileName, handIn, handInAll } from '../../src/app/taking/hand-in.ts';
import { assignedId, openLink, openText, worksFor } from '../../src/app/taking/open.ts';
import { type Assigned, assignedSchema, type KeptWork, keptWorkSchema, stampAt } from '../../src/app/taking/records.ts';
import { deadlineOf, hoursAt, itemStatus, settled, tellsDebrief, tellsScore } from '../../src/app/taking/status.ts';
import { begin, logOf, perform } from '../../src/attempt/attempt.ts';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { library } from '../scenario/shipped.ts';
import { pull } from '../score/solutions.ts';

const TICKET = 'fanButNoCooling';
const plain = {
  format: 'bellwire-assignment',
  version: 1,
  id: 'week-9',
  title: 'Week nine',
  mode: 'graded',
  attempts: 2,
  seed: 1,
  items: [{ kind: 'shipped', ticket: TICKET }],
};
const BEGAN = '2026-03-02T13:00:00Z';
const AT = Date.parse(BEGAN) / 1000;
const work = (more: Partial<KeptWork> = {}): KeptWork => ({
  item: 0,
  number: 1,
  began: BEGAN,
  stamps: [],
  log: { ticket: 'guest' },
  ...more,
});

test.each([
  ['{', 'data.notJson', '(file)'],
  [JSON.stringify({ ...plain, title: '' }), 'data.tooSmall', 'title'],
  [JSON.stringify({ ...plain, version: 2 }), 'classroom.newer', 'version'],
  [JSON.stringify({ ...plain, items: [{ kind: 'shipped', ticket: 'nowhere' }] }), 'classroom.noTicket', 'items[0].ticket'],
  [JSON.stringify({ ...plain, more: 1 }), 'data.unknownKey', '(file)'],
])('a file that is none is refused with its place: %s', (text, code, path) => {
  expect(() => openText(text, library)).toThrow(expect.objectContaining({ code, path }));
});

test('a link opens to the same assignment as the file, and another one is refused', () => {
  expect(openLink(encodeShared(plain), library)).toEqual(openText(JSON.stringify(plain), library));
  expect(() => openLink('broken!', library)).toThrow(expect.objectContaining({ code: 'share.broken' }));
});

test('a ticket whose fault its rig does not have is named by its item', () => {
  const ticket = library.tickets.find((each) => each.id === TICKET);
  const own = { ...ticket, faults: [{ target: 'nothing', mode: 'open', magnitude: 0 }] };
  const assignment = openText(JSON.stringify({ ...plain, items: [{ kind: 'own', ticket: own }] }), library);
  expect(() => worksFor(assignment, 'a1', library)).toThrow(
    expect.objectContaining({ code: 'ticket.target', path: 'items[0].ticket.faults[0].target' }),
  );
});

test('hours open and close, and the first limit ends an attempt', () => {
  const rules = { mode: 'graded', attempts: 1, minutes: 30, opens: BEGAN, closes: '2026-03-02T13:20:00Z' } as const;
  expect([AT - 1, AT, AT + 1199, AT + 1200].map((now) => hoursAt(rules, now))).toEqual(['early', 'open', 'open', 'over']);
  expect(deadlineOf(rules, work())).toBe(AT + 1200);
  expect(deadlineOf({ ...rules, closes: undefined }, work())).toBe(AT + 1800);
  expect(deadlineOf({ mode: 'graded', attempts: 1 }, work())).toBeUndefined();
  expect(settled(rules, work(), AT + 1199).ended).toBeUndefined();
  expect(settled(rules, work(), AT + 1200).ended).toBe('timeOver');
  expect(settled(rules, work({ ended: 'closed' }), AT + 1200).ended).toBe('closed');
});

test('one attempt at a time, no more than allowed, none outside the hours', () => {
  const rules = { mode: 'graded', attempts: 2, minutes: 10 } as const;
  expect(itemStatus(rules, [], AT)).toMatchObject({ next: 1, running: undefined });
  expect(itemStatus(rules, [work()], AT + 60)).toMatchObject({ next: undefined, left: 540 });
  expect(itemStatus(rules, [work({ ended: 'closed' })], AT)).toMatchObject({ next: 2 });
  expect(itemStatus(rules, [work({ number: 2, ended: 'closed' }), work({ ended: 'closed' })], AT)).toMatchObject({
    next: undefined,
    ended: [{ number: 1 }, { number: 2 }],
  });
  expect(itemStatus({ ...rules, opens: '2027-01-01T00:00:00Z' }, [], AT).next).toBeUndefined();
});

test('a graded fault is told after the hours alone, its points once no attempt is left', () => {
  const graded = { mode: 'graded', attempts: 2 } as const;
  const first = [work({ ended: 'closed' })];
  const second = [...first, work({ number: 2, ended: 'timeOver' })];
  expect(tellsDebrief(graded, AT)).toBe(false);
  expect(tellsDebrief({ ...graded, mode: 'practice' }, AT)).toBe(true);
  expect(tellsDebrief({ ...graded, closes: BEGAN }, AT - 1)).toBe(false);
  expect(tellsDebrief({ ...graded, closes: BEGAN }, AT)).toBe(true);
  expect(tellsScore(graded, { ended: first }, AT)).toBe(false);
  expect(tellsScore(graded, { ended: second }, AT)).toBe(true);
});

test('a clock that is set back turns no step round', () => {
  expect(stampAt(work({ stamps: [5] }), Date.parse(BEGAN) / 1000 + 7.25)).toBe(7.25);
  expect(stampAt(work({ stamps: [5] }), Date.parse(BEGAN) / 1000 - 60)).toBe(5);
});

test('what was kept under a guest is handed in as the trainee’s own, closed or not, and graded without a doubt', () => {
  const assignment = loadAssignment({ ...plain, minutes: 10 });
  const assigned: Assigned = {
    id: assignedId(assignment, 'a1'),
    assignment,
    trainee: { code: 'a1', name: 'Ann' },
    agreed: BEGAN,
  };
  expect(assignedSchema.parse(JSON.parse(JSON.stringify(assigned)))).toEqual(assigned);
  const works = worksFor(assignment, 'a1', library);
  const [mine] = works;
  if (mine === undefined) throw new Error('no work');
  const attempt = begin({ ...mine.ticket, id: 'guest1' }, mine.rig);
  perform(attempt, pull('thermostat'));
  const kept = keptWorkSchema.parse(work({ stamps: [12.5], log: logOf(attempt), ended: 'timeOver', words: 'Pulled it.' }));
  const none = work({ number: 2, log: logOf(begin({ ...mine.ticket, id: 'guest2' }, mine.rig)), ended: 'timeOver' });
  const grader = createGrader(assignment, library);
  expect(grader.grade(handIn(assigned, mine, none)).doubts).toEqual([]);
  expect(grader.grade(handIn(assigned, mine, kept))).toMatchObject({
    doubts: [],
    submission: { words: 'Pulled it.', ended: 'timeOver', attempt: 1, stamps: [12.5], ticket: { id: TICKET } },
  });
  const files = unzipSync(handInAll({ assigned, works, kept: [kept, none, work()], papers: [], keptPapers: [] }));
  expect(Object.keys(files)).toEqual(['week-9-a1-1-1.bellwire.json', 'week-9-a1-1-2.bellwire.json']);
  const zipped = JSON.parse(strFromU8(files[fileName(assigned, kept)] ?? new Uint8Array()));
  expect(zipped).toEqual(JSON.parse(JSON.stringify(handIn(assigned, mine, kept))));
});
