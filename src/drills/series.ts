import type { Action } from '../attempt/actions.ts';
import { measure } from '../attempt/measure.ts';
import type { MeterFunction } from '../meter/functions.ts';
import type { Reading } from '../meter/read.ts';
import type { Point } from '../rig/points.ts';
import { shuffled } from '../scenario/random.ts';
import type { Random } from '../scenario/variant.ts';
import type { Sentence } from './item.ts';
import { clearlyApart, leadsSaid, type Place } from './leads.ts';
import type { Spot } from './places.ts';
import { takeAll } from './setting.ts';
import type { Suspect } from './suspects.ts';

/** Readings at one spot, one after another, and what each suspect's meter shows as they are taken. */
export interface Series {
  /** From the door to the last reading. */
  readonly steps: readonly Action[];
  readonly places: readonly Pick<Place, 'fn' | 'red' | 'black'>[];
  /** By suspect, then by reading. */
  readonly shown: readonly (readonly Reading[])[];
}

/** Lots cast for places that make a question. */
const TRIES = 24;

/**
 * Readings by lot that make a question, taken in each suspect's world, volts before ohms.
 * @param count of readings, by lot
 * @param asks whether a series is worth asking about
 */
export function seriesByLot(
  spot: Spot,
  places: readonly Place[],
  suspects: readonly Suspect[],
  random: Random,
  count: () => number,
  asks: (series: Pick<Series, 'shown'>) => boolean,
): Series | undefined {
  const telling = places.filter(isTelling);
  for (let tries = 0; tries < TRIES; tries++) {
    const few = shuffled(random, telling)
      .slice(0, count())
      .sort((a, b) => Number(a.fn === 'ohms') - Number(b.fn === 'ohms'));
    if (few.length === 0 || !asks({ shown: suspects.map((_, index) => few.flatMap(({ shown }) => shown[index] ?? [])) })) continue;
    // What each shows as the first reading is nearly what it shows as a later one: time passes meanwhile.
    const series = takeSeries(spot, few, suspects);
    return series && asks(series) ? series : undefined;
  }
  return undefined;
}

/** Whether not all suspects show the same, and none shows what is neither the same as another's nor something else. */
function isTelling({ shown }: Place): boolean {
  const apart = shown.flatMap((one, index) => shown.slice(index + 1).map((other) => clearlyApart(one, other)));
  return apart.includes(true) && !apart.includes(undefined);
}

/** Undefined where a reading cannot be taken or shows no honest number. */
function takeSeries(spot: Spot, places: readonly Place[], suspects: readonly Suspect[]): Series | undefined {
  const moves = movesTo(places);
  const shown = suspects.map((suspect): Reading[] => {
    const bench = suspect.arrive();
    if (!takeAll(bench, spot.way)) return [];
    return moves.flatMap((steps) => {
      const reading = takeAll(bench, steps) ? measure(bench) : undefined;
      return reading && reading.kind !== 'live' ? [reading] : [];
    });
  });
  if (shown.some((readings) => readings.length < places.length)) return undefined;
  return { steps: [...spot.way, ...moves.flat()], places, shown };
}

/** For each reading the moves of leads and key that lead there from the one before, the first from a meter that is off and free. */
function movesTo(places: readonly Place[]): Action[][] {
  let red: Point | undefined;
  let black: Point | undefined;
  let key: MeterFunction = 'off';
  return places.map((place) => {
    const steps: Action[] = [];
    if (black !== place.black) steps.push({ name: 'probe', lead: 'black', at: place.black });
    if (red !== place.red) steps.push({ name: 'probe', lead: 'red', at: place.red });
    if (key !== place.fn) steps.push({ name: 'meter', fn: place.fn });
    ({ red, black, fn: key } = place);
    return steps;
  });
}

/** By reading, whether it rules the other out where the first is true; undefined where one reading leaves it open. */
export function ruledOut({ shown }: Pick<Series, 'shown'>, truth: number, other: number): boolean[] | undefined {
  const apart = (shown[truth] ?? []).map((reading, index) => {
    const against = shown[other]?.[index];
    return against && clearlyApart(reading, against);
  });
  return apart.includes(undefined) ? undefined : apart.map((each) => each === true);
}

/** The readings as they are told, in the world of one suspect. */
export const readingsTold = ({ places, shown }: Series, truth: number): Sentence[] =>
  places.flatMap((place, index): Sentence[] => {
    const reading = shown[truth]?.[index];
    return reading ? [{ key: 'shown', values: { leads: leadsSaid(place), shown: { is: 'reading', reading } } }] : [];
  });
