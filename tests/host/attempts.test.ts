/** A trainee's work on the lab host: steps are done once, kept, and taken up again; nobody reaches another's. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { fromHostSchema } from '../../src/classroom/protocol.ts';
import type { Host } from '../../src/host/host.ts';
import { submissionsOf } from '../../src/host/results.ts';
import { library } from '../scenario/shipped.ts';
import { type Browser, browserAt, enrol, type Hands, newFolder, openLab, seated, smallAssignment } from './lab.ts';

let place: ReturnType<typeof newFolder>;
let hands: Hands;
let host: Host;

beforeEach(async () => {
  place = newFolder();
  hands = { at: Date.UTC(2026, 2, 2, 13) };
  host = await openLab(place.folder, hands);
  enrol(host, 3);
  host.room.putUp(smallAssignment());
});
afterEach(async () => {
  await host.close();
  place.remove();
});

const open = (item = 0, fresh?: boolean) =>
  ({ kind: 'open', assignment: 'week-9', item, ...(fresh === undefined ? {} : { fresh }) }) as const;
const act = (seq: number, action: Action) => ({ kind: 'act', seq, action }) as const;

async function restart(): Promise<void> {
  await host.close();
  host = await openLab(place.folder, hands);
}

/** Takes so many of the options that are offered, a second apart. */
async function wander(browser: Browser, from: number, count: number): Promise<void> {
  for (let seq = from; seq < from + count; seq++) {
    hands.at += 1000;
    const view = browser.messages.findLast((each) => each.kind === 'acted' || each.kind === 'opened');
    if (view?.kind !== 'acted' && view?.kind !== 'opened') throw new Error('nothing is open');
    const plain = view.options.filter(({ name }) => name === 'probe' || name === 'look' || name === 'meter' || name === 'walk');
    const answer = await browser.ask(act(seq, plain[(seq * 7) % plain.length]!));
    expect(answer.kind).toBe('acted');
  }
}

describe('an attempt on the host', () => {
  it('says only what the protocol has', async () => {
    const ana = seated(host, 't1');
    await ana.ask(open());
    await wander(ana, 1, 4);
    ana.send(act(5, { name: 'close' }));
    ana.send({ kind: 'words', text: 'Loose wire.' });
    ana.send({ kind: 'leave' });
    ana.seat.receive('{');
    for (const text of ana.texts)
      expect(fromHostSchema.safeParse(JSON.parse(text)).error?.issues, text.slice(0, 200)).toBeUndefined();
    expect(ana.messages.map(({ kind }) => kind)).toEqual([
      'welcome', 'opened', 'acted', 'acted', 'acted', 'acted', 'refused', 'kept', 'left', 'error',
    ]); // biome-ignore format: a list
  });

  it('answers a number that is sent twice in the same way, and does it once', async () => {
    const ana = seated(host, 't1');
    await ana.ask(open());
    await wander(ana, 1, 3);
    const view = ana.last('acted');
    const action = view.step.action;
    await ana.ask(act(3, action));
    expect(ana.texts.at(-1)).toBe(ana.texts.at(-2));
    const first = ana.messages.find((each) => each.kind === 'acted');
    if (first?.kind !== 'acted') throw new Error('none');
    const again = await ana.ask(act(1, first.step.action));
    expect(again).toEqual(first);
    expect(await ana.ask(act(2, { name: 'wait', seconds: 7 }))).toMatchObject({
      kind: 'error',
      code: 'lab.seqTaken',
      values: { next: 4 },
    });
    expect(await ana.ask(act(9, { name: 'wait', seconds: 7 }))).toMatchObject({
      kind: 'error',
      code: 'lab.seqAhead',
      values: { next: 4 },
    });
    const [row] = host.records.attemptsOf('t1', 'week-9');
    expect(host.records.steps(row!.id)).toHaveLength(3);
  });

  it('goes on where it was after the host was restarted, to the byte', async () => {
    const ana = seated(host, 't1');
    await ana.ask(open());
    await wander(ana, 1, 6);
    const { view, options, step } = ana.last('acted');
    await restart();
    const again = browserAt(host);
    again.send({ kind: 'hello', token: ana.token });
    await again.ask(open());
    const opened = again.last('opened');
    expect(opened.steps).toHaveLength(6);
    expect(JSON.stringify(opened.view)).toBe(JSON.stringify(view));
    expect(JSON.stringify(opened.options)).toBe(JSON.stringify(options));
    expect(await again.ask(act(6, step.action))).toEqual(ana.last('acted'));
    await wander(again, 7, 2);
  });

  it('is graded without a doubt, from a submission that the host makes', async () => {
    const ana = seated(host, 't1');
    await ana.ask(open(1));
    await wander(ana, 1, 5);
    await ana.ask(act(6, { name: 'name', target: 'thermostat', mode: 'anything', evidence: [1] }));
    await ana.ask(act(7, { name: 'close' }));
    expect(ana.last('ended')).toMatchObject({ how: 'closed', report: { ticket: 'coldFarmhouse', replaced: [] } });
    ana.send({ kind: 'words', text: 'Replaced the thermostat.' });
    const assignment = host.room.assignment('week-9')!;
    const [submission] = submissionsOf(host, 'week-9');
    const graded = createGrader(assignment, library, ['t1']).grade(JSON.parse(JSON.stringify(submission)));
    expect(graded.doubts).toEqual([]);
    expect(submission).toMatchObject({ words: 'Replaced the thermostat.' });
    expect(graded.submission.stamps).toEqual([1, 2, 3, 4, 5, 5, 5]);
    // What the report says of the thermostat's inside is what the trainee has had in sight.
    expect(JSON.stringify(ana.last('ended').report)).not.toContain('anticipator');
    // The first is over: a further one must be asked for, and a third is not allowed.
    expect(await ana.ask(open(1))).toMatchObject({ kind: 'opened', number: 1 });
    expect(await ana.ask(open(1, true))).toMatchObject({ kind: 'opened', number: 2 });
  });

  it('tells what is wrong only where that is no secret', async () => {
    host.room.putUp(smallAssignment({ id: 'coached', mode: 'coached' }));
    const ana = seated(host, 't1');
    expect(await ana.ask(open())).not.toHaveProperty('whole');
    const opened = await ana.ask({ kind: 'open', assignment: 'coached', item: 0 });
    expect(opened).toMatchObject({ kind: 'opened', whole: { mode: 'coached', faults: [{}] } });
    expect(host.room.cautions(host.room.assignment('coached')!)).toEqual(['notGraded', 'shipped']);
  });

  it('is nobody else’s', async () => {
    const [ana, ben] = [seated(host, 't1'), seated(host, 't2')];
    await ana.ask(open());
    await wander(ana, 1, 3);
    expect(await ben.ask(act(1, { name: 'wait', seconds: 5 }))).toMatchObject({ code: 'lab.nothingOpen' });
    expect(await ben.ask(open())).toMatchObject({ kind: 'opened', steps: [] });
    await ben.ask(act(1, { name: 'wait', seconds: 5 }));
    expect(host.records.attemptsOf('t1', 'week-9').map(({ id }) => host.records.steps(id).length)).toEqual([3]);
  });

  it('moves to where its trainee sits down next', async () => {
    const ana = seated(host, 't1');
    await ana.ask(open());
    const elsewhere = seated(host, 't1');
    expect(ana.last('signedOut').why).toBe('elsewhere');
    ana.send(act(1, { name: 'wait', seconds: 5 }));
    expect(await elsewhere.ask(open())).toMatchObject({ kind: 'opened', steps: [], number: 1 });
  });
});

describe('time in the lab', () => {
  it('stands still in a pause, and while the host was not there; what is added counts', async () => {
    host.room.putUp(smallAssignment({ id: 'timed', minutes: 10 }));
    const ana = seated(host, 't1');
    expect(await ana.ask({ kind: 'open', assignment: 'timed', item: 0 })).toMatchObject({ secondsLeft: 600 });
    hands.at += 60_000;
    host.hub.setPaused(true);
    expect(ana.messages.at(-1)?.kind).toBe('paused');
    expect(await ana.ask(act(1, { name: 'wait', seconds: 5 }))).toMatchObject({ kind: 'error', code: 'lab.paused', seq: 1 });
    hands.at += 300_000;
    host.hub.setPaused(false);
    expect(ana.last('resumed')).toEqual({ kind: 'resumed', secondsLeft: 540 });
    host.clock.beat();
    await host.close();
    hands.at += 120_000;
    host = await openLab(place.folder, hands);
    const again = browserAt(host);
    again.send({ kind: 'hello', token: ana.token });
    expect(await again.ask({ kind: 'open', assignment: 'timed', item: 0 })).toMatchObject({ secondsLeft: 540 });
    host.attempts.extend('timed', 't1', 60);
    host.hub.tellTime('t1');
    expect(again.last('time')).toEqual({ kind: 'time', secondsLeft: 600 });
    hands.at += 599_000;
    host.sessions.find(ana.token);
    host.tick();
    expect(again.messages.some(({ kind }) => kind === 'ended')).toBe(false);
    hands.at += 1000;
    host.tick();
    expect(again.last('ended')).toMatchObject({ how: 'timeOver' });
    expect(await again.ask(act(1, { name: 'wait', seconds: 5 }))).toMatchObject({ kind: 'error', code: 'lab.over' });
    expect(submissionsOf(host, 'timed')).toMatchObject([{ ended: 'timeOver', trainee: { code: 't1' } }]);
  });

  it('does not open an assignment before its hour or after', async () => {
    host.room.putUp(smallAssignment({ id: 'later', opens: '2026-03-02T14:00:00Z', closes: '2026-03-02T15:00:00Z' }));
    const ana = seated(host, 't1');
    const later = { kind: 'open', assignment: 'later', item: 0 } as const;
    expect(await ana.ask(later)).toMatchObject({ code: 'lab.closedNow' });
    hands.at += 3600_000;
    ana.send({ kind: 'hello', token: host.sessions.begin('t1') });
    const now = seated(host, 't1');
    expect(await now.ask(later)).toMatchObject({ kind: 'opened' });
    hands.at += 3600_000;
    expect(await now.ask(act(1, { name: 'wait', seconds: 5 }))).toMatchObject({ code: 'lab.over' });
  });

  it('signs out who does nothing for a quarter of an hour, and the token is worth nothing any more', async () => {
    const ana = seated(host, 't1');
    await ana.ask(open());
    hands.at += 14 * 60_000;
    host.tick();
    expect(ana.messages.some(({ kind }) => kind === 'signedOut')).toBe(false);
    ana.send({ kind: 'leave' });
    hands.at += 14 * 60_000;
    host.tick();
    expect(ana.messages.some(({ kind }) => kind === 'signedOut')).toBe(false);
    hands.at += 2 * 60_000;
    host.tick();
    expect(ana.last('signedOut').why).toBe('idle');
    const again = browserAt(host);
    again.send({ kind: 'hello', token: ana.token });
    expect(again.messages).toEqual([{ kind: 'signedOut', why: 'ended' }]);
  });
});

it('another assignment of the same name is refused once there is work on the first', async () => {
  host.room.putUp(smallAssignment({ title: 'Week nine, corrected' }));
  const ana = seated(host, 't1');
  await ana.ask(open());
  expect(() => host.room.putUp(smallAssignment({ title: 'Other' }))).toThrow('lab.assignmentInUse');
  host.room.putUp(smallAssignment({ title: 'Week nine, corrected' }));
});
