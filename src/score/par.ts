import { begin, perform } from '../attempt/attempt.ts';
import { createBench } from '../attempt/bench.ts';
import type { Job } from '../attempt/job.ts';
import { entropyBits } from '../diagnosis/information.ts';
import type { RigData } from '../rig/schema.ts';
import { type Field, posterior, survivors } from '../suspects/field.ts';
import { followAttempt, leftNow } from '../suspects/follow.ts';
import { type Ground, standOn } from '../suspects/ground.ts';
import { type Choose, shortWay } from '../suspects/shortWay.ts';
import type { Par } from './debrief.ts';
import { judgeSearch } from './judge.ts';

const openBits = (field: Field, left: readonly boolean[]) => entropyBits(posterior(field, left).values());

/** Rounds of leaving out what proved to be wasted; each leaves out at least one step. */
const MOST_ROUNDS = 12;

/**
 * The short way of a ticket: the reference way taken under the true fault, then freed of steps that turn out to be wasted.
 * @param choose how each next test is chosen, where that is kept from an earlier search on the same ground
 * The ground is used and left where the last step put it.
 */
export function parOf(job: Job, rig: RigData, ground: Ground, choose?: Choose): Par {
  const field = standOn(ground);
  const way = shortWay(createBench(ground.assembly, job.faults, job), field.twins, field.hypotheses, choose);
  let { actions } = way;
  for (let round = 0; ; round++) {
    const attempt = begin(job, rig, ground.assembly);
    const taken = actions.filter((action) => perform(attempt, action).ok);
    const following = followAttempt(attempt, ground);
    const kinds = judgeSearch(attempt, following);
    const wasted = kinds.indexOf('wasted');
    if (wasted < 0 || round === MOST_ROUNDS) {
      return {
        actions: taken,
        seconds: attempt.steps.at(-1)?.view.seconds ?? 0,
        left: following.leftBefore.slice(1).map((left) => survivors(field, left).size),
        gainBits: openBits(field, following.arrival.matched) - openBits(field, leftNow(following)),
      };
    }
    actions = taken.filter((_, index) => index !== wasted);
  }
}
