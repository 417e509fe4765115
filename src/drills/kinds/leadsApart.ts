import { pick, shuffled } from '../../scenario/random.ts';
import type { Random } from '../../scenario/variant.ts';
import { castByLot } from '../cast.ts';
import type { Draft, DrillKind } from '../item.ts';
import { clearlyApart, leadsSaid, type Place, placesAt } from '../leads.ts';
import { faultSaid } from '../places.ts';
import { circumstances } from '../suspects.ts';

const CHOICES = 4;
/** Less than this is nothing, volts. */
const NOTHING_VOLTS = 1;

/** Where would you put the leads to tell one fault from another? */
export const leadsApart: DrillKind = {
  id: 'leadsApart',
  skill: 'probing',
  choices: CHOICES,
  draft: (setting, random, own) => {
    const cast = castByLot(setting, random, own, 2);
    if (!cast) return undefined;
    const { company, spot } = cast;
    const [truth] = cast.suspects;
    const suspects = shuffled(random, cast.suspects);
    const places = placesAt(setting, suspects, spot);
    const right = pick(
      random,
      places.filter((place) => tells(place) === true),
    );
    const same = alluring(places, random).slice(0, CHOICES - 1);
    if (!right || !truth || same.length < CHOICES - 1) return undefined;
    const [first, second] = suspects.map(({ faults }) => faultSaid(setting, faults));
    const shown = (place: Place, index: number) => ({ is: 'reading', reading: place.shown[index] ?? place.sound }) as const;
    if (!first || !second) return undefined;
    return {
      scene: setting.scene(truth.faults, spot.way),
      ask: { key: 'leads', values: { one: first, other: second } },
      given: circumstances(setting, company, spot.way),
      marked: [...new Set([right, ...same].flatMap(({ red, black }) => [red, black]))],
      right: leadsSaid(right),
      wrong: same.map((place): Draft['wrong'][number] => ({ said: leadsSaid(place), misconception: 'sameForBoth' })),
      why: [
        {
          key: 'tells',
          values: {
            leads: leadsSaid(right),
            one: first,
            shownOne: shown(right, 0),
            other: second,
            shownOther: shown(right, 1),
          },
        },
        ...same.map((place) => ({
          key: 'same',
          values: { leads: leadsSaid(place), shown: shown(place, 0) },
        })),
      ],
    };
  },
};

function tells({ shown: [a, b] }: Place): boolean | undefined {
  return a && b && clearlyApart(a, b);
}

/** Places that show the same for both, by lot: rather those that do tell that something is wrong, and seldom those where there is nothing. */
function alluring(places: readonly Place[], random: Random): Place[] {
  const rank = ({ shown: [one], sound }: Place) => {
    if (!one) return 1;
    if (clearlyApart(one, sound) === true) return 0;
    return one.fn === 'voltsAc' && one.value < NOTHING_VOLTS ? 1 : 0.5;
  };
  return places
    .filter((place) => tells(place) === false)
    .map((place) => ({ place, lot: random() + rank(place) }))
    .sort((a, b) => a.lot - b.lot)
    .map(({ place }) => place);
}
