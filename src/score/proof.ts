import { act } from '../attempt/act.ts';
import { type Attempt, begin } from '../attempt/attempt.ts';
import { perceives, signsOf } from '../attempt/notices.ts';

/**
 * Whether the call that was complained of was run after the last repair and seen to work: after some step all that the ticket
 * says should work did, and the trainee saw or heard each of those with their own eyes and ears meanwhile.
 */
export function callProved(attempt: Attempt): boolean {
  const { job } = attempt;
  const named = attempt.steps.findIndex((step) => step.action.name === 'name');
  if (named < 0) return false;
  const repaired = attempt.steps.findLastIndex((step) => step.action.name === 'replace');
  const from = Math.max(named, repaired);
  const { bench } = begin(job, attempt.assembly.rig);
  const witnessed = new Set<number>();
  let allAtOnce = false;
  attempt.steps.forEach((step, index) => {
    act(bench, step.action);
    if (index < from) return;
    const now = job.complaint.works.map(({ part: id, sign: key, is }) => {
      const part = bench.world.assembly.partById.get(id);
      const sign = part && signsOf(bench, part).find((candidate) => candidate.key === key);
      return { stands: sign?.value === is, perceived: part !== undefined && sign !== undefined && perceives(bench, part, sign) };
    });
    now.forEach((each, place) => {
      if (each.stands && each.perceived) witnessed.add(place);
    });
    if (now.every((each) => each.stands)) allAtOnce = true;
  });
  return allAtOnce && witnessed.size === job.complaint.works.length;
}
