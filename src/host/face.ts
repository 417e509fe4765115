/** What of a trainee's work may leave the host: picked field by field, so that a field that is added later stays here. */

import type { Action } from '../attempt/actions.ts';
import type { Attempt } from '../attempt/attempt.ts';
import { optionsOf, viewOf } from '../attempt/attempt.ts';
import type { Work } from '../classroom/draw.ts';
import type { MovingView, StillView, TicketFace } from '../classroom/protocol.ts';

/** @param shipped whether the ticket comes with Bellwire: its words go by its id */
export function faceOf({ item, ticket }: Work, shipped: boolean): TicketFace {
  const { rig, mode, told, complaint, weather, house, tools, rubric, suspects } = ticket;
  const named = shipped && told === undefined;
  return {
    id: named ? ticket.id : `work${item + 1}`,
    rig,
    mode,
    // The job's number counts the draws of a pool.
    ...(told ? { told: { symptom: told.symptom, heard: told.heard, voice: told.voice, job: item + 1 } } : {}),
    complaint: { history: complaint.history, observed: complaint.observed },
    weather,
    ...(house ? { house } : {}),
    ...(tools ? { tools } : {}),
    ...(rubric ? { rubric } : {}),
    naming: { intermittents: suspects?.intermittents === true, pairs: (suspects?.pairs ?? []).length > 0 },
  };
}

export interface Shown {
  readonly still: StillView;
  readonly view: MovingView;
  readonly options: readonly Action[];
}

/** An attempt as it stands, for its trainee's screen. */
export function shown(attempt: Attempt, face: TicketFace): Shown {
  const { steps: _, looks, places, ...view } = viewOf(attempt);
  return { still: { looks, places }, view: { ...view, ticket: face.id }, options: optionsOf(attempt) };
}
