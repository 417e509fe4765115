/** Hypotheses beyond the single lasting faults, where a ticket asks for them. */
import { describe, expect, it } from 'vitest';
import { begin, perform } from '../../src/attempt/attempt.ts';
import { checkTicket } from '../../src/scenario/check.ts';
import { finish } from '../../src/scenario/finish.ts';
import { loadTicket } from '../../src/scenario/ticket.ts';
import { debriefOf, yardstickFor } from '../../src/score/score.ts';
import { prepareGround } from '../../src/suspects/ground.ts';
import { namingsOf, sameNaming } from '../../src/suspects/hypotheses.ts';
import { rigOf, take, ticket } from '../scenario/shipped.ts';
import { open, tug, walk } from '../score/solutions.ts';

const base = JSON.parse(JSON.stringify(ticket('clicksButWontStart')));
const rig = rigOf(ticket('clicksButWontStart'));

describe('an intermittent conductor', () => {
  const job = loadTicket({
    ...base,
    id: 'comesAndGoes',
    faults: [{ target: 'coilY', mode: 'intermittent' }],
    suspects: { intermittents: true },
  });

  it('is thought of only where the ticket asks', () => {
    expect(namingsOf(rig).some((each) => each.mode === 'intermittent')).toBe(false);
    expect(namingsOf(rig, job.suspects).filter((each) => each.mode === 'intermittent').length).toBeGreaterThan(20);
    expect(() => checkTicket(loadTicket({ ...base, faults: [{ target: 'coilY', mode: 'intermittent' }] }), rig)).toThrow(
      'ticket.mode',
    );
    expect(() => checkTicket(job, rig)).not.toThrow();
  });

  it('is found by a tug: the contactor pulls in, and lets go again after a while', () => {
    const attempt = begin(job, rig);
    take(attempt, walk('outdoor'), open('outdoorPanel'), tug('coilY'));
    const pulled = attempt.steps.at(-1)!.view.noticed;
    expect(pulled).toContainEqual(expect.objectContaining({ part: 'contactor', key: 'armature', value: 'in' }));
    take(attempt, { name: 'wait', seconds: 299 });
    expect(attempt.steps.at(-1)!.view.noticed).toContainEqual(
      expect.objectContaining({ part: 'contactor', key: 'armature', value: 'out' }),
    );
  });

  it('a tug on another wire tells nothing of it, and its lasting brother does not answer a tug', () => {
    const lasting = begin(loadTicket({ ...base, id: 'comesAndGoes', faults: [{ target: 'coilY', mode: 'open' }] }), rig);
    take(lasting, walk('outdoor'), open('outdoorPanel'), tug('coilY'));
    expect(lasting.steps.at(-1)!.view.noticed.map((each) => each.key)).toEqual(['tug']);
  });

  it('is isolated by the short way', () => {
    const { par } = yardstickFor(job, rig);
    expect(par.left.at(-1)).toBe(1);
  });
});

describe('a part that opens when warm', () => {
  /** A ticket that ships, with another fault in it and another wait at its story's end, seconds. */
  const jobFrom = (id: string, target: string, seconds: number) => {
    const plain = JSON.parse(JSON.stringify(ticket(id)));
    plain.complaint.history.at(-1).seconds = seconds;
    return loadTicket({ ...plain, id: 'quitsWarm', faults: [{ target, mode: 'opensWarm' }], suspects: { intermittents: true } });
  };

  it('is thought of only where the ticket asks', () => {
    const job = jobFrom('darkScreen', 'transformer', 780);
    const of = rigOf(job);
    expect(namingsOf(of).some((each) => each.mode === 'opensWarm')).toBe(false);
    expect(namingsOf(of, job.suspects).filter((each) => each.mode === 'opensWarm')).toHaveLength(2);
    expect(() => checkTicket(job, of)).not.toThrow();
    expect(() => checkTicket({ ...job, suspects: undefined }, of)).toThrow('ticket.mode');
  });

  it('is told from what lasts by the short way, since it holds again meanwhile', { timeout: 60_000 }, () => {
    const job = jobFrom('coldFarmhouse', 'transformer', 720);
    const { par } = yardstickFor(job, rigOf(job));
    expect(par.left[0]).toBeGreaterThan(10);
    expect(par.left.at(-1)).toBe(1);
  });

  it('put right, stays put right: the call works for longer than it held', { timeout: 60_000 }, () => {
    const job = ticket('coolUntilBedtime');
    const attempt = begin(job, rigOf(job));
    take(attempt, walk('outdoor'), open('outdoorPanel'), { name: 'replace', target: 'contactor' });
    const left = attempt.steps.length;
    for (let minutes = 0; minutes < 30; minutes += 5) take(attempt, { name: 'wait', seconds: 300 });
    const stopped = attempt.steps.slice(left).flatMap((step) => step.view.noticed);
    expect(stopped.filter((each) => each.part === 'contactor' && each.key === 'thump' && each.value === 0)).toEqual([]);
    expect(attempt.bench.seen.get('contactor.thump')).toBe(1);
  });
});

describe('a pair of faults', () => {
  const pair = { target: 'drainPan', mode: 'full', magnitude: 0 };
  const quiet = JSON.parse(JSON.stringify(ticket('quietAfterTheStorm')));
  const job = loadTicket({
    ...quiet,
    id: 'twoAtOnce',
    faults: [{ target: 'contactor', mode: 'coilOpen' }, pair],
    suspects: { pairs: [pair] },
    complaint: { ...quiet.complaint, observed: quiet.complaint.observed },
  });

  it('needs the second among the pairs that the ticket asks for', () => {
    expect(() => checkTicket(job, rig)).not.toThrow();
    expect(() => checkTicket(loadTicket({ ...JSON.parse(JSON.stringify(job)), suspects: {} }), rig)).toThrow('ticket.pair');
  });

  it('stands among the suspects, rarer than either alone', () => {
    const { field } = prepareGround(job, rig);
    const both = field.hypotheses.findIndex((each) => sameNaming(each, { target: 'contactor', mode: 'coilOpen', also: pair }));
    const alone = field.hypotheses.findIndex((each) => sameNaming(each, pair));
    expect(both).toBeGreaterThanOrEqual(0);
    expect(field.priors[both]).toBeLessThan(field.priors[alone]!);
  });

  it('is one answer in either order, and half of it is not all', () => {
    const other = { target: 'drainPan', mode: 'full', also: { target: 'contactor', mode: 'coilOpen' } };
    expect(sameNaming(other, { target: 'contactor', mode: 'coilOpen', also: pair })).toBe(true);
    expect(sameNaming({ target: 'contactor', mode: 'coilOpen' }, other)).toBe(false);
  });

  it('repairing one of them leaves the other', () => {
    const attempt = begin(job, rig);
    take(attempt, walk('furnace'), { name: 'replace', target: 'drainPan' }, walk('outdoor'), { name: 'wait', seconds: 60 });
    expect(
      attempt.steps.flatMap((step) => step.view.noticed).filter((each) => each.part === 'contactor' && each.value === 1),
    ).toEqual([]);
  });

  it('named with both, repaired and run, it scores; named by halves it is not right', () => {
    const yardstick = yardstickFor(job, rig);
    const play = (name: object) => {
      const attempt = begin(job, rig);
      for (const action of yardstick.par.actions) perform(attempt, action);
      take(attempt, { name: 'name', ...name, evidence: attempt.steps.map((step) => step.view.number) } as never);
      finish(attempt, ['drainPan', 'contactor']);
      return debriefOf(attempt, undefined, yardstick);
    };
    expect(yardstick.par.left.at(-1)).toBe(1);
    const right = play({ target: 'contactor', mode: 'coilOpen', also: { target: 'drainPan', mode: 'full' } });
    expect(right.rightNaming).toBe(true);
    expect(right.total).toBeGreaterThanOrEqual(95);
    expect(play({ target: 'drainPan', mode: 'full' }).rightNaming).toBe(false);
    // One of the two right, the other not among the ticket's pairs: the part that is right still counts.
    const half = play({ target: 'contactor', mode: 'coilOpen', also: { target: 'fuse', mode: 'blown' } });
    expect(half.rightNaming).toBe(false);
    expect(half.items.isolation.points).toBeGreaterThan(30);
    expect(half.items.isolation.points).toBeLessThan(50);
  });
});
