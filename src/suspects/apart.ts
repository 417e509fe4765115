import type { Observation } from '../attempt/act.ts';
import type { Notice } from '../attempt/view.ts';
import { DISCERNMENT, type Discernment, toldApart } from '../meter/apart.ts';

/** Whole degrees by which two slow drifts must differ to be told apart. */
const LEVEL_STEP = 2;

/** Whether a technician's eye would tell these two observations of the same step apart. */
export function observationsApart(a: Observation, b: Observation, discernment: Discernment = DISCERNMENT): boolean {
  if (a === b) return false;
  if (noticesApart(a.notices, b.notices)) return true;
  if ((a.reading === undefined) !== (b.reading === undefined)) return true;
  if (a.reading && b.reading && toldApart(a.reading, b.reading, discernment)) return true;
  if (a.levels.size !== b.levels.size) return true;
  for (const [key, value] of a.levels) {
    const other = b.levels.get(key);
    if (other === undefined || Math.abs(other - value) >= LEVEL_STEP) return true;
  }
  return false;
}

/** The same things seen and heard, in the same order. */
function noticesApart(a: readonly Notice[], b: readonly Notice[]): boolean {
  if (a.length !== b.length) return true;
  for (let i = 0; i < a.length; i++) {
    const one = a[i];
    const other = b[i];
    if (one?.part !== other?.part || one?.key !== other?.key || one?.value !== other?.value) return true;
  }
  return false;
}

/** Equal texts are surely not told apart: lets twins that predict the very same be weighed as one. */
export function fingerprint(observation: Observation): string {
  const notices = observation.notices.map(({ part, key, value }) => `${part}.${key}=${value}`).join(';');
  const { reading } = observation;
  const shown = reading ? `${reading.fn} ${reading.kind} ${reading.text}${reading.prefix}${reading.tone}` : '';
  const drift = [...observation.levels].map(([key, value]) => `${key}=${value}`).join(';');
  return `${notices}|${shown}|${drift}`;
}
