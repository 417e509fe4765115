import { openBits } from './information.ts';
import type { Choice, PolicyTree } from './policy.ts';
import { costFrom, everyHypothesis, isSettled, type Problem, partition, type Subset, weightOf } from './problem.ts';

/** Problems beyond this many hypotheses are not searched to the end. */
export const MOST_SEARCHED = 24;

/**
 * The cheapest policy there is, by exhaustive AND/OR search with memory over what is left and where one stands. Exact; for small problems.
 * @throws Error when the problem has more than {@link MOST_SEARCHED} hypotheses
 */
export function optimal(
  problem: Problem,
  subset: Subset = everyHypothesis(problem),
  setup = 0,
): { readonly cost: number; readonly tree: PolicyTree } {
  if (problem.priors.length > MOST_SEARCHED) throw new Error(`more than ${MOST_SEARCHED} hypotheses`);
  const memory = new Map<number, { readonly cost: number; readonly choice: Choice | undefined }>();
  const setups = Math.max(1, problem.moves.length);

  const solve = (left: Subset, at: number): { readonly cost: number; readonly choice: Choice | undefined } => {
    if (isSettled(problem, left)) return { cost: 0, choice: undefined };
    let mask = 0;
    for (const hypothesis of left) mask += 2 ** hypothesis;
    const key = mask * setups + at;
    const known = memory.get(key);
    if (known) return known;
    const total = weightOf(problem, left);
    let found: { cost: number; choice: Choice | undefined } | undefined;
    problem.tests.forEach((test, index) => {
      const parts = partition(left, test);
      if (parts.size < 2) return;
      const own = costFrom(problem, at, test);
      let cost = own;
      for (const part of parts.values()) {
        if (found && cost >= found.cost) return;
        cost += (weightOf(problem, part) / total) * solve(part, test.setup).cost;
      }
      if (!found || cost < found.cost) found = { cost, choice: { test: index, cost: own, gainBits: 0 } };
    });
    // What no test can separate is left as it is: there is nothing more to pay for.
    const result = found ?? { cost: 0, choice: undefined };
    memory.set(key, result);
    return result;
  };

  const build = (left: Subset, at: number): PolicyTree => {
    const { choice } = solve(left, at);
    const test = choice && problem.tests[choice.test];
    if (!choice || !test) return { kind: 'answer', subset: left };
    const branches = new Map<number, PolicyTree>();
    for (const [outcome, part] of partition(left, test)) branches.set(outcome, build(part, test.setup));
    return { kind: 'test', subset: left, choice, branches };
  };
  return { cost: solve(subset, setup).cost, tree: build(subset, setup) };
}

/**
 * No policy can cost less than this: every test yields at most log2 of its number of outcomes, so each bit costs at least the cheapest
 * test's cost for it, moving not counted (Shannon's source coding bound; Cover and Thomas, section 5.4).
 */
export function entropyBound(problem: Problem, subset: Subset = everyHypothesis(problem)): number {
  let perBit = Number.POSITIVE_INFINITY;
  for (const test of problem.tests) {
    const outcomes = partition(subset, test).size;
    if (outcomes > 1) perBit = Math.min(perBit, test.cost / Math.log2(outcomes));
  }
  return Number.isFinite(perBit) ? perBit * openBits(problem, subset) : 0;
}
