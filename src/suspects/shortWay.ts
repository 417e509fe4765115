import { act, type Observation } from '../attempt/act.ts';
import type { Action } from '../attempt/actions.ts';
import { arrive } from '../attempt/attempt.ts';
import type { Bench } from '../attempt/bench.ts';
import { openBits, testGainBits } from '../diagnosis/information.ts';
import { lookAhead } from '../diagnosis/policy.ts';
import { everyHypothesis, isSettled } from '../diagnosis/problem.ts';
import { splitMode } from '../rig/faults.ts';
import { observationsApart } from './apart.ts';
import type { Naming } from './hypotheses.ts';
import { type Candidate, homesOf, type PossibleTest, problemOf, type Reached, reach, testsAt } from './library.ts';
import { liftStands, standsOf } from './stands.ts';

/** The next test of the reference way, and what it is worth. */
export interface NextTest {
  readonly test: PossibleTest;
  readonly gainBits: number;
}

/** Stands are looked at as long as they could still give this share of the best gain for its time. */
const SLACK = 0.7;
/** With more twins than this, lifting wires is left for later: it is dear, and cheaper tests come first anyway. */
const FEW_ENOUGH_TO_LIFT = 20;

/**
 * The test with most expected gain for its time, over the whole library, the best one after it looked ahead; undefined when nothing
 * that can be done tells any two apart.
 * @param truth the trainee's bench: only its hands and its world are used, never its fault
 * @param namings the hypotheses by number: wires near what they accuse are the ones worth lifting
 */
export function nextTest(truth: Bench, candidates: readonly Candidate[], namings: readonly Naming[]): NextTest | undefined {
  if (new Set(candidates.map((each) => each.hypothesis)).size < 2) return undefined;
  const worth: Weighed[] = [];
  const accused = new Set(candidates.flatMap(({ hypothesis }) => accusedBy(namings[hypothesis])));
  const near = candidates.length <= FEW_ENOUGH_TO_LIFT ? liftStands(truth, accused) : [];
  gather(truth, candidates, reach(truth, [...standsOf(truth), ...near]), worth);
  if (worth.length === 0 && near.length === 0) gather(truth, candidates, reach(truth, liftStands(truth, accused)), worth);
  const tests = promising(worth);
  const problem = problemOf(candidates, tests);
  const choice = lookAhead(problem, everyHypothesis(problem), 0);
  const test = choice && tests[choice.test];
  return choice && test ? { test, gainBits: choice.gainBits } : undefined;
}

interface Weighed {
  readonly test: PossibleTest;
  readonly gainBits: number;
}

/** So many of the best by gain for their time, and half as many by gain alone, are weighed to the end. */
const MOST_WEIGHED = 60;

function promising(worth: readonly Weighed[]): PossibleTest[] {
  const byRate = [...worth].sort((a, b) => b.gainBits / Math.max(b.test.seconds, 1) - a.gainBits / Math.max(a.test.seconds, 1));
  const byGain = [...worth].sort((a, b) => b.gainBits - a.gainBits || a.test.seconds - b.test.seconds);
  return [...new Set([...byRate.slice(0, MOST_WEIGHED), ...byGain.slice(0, MOST_WEIGHED / 2)])].map(({ test }) => test);
}

/** The parts and wires that a hypothesis is about. */
export function accusedBy(naming: Naming | undefined): string[] {
  if (!naming) return [];
  const { other } = splitMode(naming.mode);
  const second = naming.also?.target;
  return [naming.target, ...(other === undefined ? [] : [other]), ...(second === undefined ? [] : [second])];
}

/** Looks at stands, nearest first, until none farther off could be worth its way: no test gains more than all that is open. */
function gather(truth: Bench, candidates: readonly Candidate[], reached: readonly Reached[], worth: Weighed[]): void {
  const open = openBits(problemOf(candidates, []), [...candidates.keys()]);
  const homes = homesOf(candidates);
  let best = 0;
  for (const each of reached) {
    if (open / Math.max(each.seconds, 1) < best * SLACK) break;
    const found = testsAt(truth, candidates, each, homes);
    const problem = problemOf(candidates, found);
    found.forEach((test, index) => {
      const asked = problem.tests[index];
      const gain = asked ? testGainBits(problem, everyHypothesis(problem), asked) : 0;
      if (gain <= 0) return;
      worth.push({ test, gainBits: gain });
      best = Math.max(best, gain / Math.max(test.seconds, 1));
    });
  }
}

/** Steps that isolate the true fault by the reference way, and what they cost. */
export interface ShortWay {
  readonly actions: readonly Action[];
  readonly seconds: number;
  /** Candidates left after each action, by place in those given. */
  readonly left: readonly (readonly number[])[];
}

/** More tests than this is no short way. */
const MOST_TESTS = 40;

/**
 * How the next test is chosen: by who is left, what was done, and where somebody then stands. Whoever takes the same steps and is left
 * with the same suspects chooses the same, so that a choice can be kept and shared.
 */
export type Choose = (alive: readonly number[], done: readonly Action[], truth: Bench) => NextTest | undefined;

/**
 * Takes the reference way under the true fault until one answer is left. The benches are used up.
 * @param truth a fresh bench with the true fault
 */
export function shortWay(
  truth: Bench,
  candidates: readonly Candidate[],
  namings: readonly Naming[],
  choose: Choose = (alive) =>
    nextTest(
      truth,
      alive.flatMap((index) => candidates[index] ?? []),
      namings,
    ),
): ShortWay {
  const actions: Action[] = [];
  const left: (readonly number[])[] = [];
  let alive = keep(
    candidates.map((_, index) => index),
    candidates,
    arrive(truth),
    ({ bench }) => arrive(bench),
  );
  const began = truth.world.state.time;
  const settled = () => isSettled(problemOf(candidates, []), alive);
  for (let taken = 0; taken < MOST_TESTS && !settled(); taken++) {
    const next = choose(alive, actions, truth);
    if (!next) break;
    for (const action of next.test.actions) {
      const told = act(truth, action).observation;
      alive = keep(alive, candidates, told, ({ bench }) => act(bench, action).observation);
      actions.push(action);
      left.push(alive);
      if (settled()) break;
    }
  }
  return { actions, seconds: truth.world.state.time - began, left };
}

function keep(
  alive: readonly number[],
  candidates: readonly Candidate[],
  told: Observation,
  predict: (candidate: Candidate) => Observation,
): number[] {
  return alive.filter((index) => {
    const candidate = candidates[index];
    return candidate !== undefined && !observationsApart(predict(candidate), told);
  });
}
