import { describe, expect, it } from 'vitest';
import type { Attempt } from '../../src/attempt/attempt.ts';
import type { Debrief } from '../../src/score/debrief.ts';
import { debriefOf, type Yardstick, yardstickFor } from '../../src/score/score.ts';
import { rigOf, start, take, ticket } from '../scenario/shipped.ts';
import { black, close, lift, look, meter, open, operate, red, replace, SOLUTIONS, wait, walk } from './solutions.ts';

const yardsticks = new Map<string, Yardstick>();

/** Worked out once a ticket. */
function yardstick(id: string): Yardstick {
  const known = yardsticks.get(id) ?? yardstickFor(ticket(id), rigOf(ticket(id)));
  yardsticks.set(id, known);
  return known;
}

/** Plays a ticket with its solution; what is given instead replaces a part of it. */
function play(
  id: string,
  change: Partial<(typeof SOLUTIONS)[string]> = {},
  evidence?: number[],
): { attempt: Attempt; debrief: Debrief } {
  const solution = { ...SOLUTIONS[id]!, ...change };
  const attempt = start(id);
  take(attempt, ...solution.search);
  take(
    attempt,
    { name: 'name', ...solution.name, evidence: evidence ?? attempt.steps.map((step) => step.view.number) },
    ...solution.after,
  );
  return { attempt, debrief: debriefOf(attempt, undefined, yardstick(id)) };
}

describe('a good technician', () => {
  it.each(Object.keys(SOLUTIONS))('%s: the solution isolates the fault and scores at least 90', (id) => {
    const { debrief } = play(id);
    expect(debrief.leftAtNaming).toEqual([{ section: expect.any(String), ...SOLUTIONS[id]!.name }]);
    expect(debrief.rightNaming).toBe(true);
    expect(debrief.wastedSteps).toBe(0);
    expect(debrief.total).toBeGreaterThanOrEqual(90);
  });
});

describe('isolation', () => {
  it('a guess earns what a guess is worth: right at once, among 46 suspects, is little more than the section', () => {
    const { debrief } = play('fanButNoCooling', { search: [], after: [] });
    const chance = 1 / debrief.suspectsAtStart;
    expect(debrief.items.isolation.points).toBeGreaterThan(15);
    expect(debrief.items.isolation.points).toBeLessThan(15 + 35 * 5 * chance);
    expect(debrief.items.economy.points).toBe(0);
    expect(debrief.items.proof.points).toBe(0);
  });

  it('the wrong section earns nothing, however sure', () => {
    const { debrief } = play('fanButNoCooling', { name: { target: 'outY', mode: 'open' }, after: [] });
    expect(debrief.items.isolation.points).toBe(0);
  });

  it('each sound part replaced costs ten points; a fuse that a short has blown is no sound part', () => {
    const shotgun = play('quietAfterTheStorm', { after: [replace('floatSwitch'), ...SOLUTIONS.quietAfterTheStorm!.after] }).debrief;
    expect(shotgun.items.isolation.points).toBeCloseTo(40, 6);
    expect(play('deadSinceTheFirstHotDay').debrief.items.isolation.points).toBeCloseTo(50, 6);
  });

  it('with two suspects left in the same place, part and failure count by their probability', () => {
    // Without the tug an open conductor and a loose screw at the board look alike.
    const search = SOLUTIONS.warmUpstairs!.search.filter((action) => action.name !== 'tug');
    const { debrief } = play('warmUpstairs', { search });
    expect(debrief.leftAtNaming.map((each) => `${each.target}:${each.mode}`).sort()).toEqual(['statY:looseFrom', 'statY:open']);
    // Weights 0.6 and 0.5: 15 + 20 × 1 (the same wire either way) + 15 × 6/11.
    expect(debrief.items.isolation.points).toBeCloseTo(15 + 20 + (15 * 6) / 11, 6);
  });
});

describe('economy', () => {
  it('a step whose outcome was certain and that nothing needed is wasted, and names the steps that made it certain', () => {
    const search = [...SOLUTIONS.clicksButWontStart!.search, red('spliceY.b')];
    const { debrief } = play('clicksButWontStart', { search });
    const last = debrief.steps[search.length - 1]!;
    expect(last.kind).toBe('wasted');
    expect(last.gainBits).toBe(0);
    expect(last.because).toContain(5);
    expect(debrief.items.economy.points).toBeLessThan(25);
  });

  it('a set-up is a step without which a later one could not have been done or would have told something else', () => {
    const { debrief } = play('clicksButWontStart');
    expect(debrief.steps.slice(0, 6).map((step) => step.kind)).toEqual([
      'informative',
      'informative',
      'setUp',
      'setUp',
      'informative',
      'informative',
    ]);
  });

  it('looking at the same thing twice is wasted the second time', () => {
    const { debrief } = play('quietAfterTheStorm', { search: [walk('furnace'), look('drainPan'), look('drainPan')] });
    expect(debrief.steps.slice(0, 3).map((step) => step.kind)).toEqual(['setUp', 'informative', 'wasted']);
  });
});

describe('safe work', () => {
  it('ohms on a live circuit costs five, once however often', () => {
    const careless = [
      walk('furnace'),
      open('blowerDoor'),
      operate('doorSwitch', 'plunger', 'held'),
      meter('ohms'),
      red('board.R'),
      black('board.C'),
      wait(15),
    ];
    const { debrief } = play('quietAfterTheStorm', {
      search: [...careless, look('drainPan')],
      after: [operate('doorSwitch', 'plunger', 'out'), close('blowerDoor')],
    });
    expect(debrief.items.safety.points).toBe(10);
    expect(debrief.items.safety.reasons.filter((reason) => reason.points < 0)).toMatchObject([{ code: 'ohmsLive', step: 6 }]);
  });

  it('a door switch left held in and a cover left off cost five each', () => {
    const { debrief } = play('quietAfterTheStorm', {
      search: [walk('furnace'), open('blowerDoor'), operate('doorSwitch', 'plunger', 'held'), look('drainPan')],
    });
    const codes = debrief.items.safety.reasons.map((reason) => reason.code);
    expect(codes).toContain('bypassLeft');
    expect(codes).toContain('coverLeft');
  });

  it('hands on line voltage cost five', () => {
    const { debrief } = play('humsOutside', {
      search: [walk('outdoor'), open('outdoorPanel'), lift('compressorStart', 'from')],
      after: [],
    });
    expect(debrief.items.safety.reasons).toContainEqual(expect.objectContaining({ code: 'liveTouch', points: -5, step: 3 }));
  });

  it('a dead reading from a meter that was never proved costs five', () => {
    const { debrief } = play('fanButNoCooling', {
      search: [
        walk('furnace'),
        open('blowerDoor'),
        operate('doorSwitch', 'plunger', 'held'),
        meter('voltsAc'),
        black('board.C'),
        red('board.Y'),
      ],
      after: [],
    });
    expect(debrief.items.safety.reasons.map((reason) => reason.code)).toContain('meterNotProved');
  });
});

describe('proof', () => {
  it('readings that fit another fault too prove nothing, and the other fault is named', () => {
    const { debrief } = play('clicksButWontStart', {}, [1, 2]);
    const reason = debrief.items.proof.reasons[0]!;
    expect(reason.code).toBe('evidenceAlsoFits');
    expect(reason.points).toBe(0);
    expect(Number(reason.values.count)).toBeGreaterThan(10);
  });

  it('a repair that is not tried is no proof', () => {
    const { debrief } = play('clicksButWontStart', { after: [replace('spliceY'), close('outdoorPanel'), walk('hallway')] });
    expect(debrief.items.proof.points).toBeGreaterThanOrEqual(5);
    expect(play('clicksButWontStart', { after: [close('outdoorPanel')] }).debrief.items.proof.points).toBe(5);
  });

  it('a wrong repair leaves a system that still does not work', () => {
    const { attempt, debrief } = play('fanButNoCooling', { after: [replace('cells'), walk('outdoor'), wait(300)] });
    expect(debrief.items.proof.reasons.map((reason) => reason.code)).toContain('callNotProved');
    const compressor = attempt.steps.at(-1)!.view.noticed.find((notice) => notice.part === 'compressor');
    expect(compressor?.value).not.toBe('run');
  });
});
