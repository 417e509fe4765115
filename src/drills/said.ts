/** What a question, a choice or a reason speaks of: keys and values, put into words by whoever shows them. */
import type { Action } from '../attempt/actions.ts';
import type { HistoryAct } from '../attempt/job.ts';
import type { Notice } from '../attempt/view.ts';
import { toldApart } from '../meter/apart.ts';
import type { MeterFunction } from '../meter/functions.ts';
import { accuracyOf, type Reading } from '../meter/read.ts';
import type { Point } from '../rig/points.ts';
import type { Naming } from '../suspects/hypotheses.ts';

/** Units of worked-out quantities. Volts and amps are rms; feet and ohms per 1000 feet are as wire tables have them. */
export const QUANTITY_UNITS = ['V', 'A', 'VA', 'Ω', '%', 'ft', 'Ω/kft'] as const;
export type QuantityUnit = (typeof QUANTITY_UNITS)[number];

export type Said =
  | { readonly is: 'reading'; readonly reading: Reading }
  | { readonly is: 'function'; readonly fn: MeterFunction }
  | { readonly is: 'leads'; readonly fn: MeterFunction; readonly red: Point; readonly black: Point }
  | { readonly is: 'point'; readonly point: Point }
  /** A set: its order says nothing. */
  | { readonly is: 'points'; readonly points: readonly Point[] }
  | { readonly is: 'part'; readonly part: string }
  /** A set: its order says nothing. */
  | { readonly is: 'parts'; readonly parts: readonly string[] }
  | { readonly is: 'place'; readonly place: string }
  | { readonly is: 'wire'; readonly wire: string }
  /** What a customer set and operated. */
  | { readonly is: 'acts'; readonly acts: readonly HistoryAct[] }
  /** Without one: a sound system. */
  | { readonly is: 'fault'; readonly naming: Naming | undefined }
  /** A set of faults: its order says nothing. */
  | { readonly is: 'faults'; readonly namings: readonly Naming[] }
  | { readonly is: 'notice'; readonly notice: Notice }
  /** Done one after another. */
  | { readonly is: 'actions'; readonly actions: readonly Action[] }
  | { readonly is: 'quantity'; readonly value: number; readonly unit: QuantityUnit }
  | { readonly is: 'number'; readonly value: number };

/** Quantities nearer than this share of the larger are alike: nobody works a sum out more closely by hand. */
const QUANTITY_SHARE = 0.08;

/**
 * Whether two things said are two answers: readings by a technician's eye and by more than the meter may be wrong in both, quantities by more
 * than a sum by hand is wrong, all else by being something else.
 */
export function saidApart(a: Said, b: Said): boolean {
  if (a.is !== b.is) return true;
  if (a.is === 'reading' && b.is === 'reading') {
    if (!toldApart(a.reading, b.reading)) return false;
    if (a.reading.kind !== 'number' || b.reading.kind !== 'number') return true;
    return Math.abs(a.reading.value - b.reading.value) > accuracyOf(a.reading) + accuracyOf(b.reading);
  }
  if (a.is === 'quantity' && b.is === 'quantity')
    return a.unit !== b.unit || Math.abs(a.value - b.value) > QUANTITY_SHARE * Math.max(Math.abs(a.value), Math.abs(b.value));
  return keyOf(a) !== keyOf(b);
}

/** Equal for what says the same, whatever the order of a set. */
export function keyOf(said: Said): string {
  switch (said.is) {
    case 'points':
      return `points ${[...said.points].sort().join()}`;
    case 'parts':
      return `parts ${[...said.parts].sort().join()}`;
    case 'leads':
      return `leads ${said.fn} ${[said.red, said.black].sort().join()}`;
    case 'fault':
      return `fault ${said.naming ? namingKey(said.naming) : ''}`;
    case 'faults':
      return `faults ${said.namings.map(namingKey).sort().join()}`;
    case 'reading':
      return `reading ${said.reading.fn} ${said.reading.kind} ${said.reading.text} ${said.reading.prefix}`;
    default:
      return JSON.stringify(said);
  }
}

export const namingKey = ({ target, mode, also }: Naming): string =>
  `${target}:${mode}${also ? ` ${also.target}:${also.mode}` : ''}`;
