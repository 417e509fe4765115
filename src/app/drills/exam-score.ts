import { type AttemptLog, replay } from '../../attempt/attempt.ts';
import { isRight } from '../../drills/examBench.ts';
import { engineFor } from '../engine/engine.ts';
import { findTicket, rigOf } from '../library.ts';
import { type Benched, type ExamWork, examined, isClosed } from './exam-keep.ts';

/** How often a worker is asked that dies over it. */
const TRIES = 3;

/** What the work on a ticket came to, by its debrief. Undefined where no worker could tell: it does not count. */
async function benchedOf(work: ExamWork): Promise<Benched | undefined> {
  const not = { ticket: work.ticket, right: false, points: null };
  const ticket = findTicket(work.ticket);
  if (ticket === undefined || !isClosed(work)) return not;
  try {
    replay(examined(ticket), rigOf(ticket), work.log);
  } catch {
    // Of another version, or damaged: nothing is known of the work.
    return undefined;
  }
  for (let tries = 0; tries < TRIES; tries++) {
    try {
      const debrief = await engineFor(ticket, rigOf(ticket)).ask('debrief', { log: work.log as AttemptLog, mode: 'graded' });
      return { ticket: work.ticket, right: isRight(debrief), points: debrief.total };
    } catch {
      // Begun anew.
    }
  }
  return undefined;
}

/** The same of all tickets of an exam, one after another: there is one worker. */
export async function benchOver(works: readonly ExamWork[]): Promise<Benched[]> {
  const all: Benched[] = [];
  for (const work of works) {
    const benched = await benchedOf(work);
    if (benched) all.push(benched);
  }
  return all;
}
