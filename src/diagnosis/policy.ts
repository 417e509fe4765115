import { openBits, testGainBits } from './information.ts';
import { costFrom, isSettled, type Problem, partition, type Subset, weightOf } from './problem.ts';

/** What to do next, and what it is expected to bring. */
export interface Choice {
  /** By place in the problem's tests. */
  readonly test: number;
  readonly cost: number;
  readonly gainBits: number;
}

/** A way to choose the next test; undefined when none of them helps. */
export type Policy = (problem: Problem, subset: Subset, setup: number) => Choice | undefined;

/** How many of the best single tests are looked through for the better pair of two. */
const BREADTH = 12;

function singles(problem: Problem, subset: Subset, setup: number): Choice[] {
  const open = openBits(problem, subset);
  const choices: Choice[] = [];
  problem.tests.forEach((test, index) => {
    const gainBits = testGainBits(problem, subset, test, open);
    if (gainBits > 0) choices.push({ test: index, cost: costFrom(problem, setup, test), gainBits });
  });
  return choices;
}

function rate(choice: { readonly gainBits: number; readonly cost: number }): number {
  return choice.gainBits / Math.max(choice.cost, 1e-9);
}

/** Most gain for its cost; the first of equals. */
export const greedy: Policy = (problem, subset, setup) => best(singles(problem, subset, setup));

function best(choices: readonly Choice[]): Choice | undefined {
  let found: Choice | undefined;
  for (const choice of choices) if (!found || rate(choice) > rate(found)) found = choice;
  return found;
}

/**
 * The reference way: most gain for its cost over this test and the best one after it. A cheap test that tells little now does not
 * beat a dearer one that settles the matter, and a test that only opens the way to the next still counts.
 */
export const lookAhead: Policy = (problem, subset, setup) => {
  const choices = singles(problem, subset, setup).sort((a, b) => rate(b) - rate(a) || a.test - b.test);
  const total = weightOf(problem, subset);
  let found: { readonly choice: Choice; readonly score: number } | undefined;
  for (const choice of [...choices.slice(0, BREADTH), ...thorough(choices)]) {
    const test = problem.tests[choice.test];
    if (!test) continue;
    let gain = choice.gainBits;
    let cost = choice.cost;
    for (const part of partition(subset, test).values()) {
      if (isSettled(problem, part)) continue;
      const next = greedy(problem, part, test.setup);
      if (!next) continue;
      const share = weightOf(problem, part) / total;
      gain += share * next.gainBits;
      cost += share * next.cost;
    }
    const score = gain / Math.max(cost, 1e-9);
    if (!found || score > found.score + 1e-12) found = { choice, score };
  }
  return found?.choice;
};

/** Those with most gain, whatever they cost. */
function thorough(choices: readonly Choice[]): Choice[] {
  return [...choices].sort((a, b) => b.gainBits - a.gainBits || a.cost - b.cost).slice(0, BREADTH / 2);
}

/** A policy followed to its ends: what to test, and what next by outcome. */
export type PolicyTree =
  | { readonly kind: 'answer'; readonly subset: Subset }
  | { readonly kind: 'test'; readonly subset: Subset; readonly choice: Choice; readonly branches: ReadonlyMap<number, PolicyTree> };

export function policyTree(problem: Problem, policy: Policy, subset: Subset, setup = 0): PolicyTree {
  const choice = isSettled(problem, subset) ? undefined : policy(problem, subset, setup);
  const test = choice && problem.tests[choice.test];
  if (!choice || !test) return { kind: 'answer', subset };
  const branches = new Map<number, PolicyTree>();
  for (const [outcome, part] of partition(subset, test)) branches.set(outcome, policyTree(problem, policy, part, test.setup));
  return { kind: 'test', subset, choice, branches };
}

/** Expected cost of following a tree to its ends, in the problem's unit. */
export function expectedCost(problem: Problem, tree: PolicyTree): number {
  if (tree.kind === 'answer') return 0;
  const total = weightOf(problem, tree.subset);
  let cost = tree.choice.cost;
  for (const branch of tree.branches.values()) cost += (weightOf(problem, branch.subset) / total) * expectedCost(problem, branch);
  return cost;
}

/** A tree as indented lines, by whatever names the caller has for tests, outcomes and answers. */
export function printTree(
  tree: PolicyTree,
  names: {
    readonly test: (test: number) => string;
    readonly outcome: (test: number, outcome: number) => string;
    readonly answer: (subset: Subset) => string;
  },
  depth = 0,
): string[] {
  const indent = '  '.repeat(depth);
  if (tree.kind === 'answer') return [`${indent}${names.answer(tree.subset)}`];
  const lines = [`${indent}${names.test(tree.choice.test)}`];
  for (const [outcome, branch] of tree.branches) {
    lines.push(`${indent}- ${names.outcome(tree.choice.test, outcome)}`, ...printTree(branch, names, depth + 2));
  }
  return lines;
}
