import type { Fault } from '../../rig/faults.ts';
import { pick, randomOf, shuffled } from '../../scenario/random.ts';
import { PER_HOUSE } from '../draw.ts';
import { everyFaultAt } from '../everyFault.ts';
import type { DrillKind, Sentence, Wrong } from '../item.ts';
import { clearlyApart, leadsSaid, quietSpots } from '../leads.ts';
import { readingSteps, standingSaid } from '../places.ts';
import type { Said } from '../said.ts';
import type { Setting } from '../setting.ts';
import { habitOf, type Outcome, type Question, questionsAt } from './impossible/outcomes.ts';

const CHOICES = 4;
/** Spots of a house that are asked about, of those with the most points: each takes every fault of the house there. */
const SPOTS = { of: 5, most: 3 } as const;
/** With as many questions no other spot is needed. */
const ENOUGH = 2 * PER_HOUSE;
/** More wrong choices than an item has, for those that give nothing away. */
const MOST_WRONG = 8;
/** How little a place that is as often the answer as the right one may be missed for another. */
const LOT_SHARE = 0.25;

/** Where can the meter not show this, after one reading? */
export const impossible: DrillKind = {
  id: 'impossible',
  skill: 'readings',
  choices: CHOICES,
  draft: (setting, random, share) => {
    const question = pick(random, share(everythingIn(setting)));
    // Where it is possible as long as nobody has read anything: who does not reason from the reading cannot tell.
    const habit = question && habitOf(question);
    const [place] = habit ? byHabit(shuffled(random, question.never).slice(0, 2), habit) : [];
    if (!question || !habit || !place) return undefined;
    const { spot, taken } = question;
    const worlds = everyFaultAt(setting, spot).map(([first]) => first);
    const truth = pick(random, faultsOf(taken));
    const faults: readonly Fault[] = worlds[truth ?? 0]?.faults ?? [];
    const steps = [...spot.way, ...readingSteps(taken.pair.fn, taken.pair.red, taken.pair.black)];
    const shown = said(place);
    const own = habit(place);
    // Whatever makes both: what it shows there, at any time, is as good as what is asked for, and not only as good as something that is.
    const makers = (each: Outcome) =>
      faultsOf(each).filter((fault) => {
        const shows = each.shows[fault];
        return taken.sure[fault] && shows?.every((reading) => clearlyApart(reading, place.reading) === false);
      });
    const still = question.still.filter((each) => makers(each).length > 0);
    const wrong = byHabit(still, (each) => LOT_SHARE * random() + Math.abs(habit(each) - own))
      .slice(0, MOST_WRONG)
      .map((each): Wrong => {
        const by = pick(random, makers(each));
        const fault: Said = { is: 'fault', naming: worlds[by ?? 0]?.naming };
        const why: Sentence = { key: 'shows', values: { leads: leadsSaid(each.pair), fault, shown: said(each) } };
        return { said: leadsSaid(each.pair), misconception: 'possibleAfterAll', why, marked: marksOf(each) };
      });
    const count: Said = { is: 'number', value: taken.maybe.filter((is, fault) => is && worlds[fault]?.naming).length };
    const standing: Sentence = { key: 'standing', values: { standing: standingSaid(setting, steps) } };
    return {
      scene: setting.scene(faults, steps),
      ask: { key: 'reading', values: { shown } },
      given: [standing, { key: 'shown', values: { leads: leadsSaid(taken.pair), shown: said(taken) } }],
      marked: [...marksOf(taken), ...marksOf(place)],
      right: leadsSaid(place.pair),
      wrong,
      why: [{ key: 'none', values: { count, shown, leads: leadsSaid(place.pair) } }],
    };
  },
};

/** The least first. */
function byHabit(outcomes: readonly Outcome[], habit: (outcome: Outcome) => number): Outcome[] {
  return outcomes
    .map((outcome) => ({ outcome, habit: habit(outcome) }))
    .sort((a, b) => a.habit - b.habit)
    .map(({ outcome }) => outcome);
}

const said = ({ reading }: Outcome): Said => ({ is: 'reading', reading });
const marksOf = ({ pair: { red, black } }: Outcome) => [red, black];
const faultsOf = ({ sure }: Outcome): number[] => sure.flatMap((is, fault) => (is ? [fault] : []));

const known = new WeakMap<Setting, readonly Question[]>();

/** Every question at some spots by lot. */
function everythingIn(setting: Setting): readonly Question[] {
  const found = known.get(setting);
  if (found) return found;
  const largest = [...quietSpots(setting)].sort((a, b) => b.points.length - a.points.length).slice(0, SPOTS.of);
  const all: Question[] = [];
  for (const spot of shuffled(randomOf(setting.lot), largest).slice(0, SPOTS.most))
    if (all.length < ENOUGH) all.push(...questionsAt(setting, spot, CHOICES - 1));
  known.set(setting, all);
  return all;
}
