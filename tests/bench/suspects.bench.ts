import { act } from '../../src/attempt/act.ts';
import { debriefOf } from '../../src/score/score.ts';
import { arriveField, gatherField, stepField } from '../../src/suspects/field.ts';
import { start, take, ticket } from '../scenario/shipped.ts';
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
  const attempt = start('fanButNoCooling');
  const { search, name, after } = SOLUTIONS.fanButNoCooling!;
  take(attempt, ...search, { name: 'name', ...name, evidence: [] }, ...after);
  const began = performance.now();
  debriefOf(attempt);
  const debriefed = performance.now() - began;
  return [
    { name: 'suspects: hypotheses of the rig', value: hypotheses, unit: '' },
    { name: 'suspects: twins', value: twins, unit: '' },
    { name: 'suspects: gather the whole field, slowest ticket', value: gathered, unit: 'ms' },
    { name: 'suspects: a step for the whole field, median', value: percentile(times, 0.5), unit: 'ms' },
    { name: 'suspects: a step for the whole field, 95 of 100', value: percentile(times, 0.95), unit: 'ms' },
    { name: 'suspects: debrief of an attempt of 25 steps', value: debriefed, unit: 'ms' },
  ];
}
