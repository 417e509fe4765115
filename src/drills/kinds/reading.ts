import type { Action } from '../../attempt/actions.ts';
import type { Bench } from '../../attempt/bench.ts';
import { idealBetween, prober } from '../../attempt/measure.ts';
import type { MeterFunction } from '../../meter/functions.ts';
import { liveReading, openLeads, type Reading } from '../../meter/read.ts';
import type { Fault } from '../../rig/faults.ts';
import type { Point } from '../../rig/points.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import type { Draft, DrillKind, Misconception, Sentence } from '../item.ts';
import { benchAfter, faultByLot, faultSaid, railsOf, readingSteps, sameSupply, spotsOf, standingSaid } from '../places.ts';
import { type Said, saidApart } from '../said.ts';
import type { Setting } from '../setting.ts';

/** How often each function is asked for, by how often it comes in the list. */
const FUNCTIONS: readonly MeterFunction[] = ['voltsAc', 'voltsAc', 'voltsAc', 'voltsAc', 'voltsLoaded', 'ohms', 'ohms', 'voltsDc'];
/** How often something is wrong. */
const FAULTY_SHARE = 0.7;
/** How often a display without anything on it is asked for, where the lot fell on one: most pairs of points have nothing between them. */
const NOTHING_SHARE = 0.3;

/** How often a fault is asked for that changes nothing here: most of them. */
const UNCONCERNED_SHARE = 0.2;

/** More than this is a leak, ohms. */
const MOST_OHMS = 100_000;

/** Whether a meter without a burden would say something else: but for the loaded volts, which are there to show it. */
const isGhost = (bench: Bench, fn: MeterFunction, red: Point, black: Point, right: Reading): boolean =>
  fn !== 'voltsLoaded' && saidApart(said(idealBetween(bench, fn, red, black)), said(right));

/** What will this meter read? */
export const reading: DrillKind = {
  id: 'reading',
  skill: 'readings',
  choices: 4,
  draft: (setting, random) => {
    const faults = random() < FAULTY_SHARE ? faultByLot(setting, random) : [];
    const spot = pick(random, spotsOf(setting));
    const fn = pick(random, FUNCTIONS);
    if (!faults || !spot || !fn || setting.variant.tools?.includes(fn) === false) return undefined;
    const [red, black, ...others] = shuffled(random, spot.points);
    const together = sameSupply(setting);
    if (red === undefined || black === undefined || !together(red, black)) return undefined;
    const steps = [...spot.way, ...readingSteps(fn, red, black)];
    const bench = benchAfter(setting, faults, steps);
    const right = bench && prober(bench)(fn, red, black);
    if (!right) return undefined;
    // Leaks through what is open, and volts that the meter's own burden takes away, are known to a solver alone.
    if (right.kind === 'number' && (fn === 'ohms' ? right.value > MOST_OHMS : isGhost(bench, fn, red, black, right)))
      return undefined;
    const nothing = right.kind === 'overload' || (right.kind === 'number' && right.value === 0);
    if (nothing && random() > NOTHING_SHARE) return undefined;
    if (faults.length > 0 && random() > UNCONCERNED_SHARE) {
      const sound = benchAfter(setting, [], steps);
      if (sound && !saidApart(said(prober(sound)(fn, red, black)), said(right))) return undefined;
    }
    const asked = { setting, faults, steps, fn, red, black, right };
    const there = benchAfter(setting, faults, steps);
    const beside = others.flatMap((point): Wrong[] =>
      there && together(point, black) ? [{ said: said(prober(there)(fn, point, black)), misconception: 'nextDoor' }] : [],
    );
    return draftOf(asked, [...shuffled(random, mistaken(asked)), ...beside]);
  },
};

type Wrong = Draft['wrong'][number];

interface Asked {
  readonly setting: Setting;
  readonly faults: readonly Fault[];
  readonly steps: readonly Action[];
  readonly fn: MeterFunction;
  readonly red: Point;
  readonly black: Point;
  readonly right: Reading;
}

const said = (shown: Reading): Said => ({ is: 'reading', reading: shown });

/** What somebody would say who believes otherwise of the meter, the fault or the circuit: each computed in the world that they believe in. */
function mistaken({ setting, faults, steps, fn, red, black, right }: Asked): Wrong[] {
  const wrong: Wrong[] = [];
  const add = (misconception: Misconception, shown: Reading | undefined) => {
    if (shown) wrong.push({ said: said(shown), misconception });
  };
  const isOhms = fn === 'ohms';
  const bench = benchAfter(setting, faults, steps);
  if (bench) {
    add(right.kind === 'live' ? 'ohmsOnLive' : 'burdenIgnored', idealBetween(bench, fn, red, black));
    const rails = railsOf(bench);
    if (rails && !isOhms) add('sourceEverywhere', prober(bench)(fn, rails.hot, rails.common));
    // Both leads on one point: what conducts perfectly.
    if (isOhms) add('openTakenForClosed', prober(bench)(fn, red, red));
  }
  if (isOhms && right.kind !== 'live') add('deadTakenForLive', liveReading(fn));
  add(isOhms ? 'closedTakenForOpen' : 'nothingThere', openLeads(fn));
  if (faults.length > 0) {
    const sound = benchAfter(setting, [], steps);
    if (sound) add('openTakenForClosed', prober(sound)(fn, red, black));
  }
  const wire = setting.rig.wires.find(({ from, to }) => [from, to].includes(red) || [from, to].includes(black));
  if (wire) {
    const parted = benchAfter(setting, [...faults, { target: wire.id, mode: 'open', magnitude: 0 }], steps);
    if (parted) add('closedTakenForOpen', prober(parted)(fn, red, black));
  }
  return wrong;
}

function draftOf({ setting, faults, steps, fn, red, black, right }: Asked, wrong: readonly Wrong[]): Draft {
  const why: Sentence[] = [];
  const bench = benchAfter(setting, faults, steps);
  const rails = bench && railsOf(bench);
  if (bench && rails) {
    const to = (point: Point) => said(prober(bench)(fn === 'voltsDc' ? 'voltsDc' : 'voltsAc', point, rails.common));
    const between = said(prober(bench)('voltsAc', red, black));
    if (right.kind === 'live') why.push({ key: 'live', values: { between } });
    else if (fn === 'ohms') why.push({ key: right.kind === 'overload' ? 'noWay' : 'wayOf', values: { shown: said(right) } });
    else
      why.push({
        key: 'toCommon',
        values: {
          red: { is: 'point', point: red },
          redVolts: to(red),
          black: { is: 'point', point: black },
          blackVolts: to(black),
        },
      });
  }
  if (faults.length > 0) {
    const sound = benchAfter(setting, [], steps);
    if (sound) why.push({ key: 'soundWould', values: { shown: said(prober(sound)(fn, red, black)) } });
  }
  return {
    scene: setting.scene(faults, steps),
    ask: { key: 'reading', values: { leads: { is: 'leads', fn, red, black } } },
    given: [
      { key: 'fault', values: { fault: faultSaid(setting, faults) } },
      { key: 'standing', values: { standing: standingSaid(setting, steps) } },
    ],
    marked: [red, black],
    right: said(right),
    wrong,
    why,
  };
}
