import { castByLot } from '../cast.ts';
import { someOf } from '../choices.ts';
import type { Draft, DrillKind, Sentence } from '../item.ts';
import { leadsSaid, placesAt } from '../leads.ts';
import { readingsTold, ruledOut, type Series, seriesByLot } from '../series.ts';
import { circumstances, type Suspect } from '../suspects.ts';

const CHOICES = 4;
/** Suspects among which wrong choices are looked for. */
const MOST_SUSPECTS = 10;
const READINGS = { from: 2, to: 4 } as const;

/** Which fault fits all of these readings? Each wrong one fits some. */
export const whichFault: DrillKind = {
  id: 'whichFault',
  skill: 'suspects',
  choices: CHOICES,
  draft: (setting, random, own) => {
    const cast = castByLot(setting, random, own, CHOICES, MOST_SUSPECTS);
    if (!cast) return undefined;
    const { company, spot, suspects } = cast;
    const count = () => READINGS.from + Math.floor(random() * (READINGS.to - READINGS.from + 1));
    const places = placesAt(setting, suspects, spot);
    const series = seriesByLot(spot, places, suspects, random, count, (each) => alluring(each).length > 0);
    const [truth] = suspects;
    if (!series || !truth) return undefined;
    const wrong = alluring(series);
    return {
      scene: setting.scene(truth.faults, series.steps),
      ask: { key: 'fault', values: {} },
      given: [...circumstances(setting, company, series.steps), ...readingsTold(series, 0)],
      marked: [...new Set(series.places.flatMap(({ red, black }) => [red, black]))],
      right: { is: 'fault', naming: truth.naming },
      wrong: wrong.flatMap(({ index }): Draft['wrong'] => {
        const naming = suspects[index]?.naming;
        return naming ? [{ said: { is: 'fault', naming }, misconception: 'ruledOut' }] : [];
      }),
      why: wrong.flatMap((each) => contradiction(series, suspects, each)),
    };
  },
};

interface Misfit {
  /** Which suspect. */
  readonly index: number;
  /** By reading: whether it contradicts the suspect. */
  readonly against: readonly boolean[];
}

/** As many suspects as there are wrong choices that some of the first one's readings contradict, and some fit; none where there are too few. */
function alluring(series: Pick<Series, 'shown'>): readonly Misfit[] {
  const partly = series.shown.flatMap((_, index): Misfit[] => {
    const against = index > 0 ? ruledOut(series, 0, index) : undefined;
    return against?.includes(true) && against.includes(false) ? [{ index, against }] : [];
  });
  return someOf(partly, CHOICES - 1).find(worthTaking) ?? [];
}

/** Whether each reading contradicts one of these, and none contradicts all. */
function worthTaking(wrong: readonly Misfit[]): boolean {
  return (wrong[0]?.against ?? []).every((_, reading) => {
    const struck = wrong.filter(({ against }) => against[reading]).length;
    return struck > 0 && struck < wrong.length;
  });
}

function contradiction({ places, shown }: Series, suspects: readonly Suspect[], { index, against }: Misfit): Sentence[] {
  const at = against.indexOf(true);
  const place = places[at];
  const reading = shown[index]?.[at];
  const naming = suspects[index]?.naming;
  if (!place || !reading || !naming) return [];
  return [{ key: 'would', values: { fault: { is: 'fault', naming }, leads: leadsSaid(place), shown: { is: 'reading', reading } } }];
}
