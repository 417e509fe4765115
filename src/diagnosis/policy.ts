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

/** How many of the best single tests are followed to the end. */
const BREADTH = 16;

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

/** Cost that is reckoned for each bit that no test on offer can settle, in units of the mean test's cost. */
const UNSETTLED = 2;

/**
 * The reference way: of the tests that promise most, the one after which going on greedily is expected to cost least in all. A cheap test
 * that tells little does not beat a dearer one that settles the matter.
 */
export const lookAhead: Policy = (problem, subset, setup) => {
  const choices = singles(problem, subset, setup).sort((a, b) => rate(b) - rate(a) || a.test - b.test);
  const mean = choices.reduce((sum, choice) => sum + choice.cost, 0) / Math.max(1, choices.length);
  const memory = new Map<string, number>();
  const total = weightOf(problem, subset);
  let found: { readonly choice: Choice; readonly cost: number } | undefined;
  for (const choice of new Set([...choices.slice(0, BREADTH), ...thorough(choices)])) {
    const test = problem.tests[choice.test];
    if (!test) continue;
    let cost = choice.cost;
    for (const part of partition(subset, test).values()) {
      cost += (weightOf(problem, part) / total) * costToGo(problem, part, test.setup, mean * UNSETTLED, memory);
    }
    if (!found || cost < found.cost - 1e-9) found = { choice, cost };
  }
  return found?.choice;
};

/** Expected cost of going on greedily from here to the end, and of what cannot be settled. */
function costToGo(problem: Problem, subset: Subset, setup: number, perBit: number, memory: Map<string, number>): number {
  if (isSettled(problem, subset)) return 0;
  const key = `${setup} ${subset.join()}`;
  const known = memory.get(key);
  if (known !== undefined) return known;
  const choice = greedy(problem, subset, setup);
  const test = choice && problem.tests[choice.test];
  let cost: number;
  if (!choice || !test) cost = openBits(problem, subset) * perBit;
  else {
    const total = weightOf(problem, subset);
    cost = choice.cost;
    for (const part of partition(subset, test).values())
      cost += (weightOf(problem, part) / total) * costToGo(problem, part, test.setup, perBit, memory);
  }
  memory.set(key, cost);
  return cost;
}

/** Those with most gain, whatever they cost. */
function thorough(choices: readonly Choice[]): Choice[] {
  return [...choices].sort((a, b) => b.gainBits - a.gainBits || a.cost - b.cost).slice(0, BREADTH);
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
