/** What can be shown at each place of a spot, and by which of a house's faults. */
import type { Reading } from '../../../meter/read.ts';
import { couldShow, everyFaultAt, type Showing } from '../../everyFault.ts';
import { clearlyApart, type Pair, pairsOf } from '../../leads.ts';
import type { Spot } from '../../places.ts';
import type { Setting } from '../../setting.ts';

/** One thing that some fault shows at one place. */
export interface Outcome {
  readonly pair: Pair;
  readonly reading: Reading;
  /** By fault: what it shows itself, now and later. */
  readonly shows: readonly (readonly Reading[])[];
  /** By fault of the house: whether it surely shows this. */
  readonly sure: readonly boolean[];
  /** By fault: whether it may show this, in a severity of its own too. */
  readonly maybe: readonly boolean[];
}

/** A reading that was taken, something else that can be shown at the same spot, and where: in some places still, in others no longer. */
export interface Question {
  readonly spot: Spot;
  readonly taken: Outcome;
  readonly still: readonly Outcome[];
  readonly never: readonly Outcome[];
}

const known = new WeakMap<Spot, readonly Question[]>();

/** How often a place is one where something can no longer be shown, of all questions of its spot: who knows nothing would answer by that. */
export function habitOf({ spot }: Question): (outcome: Outcome) => number {
  const questions = known.get(spot) ?? [];
  return ({ pair }) => {
    const times = (key: 'still' | 'never') => questions.filter((each) => each[key].some((outcome) => outcome.pair === pair)).length;
    return times('never') / Math.max(1, times('never') + times('still'));
  };
}

/** Every question of a spot with so many places where something can still be shown. */
export function questionsAt(setting: Setting, spot: Spot, fewest: number): readonly Question[] {
  const found = known.get(spot);
  if (found) return found;
  const all = outcomesAt(setting, spot);
  const asked = all.filter(isAsked);
  const questions = all.filter(isTold).flatMap((taken): Question[] => {
    const elsewhere = asked.filter(({ pair }) => pair !== taken.pair);
    return distinct(elsewhere.map(({ reading }) => reading)).flatMap((shown): Question[] => {
      const same = elsewhere.filter(({ reading }) => clearlyApart(reading, shown) === false);
      const still = same.filter(({ sure }) => sure.some((is, fault) => is && taken.sure[fault]));
      const never = same.filter(({ maybe }) => !maybe.some((is, fault) => is && taken.maybe[fault]));
      return still.length >= fewest && never.length > 0 ? [{ spot, taken, still, never }] : [];
    });
  });
  known.set(spot, questions);
  return questions;
}

/** Less than this is copper, ohms: any other number of ohms stands at one place alone. */
const COPPER_OHMS = 1;

/** What is asked for: volts, copper or no way at all. */
const isAsked = ({ reading: { fn, kind, value } }: Outcome): boolean =>
  fn === 'voltsAc' || kind === 'overload' || (kind === 'number' && value < COPPER_OHMS);

/** More than this is what electronics are made of, ohms. */
const MOST_OHMS = 2000;

/** What is told: no more than somebody can reason about, and what two faults at least may have made. */
const isTold = ({ reading: { fn, kind, value }, sure }: Outcome): boolean =>
  (fn !== 'ohms' || kind === 'overload' || (kind === 'number' && value <= MOST_OHMS)) && sure.filter((is) => is).length > 1;

function outcomesAt(setting: Setting, spot: Spot): Outcome[] {
  const table = everyFaultAt(setting, spot);
  const pairs = pairsOf(setting, spot);
  // Where all is dead by intent volts are no question.
  const isDead = pairs.some(({ fn }) => fn === 'ohms');
  return pairs.flatMap((pair, index): Outcome[] => {
    if (isDead && pair.fn !== 'ohms') return [];
    const column = table.flatMap((row): Showing[] => (row[index] ? [row[index]] : []));
    const [sound] = column;
    if (!sound) return [];
    return distinct(column.flatMap(({ ghost, reading }) => (ghost ? [] : [reading]))).map((reading): Outcome => {
      const apart = column.map((each) => clearlyApart(each.reading, reading));
      // Any part of which some severity was tried may be wrong by more or by less.
      const able = new Map<string | undefined, boolean>();
      const isAble = ({ naming }: Showing): boolean => {
        const target = naming?.target;
        const own =
          able.get(target) ??
          couldShow(
            column.filter((each) => each.naming?.target === target),
            sound.reading,
            reading,
            surely,
          );
        able.set(target, own);
        return own;
      };
      return {
        pair,
        reading,
        shows: column.map(({ reading: now, later }) => [now, ...later]),
        sure: column.map(({ ghost }, fault) => !ghost && apart[fault] === false),
        maybe: column.map((each, fault) => each.ghost || apart[fault] !== true || isAble(each)),
      };
    });
  });
}

const surely = (a: Reading, b: Reading): boolean => clearlyApart(a, b) === true;

/** Of readings each that is surely apart from those before. */
function distinct(readings: readonly Reading[]): Reading[] {
  const few: Reading[] = [];
  for (const reading of readings) if (few.every((each) => surely(each, reading))) few.push(reading);
  return few;
}
