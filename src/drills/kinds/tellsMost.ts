import { expectedGainBits } from '../../diagnosis/information.ts';
import type { Reading } from '../../meter/read.ts';
import type { Random } from '../../scenario/variant.ts';
import type { Draft, DrillKind, Sentence } from '../item.ts';
import { clearlyApart, leadsSaid, type Place, placesAt, quietSpots } from '../leads.ts';
import { pick, shuffled } from '../random.ts';
import type { Said } from '../said.ts';
import { circumstances, companyByLot, type Suspect } from '../suspects.ts';

const CHOICES = 4;
const SUSPECTS = { from: 3, to: 5 } as const;
/** Bits by which the best reading tells more than any other: nobody weighs closer than that without a calculator. */
const MARGIN_BITS = 0.25;
/** Readings that tell so nearly as much as the best are as good, bits. */
const AS_GOOD_BITS = 0.05;

/** Which next reading tells most, where these suspects are left and are so likely? */
export const tellsMost: DrillKind = {
  id: 'tellsMost',
  skill: 'probing',
  choices: CHOICES,
  draft: (setting, random) => {
    const company = companyByLot(setting, random, SUSPECTS.from);
    const spot = pick(random, quietSpots(setting));
    if (!company || !spot) return undefined;
    const count = SUSPECTS.from + Math.floor(random() * (SUSPECTS.to - SUSPECTS.from + 1));
    const suspects = shuffled(random, company.suspects).slice(0, count);
    const truth = byWeight(suspects, random);
    const picked = choose(weighed(placesAt(setting, suspects, spot), suspects), random);
    if (!truth || !picked) return undefined;
    const { best, others } = picked;
    const total = suspects.reduce((sum, { weight }) => sum + weight, 0);
    return {
      scene: setting.scene(truth.faults, spot.way),
      ask: { key: 'next', values: {} },
      given: [
        ...circumstances(setting, company, spot.way),
        ...suspects.map(({ naming, weight }): Sentence => {
          const share: Said = { is: 'number', value: Math.round((100 * weight) / total) };
          return { key: 'suspect', values: { fault: { is: 'fault', naming }, share } };
        }),
      ],
      marked: [...new Set([best, ...others].flatMap(({ place: { red, black } }) => [red, black]))],
      right: leadsSaid(best.place),
      wrong: others.map(({ place, bits }): Draft['wrong'][number] => ({
        said: leadsSaid(place),
        misconception: bits === 0 ? 'knownBefore' : 'tellsLess',
      })),
      why: [
        ...suspects.flatMap(({ naming }, index): Sentence[] => {
          const reading = best.place.shown[index];
          if (!reading) return [];
          return [
            {
              key: 'would',
              values: {
                fault: { is: 'fault', naming },
                leads: leadsSaid(best.place),
                shown: { is: 'reading', reading },
              },
            },
          ];
        }),
        ...[best, ...others].map(
          ({ place, bits }): Sentence => ({
            key: 'gain',
            values: { leads: leadsSaid(place), bits: { is: 'number', value: Math.round(bits * 10) / 10 } },
          }),
        ),
      ],
    };
  },
};

interface Weighed {
  readonly place: Place;
  /** Expected gain. */
  readonly bits: number;
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

/** A reading, and others that tell clearly less: some of them something, and one nothing. */
function choose(
  all: readonly Weighed[],
  random: Random,
): { readonly best: Weighed; readonly others: readonly Weighed[] } | undefined {
  const most = Math.max(...all.map(({ bits }) => bits));
  const best = pick(
    random,
    all.filter(({ bits }) => bits > 2 * MARGIN_BITS && bits >= most - AS_GOOD_BITS),
  );
  if (!best) return undefined;
  const less = shuffled(
    random,
    all.filter(({ bits }) => bits > 0 && bits < best.bits - MARGIN_BITS),
  ).slice(0, CHOICES - 2);
  const nothing = shuffled(
    random,
    all.filter(({ bits }) => bits === 0),
  ).slice(0, CHOICES - 1 - less.length);
  const others = [...less, ...nothing];
  return less.length > 0 && others.length === CHOICES - 1 ? { best, others } : undefined;
}

/** One of these by lot, as likely as it is. */
function byWeight(suspects: readonly Suspect[], random: Random): Suspect | undefined {
  let lot = random() * suspects.reduce((sum, { weight }) => sum + weight, 0);
  return suspects.find(({ weight }) => {
    lot -= weight;
    return lot <= 0;
  });
}
