import { describe, expect, it } from 'vitest';
import { entropyBits, expectedGainBits, openBits, testGainBits } from '../../src/diagnosis/information.ts';
import { expectedCost, greedy, lookAhead, policyTree, printTree } from '../../src/diagnosis/policy.ts';
import { answerClasses, everyHypothesis, isSettled, type Problem, partition, weightOf } from '../../src/diagnosis/problem.ts';
import { entropyBound, optimal } from '../../src/diagnosis/search.ts';
import { plainProblem, randomProblem } from './problems.ts';

describe('entropy', () => {
  it('a fair coin is one bit, a certainty none, and eight equals three', () => {
    expect(entropyBits([1, 1])).toBe(1);
    expect(entropyBits([5])).toBe(0);
    expect(entropyBits(new Array(8).fill(0.3))).toBeCloseTo(3, 12);
  });

  // Cover and Thomas, Elements of Information Theory, example 2.1.1: 1/2 1/4 1/8 1/8 has 7/4 bits.
  it('has the 7/4 bits of the textbook', () => {
    expect(entropyBits([1 / 2, 1 / 4, 1 / 8, 1 / 8])).toBeCloseTo(1.75, 12);
  });

  it('gain over pairs that are told apart equals mutual information where being told apart is an equivalence', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const problem = randomProblem(seed);
      const test = problem.tests[0]!;
      const predictions = everyHypothesis(problem).map((hypothesis) => ({
        outcome: test.outcomes[hypothesis]!,
        weights: new Map([[problem.classes[hypothesis]!, problem.priors[hypothesis]!]]),
      }));
      expect(expectedGainBits(predictions, (a, b) => a !== b)).toBeCloseTo(
        testGainBits(problem, everyHypothesis(problem), test),
        9,
      );
    }
  });

  it('where it is none, a reading between two others gains less than a partition would say', () => {
    // 10, 11.5 and 13: neighbours look alike, the ends do not.
    const predictions = [10, 11.5, 13].map((outcome, answer) => ({ outcome, weights: new Map([[answer, 1]]) }));
    const gain = expectedGainBits(predictions, (a, b) => Math.abs(a - b) > 2);
    // The middle one, if true, rules out nobody; each end rules out the other end: log2 3 − (1/3·log2 3 + 2/3·1).
    expect(gain).toBeCloseTo(Math.log2(3) - (Math.log2(3) / 3 + 2 / 3), 12);
  });
});

// Cover and Thomas, section 5.6, example 5.6.1: .25 .25 .2 .15 .15 has a binary Huffman code of expected length 2.3 bits.
it('with every yes/no split on offer, the best questions take 2.3 on average', () => {
  const priors = [0.25, 0.25, 0.2, 0.15, 0.15];
  const splits = Array.from({ length: 15 }, (_, mask) => ({ outcomes: priors.map((__, index) => ((mask + 1) >> index) & 1) }));
  const problem = plainProblem(priors, splits);
  expect(optimal(problem).cost).toBeCloseTo(2.3, 12);
  expect(entropyBound(problem)).toBeCloseTo(entropyBits(priors), 12);
  expect(entropyBound(problem)).toBeLessThan(2.3);
});

// The same book, section 5.4: the optimal code is within one bit of the entropy.
it('with every yes/no split on offer, the best is within one question of the entropy', () => {
  for (let seed = 1; seed <= 100; seed++) {
    const priors = [...randomProblem(seed).priors];
    const count = 2 ** (priors.length - 1) - 1;
    const problem = plainProblem(
      priors,
      Array.from({ length: count }, (_, mask) => ({ outcomes: priors.map((__, index) => ((mask + 1) >> index) & 1) })),
    );
    const { cost } = optimal(problem);
    expect(cost).toBeGreaterThanOrEqual(entropyBits(priors) - 1e-9);
    expect(cost).toBeLessThan(entropyBits(priors) + 1);
  }
});

/** The cheapest policy by plain recursion: every test in every order, no memory, no bound, its own partitioning. */
function bruteForce(problem: Problem, left: readonly number[], at: number): number {
  const answers = new Set(left.map((hypothesis) => problem.classes[hypothesis]));
  if (answers.size <= 1) return 0;
  const total = left.reduce((sum, hypothesis) => sum + problem.priors[hypothesis]!, 0);
  let cheapest = Number.POSITIVE_INFINITY;
  for (const test of problem.tests) {
    const seen = [...new Set(left.map((hypothesis) => test.outcomes[hypothesis]!))];
    if (seen.length < 2) continue;
    let cost = problem.moves[at]![test.setup]! + test.cost;
    for (const outcome of seen) {
      const part = left.filter((hypothesis) => test.outcomes[hypothesis] === outcome);
      const share = part.reduce((sum, hypothesis) => sum + problem.priors[hypothesis]!, 0) / total;
      cost += share * bruteForce(problem, part, test.setup);
    }
    cheapest = Math.min(cheapest, cost);
  }
  return Number.isFinite(cheapest) ? cheapest : 0;
}

describe('1,000 random small problems', () => {
  it('exhaustive search with memory agrees with plain recursion', () => {
    for (let seed = 1; seed <= 1000; seed++) {
      const problem = randomProblem(seed);
      const { cost, tree } = optimal(problem);
      expect(cost, `seed ${seed}`).toBeCloseTo(bruteForce(problem, everyHypothesis(problem), 0), 9);
      expect(expectedCost(problem, tree), `seed ${seed}`).toBeCloseTo(cost, 9);
    }
  });

  it('no policy beats the best, and the best never beats the entropy bound', () => {
    let worse = 0;
    for (let seed = 1; seed <= 1000; seed++) {
      // All separable: the bound counts every bit.
      const random = randomProblem(seed);
      const problem: Problem = {
        ...random,
        classes: answerClasses(random.priors.length, (a, b) => random.tests.some((test) => test.outcomes[a] !== test.outcomes[b])),
      };
      const best = optimal(problem).cost;
      expect(best).toBeGreaterThanOrEqual(entropyBound(problem) - 1e-9);
      for (const policy of [greedy, lookAhead]) {
        const tree = policyTree(problem, policy, everyHypothesis(problem));
        const cost = expectedCost(problem, tree);
        expect(cost).toBeGreaterThanOrEqual(best - 1e-9);
        if (cost > best + 1e-9) worse += 1;
        expectSettled(problem, tree);
      }
    }
    // The check can tell: some greedy choices really are dearer.
    expect(worse).toBeGreaterThan(50);
  });
});

function expectSettled(problem: Problem, tree: ReturnType<typeof policyTree>): void {
  if (tree.kind === 'answer') expect(isSettled(problem, tree.subset)).toBe(true);
  else for (const branch of tree.branches.values()) expectSettled(problem, branch);
}

it('looking ahead finds the cheapest pair of halvings', () => {
  // Four equals: any two of the three tests settle it, and the cheapest pair costs 1.9.
  const problem = plainProblem(
    [1, 1, 1, 1],
    [
      { outcomes: [0, 0, 1, 1], cost: 1 },
      { outcomes: [0, 1, 0, 1], cost: 1 },
      { outcomes: [0, 1, 1, 0], cost: 0.9 },
    ],
  );
  const cost = (policy: typeof greedy) => expectedCost(problem, policyTree(problem, policy, everyHypothesis(problem)));
  expect(optimal(problem).cost).toBeCloseTo(1.9, 12);
  expect(cost(lookAhead)).toBeCloseTo(1.9, 12);
});

it('moving costs: what can be measured where one stands comes first', () => {
  const problem: Problem = {
    priors: Float64Array.from([1, 1, 1, 1]),
    classes: Int32Array.from([0, 1, 2, 3]),
    tests: [
      { outcomes: Int32Array.from([0, 0, 1, 1]), cost: 1, setup: 1 },
      { outcomes: Int32Array.from([0, 0, 1, 1]), cost: 2, setup: 0 },
      { outcomes: Int32Array.from([0, 1, 0, 1]), cost: 2, setup: 0 },
    ],
    moves: [Float64Array.from([0, 5]), Float64Array.from([5, 0])],
  };
  expect(lookAhead(problem, [0, 1, 2, 3], 0)?.test).toBe(1);
  expect(optimal(problem).cost).toBeCloseTo(4, 12);
});

it('a tree can be printed', () => {
  const problem = plainProblem([3, 1], [{ outcomes: [0, 1] }]);
  const lines = printTree(policyTree(problem, lookAhead, [0, 1]), {
    test: (test) => `test ${test}`,
    outcome: (_, outcome) => `reads ${outcome}`,
    answer: (subset) => `it is ${subset.join()}`,
  });
  expect(lines).toEqual(['test 0', '- reads 0', '    it is 0', '- reads 1', '    it is 1']);
});

it('hypotheses that nothing separates are one answer, through a third as well', () => {
  expect([...answerClasses(4, (a, b) => !(Math.abs(a - b) <= 1 && a < 3 && b < 3))]).toEqual([0, 0, 0, 3]);
});

it('a partition loses nobody', () => {
  const problem = randomProblem(7);
  const parts = [...partition(everyHypothesis(problem), problem.tests[0]!).values()];
  expect(parts.flat().sort()).toEqual(everyHypothesis(problem));
  expect(parts.reduce((sum, part) => sum + weightOf(problem, part), 0)).toBeCloseTo(
    weightOf(problem, everyHypothesis(problem)),
    12,
  );
  expect(openBits(problem, [0])).toBe(0);
});
