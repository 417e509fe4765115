import { describe, expect, it } from 'vitest';
import { type Attempt, type AttemptLog, begin, logOf, perform, replay, viewOf } from '../../src/attempt/attempt.ts';
import { isDataError } from '../../src/rig/errors.ts';
import { randomNumbers } from '../circuit/random-network.ts';
import { library, rigOf } from '../scenario/shipped.ts';
import { anyAction } from './wander.ts';

const STEPS = 25;
const LOGS = 40;

/** A random attempt at one ticket after the other. */
function attemptBySeed(seed: number, steps = STEPS): Attempt {
  const ticket = library.tickets[seed % library.tickets.length]!;
  const random = randomNumbers(seed);
  const attempt = begin(ticket, rigOf(ticket));
  while (attempt.steps.length < steps) {
    const outcome = perform(attempt, anyAction(attempt, random));
    if (!outcome.ok) throw new Error(outcome.refusal.code);
  }
  return attempt;
}

/** As a file would have it: through JSON and back. */
const saved = (log: unknown): AttemptLog => JSON.parse(JSON.stringify(log)) as AttemptLog;

/** What replaying says of a log. */
function verdict(attempt: Attempt, log: unknown): { code: string; path: string; step: unknown } {
  const { job, assembly } = attempt;
  try {
    replay(job, assembly.rig, log);
  } catch (error) {
    if (!isDataError(error)) throw error;
    return { code: error.code, path: error.path, step: error.values.step };
  }
  return { code: 'sound', path: '', step: undefined };
}

describe('a log', () => {
  it(`of ${STEPS} random steps replays to the same view and the same log, to the bit, ${LOGS} times`, { timeout: 60_000 }, () => {
    for (let seed = 0; seed < LOGS; seed++) {
      const attempt = attemptBySeed(seed);
      const again = replay(attempt.job, attempt.assembly.rig, saved(logOf(attempt)));
      expect(viewOf(again), `seed ${seed}`).toStrictEqual(viewOf(attempt));
      expect(again.bench.world.state, `seed ${seed}`).toStrictEqual(attempt.bench.world.state);
      expect(logOf(again)).toStrictEqual(logOf(attempt));
    }
  });

  it('goes on from where it was left: the rest taken after a replay is the rest taken at once', () => {
    for (let seed = 0; seed < 10; seed++) {
      const whole = attemptBySeed(seed);
      const log = logOf(whole);
      const resumed = replay(whole.job, whole.assembly.rig, saved({ ...log, steps: log.steps.slice(0, 12) }));
      for (const { action } of log.steps.slice(12)) perform(resumed, action);
      expect(viewOf(resumed), `seed ${seed}`).toStrictEqual(viewOf(whole));
    }
  });

  it('keeps the seconds that a watch took, so that no replay has to find them again', () => {
    for (let seed = 0; seed < LOGS; seed++) {
      for (const { action } of logOf(attemptBySeed(seed)).steps)
        if (action.name === 'watch') expect(action.seconds).toBeGreaterThan(0);
    }
  });
});

type Change = (log: AttemptLog, at: number) => void;
type Loose = { steps: { at: number; action: Record<string, unknown> }[] };

/** Ways of tampering with one step, and the code that names it. */
const TAMPERINGS: readonly (readonly [string, RegExp, Change])[] = [
  ['a step that was retimed', /^log\.retimed$/, (log, at) => (log.steps[at]!.at += 1)],
  ['a step that was retimed by a nanosecond', /^log\.retimed$/, (log, at) => (log.steps[at]!.at += 1e-9)],
  ['a step that was taken out', /^log\.(refused|retimed)$/, (log, at) => log.steps.splice(at, 1)],
  [
    'a step that was taken twice',
    /^log\.(refused|retimed)$/,
    (log, at) => log.steps.splice(at, 0, saved(log.steps[at - 1]) as never),
  ],
  [
    'two steps in each other’s place',
    /^log\.(refused|retimed)$/,
    (log, at) => log.steps.splice(at, 2, log.steps[at + 1]!, log.steps[at]!),
  ],
  ['a walk to a place that is not there', /^log\.refused$/, (log, at) => (log.steps[at]!.action = { name: 'walk', to: 'attic' })],
  ['a part from another rig', /^log\.refused$/, (log, at) => (log.steps[at]!.action = { name: 'look', part: 'boiler' })],
  ['an action that there is not', /^log\.shape$/, (log, at) => ((log as unknown as Loose).steps[at]!.action = { name: 'guess' })],
  ['an action with something more', /^log\.shape$/, (log, at) => ((log as unknown as Loose).steps[at]!.action.score = 100)],
  [
    'a time that is no number',
    /^log\.shape$/,
    (log, at) => ((log as unknown as { steps: { at: unknown }[] }).steps[at]!.at = 'soon'),
  ],
  ['a wait without length', /^log\.openWatch$/, (log, at) => (log.steps[at]!.action = { name: 'watch', seconds: 0 })],
  ['a close before the naming', /^log\.refused$/, (log, at) => (log.steps[at]!.action = { name: 'close' })],
];

describe('a log that was tampered with is refused at the first step that cannot be', () => {
  it.each(TAMPERINGS)('%s', (_, code, change) => {
    const random = randomNumbers(11);
    for (let seed = 0; seed < 10; seed++) {
      const attempt = attemptBySeed(seed);
      const log = saved(logOf(attempt));
      // Not the first and not the last two, so that every way of tampering has a step beside it.
      const at = 1 + Math.floor(random() * (STEPS - 3));
      change(log, at);
      const found = verdict(attempt, log);
      expect(found.code, `seed ${seed}, step ${at + 1}`).toMatch(code);
      expect(found.step, `seed ${seed}`).toBe(at + 1);
      expect(found.path, `seed ${seed}`).toMatch(new RegExp(`^steps[.[]${at}\\b`));
    }
  });

  it('of two, the earlier is named', () => {
    const attempt = attemptBySeed(3);
    const log = saved(logOf(attempt));
    (log as unknown as Loose).steps[18]!.action = { name: 'guess' };
    log.steps[12]!.action = { name: 'walk', to: 'attic' };
    expect(verdict(attempt, log)).toMatchObject({ code: 'log.refused', step: 13 });
    log.steps[7]!.at += 1;
    expect(verdict(attempt, log)).toMatchObject({ code: 'log.retimed', step: 8 });
  });

  it('another ticket’s or another rig’s is named as such', () => {
    const attempt = attemptBySeed(3);
    const log = saved(logOf(attempt));
    expect(verdict(attempt, { ...log, ticket: 'other' })).toMatchObject({ code: 'log.otherTicket', path: 'ticket' });
    expect(verdict(attempt, { ...log, rig: 'other' })).toMatchObject({ code: 'log.otherRig', path: 'rig' });
  });

  it.each([null, 7, 'log', [], {}, { format: 'bellwire-attempt', version: 2, ticket: 'x', rig: 'y', steps: [] }])(
    '%j is no log',
    (json) => {
      const found = verdict(attemptBySeed(3, 1), json);
      expect(found.code).toBe('log.shape');
      expect(found.path).not.toBe('');
    },
  );

  it('and a log of another version of the fault is refused where it first differs', () => {
    const ticket = library.tickets.find((each) => each.id === 'clicksButWontStart')!;
    const attempt = begin(ticket, rigOf(ticket));
    perform(attempt, { name: 'watch', seconds: 0 });
    expect(attempt.steps.length).toBe(1);
    const log = saved(logOf(attempt));
    log.steps[0]!.action = { name: 'watch', seconds: 7 };
    expect(verdict(attempt, log)).toMatchObject({ code: 'log.retimed', step: 1 });
  });
});
