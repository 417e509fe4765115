/** A ticket solved the reference way, on whatever rig: the short way, the fault named by what it showed, and the job finished. */
import { type Attempt, begin, perform, type Step } from '../attempt/attempt.ts';
import type { RigData } from '../rig/schema.ts';
import { proofOf } from '../score/proof.ts';
import type { Yardstick } from '../score/score.ts';
import { type Cure, finish, mayBeSetRight } from './finish.ts';
import type { Ticket } from './ticket.ts';

/** As many steps as a naming takes for evidence. */
const MOST_EVIDENCE = 40;

/**
 * The attempt of somebody who goes the short way, names the fault, repairs it safely, puts everything back, runs the customer's call again
 * and sees it work. Its log is `logOf` it, and what it is worth `debriefOf`.
 */
export function solveTicket(ticket: Ticket, rig: RigData, yardstick: Yardstick): Attempt {
  const { assembly } = yardstick.ground;
  const targets = ticket.faults.map((fault) => fault.target);
  const solve = (cure: Cure): Attempt => {
    const attempt = begin(ticket, rig, assembly);
    for (const action of yardstick.par.actions) perform(attempt, action);
    name(attempt);
    finish(attempt, targets, cure);
    return attempt;
  };
  const atFirst = begin(ticket, rig, assembly);
  if (targets.some((target) => mayBeSetRight(atFirst, target))) {
    const byHand = solve('byHand');
    if (proofOf(byHand).proved) return byHand;
  }
  return solve('replace');
}

function name(attempt: Attempt): void {
  const [first, second] = attempt.job.faults;
  if (!first) return;
  perform(attempt, {
    name: 'name',
    target: first.target,
    mode: first.mode,
    ...(second ? { also: { target: second.target, mode: second.mode } } : {}),
    evidence: evidenceOf(attempt.steps),
  });
}

/** The steps that showed something; every one of them where they are few. */
function evidenceOf(steps: readonly Step[]): number[] {
  const showing = steps.filter(({ observation }) => observation.reading !== undefined || observation.notices.length > 0);
  return (steps.length > MOST_EVIDENCE ? showing : steps).map((step) => step.view.number).slice(-MOST_EVIDENCE);
}
