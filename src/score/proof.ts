import { act } from '../attempt/act.ts';
import { type Attempt, begin } from '../attempt/attempt.ts';
import type { Observed } from '../attempt/job.ts';
import { perceives, signsOf } from '../attempt/notices.ts';

/** What was done to prove a repair. */
export interface Proof {
  /** All that the ticket says should work did at once, and the trainee saw or heard each of it meanwhile. */
  readonly proved: boolean;
  /** What of it the trainee saw or heard working. */
  readonly witnessed: readonly Observed[];
  /** The first step, 1-based, after which all of it worked at once; undefined when it never did. */
  readonly worked: number | undefined;
}

/** Whether the call that was complained of was run after the last repair, and what was seen of its working with own eyes and ears. */
export function proofOf(attempt: Attempt): Proof {
  const { job } = attempt;
  const { works } = job.complaint;
  const named = attempt.steps.findIndex((step) => step.action.name === 'name');
  if (named < 0) return { proved: false, witnessed: [], worked: undefined };
  const repaired = attempt.steps.findLastIndex((step) => step.action.name === 'replace');
  const from = Math.max(named, repaired);
  const { bench } = begin(job, attempt.assembly.rig);
  const witnessed = new Set<Observed>();
  let worked: number | undefined;
  attempt.steps.forEach((step, index) => {
    act(bench, step.action);
    if (index < from) return;
    const standing = works.filter((work) => {
      const part = bench.world.assembly.partById.get(work.part);
      const sign = part && signsOf(bench, part).find((candidate) => candidate.key === work.sign);
      if (part === undefined || sign?.value !== work.is) return false;
      if (perceives(bench, part, sign)) witnessed.add(work);
      return true;
    });
    if (standing.length === works.length) worked ??= index + 1;
  });
  return {
    proved: worked !== undefined && witnessed.size === works.length,
    witnessed: works.filter((work) => witnessed.has(work)),
    worked,
  };
}
