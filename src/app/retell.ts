import type { Action } from '../attempt/actions.ts';
import { type Attempt, begin, perform, viewOf } from '../attempt/attempt.ts';
import type { RigData } from '../rig/schema.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { type StepTold, tellStep } from './step-words.ts';

export interface Retold {
  readonly attempt: Attempt;
  readonly told: readonly StepTold[];
}

/** Takes actions again from the beginning, and puts each step in words as it stands. Actions that are refused are left out. */
export function retell(ticket: Ticket, rig: RigData, actions: readonly Action[]): Retold {
  const attempt = begin(ticket, rig);
  const told = actions.flatMap((action) => {
    const outcome = perform(attempt, action);
    return outcome.ok ? [tellStep(viewOf(attempt), outcome.step)] : [];
  });
  return { attempt, told };
}
