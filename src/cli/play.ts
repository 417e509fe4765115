import { type Attempt, replay } from '../attempt/attempt.ts';
import { inFile, rigFor } from '../scenario/library.ts';
import type { Debrief } from '../score/debrief.ts';
import { debriefOf } from '../score/score.ts';
import { readJson, shippedLibrary, ticketById } from './files.ts';

/** One step as `play` prints it. */
export interface PlayedStep {
  readonly step: number;
  readonly action: unknown;
  readonly seconds: number;
  readonly reading: string | null;
  readonly noticed: readonly string[];
  readonly kind: string;
  readonly gainBits: number;
  readonly left: number;
  readonly ruledOut: readonly string[];
  readonly because: readonly number[];
  readonly unsafe: string | null;
}

/** Replays a saved attempt and works out what each step was worth. */
export function play(
  ticketId: string,
  logFile: string,
): { readonly attempt: Attempt; readonly steps: readonly PlayedStep[]; readonly debrief: Debrief } {
  const library = shippedLibrary();
  const ticket = ticketById(library, ticketId);
  const json = readJson(logFile);
  const attempt = inFile(logFile, () => replay(ticket, rigFor(library.rigs, ticket), json));
  const debrief = debriefOf(attempt, ticket.rubric);
  const steps = debrief.steps.map((judged, index): PlayedStep => {
    const view = attempt.steps[index]?.view;
    const reading = view?.reading;
    return {
      step: judged.number,
      action: view?.action,
      seconds: view?.seconds ?? 0,
      reading: reading ? (reading.kind === 'number' ? `${reading.text} ${reading.prefix}${reading.unit}` : reading.kind) : null,
      noticed: (view?.noticed ?? []).map((notice) => `${notice.part}.${notice.key}=${notice.value}`),
      kind: judged.kind,
      gainBits: judged.gainBits,
      left: judged.left,
      ruledOut: judged.ruledOut.map((naming) => `${naming.target}:${naming.mode}`),
      because: judged.because,
      unsafe: judged.unsafe ?? null,
    };
  });
  return { attempt, steps, debrief };
}
