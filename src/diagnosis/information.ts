import { type Problem, partition, type Subset, type Test, weightOf } from './problem.ts';

/**
 * Entropy in bits of weights that need not be normalised; zero weights count for nothing.
 * Shannon's H = −Σ p log2 p (Cover and Thomas, Elements of Information Theory, chapter 2).
 */
export function entropyBits(weights: Iterable<number>): number {
  let total = 0;
  let sum = 0;
  for (const weight of weights) {
    if (weight <= 0) continue;
    total += weight;
    sum += weight * Math.log2(weight);
  }
  return total > 0 ? Math.max(0, Math.log2(total) - sum / total) : 0;
}

/** A bundle of hypotheses that predict the very same outcome: weight by answer class. */
export interface Prediction<T> {
  readonly outcome: T;
  readonly weights: ReadonlyMap<number, number>;
}

/**
 * Expected gain of a test in bits: B(S) − Σ p(h)·B({g : g and h would not be told apart}), over answer classes.
 * Being told apart need not be transitive; where it is, this is the usual mutual information.
 */
export function expectedGainBits<T>(predictions: readonly Prediction<T>[], apart: (a: T, b: T) => boolean): number {
  const all = merge(predictions);
  const total = sum(all.values());
  if (total <= 0) return 0;
  let expected = 0;
  for (const one of predictions) {
    const alike = predictions.filter((other) => other === one || !apart(one.outcome, other.outcome));
    if (alike.length === predictions.length) expected += (sum(one.weights.values()) / total) * entropyBits(all.values());
    else expected += (sum(one.weights.values()) / total) * entropyBits(merge(alike).values());
  }
  const gain = entropyBits(all.values()) - expected;
  return gain > 1e-12 ? gain : 0;
}

function merge<T>(predictions: readonly Prediction<T>[]): Map<number, number> {
  const merged = new Map<number, number>();
  for (const { weights } of predictions)
    for (const [answer, weight] of weights) merged.set(answer, (merged.get(answer) ?? 0) + weight);
  return merged;
}

function sum(values: Iterable<number>): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

/** Weight by answer class of some hypotheses. */
export function classWeights(problem: Problem, subset: Subset): Map<number, number> {
  const weights = new Map<number, number>();
  for (const hypothesis of subset) {
    const answer = problem.classes[hypothesis] ?? hypothesis;
    weights.set(answer, (weights.get(answer) ?? 0) + (problem.priors[hypothesis] ?? 0));
  }
  return weights;
}

/** Bits still to be found out about the answer. */
export function openBits(problem: Problem, subset: Subset): number {
  return entropyBits(classWeights(problem, subset).values());
}

/** Mutual information of a test's outcome and the answer, bits. */
export function testGainBits(problem: Problem, subset: Subset, test: Test, open = openBits(problem, subset)): number {
  const total = weightOf(problem, subset);
  if (total <= 0) return 0;
  const parts = partition(subset, test);
  if (parts.size < 2) return 0;
  let after = 0;
  for (const part of parts.values()) after += (weightOf(problem, part) / total) * openBits(problem, part);
  const gain = open - after;
  return gain > 1e-12 ? gain : 0;
}
