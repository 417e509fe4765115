import { type Reading, readPort } from '../../meter/read.ts';
import { elementsOf } from '../../rig/elements.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import type { Random } from '../../scenario/variant.ts';
import { couldShow, everyFaultAt, type Showing } from '../everyFault.ts';
import type { Draft, DrillKind, Sentence } from '../item.ts';
import { clearlyApart, leadsSaid, type Pair, pairsOf, quietSpots } from '../leads.ts';
import { readingSteps, type Spot, standingSaid } from '../places.ts';
import type { Said } from '../said.ts';
import type { Setting } from '../setting.ts';

const CHOICES = 3;
/** Spots of a house that are asked about: each takes every fault of the house there. */
const SPOTS = 3;

/** How often volts above all that is possible are asked for, where the lot fell on them. */
const ABOVE_SHARE = 0.08;

/** Which reading can no single fault make? */
export const impossible: DrillKind = {
  id: 'impossible',
  skill: 'readings',
  choices: CHOICES,
  draft: (setting, random, own) => {
    const place = pick(random, own(placesOf(setting)));
    if (!place) return undefined;
    const { spot, pair, index } = place;
    const table = everyFaultAt(setting, spot);
    const showings = table[index] ?? [];
    const possible = severalOf(showings, random);
    const others = table.map(([sound]) => sound).filter((each) => each?.reading.fn === 'voltsAc');
    const candidates = believed(showings, others);
    const none = candidates.filter((each) => !couldShow(showings, each, (a, b) => clearlyApart(a, b) === true));
    // Most volts above the source are impossible: asked for too often, the largest would always be the answer.
    const below = none.filter(({ value }) => possible.some(({ reading }) => reading.value > value));
    if (below.length === 0 && random() > ABOVE_SHARE) return undefined;
    const right = pick(random, below.length > 0 ? below : none);
    const truth = pick(random, possible);
    if (!right || !truth || possible.length < CHOICES - 1) return undefined;
    const steps = [...spot.way, ...readingSteps(pair.fn, pair.red, pair.black)];
    const leads = leadsSaid(pair);
    return {
      scene: setting.scene(truth.faults, steps),
      ask: { key: 'reading', values: { leads } },
      given: [{ key: 'standing', values: { standing: standingSaid(setting, steps) } }],
      marked: [pair.red, pair.black],
      right: said(right),
      wrong: possible.map(({ reading }): Draft['wrong'][number] => ({ said: said(reading), misconception: 'possibleAfterAll' })),
      why: [
        { key: 'none', values: { count: { is: 'number', value: showings.length - 1 }, shown: said(right) } },
        ...possible.map(
          ({ naming, reading }): Sentence => ({ key: 'shows', values: { fault: { is: 'fault', naming }, shown: said(reading) } }),
        ),
      ],
    };
  },
};

const said = (reading: Reading): Said => ({ is: 'reading', reading });

interface PlaceHere {
  readonly spot: Spot;
  readonly pair: Pair;
  /** Its place among the spot's pairs. */
  readonly index: number;
}

/** Pairs at those live spots of a house where most of them are: any part may come to any resistance, so that no ohms are impossible. */
function placesOf(setting: Setting): PlaceHere[] {
  // A capacitor and a winding have more volts than their source gives.
  const { elements } = elementsOf(setting.assembly);
  const swings = new Set(elements.flatMap(({ kind, part }) => (kind === 'capacitor' ? [part] : [])));
  const isStill = ({ fn, red, black }: Pair) =>
    fn === 'voltsAc' && [red, black].every((point) => !swings.has(point.split('.')[0] ?? ''));
  return quietSpots(setting)
    .filter((spot) => pairsOf(setting, spot).every(({ fn }) => fn === 'voltsAc'))
    .sort((a, b) => pairsOf(setting, b).length - pairsOf(setting, a).length)
    .slice(0, SPOTS)
    .flatMap((spot) =>
      pairsOf(setting, spot).flatMap((pair, index): PlaceHere[] => (isStill(pair) ? [{ spot, pair, index }] : [])),
    );
}

/** As many possible readings as there are wrong choices, surely apart, by lot; none that hangs on nothing, or that only a solver knows. */
function severalOf(showings: readonly Showing[], random: Random): Showing[] {
  const few: Showing[] = [];
  for (const each of shuffled(random, showings)) {
    if (few.length === CHOICES - 1) break;
    if (!each.ghost && few.every(({ reading }) => clearlyApart(reading, each.reading) === true)) few.push(each);
  }
  return few;
}

/** Less than this is nothing, volts: one open makes it anywhere. */
const NOTHING_VOLTS = 1;

/**
 * Volts that somebody might expect here, each once: the peak of the most that is possible, two supplies in a row, effective volts taken for the peak, half for two
 * loads in a row, what another place has.
 */
function believed(showings: readonly Showing[], others: readonly (Showing | undefined)[]): Reading[] {
  const most = Math.max(...showings.map(({ reading }) => reading.value));
  const there = others.flatMap((each) => (each && !each.ghost ? [each.reading] : []));
  const once: Reading[] = [];
  for (const each of [...[Math.SQRT2, 2, Math.SQRT1_2, 0.5].map((share) => voltsOf(most * share)), ...there])
    if (each.value > NOTHING_VOLTS && once.every((other) => clearlyApart(each, other) !== false)) once.push(each);
  return once;
}

/** So many volts from a stiff source, as a meter shows them. */
function voltsOf(volts: number): Reading {
  return readPort('voltsAc', { hertz: 60, acVolts: { re: volts, im: 0 }, acOhms: 0, acReactance: 0, dcVolts: 0, dcOhms: 0 });
}
