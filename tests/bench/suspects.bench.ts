import { act } from '../../src/attempt/act.ts';
import { logOf, perform, replay } from '../../src/attempt/attempt.ts';
import { parOf } from '../../src/score/par.ts';
import { debriefOf, yardstickFor } from '../../src/score/score.ts';
import { arriveField, gatherField, stepField } from '../../src/suspects/field.ts';
import { beginFollowing, followStep } from '../../src/suspects/follow.ts';
import { prepareGround } from '../../src/suspects/ground.ts';
import { nextFrom } from '../../src/suspects/hints.ts';
import { anyAction } from '../attempt/wander.ts';
import { randomNumbers } from '../circuit/random-network.ts';
import { library, rigOf, start, ticket } from '../scenario/shipped.ts';
import { SOLUTIONS } from '../score/solutions.ts';
import type { BenchFigure } from './circuit.bench.ts';

function percentile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}

/** A step's update of every suspect, for the whole hypothesis set of the first rig: no complaint narrows it. */
export async function bench(): Promise<BenchFigure[]> {
  const times: number[] = [];
  let twins = 0;
  let hypotheses = 0;
  let gathered = 0;
  for (const [id, solution] of Object.entries(SOLUTIONS)) {
    const job = { ...ticket(id), complaint: { ...ticket(id).complaint, observed: [] } };
    const attempt = start(id);
    const began = performance.now();
    const field = gatherField(job, attempt.assembly);
    gathered = Math.max(gathered, performance.now() - began);
    twins = field.twins.length;
    hypotheses = field.hypotheses.length;
    arriveField(field, attempt.arrival);
    const left = field.twins.map(() => true);
    for (const action of solution.search) {
      const truth = act(attempt.bench, action).observation;
      const before = performance.now();
      stepField(field, action, truth, left);
      times.push(performance.now() - before);
    }
  }
  times.sort((a, b) => a - b);
  const pars = library.tickets.map((each) => {
    const ground = prepareGround(each, rigOf(each));
    return milliseconds(() => parOf(each, rigOf(each), ground));
  });
  const nexts = library.tickets.map((each) => {
    const ground = prepareGround(each, rigOf(each));
    const following = beginFollowing(each, rigOf(each), ground);
    return milliseconds(() => nextFrom(following));
  });
  const later = library.tickets.flatMap((each) => {
    const following = beginFollowing(each, rigOf(each), prepareGround(each, rigOf(each)));
    return (SOLUTIONS[each.id]?.search ?? []).map((action) => {
      followStep(following, action);
      return milliseconds(() => nextFrom(following));
    });
  });
  const graded = gradedMilliseconds('fanButNoCooling', 20);
  return [
    { name: 'suspects: hypotheses of the rig', value: hypotheses, unit: '' },
    { name: 'suspects: twins', value: twins, unit: '' },
    { name: 'suspects: gather the whole field, slowest ticket', value: gathered, unit: 'ms' },
    { name: 'suspects: a step for the whole field, median', value: percentile(times, 0.5), unit: 'ms' },
    { name: 'suspects: a step for the whole field, 95 of 100', value: percentile(times, 0.95), unit: 'ms' },
    { name: 'suspects: best next test on arrival, median ticket', value: percentile(sorted(nexts), 0.5), unit: 'ms' },
    { name: 'suspects: best next test on arrival, slowest ticket', value: percentile(sorted(nexts), 1), unit: 'ms' },
    { name: 'suspects: best next test after a step, median', value: percentile(sorted(later), 0.5), unit: 'ms' },
    { name: 'suspects: par of a ticket, median', value: percentile(sorted(pars), 0.5), unit: 'ms' },
    { name: 'suspects: par of a ticket, slowest', value: percentile(sorted(pars), 1), unit: 'ms' },
    { name: 'suspects: grade 100 attempts of about 25 steps', value: graded / 10, unit: 's' },
  ];
}

function sorted(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b);
}

function milliseconds(run: () => unknown): number {
  const began = performance.now();
  run();
  return performance.now() - began;
}

/** Milliseconds to grade one attempt by replay, the ticket's yardstick made before: the mean of some with random steps thrown in. */
function gradedMilliseconds(id: string, count: number): number {
  const job = ticket(id);
  const yardstick = yardstickFor(job, rigOf(job));
  const { search, name, after } = SOLUTIONS[id]!;
  const logs = Array.from({ length: count }, (_, seed) => {
    const attempt = start(id);
    const random = randomNumbers(seed + 1);
    for (const action of search) {
      perform(attempt, action);
      if (random() < 0.3) perform(attempt, anyAction(attempt, random));
    }
    perform(attempt, { name: 'name', ...name, evidence: attempt.steps.map((step) => step.view.number) });
    for (const action of after) perform(attempt, action);
    return logOf(attempt);
  });
  return milliseconds(() => logs.map((log) => debriefOf(replay(job, rigOf(job), log), undefined, yardstick).total)) / count;
}
