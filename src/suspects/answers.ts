import { createBench } from '../attempt/bench.ts';
import type { Job } from '../attempt/job.ts';
import { type Ground, standOn } from './ground.ts';
import { type Naming, sameNaming } from './hypotheses.ts';
import { nextTest } from './shortWay.ts';

/**
 * Which of these hypotheses nothing that can be done on this rig tells from one of them: its answer class, so that naming any of its
 * members is right. The ground is used and left anywhere.
 */
export function alikeTo(job: Job, ground: Ground, named: Naming, among: readonly Naming[]): Naming[] {
  return among.filter((other) => {
    if (sameNaming(named, other)) return false;
    const field = standOn(ground);
    const both = field.twins.filter(({ hypothesis }) => {
      const naming = field.hypotheses[hypothesis];
      return naming !== undefined && (sameNaming(naming, named) || sameNaming(naming, other));
    });
    if (new Set(both.map(({ hypothesis }) => hypothesis)).size < 2) return false;
    return nextTest(createBench(ground.assembly, job.faults, job), both, field.hypotheses) === undefined;
  });
}
