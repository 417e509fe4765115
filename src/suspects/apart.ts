import type { Observation } from '../attempt/act.ts';
import type { Notice } from '../attempt/view.ts';
import { DISCERNMENT, type Discernment, toldApart } from '../meter/apart.ts';
import type { Reading } from '../meter/read.ts';

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

/** Whether not the same things were seen and heard in the same order; slow drifts that were read closely may differ a little. */
export function noticesApart(a: readonly Notice[], b: readonly Notice[]): boolean {
  if (a.length !== b.length) return true;
  for (let i = 0; i < a.length; i++) {
    const one = a[i];
    const other = b[i];
    if (one === undefined || other === undefined || noticeApart(one, other)) return true;
  }
  return false;
}

function noticeApart(one: Notice, other: Notice): boolean {
  if (one.part !== other.part || one.key !== other.key) return true;
  if (one.minor === true && typeof one.value === 'number' && typeof other.value === 'number')
    return Math.abs(one.value - other.value) >= LEVEL_STEP;
  return one.value !== other.value;
}

/** The first thing that tells a predicted observation from the real one. */
export type Difference =
  | { readonly kind: 'reading'; readonly reading: Reading | undefined }
  /** Something that would have been noticed, or, undefined, would not have been. */
  | { readonly kind: 'notice'; readonly notice: Notice | undefined; readonly instead: Notice | undefined }
  | { readonly kind: 'level'; readonly key: string; readonly value: number | undefined }
  | { readonly kind: 'none' };

/** What would have been seen instead. */
export function differenceOf(predicted: Observation, told: Observation, discernment: Discernment = DISCERNMENT): Difference {
  const most = Math.max(predicted.notices.length, told.notices.length);
  for (let i = 0; i < most; i++) {
    const notice = predicted.notices[i];
    const instead = told.notices[i];
    if (notice === undefined || instead === undefined || noticeApart(notice, instead)) return { kind: 'notice', notice, instead };
  }
  const { reading } = predicted;
  if (
    (reading === undefined) !== (told.reading === undefined) ||
    (reading && told.reading && toldApart(reading, told.reading, discernment))
  ) {
    return { kind: 'reading', reading };
  }
  for (const [key, value] of told.levels) {
    const other = predicted.levels.get(key);
    if (other === undefined || Math.abs(other - value) >= LEVEL_STEP) return { kind: 'level', key, value: other };
  }
  return { kind: 'none' };
}

/** Equal texts are surely not told apart: lets twins that predict the very same be weighed as one. */
export function fingerprint(observation: Observation): string {
  const notices = observation.notices.map(({ part, key, value }) => `${part}.${key}=${value}`).join(';');
  const { reading } = observation;
  const shown = reading ? `${reading.fn} ${reading.kind} ${reading.text}${reading.prefix}${reading.tone}` : '';
  const drift = [...observation.levels].map(([key, value]) => `${key}=${value}`).join(';');
  return `${notices}|${shown}|${drift}`;
}
