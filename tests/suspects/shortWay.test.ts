import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/attempt/bench.ts';
import { entropyBits } from '../../src/diagnosis/information.ts';
import { expectedCost, lookAhead, policyTree } from '../../src/diagnosis/policy.ts';
import { answerClasses, everyHypothesis, type Problem } from '../../src/diagnosis/problem.ts';
import { entropyBound, optimal } from '../../src/diagnosis/search.ts';
import { prepareGround, standOn } from '../../src/suspects/ground.ts';
import { type Candidate, problemOf, reach, testsAt } from '../../src/suspects/library.ts';
import { standsOf } from '../../src/suspects/stands.ts';
import { rigOf, samples, ticket } from '../scenario/shipped.ts';

/** The tests that a ticket's suspects face on arrival, cut to a few likely hypotheses, as a problem for the general engine. */
function cutProblem(id: string, most: number): Problem {
  const job = ticket(id);
  const ground = prepareGround(job, rigOf(job));
  const field = standOn(ground);
  const likely = [...field.priors.keys()].sort((a, b) => (field.priors[b] ?? 0) - (field.priors[a] ?? 0)).slice(0, most);
  const candidates: Candidate[] = field.twins.filter((twin) => likely.includes(twin.hypothesis));
  const truth = createBench(ground.assembly, job.faults, job);
  const tests = reach(truth, standsOf(truth)).flatMap((each) => testsAt(truth, candidates, each));
  const problem = problemOf(candidates, tests);
  // Members of one hypothesis, and whatever these tests leave together, are one answer.
  const classes = answerClasses(
    candidates.length,
    (a, b) =>
      candidates[a]!.hypothesis !== candidates[b]!.hypothesis &&
      problem.tests.some((test) => test.outcomes[a] !== test.outcomes[b]),
  );
  return { ...problem, classes };
}

describe('on rigs cut small enough to search', () => {
  const figures: string[] = [];
  it.each(samples.map((each) => [each.id] as const))(
    '%s: the reference way costs within a tenth of the best there is',
    { timeout: 120_000 },
    (id) => {
      const problem = cutProblem(id, 9);
      const best = optimal(problem).cost;
      const reference = expectedCost(problem, policyTree(problem, lookAhead, everyHypothesis(problem)));
      figures.push(
        `${id}: ${problem.priors.length} twins, ${problem.tests.length} tests, best ${best.toFixed(1)} s, reference ${reference.toFixed(1)} s, bound ${entropyBound(problem).toFixed(1)} s`,
      );
      expect(reference, figures.at(-1)).toBeLessThanOrEqual(best * 1.1 + 1e-9);
      expect(best).toBeGreaterThanOrEqual(entropyBound(problem) - 1e-9);
      expect(entropyBits(problem.priors)).toBeGreaterThan(0);
      if (process.env.BELLWIRE_FIGURES) console.log(figures.at(-1));
    },
  );
});
