/**
 * de Kleer and Williams, Diagnosing Multiple Faults, Artificial Intelligence 32 (1987): three multipliers and two adders,
 * inputs A = 3, B = 2, C = 2, D = 3, E = 3; X = A·C, Y = B·D, Z = C·E; F = X + Y and G = Y + Z should both be 12; F reads 10, G reads 12.
 * The paper's minimal diagnoses are {A1}, {M1}, {A2, M2}, {M2, M3}; its next best reading is X.
 */
import { expect, it } from 'vitest';
import { lookAhead } from '../../src/diagnosis/policy.ts';
import { minimalSets } from '../../src/diagnosis/problem.ts';
import { plainProblem } from './problems.ts';

const COMPONENTS = ['M1', 'M2', 'M3', 'A1', 'A2'] as const;
type Component = (typeof COMPONENTS)[number];
const INPUTS = { A: 3, B: 2, C: 2, D: 3, E: 3 };
const READ = { F: 10, G: 12 };

/** What X, Y and Z must be when these components are broken (whatever they then do) and the rest work; undefined when that cannot be. */
function explain(broken: ReadonlySet<Component>): Record<'X' | 'Y' | 'Z', number | undefined> | undefined {
  const known: Record<'X' | 'Y' | 'Z', number | undefined> = {
    X: broken.has('M1') ? undefined : INPUTS.A * INPUTS.C,
    Y: broken.has('M2') ? undefined : INPUTS.B * INPUTS.D,
    Z: broken.has('M3') ? undefined : INPUTS.C * INPUTS.E,
  };
  const sums: readonly (readonly [Component, 'X' | 'Z', number])[] = [
    ['A1', 'X', READ.F],
    ['A2', 'Z', READ.G],
  ];
  for (let pass = 0; pass < 2; pass++) {
    for (const [adder, other, sum] of sums) {
      if (broken.has(adder)) continue;
      if (known.Y === undefined) {
        if (known[other] !== undefined) known.Y = sum - known[other];
      } else if (known[other] === undefined) known[other] = sum - known.Y;
      else if (known[other] + known.Y !== sum) return undefined;
    }
  }
  return known;
}

const everySet = Array.from(
  { length: 2 ** COMPONENTS.length },
  (_, mask) => new Set(COMPONENTS.filter((__, index) => (mask >> index) & 1)),
);
const diagnoses = minimalSets(everySet.filter((broken) => explain(broken) !== undefined));

it('finds the minimal diagnoses of the paper', () => {
  expect(diagnoses.map((set) => [...set].sort().join(' ')).sort()).toEqual(['A1', 'A2 M2', 'M1', 'M2 M3']);
});

it('reads X next, as the paper does', () => {
  // Every component fails with the same small probability, independently: a pair is that much rarer.
  const rare = 0.01;
  const priors = diagnoses.map((set) => rare ** set.size);
  const points = ['X', 'Y', 'Z'] as const;
  const problem = plainProblem(
    priors,
    points.map((point) => ({ outcomes: diagnoses.map((set) => explain(set)?.[point] ?? -1) })),
  );
  const choice = lookAhead(
    problem,
    diagnoses.map((_, index) => index),
    0,
  );
  expect(points[choice?.test ?? -1]).toBe('X');
});
