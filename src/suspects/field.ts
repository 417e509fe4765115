import { act, type Observation } from '../attempt/act.ts';
import type { Action } from '../attempt/actions.ts';
import { arrive } from '../attempt/attempt.ts';
import { type Bench, complaintHolds, createBench } from '../attempt/bench.ts';
import type { Job } from '../attempt/job.ts';
import { expectedGainBits, type Prediction } from '../diagnosis/information.ts';
import type { Assembly } from '../rig/assemble.ts';
import { fingerprint, observationsApart } from './apart.ts';
import { hypothesesOf, type Naming } from './hypotheses.ts';

/** One member of a hypothesis in a world of its own, driven by exactly the trainee's actions. */
export interface Twin {
  /** Its hypothesis, by place in the field. */
  readonly hypothesis: number;
  readonly bench: Bench;
  /** Share of the prior: the hypothesis' own, spread evenly over its members. */
  readonly weight: number;
}

/** Every fault that could have made the complaint, each with its twins. */
export interface Field {
  readonly hypotheses: readonly Naming[];
  /** Prior probability by hypothesis, normalised over those that reproduce the complaint. */
  readonly priors: readonly number[];
  readonly twins: readonly Twin[];
}

/** One step's column of the match matrix. */
export interface Column {
  /** By twin: whether it predicted what was observed. */
  readonly matched: readonly boolean[];
  /** By twin: what it predicted. */
  readonly predicted: readonly Observation[];
  /** Expected gain before the step over the twins that were left, bits. */
  readonly gainBits: number;
  /** Whether something happened by itself meanwhile, in any twin that was left. */
  readonly eventful: boolean;
}

/**
 * Simulation decides who is a suspect: each possible fault lives the customer's story, and those whose story ends otherwise are out.
 */
export function gatherField(job: Job, assembly: Assembly): Field {
  const hypotheses: Naming[] = [];
  const weights: number[] = [];
  const found: { hypothesis: number; bench: Bench; share: number }[] = [];
  for (const { naming, weight, members } of hypothesesOf(assembly.rig, job.suspects)) {
    const benches = members.map((faults) => createBench(assembly, faults, job)).filter((bench) => complaintHolds(bench, job));
    if (benches.length === 0) continue;
    const hypothesis = hypotheses.push(naming) - 1;
    weights.push(weight);
    for (const bench of benches) found.push({ hypothesis, bench, share: 1 / benches.length });
  }
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const priors = weights.map((weight) => weight / total);
  return {
    hypotheses,
    priors,
    twins: found.map(({ hypothesis, bench, share }) => ({ hypothesis, bench, weight: (priors[hypothesis] ?? 0) * share })),
  };
}

/** The first look round on arriving, which is an observation too. */
export function arriveField(field: Field, truth: Observation): Column {
  return compare(
    field,
    truth,
    field.twins.map((twin) => arrive(twin.bench)),
    field.twins.map(() => true),
  );
}

/**
 * Drives every twin through an action that the truth has taken.
 * @param left by twin: whether it had predicted everything so far
 */
export function stepField(field: Field, action: Action, truth: Observation, left: readonly boolean[]): Column {
  const deeds = field.twins.map((twin) => act(twin.bench, action));
  const column = compare(
    field,
    truth,
    deeds.map((deed) => deed.observation),
    left,
  );
  return { ...column, eventful: deeds.some((deed, index) => left[index] === true && deed.events > 0) };
}

function compare(field: Field, truth: Observation, predicted: readonly Observation[], left: readonly boolean[]): Column {
  const groups = new Map<string, { outcome: Observation; weights: Map<number, number>; twins: number[] }>();
  const matched = new Array<boolean>(predicted.length).fill(false);
  predicted.forEach((outcome, index) => {
    const key = fingerprint(outcome);
    let group = groups.get(key);
    if (!group) {
      group = { outcome, weights: new Map(), twins: [] };
      groups.set(key, group);
    }
    group.twins.push(index);
    const twin = field.twins[index];
    if (left[index] && twin) group.weights.set(twin.hypothesis, (group.weights.get(twin.hypothesis) ?? 0) + twin.weight);
  });
  for (const group of groups.values()) {
    if (observationsApart(group.outcome, truth)) continue;
    for (const index of group.twins) matched[index] = true;
  }
  const alive: Prediction<Observation>[] = [...groups.values()].filter((group) => group.weights.size > 0);
  return { matched, predicted, gainBits: expectedGainBits(alive, observationsApart), eventful: false };
}

/** Hypotheses with a twin left. */
export function survivors(field: Field, left: readonly boolean[]): ReadonlySet<number> {
  const alive = new Set<number>();
  field.twins.forEach((twin, index) => {
    if (left[index]) alive.add(twin.hypothesis);
  });
  return alive;
}

/** Probability of each hypothesis given who is left. */
export function posterior(field: Field, left: readonly boolean[]): ReadonlyMap<number, number> {
  const weights = new Map<number, number>();
  let total = 0;
  field.twins.forEach((twin, index) => {
    if (!left[index]) return;
    total += twin.weight;
    weights.set(twin.hypothesis, (weights.get(twin.hypothesis) ?? 0) + twin.weight);
  });
  for (const [hypothesis, weight] of weights) weights.set(hypothesis, weight / total);
  return weights;
}
