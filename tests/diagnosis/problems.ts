import type { Problem, Test } from '../../src/diagnosis/problem.ts';
import { randomNumbers } from '../circuit/random-network.ts';

/** Every hypothesis its own answer, one set-up. */
export function plainProblem(
  priors: readonly number[],
  tests: readonly { readonly outcomes: readonly number[]; readonly cost?: number }[],
): Problem {
  return {
    priors: Float64Array.from(priors),
    classes: Int32Array.from(priors, (_, index) => index),
    tests: tests.map(({ outcomes, cost = 1 }): Test => ({ outcomes: Int32Array.from(outcomes), cost, setup: 0 })),
    moves: [Float64Array.from([0])],
  };
}

/** A small random problem with set-ups; by its seed. */
export function randomProblem(seed: number, most = { hypotheses: 6, tests: 6, setups: 3 }): Problem {
  const random = randomNumbers(seed);
  const up = (limit: number) => 1 + Math.floor(random() * limit);
  const hypotheses = 1 + up(most.hypotheses - 1);
  const setups = up(most.setups);
  const tests = Array.from({ length: up(most.tests) }, (): Test => {
    const outcomes = up(3);
    return {
      outcomes: Int32Array.from({ length: hypotheses }, () => Math.floor(random() * outcomes)),
      cost: 0.5 + random() * 5,
      setup: Math.floor(random() * setups),
    };
  });
  return {
    priors: Float64Array.from({ length: hypotheses }, () => 0.05 + random()),
    classes: Int32Array.from({ length: hypotheses }, (_, index) => (random() < 0.15 ? 0 : index)),
    tests,
    moves: Array.from({ length: setups }, (_, from) =>
      Float64Array.from({ length: setups }, (__, to) => (from === to ? 0 : random() * 4)),
    ),
  };
}
