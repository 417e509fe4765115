import { canLift, isVisible } from '../attempt/access.ts';
import { act, comesLoose, moveHands, type Observation } from '../attempt/act.ts';
import type { Action, ActionOf } from '../attempt/actions.ts';
import type { Bench } from '../attempt/bench.ts';
import { COST_SECONDS } from '../attempt/costs.ts';
import { closeSigns, signsOf } from '../attempt/notices.ts';
import { kindOf } from '../attempt/registry.ts';
import type { Problem, Test } from '../diagnosis/problem.ts';
import { endPoint } from '../rig/points.ts';
import { settle } from '../world/world.ts';
import { noticesApart, observationsApart } from './apart.ts';
import { seriesReading } from './inSeries.ts';
import { clampReadings, leadReadings, type PossibleReading } from './readings.ts';
import { goTo, type Stand } from './route.ts';
import { goBack, type Snapshot, takeSnapshot } from './snapshot.ts';

/** A test that could be taken from where the trainee stands: the way there and the reading, step by step. */
export interface PossibleTest {
  readonly actions: readonly Action[];
  readonly seconds: number;
  /** By twin, in the order given; equal numbers are not told apart. */
  readonly outcomes: Int32Array;
}

/** A twin that is still possible, and what it weighs. */
export interface Candidate {
  readonly bench: Bench;
  readonly weight: number;
  readonly hypothesis: number;
}

/** A stand, the way to it from here, and what the way costs. */
export interface Reached {
  readonly stand: Stand;
  readonly way: readonly Action[];
  readonly seconds: number;
}

/** The stands that can be reached from here, nearest first. The bench is left as it was. */
export function reach(truth: Bench, stands: readonly Stand[]): Reached[] {
  const home = takeSnapshot(truth, true);
  const reached: Reached[] = [];
  for (const stand of stands) {
    const began = truth.world.state.time;
    const way = goTo(truth, stand);
    if (way) reached.push({ stand, way, seconds: truth.world.state.time - began });
    if (way === undefined || way.length > 0) goBack(truth, home);
  }
  return reached.sort((a, b) => a.seconds - b.seconds);
}

/**
 * The tests of one stand: the way there, and every pair, function, look, tug and clamp within reach, with what each twin would show.
 * Every bench is left as it was.
 * @param truth a bench whose hands stand as the trainee's; nothing is solved for it
 * @param homes the candidates as they stand, for whoever looks at many stands from here
 */
export function testsAt(
  truth: Bench,
  candidates: readonly Candidate[],
  { stand, way, seconds }: Reached,
  homes: readonly Snapshot[] = homesOf(candidates),
): PossibleTest[] {
  const home = takeSnapshot(truth, true);
  for (const action of way) moveHands(truth, action);
  const shown = candidates.map(({ bench }) => way.map((action) => act(bench, action).observation));
  const twins = candidates.map(({ bench }) => bench);
  const onTheWay = groupBy(shown, (a, b) => a.some((one, step) => observationsApart(one, b[step] as Observation)));
  const tests: PossibleTest[] = [];
  const add = (between: readonly Action[], extra: number, reading: PossibleReading) => {
    tests.push({
      actions: [...way, ...between, ...reading.actions],
      seconds: seconds + extra + reading.seconds,
      outcomes: onTheWay ? both(onTheWay, reading.outcomes) : reading.outcomes,
    });
  };
  if (onTheWay && way.length > 0) tests.push({ actions: way, seconds, outcomes: onTheWay });
  if (stand.lifts) {
    for (const lift of stand.lifts) {
      const action: Action = { name: 'lift', ...lift };
      for (const reading of liftedReadings(truth, twins, action)) add([action], COST_SECONDS.lift, reading);
      const series = seriesReading(truth, twins, stand, action);
      if (series) add([], 0, series);
    }
  } else {
    for (const reading of [...looks(truth, twins), ...tugs(truth, twins), ...leadReadings(truth, twins)]) add([], 0, reading);
    if (stand.live) for (const reading of clampReadings(truth, twins)) add([], 0, reading);
  }
  goBack(truth, home);
  candidates.forEach(({ bench }, index) => {
    const back = homes[index];
    if (back) goBack(bench, back);
  });
  return cheapestOfEach(tests);
}

/** The candidates as they stand, to go back to. */
export function homesOf(candidates: readonly Candidate[]): Snapshot[] {
  return candidates.map(({ bench }) => takeSnapshot(bench, true));
}

/** Readings at a wire's bare end, and at the terminal that it came off; nobody's time passes. */
function liftedReadings(truth: Bench, twins: readonly Bench[], action: ActionOf<'lift'>): PossibleReading[] {
  if (kindOf(action).refusal(truth, action) !== undefined) return [];
  const wire = truth.world.assembly.wireById.get(action.wire);
  if (!wire) return [];
  const all = [truth, ...twins];
  const homes = all.map((bench) => takeSnapshot(bench, true));
  for (const bench of all) kindOf(action).apply(bench, action);
  for (const { world } of twins) settle(world);
  const readings = leadReadings(truth, twins, [endPoint(action.wire, action.end), wire.data[action.end]]);
  all.forEach((bench, index) => {
    const back = homes[index];
    if (back) goBack(bench, back);
  });
  return readings;
}

function looks(truth: Bench, twins: readonly Bench[]): PossibleReading[] {
  return truth.world.assembly.parts.flatMap((part) => {
    if (!isVisible(truth, part) || !signsOf(truth, part).some((sign) => sign.sense === 'inspect')) return [];
    const seen = twins.map((twin) => closeSigns(twin, part));
    const outcomes = groupBy(seen, noticesApart);
    return outcomes ? [{ actions: [{ name: 'look', part: part.id }], seconds: COST_SECONDS.look, outcomes }] : [];
  });
}

function tugs(truth: Bench, twins: readonly Bench[]): PossibleReading[] {
  return truth.world.assembly.wires.flatMap((wire) => {
    const action: Action = { name: 'tug', wire: wire.id };
    if (!canLift(wire) || kindOf(action).refusal(truth, action) !== undefined) return [];
    // A pull moves nothing but an intermittent conductor: only there need it be done to know what follows.
    const stirs = twins.some((twin) =>
      twin.world.faults.some((fault) => fault.target === wire.id && fault.mode === 'intermittent'),
    );
    const outcomes = stirs
      ? groupBy(
          twins.map((twin) => tried(twin, action)),
          observationsApart,
        )
      : groupBy(
          twins.map((twin) => comesLoose(twin, wire.id)),
          (one, other) => one !== other,
        );
    return outcomes ? [{ actions: [action], seconds: COST_SECONDS.tug, outcomes }] : [];
  });
}

/** What an action would show; the bench is left as it was. */
function tried(bench: Bench, action: Action): Observation {
  const home = takeSnapshot(bench, true);
  const { observation } = act(bench, action);
  goBack(bench, home);
  return observation;
}

/** Numbers things so that those not told apart, directly or through others, get the same; undefined when all are alike. */
function groupBy<T>(things: readonly T[], apart: (a: T, b: T) => boolean): Int32Array | undefined {
  const outcomes = new Int32Array(things.length).fill(-1);
  let next = 0;
  things.forEach((_, seed) => {
    if (outcomes[seed] !== -1) return;
    outcomes[seed] = next;
    const queue = [seed];
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      things.forEach((other, index) => {
        if (outcomes[index] !== -1 || apart(things[at as number] as T, other)) return;
        outcomes[index] = next;
        queue.push(index);
      });
    }
    next += 1;
  });
  return next > 1 ? outcomes : undefined;
}

/** Two outcomes seen together. */
function both(a: Int32Array, b: Int32Array): Int32Array {
  const pairs = new Map<number, number>();
  return a.map((one, index) => {
    const key = one * 65_536 + (b[index] ?? 0);
    const known = pairs.get(key);
    if (known !== undefined) return known;
    pairs.set(key, pairs.size);
    return pairs.size - 1;
  });
}

/** Of tests that tell exactly the same, the cheapest. */
function cheapestOfEach(tests: readonly PossibleTest[]): PossibleTest[] {
  const cheapest = new Map<string, PossibleTest>();
  for (const test of tests) {
    const names = new Map<number, number>();
    const key = Array.from(test.outcomes, (outcome) => {
      const known = names.get(outcome);
      if (known !== undefined) return known;
      names.set(outcome, names.size);
      return names.size - 1;
    }).join();
    const known = cheapest.get(key);
    if (!known || test.seconds < known.seconds) cheapest.set(key, test);
  }
  return [...cheapest.values()];
}

/** The library as a problem for the general engine; ways are not shared, so each test costs what it costs from here. */
export function problemOf(candidates: readonly Candidate[], tests: readonly PossibleTest[]): Problem {
  return {
    priors: Float64Array.from(candidates, ({ weight }) => weight),
    classes: Int32Array.from(candidates, ({ hypothesis }) => hypothesis),
    tests: tests.map(({ outcomes, seconds }): Test => ({ outcomes, cost: seconds, setup: 0 })),
    moves: [Float64Array.from([0])],
  };
}
