/**
 * Sequential diagnosis in general: something is wrong in one of many ways, tests cost time, and each way predicts each test's
 * outcome. Nothing in this room knows what is being diagnosed.
 */

/** A test: what every hypothesis predicts of it, what it costs by itself, and the set-up that it needs. */
export interface Test {
  /** Outcome by hypothesis; equal numbers are not told apart. */
  readonly outcomes: Int32Array;
  /** Cost beyond being in its set-up, in the problem's unit; 0 and up. */
  readonly cost: number;
  /** Set-up, by place in `moves`; 0 is where everything starts. */
  readonly setup: number;
}

export interface Problem {
  /** Weight of each hypothesis, need not be normalised. */
  readonly priors: Float64Array;
  /** Answer class of each hypothesis: members of one class need not be told apart. */
  readonly classes: Int32Array;
  readonly tests: readonly Test[];
  /** Cost of moving from one set-up to another, `moves[from][to]`; the diagonal is 0. */
  readonly moves: readonly Float64Array[];
}

/** Hypotheses by place in the problem, in rising order. */
export type Subset = readonly number[];

export function everyHypothesis(problem: Problem): Subset {
  return Array.from(problem.priors, (_, index) => index);
}

export function weightOf(problem: Problem, subset: Subset): number {
  let sum = 0;
  for (const hypothesis of subset) sum += problem.priors[hypothesis] ?? 0;
  return sum;
}

/** Cost of a test for somebody standing in a set-up. */
export function costFrom(problem: Problem, setup: number, test: Test): number {
  return (problem.moves[setup]?.[test.setup] ?? 0) + test.cost;
}

/** The subset by outcome of a test, in the order in which outcomes first come up. */
export function partition(subset: Subset, test: Test): ReadonlyMap<number, Subset> {
  const parts = new Map<number, number[]>();
  for (const hypothesis of subset) {
    const outcome = test.outcomes[hypothesis] ?? 0;
    const part = parts.get(outcome);
    if (part) part.push(hypothesis);
    else parts.set(outcome, [hypothesis]);
  }
  return parts;
}

/** Whether one answer is left. */
export function isSettled(problem: Problem, subset: Subset): boolean {
  const first = problem.classes[subset[0] ?? -1];
  return subset.every((hypothesis) => problem.classes[hypothesis] === first);
}

/**
 * Hypotheses that no test separates, directly or through others that it cannot separate either: a number by hypothesis.
 * @param apart whether some test tells two hypotheses apart
 */
export function answerClasses(count: number, apart: (a: number, b: number) => boolean): Int32Array {
  const classes = new Int32Array(count).fill(-1);
  for (let seed = 0; seed < count; seed++) {
    if (classes[seed] !== -1) continue;
    classes[seed] = seed;
    const queue = [seed];
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      for (let other = 0; other < count; other++) {
        if (classes[other] !== -1 || apart(at, other)) continue;
        classes[other] = seed;
        queue.push(other);
      }
    }
  }
  return classes;
}

/** The sets that contain no other of the sets: minimal diagnoses, where each set names the components that must have failed. */
export function minimalSets<T>(sets: readonly ReadonlySet<T>[]): ReadonlySet<T>[] {
  const within = (inner: ReadonlySet<T>, outer: ReadonlySet<T>) =>
    inner.size < outer.size && [...inner].every((each) => outer.has(each));
  return sets.filter((set) => !sets.some((other) => within(other, set)));
}
