import { shuffled } from '../../scenario/random.ts';
import type { Random } from '../../scenario/variant.ts';
import { castByLot } from '../cast.ts';
import type { DrillKind, Wrong } from '../item.ts';
import { clearlyApart, leadsSaid, type Place, placesAt, tellingAt } from '../leads.ts';
import { faultSaid } from '../places.ts';
import { circumstances } from '../suspects.ts';

/** Suspects of one complaint, two of which are asked about; the others tell which places anybody would choose. */
const MOST_SUSPECTS = 8;
/** More wrong choices than an item has, for those that give nothing away. */
const MOST_WRONG = 7;
/** How little a place that is as telling as the right one may be missed for one that is less so. */
const LOT_SHARE = 0.25;

/** Where would you put the leads to tell one fault from another? */
export const leadsApart: DrillKind = {
  id: 'leadsApart',
  skill: 'probing',
  choices: 4,
  draft: (setting, random, own) => {
    const cast = castByLot(setting, random, own, 2, MOST_SUSPECTS);
    const [truth, rival] = cast?.suspects ?? [];
    if (!cast || !truth || !rival) return undefined;
    const { company, spot } = cast;
    const suspects = shuffled(random, [truth, rival]);
    const places = placesAt(setting, suspects, spot);
    const telling = tellingAt(setting, cast.suspects, spot);
    const [right] = shuffled(
      random,
      places.filter((place) => tells(place) === true),
    )
      .slice(0, 2)
      .sort((a, b) => telling(a) - telling(b));
    const [first, second] = suspects.map(({ faults }) => faultSaid(setting, faults));
    if (!right || !first || !second) return undefined;
    const shown = (place: Place, index: number) => ({ is: 'reading', reading: place.shown[index] ?? place.sound }) as const;
    const marked = ({ red, black }: Place) => [red, black];
    const same = alluring(places, right, telling, random).slice(0, MOST_WRONG);
    return {
      scene: setting.scene(truth.faults, spot.way),
      ask: { key: 'leads', values: { one: first, other: second } },
      given: [
        { key: 'one', values: { one: first } },
        { key: 'other', values: { other: second } },
        ...circumstances(setting, company, spot.way),
      ],
      marked: marked(right),
      right: leadsSaid(right),
      wrong: same.map(
        (place): Wrong => ({
          said: leadsSaid(place),
          misconception: 'sameForBoth',
          why: { key: 'same', values: { leads: leadsSaid(place), shown: shown(place, 0) } },
          marked: marked(place),
        }),
      ),
      why: [
        {
          key: 'tells',
          values: { leads: leadsSaid(right), one: first, shownOne: shown(right, 0), other: second, shownOther: shown(right, 1) },
        },
      ],
    };
  },
};

function tells({ shown: [a, b] }: Place): boolean | undefined {
  return a && b && clearlyApart(a, b);
}

/** Places that show the same for both, by lot: rather those that are as telling for other suspects as the right one. */
function alluring(places: readonly Place[], right: Place, telling: (place: Place) => number, random: Random): Place[] {
  const own = telling(right);
  return places
    .filter((place) => tells(place) === false)
    .map((place) => ({ place, lot: LOT_SHARE * random() + Math.abs(telling(place) - own) }))
    .sort((a, b) => a.lot - b.lot)
    .map(({ place }) => place);
}
