import { expectedGainBits } from '../../diagnosis/information.ts';
import type { Reading } from '../../meter/read.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import type { Random } from '../../scenario/variant.ts';
import { type Cast, castByLot } from '../cast.ts';
import type { DrillKind, Sentence, Wrong } from '../item.ts';
import { clearlyApart, leadsSaid, type Place, placesAt, tellingAt } from '../leads.ts';
import type { Said } from '../said.ts';
import type { Setting } from '../setting.ts';
import { circumstances, type Suspect } from '../suspects.ts';

/** More wrong choices than an item has, for those that give nothing away: some that tell something, and some that tell nothing. */
const MOST_LESS = 5;
const MOST_NOTHING = 3;
const SUSPECTS = { from: 3, to: 6 } as const;
/** Suspects among whom those of a question are looked for, and how often. */
const MOST_SUSPECTS = 8;
const TRIES = 10;
/** Bits by which the best reading tells more than any other: nobody weighs closer than that without a calculator. */
const MARGIN_BITS = 0.25;
/** How little a place that is as telling as the right one may be missed for one that is less so. */
const LOT_SHARE = 0.25;
/** Readings that tell so nearly as much as the best are as good, bits. */
const AS_GOOD_BITS = 0.05;

/** Which next reading tells most, where these suspects are left and are so likely? */
export const tellsMost: DrillKind = {
  id: 'tellsMost',
  skill: 'probing',
  choices: 4,
  draft: (setting, random, own) => {
    const cast = castByLot(setting, random, own, SUSPECTS.from, MOST_SUSPECTS);
    const [truth] = cast?.suspects ?? [];
    const picked = cast && pickedOf(setting, cast, random);
    if (!cast || !truth || !picked) return undefined;
    const { company, spot } = cast;
    const { suspects, best, others } = picked;
    const shares = hundredths(suspects.map(({ weight }) => weight));
    return {
      scene: setting.scene(truth.faults, spot.way),
      ask: { key: 'next', values: {} },
      given: [
        ...circumstances(setting, company, spot.way),
        ...suspects.map(({ naming }, index): Sentence => {
          const share: Said = { is: 'number', value: shares[index] ?? 0 };
          return { key: 'suspect', values: { fault: { is: 'fault', naming }, share } };
        }),
      ],
      marked: marksOf(best),
      right: leadsSaid(best.place),
      wrong: others.map(
        (each): Wrong => ({
          said: leadsSaid(each.place),
          misconception: each.bits === 0 ? 'knownBefore' : 'tellsLess',
          why: gainSaid(each),
          marked: marksOf(each),
        }),
      ),
      why: [
        ...suspects.flatMap(({ naming }, index): Sentence[] => {
          const reading = best.place.shown[index];
          if (!reading) return [];
          const fault = { is: 'fault', naming } as const;
          return [{ key: 'would', values: { fault, leads: leadsSaid(best.place), shown: { is: 'reading', reading } } }];
        }),
        gainSaid(best),
      ],
    };
  },
};

/** Whole hundredths of weights that come to a hundred: those with the largest remainders are rounded up. */
function hundredths(weights: readonly number[]): number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const exact = weights.map((weight, index) => ({ index, share: (100 * weight) / total }));
  const left = 100 - exact.reduce((sum, { share }) => sum + Math.floor(share), 0);
  const up = new Set([...exact].sort((a, b) => (b.share % 1) - (a.share % 1)).slice(0, left));
  return exact.map((each) => Math.floor(each.share) + (up.has(each) ? 1 : 0));
}

interface Weighed {
  readonly place: Place;
  /** Expected gain. */
  readonly bits: number;
}

const marksOf = ({ place: { red, black } }: Weighed) => [red, black];

const gainSaid = ({ place, bits }: Weighed): Sentence => ({
  key: 'gain',
  values: { leads: leadsSaid(place), bits: { is: 'number', value: Math.round(bits * 10) / 10 } },
});

interface Picked {
  readonly suspects: readonly Suspect[];
  readonly best: Weighed;
  readonly others: readonly Weighed[];
}

/** Some of a cast's suspects, the one at fault among them, and readings that tell much and little of them. */
function pickedOf(setting: Setting, { suspects: all, spot }: Cast, random: Random): Picked | undefined {
  const [truth, ...rest] = all;
  const telling = tellingAt(setting, all, spot);
  for (let tries = 0; truth && tries < TRIES; tries++) {
    const count = SUSPECTS.from + Math.floor(random() * (SUSPECTS.to - SUSPECTS.from + 1));
    const suspects = shuffled(random, [truth, ...shuffled(random, rest).slice(0, count - 1)]);
    const chosen = choose(weighed(placesAt(setting, suspects, spot), suspects), telling, random);
    if (chosen) return { suspects, ...chosen };
  }
  return undefined;
}

/** What each place would tell of these suspects, where it is clear which of them show the same. */
function weighed(places: readonly Place[], suspects: readonly Suspect[]): Weighed[] {
  return places.flatMap((place): Weighed[] => {
    const { shown } = place;
    if (shown.some((one, index) => shown.slice(index + 1).some((other) => clearlyApart(one, other) === undefined))) return [];
    const predictions = shown.map((outcome, index) => ({ outcome, weights: new Map([[index, suspects[index]?.weight ?? 0]]) }));
    return [{ place, bits: expectedGainBits(predictions, (a: Reading, b: Reading) => clearlyApart(a, b) === true) }];
  });
}

/** A reading, and others that tell clearly less: some of them something, and some nothing; rather those that are as telling of other suspects as it is. */
function choose(
  all: readonly Weighed[],
  telling: (place: Place) => number,
  random: Random,
): { readonly best: Weighed; readonly others: readonly Weighed[] } | undefined {
  const most = Math.max(...all.map(({ bits }) => bits));
  const best = pick(
    random,
    all.filter(({ bits }) => bits > 2 * MARGIN_BITS && bits >= most - AS_GOOD_BITS),
  );
  if (!best) return undefined;
  const own = telling(best.place);
  const alluring = (some: readonly Weighed[], count: number) =>
    some
      .map((each) => ({ each, lot: LOT_SHARE * random() + Math.abs(telling(each.place) - own) }))
      .sort((a, b) => a.lot - b.lot)
      .slice(0, count)
      .map(({ each }) => each);
  const nothing = alluring(
    all.filter(({ bits }) => bits === 0),
    MOST_NOTHING,
  );
  const less = alluring(
    all.filter(({ bits }) => bits > 0 && bits < best.bits - MARGIN_BITS),
    MOST_LESS,
  );
  return less.length > 0 ? { best, others: [...less, ...nothing] } : undefined;
}
