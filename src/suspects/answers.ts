import { type Bench, createBench } from '../attempt/bench.ts';
import type { Job } from '../attempt/job.ts';
import type { Twin } from './field.ts';
import { type Ground, standOn } from './ground.ts';
import { type Naming, sameNaming } from './hypotheses.ts';
import { type Reached, reach, testsAt } from './library.ts';
import { accusedBy } from './shortWay.ts';
import { liftStands, standsOf } from './stands.ts';

/**
 * Which of these hypotheses nothing that can be done on this rig tells from one of them: its answer class, so that naming any of its
 * members is right. Looked for from arrival, through every stand, until something tells them apart. The ground is left as on arrival.
 */
export function alikeTo(job: Job, ground: Ground, named: Naming, among: readonly Naming[]): Naming[] {
  const asked = JSON.stringify([named, among]);
  const answers = known.get(ground) ?? new Map<string, Naming[]>();
  known.set(ground, answers);
  const answer = answers.get(asked) ?? lookForAlike(job, ground, named, among);
  answers.set(asked, answer);
  return answer;
}

/** What was found before on a ground: attempts at a ticket mostly end with the same few suspects. */
const known = new WeakMap<Ground, Map<string, Naming[]>>();

function lookForAlike(job: Job, ground: Ground, named: Naming, among: readonly Naming[]): Naming[] {
  if (among.every((other) => sameNaming(other, named))) return [];
  const field = standOn(ground);
  const namingOfTwin = (twin: Twin) => field.hypotheses[twin.hypothesis];
  const own = field.twins.filter((twin) => sameTwin(namingOfTwin(twin), named));
  if (own.length === 0) return [];
  const guide = createBench(ground.assembly, job.faults, job);
  let open = among.filter((other) => !sameNaming(other, named));
  const sift = (reached: readonly Reached[]): void => {
    for (const each of reached) {
      if (open.length === 0) return;
      const others = field.twins.filter((twin) => open.some((naming) => sameTwin(namingOfTwin(twin), naming)));
      const apart = toldApartAt(guide, own, others, each);
      open = open.filter((naming) => !others.every((twin, index) => !sameTwin(namingOfTwin(twin), naming) || apart[index]));
    }
  };
  sift(reach(guide, standsOf(guide)));
  const accused = new Set([named, ...open].flatMap(accusedBy));
  if (open.length > 0) sift(reach(guide, liftStands(guide, accused)));
  return open;
}

function sameTwin(naming: Naming | undefined, other: Naming): boolean {
  return naming !== undefined && sameNaming(naming, other);
}

/** Of each other twin: whether some test at a stand tells it from all of one's own. */
function toldApartAt(guide: Bench, own: readonly Twin[], others: readonly Twin[], reached: Reached): boolean[] {
  const tests = testsAt(guide, [...own, ...others], reached);
  return others.map((_, index) =>
    own.every((__, mine) => tests.some(({ outcomes }) => outcomes[mine] !== outcomes[own.length + index])),
  );
}
