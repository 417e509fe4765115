/** What is kept of mock exams, with tickets and from before there were any. */
import { expect, test } from 'vitest';
import {
  countedIn,
  examined,
  examsIn,
  isClosed,
  joinExams,
  type KeptExams,
  unanswered,
  usedBy,
} from '../../src/app/drills/exam-keep.ts';
import { fileText, parseFile } from '../../src/app/keeping/file.ts';
import { importText } from '../../src/app/keeping/transfer.ts';
import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, begin, logOf } from '../../src/attempt/attempt.ts';
import { rigOf, take, ticket } from '../scenario/shipped.ts';
import { closeTicket, look, SOLUTIONS, walk } from '../score/solutions.ts';

const ID = 'quietAfterTheStorm';
const at = (...actions: readonly Action[]): Attempt => {
  const attempt = begin(examined(ticket(ID)), rigOf(ticket(ID)));
  take(attempt, ...actions);
  return attempt;
};
const log = logOf(at(walk('furnace'), look('drainPan')));
const running = { blueprint: 'controlsCore', lot: 7, began: 1e12, used: 90.5, answers: [null, 2, 0, null, 1], flagged: [1, 6] };
const sitting = { blueprint: 'controlsCore', lot: 5, when: 3, answers: [{ skill: 'sums' as const, right: true }] };
const withTickets: KeptExams = {
  running: { ...running, bench: [{ ticket: ID, log }, { ticket: 'blankWall' }] },
  sittings: [
    sitting,
    {
      ...sitting,
      when: 4,
      bench: [
        { ticket: ID, right: true, points: 95 },
        { ticket: 'blankWall', right: false, points: null },
      ],
    },
  ],
};
const fileOf = (exams: KeptExams) => fileText([{ name: 'Ana', finished: [], running: [], habits: {}, exams }]);

test('exams from before there were tickets read as they are, and count their questions alone', () => {
  const old = { running, sittings: [sitting] };
  expect(examsIn(structuredClone(old))).toEqual(old);
  expect(countedIn(sitting)).toEqual(sitting.answers);
});

test('each ticket of a sitting counts as one more item', () => {
  expect(countedIn(withTickets.sittings[1]!)).toEqual([
    { skill: 'sums', right: true },
    { skill: 'bench', right: true },
    { skill: 'bench', right: false },
  ]);
});

test('what is left without an answer are open questions but those that fell out, and tickets that are not closed', () => {
  const items = ['first', 'second', 'third', null, undefined];
  expect(unanswered(items, { answers: [null, 2, 0, null, null] })).toEqual({ questions: 2, tickets: 0 });
  const bench = withTickets.running?.bench ?? [];
  expect(unanswered(items, { answers: [0, 2, 0, null, 1], bench })).toEqual({ questions: 0, tickets: 2 });
});

test('an exam’s clock runs on while nobody is at it, and gives nothing back when it is set', () => {
  const began = 1e12;
  expect(usedBy({ began, used: 90 }, began + 120_000)).toBe(120);
  expect(usedBy({ began, used: 90 }, began + 60_000)).toBe(90);
  expect(usedBy({ began, used: 90 }, began - 1e9)).toBe(90);
  const late = usedBy({ began, used: 90 }, began + 1e12);
  expect(examsIn({ running: { ...running, used: late }, sittings: [] }).running?.used).toBe(late);
});

test('a ticket is answered once it is closed, not when its fault is named', () => {
  const { search, name } = SOLUTIONS[ID]!;
  const named: Action[] = [...search, { name: 'name', ...name, evidence: [] }];
  expect(isClosed({ ticket: ID })).toBe(false);
  expect(isClosed({ ticket: ID, log: logOf(at(...named)) })).toBe(false);
  expect(isClosed({ ticket: ID, log: logOf(at(...named, closeTicket)) })).toBe(true);
});

test('tickets go out and come back with a profile, under way and over', () => {
  expect(parseFile(fileOf(withTickets))[0]?.exams).toEqual(withTickets);
  expect(examsIn(withTickets)).toEqual(withTickets);
  expect(joinExams({ sittings: [] }, withTickets)).toEqual(withTickets);
});

test('a ticket’s log of the wrong shape, one that cannot have happened, and an unknown ticket are refused with their path', async () => {
  const changed = (change: (bench: { ticket: string; log?: { steps: { at: unknown }[] } }[]) => void): string => {
    const exams = structuredClone(withTickets);
    change(exams.running!.bench as never);
    return fileOf(exams);
  };
  const of = 'profiles[0].exams.running.bench[0]';
  await expect(importText(changed(([one]) => Object.assign(one!.log!.steps[1]!, { at: 'soon' })))).rejects.toMatchObject({
    code: 'log.shape',
    path: `${of}.log.steps[1].at`,
  });
  await expect(importText(changed(([one]) => Object.assign(one!.log!.steps[1]!, { at: 1 })))).rejects.toMatchObject({
    code: 'log.retimed',
    path: `${of}.log.steps[1].at`,
  });
  await expect(importText(changed(([one]) => Object.assign(one!, { ticket: 'never' })))).rejects.toMatchObject({
    code: 'keeping.noTicket',
    path: `${of}.ticket`,
  });
});
