import { describe, expect, it } from 'vitest';
import { act, type Observation } from '../../src/attempt/act.ts';
import { type Attempt, arrive, begin, perform, type Step } from '../../src/attempt/attempt.ts';
import { createBench } from '../../src/attempt/bench.ts';
import type { Ticket } from '../../src/scenario/ticket.ts';
import { observationsApart } from '../../src/suspects/apart.ts';
import { arriveField, gatherField, stepField, survivors } from '../../src/suspects/field.ts';
import { sameNaming } from '../../src/suspects/hypotheses.ts';
import { anyAction } from '../attempt/wander.ts';
import { randomNumbers } from '../circuit/random-network.ts';
import { library, rigOf, samples } from '../scenario/shipped.ts';

/** Random sequences of a ticket; BELLWIRE_FULL=1 takes many more. */
const FULL_RUN = process.env.BELLWIRE_FULL !== undefined;
const sequences = FULL_RUN ? 1000 : 60;
const STEPS = 12;
/** Sequences of each ticket that every suspect is driven through; the others are driven through the truth's twin alone. */
const FULL = 1;

/** Takes random steps on a ticket, and tells of each. */
function wander(attempt: Attempt, seed: number, tell: (step: Step) => void): void {
  const random = randomNumbers(seed);
  for (let number = 0; number < STEPS; number++) {
    const action = anyAction(attempt, random);
    if (!perform(attempt, action).ok) throw new Error(`refused after all: ${JSON.stringify(action)}`);
    tell(attempt.steps.at(-1)!);
  }
}

const told = (ticket: Ticket, seed: number, attempt: Attempt) =>
  `${ticket.id}, seed ${seed}: ${attempt.steps.map((step) => JSON.stringify(step.action)).join(' ')}`;

/** Suspects that random steps ruled out, all tickets together. */
let ruledOut = 0;

describe.each((FULL_RUN ? library.tickets : samples).map((ticket) => [ticket.id, ticket] as const))('%s', (_, ticket) => {
  it(`the truth’s own twin predicts every observation along ${sequences} random sequences of ${STEPS} steps`, {
    timeout: 240_000,
  }, () => {
    const { assembly } = begin(ticket, rigOf(ticket));
    let readings = 0;
    let notices = 0;
    for (let seed = 0; seed < sequences; seed++) {
      const attempt = begin(ticket, rigOf(ticket), assembly);
      const twin = createBench(assembly, ticket.faults, ticket);
      const agrees = (predicted: Observation, observed: Observation) =>
        expect(observationsApart(predicted, observed), told(ticket, seed, attempt)).toBe(false);
      agrees(arrive(twin), attempt.arrival);
      wander(attempt, seed, (step) => {
        agrees(act(twin, step.action).observation, step.observation);
        if (step.observation.reading) readings += 1;
        notices += step.observation.notices.length;
      });
    }
    // They saw and measured something on the way.
    expect(readings).toBeGreaterThan(sequences / 4);
    expect(notices).toBeGreaterThan(sequences);
  });

  it(`the true fault is never ruled out while every suspect is driven along, in ${FULL} of them`, { timeout: 240_000 }, () => {
    for (let seed = 0; seed < FULL; seed++) {
      const attempt = begin(ticket, rigOf(ticket));
      const field = gatherField(ticket, attempt.assembly);
      const truth = field.hypotheses.findIndex((each) => ticket.faults.some((fault) => sameNaming(each, fault)));
      let left = arriveField(field, attempt.arrival).matched;
      expect(survivors(field, left), told(ticket, seed, attempt)).toContain(truth);
      const atFirst = survivors(field, left).size;
      wander(attempt, seed, (step) => {
        const column = stepField(field, step.action, step.observation, left);
        left = left.map((was, index) => was && column.matched[index] === true);
        expect(survivors(field, left), told(ticket, seed, attempt)).toContain(truth);
      });
      ruledOut += atFirst - survivors(field, left).size;
    }
  });
});

describe('random steps', () => {
  it('rule out others meanwhile', () => {
    expect(ruledOut).toBeGreaterThan(samples.length);
  });
});
