import { act, type Observation } from '../attempt/act.ts';
import type { Action } from '../attempt/actions.ts';
import { arrive } from '../attempt/attempt.ts';
import { type Bench, createBench } from '../attempt/bench.ts';
import type { Job } from '../attempt/job.ts';
import type { Notice } from '../attempt/view.ts';
import type { Reading } from '../meter/read.ts';
import { observationsApart } from './apart.ts';
import { arriveField } from './field.ts';
import { type Ground, standOn } from './ground.ts';
import type { Naming } from './hypotheses.ts';
import type { Candidate } from './library.ts';
import { nextTest } from './shortWay.ts';
import { goBack, takeSnapshot } from './snapshot.ts';

/** The reference way over all that could be wrong: what to test, and what next by what it shows. */
export type WayTree =
  | { readonly kind: 'answer'; readonly namings: readonly Naming[]; readonly share: number }
  | {
      readonly kind: 'test';
      readonly actions: readonly Action[];
      readonly seconds: number;
      readonly gainBits: number;
      readonly share: number;
      readonly branches: readonly WayBranch[];
    };

export interface WayBranch {
  /** What the meter says at the end of the test. */
  readonly reading: Reading | undefined;
  /** What would be noticed that not every branch would notice. */
  readonly notices: readonly Notice[];
  readonly next: WayTree;
}

/** Deeper than this the tree is not drawn; nobody's patience is longer. */
const MOST_DEPTH = 12;

/** The short way as a tree, from arrival, whatever the fault is. Takes some seconds; the ground is left as on arrival. */
export function wayTree(job: Job, ground: Ground): WayTree {
  const field = standOn(ground);
  const guide = createBench(ground.assembly, job.faults, job);
  const seen = arriveField(field, arrive(guide));
  const candidates = field.twins.filter((_, index) => seen.matched[index]);
  const tree = grow(guide, candidates, field.hypotheses, 0);
  standOn(ground);
  return tree;
}

function grow(guide: Bench, candidates: readonly Candidate[], namings: readonly Naming[], depth: number): WayTree {
  const share = candidates.reduce((sum, { weight }) => sum + weight, 0);
  const next = depth < MOST_DEPTH ? nextTest(guide, candidates, namings) : undefined;
  if (!next) {
    const left = [...new Set(candidates.map(({ hypothesis }) => hypothesis))];
    return { kind: 'answer', share, namings: left.flatMap((hypothesis) => namings[hypothesis] ?? []) };
  }
  const { actions, seconds } = next.test;
  const home = takeSnapshot(guide);
  const homes = candidates.map(({ bench }) => takeSnapshot(bench));
  for (const action of actions) act(guide, action);
  const shown = candidates.map(({ bench }) => actions.map((action) => act(bench, action).observation));
  const groups = groupAlike(shown);
  const tree: WayTree =
    groups.length < 2
      ? {
          kind: 'answer',
          share,
          namings: [...new Set(candidates.map(({ hypothesis }) => hypothesis))].flatMap((hypothesis) => namings[hypothesis] ?? []),
        }
      : {
          kind: 'test',
          actions,
          seconds,
          gainBits: next.gainBits,
          share,
          branches: groups.map((group) => ({
            ...told(shown, groups, group),
            next: grow(
              guide,
              group.flatMap((index) => candidates[index] ?? []),
              namings,
              depth + 1,
            ),
          })),
        };
  goBack(guide, home);
  candidates.forEach(({ bench }, index) => {
    const back = homes[index];
    if (back) goBack(bench, back);
  });
  return tree;
}

/** Candidates that showed what an eye does not tell apart, directly or through others, heaviest group first kept in order of coming up. */
function groupAlike(shown: readonly (readonly Observation[])[]): number[][] {
  const groups: number[][] = [];
  const placed = new Set<number>();
  shown.forEach((_, seed) => {
    if (placed.has(seed)) return;
    const group: number[] = [];
    const queue = [seed];
    placed.add(seed);
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      group.push(at);
      shown.forEach((other, index) => {
        const one = shown[at as number];
        if (
          placed.has(index) ||
          !one ||
          other.some((observation, step) => observationsApart(observation, one[step] as Observation))
        )
          return;
        placed.add(index);
        queue.push(index);
      });
    }
    groups.push(group.sort((a, b) => a - b));
  });
  return groups;
}

/** What a group shows that says it is this one: the reading in the end, and the notices that not all groups share. */
function told(
  shown: readonly (readonly Observation[])[],
  groups: readonly number[][],
  group: readonly number[],
): Pick<WayBranch, 'reading' | 'notices'> {
  const noticesOf = (index: number | undefined) => (shown[index ?? -1] ?? []).flatMap((observation) => observation.notices);
  const text = ({ part, key, value }: Notice) => `${part}.${key}=${value}`;
  const everywhere = groups.map((each) => new Set(noticesOf(each[0]).map(text)));
  const own = noticesOf(group[0]).filter((notice) => !everywhere.every((others) => others.has(text(notice))));
  return { reading: shown[group[0] ?? -1]?.at(-1)?.reading, notices: own };
}
