/** The worker that works a debrief out, so that the page stays awake meanwhile. */
import { type AttemptLog, replay } from '../../attempt/attempt.ts';
import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { debriefOf } from '../../score/score.ts';

export interface Job {
  readonly ticket: Ticket;
  readonly rig: RigData;
  readonly log: AttemptLog;
}

addEventListener('message', (event: MessageEvent<Job>) => {
  const { ticket, rig, log } = event.data;
  postMessage(debriefOf(replay(ticket, rig, log)));
});
