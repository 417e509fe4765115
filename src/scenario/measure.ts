import { possibleFaults } from '../rig/faults.ts';
import type { RigData } from '../rig/schema.ts';
import { debriefOf, type Yardstick } from '../score/score.ts';
import { type Naming, sameNaming } from '../suspects/hypotheses.ts';
import { type Grade, gradeOf, type Measure, measureOf } from './grade.ts';
import { type Skill, skillsShown } from './skills.ts';
import { solveTicket } from './solve.ts';
import type { Ticket } from './ticket.ts';

/** What solving a ticket the reference way needs from whoever makes it: fewer points, and something in it is amiss. */
export const GOOD_TOTAL = 90;

/** A ticket, measured by solving it the reference way. */
export interface Measured extends Measure {
  readonly grade: Grade;
  readonly suspects: number;
  readonly total: number;
  /** What nothing on this rig tells from the fault. */
  readonly alike: readonly Naming[];
  /** What is left beside the fault and these: nothing, where the ticket can be solved. */
  readonly beside: readonly Naming[];
  readonly skills: readonly Skill[];
}

/** @param possible how many faults the rig can have, where that is known */
export function measureTicket(
  ticket: Ticket,
  rig: RigData,
  yardstick: Yardstick,
  possible = possibleFaults(rig, ticket.suspects?.intermittents).length,
): Measured {
  const attempt = solveTicket(ticket, rig, yardstick);
  const debrief = debriefOf(attempt, ticket.rubric, yardstick);
  const answer = [debrief.truth, ...debrief.alike];
  return {
    ...measureOf(yardstick.par),
    grade: gradeOf(yardstick.par),
    suspects: debrief.suspectsAtStart,
    total: debrief.total,
    alike: debrief.alike,
    beside: debrief.leftAtNaming.filter((left) => !answer.some((each) => sameNaming(each, left))),
    skills: skillsShown(attempt, Math.max(0, 1 - yardstick.ground.field.hypotheses.length / possible)),
  };
}
