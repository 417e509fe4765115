import { shuffled } from '../../scenario/random.ts';
import type { Random } from '../../scenario/variant.ts';
import { castByLot } from '../cast.ts';
import type { Draft, DrillKind, Sentence } from '../item.ts';
import { leadsSaid, placesAt } from '../leads.ts';
import type { Said } from '../said.ts';
import { readingsTold, ruledOut, type Series, seriesByLot } from '../series.ts';
import { circumstances, type Suspect } from '../suspects.ts';

const CHOICES = 4;
const SUSPECTS = 4;
const MOST_READINGS = 3;
/** How often only one suspect may be left: then nothing can be struck out too soon. */
const ONE_LEFT_SHARE = 0.25;

/** What is still possible after these readings, of four suspects? */
export const stillPossible: DrillKind = {
  id: 'stillPossible',
  skill: 'suspects',
  choices: CHOICES,
  draft: (setting, random, own) => {
    const cast = castByLot(setting, random, own, SUSPECTS);
    if (!cast) return undefined;
    const { company, spot, suspects } = cast;
    const [truth] = suspects;
    const most = random() < ONE_LEFT_SHARE ? SUSPECTS - 1 : SUSPECTS - 2;
    const count = () => 1 + Math.floor(random() * MOST_READINGS);
    const series = seriesByLot(spot, placesAt(setting, suspects, spot), suspects, random, count, (each) => strikes(each, most));
    if (!series || !truth) return undefined;
    const struck = struckBy(series);
    const left = suspects.filter((_, index) => struck[index] === undefined);
    return {
      scene: setting.scene(truth.faults, series.steps),
      ask: { key: 'left', values: {} },
      given: [
        ...shuffled(random, suspects).map(
          ({ naming }): Sentence => ({ key: 'suspect', values: { fault: { is: 'fault', naming } } }),
        ),
        ...circumstances(setting, company, series.steps),
        ...readingsTold(series, 0),
      ],
      marked: [...new Set(series.places.flatMap(({ red, black }) => [red, black]))],
      right: setOf(left),
      wrong: otherSets(suspects, struck, random),
      why: suspects.flatMap((suspect, index) => striking(series, suspect, index, struck[index])),
    };
  },
};

const setOf = (suspects: readonly Suspect[]): Said => ({ is: 'faults', namings: suspects.map(({ naming }) => naming) });

/** By suspect: the first reading that rules it out where the first one is true; −1 where that is open, undefined where it is left. */
function struckBy(series: Pick<Series, 'shown'>): (number | undefined)[] {
  return series.shown.map((_, index) => {
    const against = ruledOut(series, 0, index);
    if (!against) return -1;
    return against.includes(true) ? against.indexOf(true) : undefined;
  });
}

/** Whether it is clear who is left, not more than so many are struck out, and each reading strikes out somebody whom those before had left. */
function strikes(series: Pick<Series, 'shown'>, most: number): boolean {
  const struck = struckBy(series);
  const out = struck.filter((reading) => reading !== undefined).length;
  return !struck.includes(-1) && out <= most && (series.shown[0] ?? []).every((_, reading) => struck.includes(reading));
}

/** Sets that somebody might think are left: before the last reading, with one too few, with one too many, with one for another. */
function otherSets(suspects: readonly Suspect[], struck: readonly (number | undefined)[], random: Random): Draft['wrong'] {
  const left = suspects.filter((_, index) => struck[index] === undefined);
  const last = Math.max(...struck.map((reading) => reading ?? -1));
  const beforeLast = suspects.filter((_, index) => struck[index] === undefined || struck[index] === last);
  const [back] = shuffled(
    random,
    suspects.filter((_, index) => struck[index] !== undefined),
  );
  const fewer = shuffled(random, left).slice(1);
  const keep = (set: readonly (Suspect | undefined)[]) => setOf(suspects.filter((suspect) => set.includes(suspect)));
  const sets: Draft['wrong'] = [
    ...(fewer.length > 0 ? [{ said: keep(fewer), misconception: 'struckOutTooSoon' } as const] : []),
    { said: keep([...left, back]), misconception: 'ruledOut' },
    { said: keep([...fewer, back]), misconception: 'ruledOut' },
    { said: keep(suspects.filter((suspect) => !left.includes(suspect))), misconception: 'ruledOut' },
    ...(last > 0 ? [{ said: keep(beforeLast), misconception: 'ruledOut' } as const] : []),
  ];
  return shuffled(random, sets);
}

function striking({ places, shown }: Series, { naming }: Suspect, index: number, reading: number | undefined): Sentence[] {
  const fault = { is: 'fault', naming } as const;
  const place = places[reading ?? -1];
  const would = shown[index]?.[reading ?? -1];
  if (!place || !would) return [{ key: 'fits', values: { fault } }];
  return [{ key: 'would', values: { fault, leads: leadsSaid(place), shown: { is: 'reading', reading: would } } }];
}
