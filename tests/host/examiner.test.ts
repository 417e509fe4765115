/** The process beside the room: who is still a suspect, and what submissions are worth. */
import { setTimeout as pass } from 'node:timers/promises';
import Papa from 'papaparse';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import type { ToInstructor } from '../../src/classroom/room.ts';
import { toInstructorSchema } from '../../src/classroom/room.ts';
import type { Host } from '../../src/host/host.ts';
import { gradebookCsv, submissionsOf } from '../../src/host/results.ts';
import { debriefOf } from '../../src/score/score.ts';
import { survivors } from '../../src/suspects/field.ts';
import { followAttempt } from '../../src/suspects/follow.ts';
import { enrol, type Hands, newFolder, openLab, seated, smallAssignment } from './lab.ts';

let place: ReturnType<typeof newFolder>;
let hands: Hands;
let host: Host;

beforeEach(async () => {
  place = newFolder();
  hands = { at: Date.UTC(2026, 2, 2, 13) };
  host = await openLab(place.folder, hands);
  enrol(host, 2);
  host.room.putUp(smallAssignment());
});
afterEach(async () => {
  await host.close();
  place.remove();
});

it('tells the instructor who learns and who is stuck, and fills the gradebook as the debrief has it', async () => {
  const ana = seated(host, 't1');
  const opened = await ana.ask({ kind: 'open', assignment: 'week-9', item: 0 });
  if (opened.kind !== 'opened') throw new Error('not open');
  const heard: ToInstructor[] = [];
  host.hub.watchers.add({ send: (message) => heard.push(message), tick: () => undefined });
  let seq = 0;
  const take = async (action: Action) => {
    seq += 1;
    hands.at += 10_000;
    expect((await ana.ask({ kind: 'act', seq, action })).kind).toBe('acted');
  };
  await take({ name: 'meter', fn: 'voltsAc' });
  await take(opened.options.find(({ name }) => name === 'walk') ?? { name: 'wait', seconds: 10 });
  await take({ name: 'wait', seconds: 60 });
  const seat = () => {
    host.tick();
    const room = toInstructorSchema.parse(heard.at(-1));
    return room.kind === 'room' ? room.seats.find(({ trainee }) => trainee === 't1') : undefined;
  };
  for (let tries = 0; tries < 400 && seat()?.at?.suspects?.steps !== 3; tries++) await pass(50);
  const [row] = host.records.attemptsOf('t1', 'week-9');
  const { attempt, given } = host.attempts.get(row!.id);
  const { field, leftBefore, ruledOut } = followAttempt(attempt);
  const learnt = ruledOut.findLastIndex((each) => each.length > 0) + 1;
  expect(seat()?.at).toMatchObject({ steps: 3, phase: 'working', idleSeconds: 0 });
  expect(seat()?.at?.suspects).toEqual({
    steps: 3,
    left: survivors(field, leftBefore.at(-1)!).size,
    atStart: survivors(field, leftBefore[0]!).size,
    stuckSeconds: (3 - learnt) * 10,
  });

  await take({ name: 'name', target: given.work.ticket.faults[0]!.target, mode: given.work.ticket.faults[0]!.mode, evidence: [1] });
  await take({ name: 'close' });
  const assignment = host.room.assignment('week-9')!;
  const submissions = submissionsOf(host, 'week-9');
  const csv = await gradebookCsv(host, assignment, submissions, ['t1', 't2']);
  const [line] = Papa.parse<Record<string, string>>(csv, { header: true }).data;
  const after = host.attempts.get(row!.id).attempt;
  const debrief = debriefOf(after, given.work.ticket.rubric);
  expect(line).toMatchObject({
    trainee: 't1',
    item: '1',
    attempt: '1',
    points: String(debrief.total),
    replayed: String(debrief.total),
    isolation: String(Math.round(debrief.items.isolation.points * 10) / 10),
    right: 'true',
    fault: `${debrief.truth.target}:${debrief.truth.mode}`,
    steps: '5',
    doubts: '',
  });
}, 120_000);
