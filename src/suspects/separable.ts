import { type Bench, createBench } from '../attempt/bench.ts';
import type { HistoryAct } from '../attempt/job.ts';
import { assemble } from '../rig/assemble.ts';
import type { RigData } from '../rig/schema.ts';
import { hypothesesOf, type Naming } from './hypotheses.ts';
import { type Reached, reach, testsAt } from './library.ts';
import { callersOf } from './route.ts';
import { accusedBy } from './shortWay.ts';
import { goBack, takeSnapshot } from './snapshot.ts';
import { liftStands, standsOf } from './stands.ts';

/** Seconds for which each call stands before somebody comes; long enough for what follows it to have followed. */
const STORY_SECONDS = 600;

/** How far a rig's faults can be told apart at all. */
export interface Separable {
  /** Single faults, by name. */
  readonly count: number;
  /** Faults that some test tells from every other, and from a sound system. */
  readonly alone: number;
  /** Faults that nothing tells apart, two or more together. */
  readonly classes: readonly (readonly Naming[])[];
  /** Faults that nothing tells from a sound system. */
  readonly unseen: readonly Naming[];
}

interface Twin {
  /** Place in the list of names; the last is a sound system. */
  readonly hypothesis: number;
  readonly bench: Bench;
  readonly weight: number;
}

/** Faults of a rig that some test tells apart, over every call of every part that can call. Takes minutes. */
export function separableFaults(rig: RigData): Separable {
  const assembly = assemble(rig);
  const hypotheses = hypothesesOf(rig);
  const sound = hypotheses.length;
  let classes: number[][] = [[...hypotheses.keys(), sound]];
  for (const history of storiesOf(
    createBench(assembly, [], { weather: {}, complaint: { history: [], observed: [], works: [] } }),
  )) {
    const job = { weather: {}, complaint: { history, observed: [], works: [] } };
    const twins = [
      ...hypotheses.flatMap(({ members }, hypothesis) => members.map((faults) => ({ hypothesis, faults }))),
      { hypothesis: sound, faults: [] },
    ]
      .filter(({ hypothesis }) => classes.some((each) => each.length > 1 && each.includes(hypothesis)))
      .map(({ hypothesis, faults }): Twin => ({ hypothesis, bench: createBench(assembly, faults, job), weight: 1 }));
    const guide = createBench(assembly, [], job);
    for (const reached of reach(guide, standsOf(guide))) classes = classes.flatMap((each) => split(guide, twins, each, reached));
    classes = classes.flatMap((each) => {
      if (each.length < 2) return [each];
      const accused = new Set(each.flatMap((hypothesis) => accusedBy(hypotheses[hypothesis]?.naming)));
      return reach(guide, liftStands(guide, accused)).reduce(
        (parts, reached) => parts.flatMap((part) => split(guide, twins, part, reached)),
        [each],
      );
    });
  }
  const namings = (each: readonly number[]) => each.flatMap((hypothesis) => hypotheses[hypothesis]?.naming ?? []);
  const shared = classes.filter((each) => each.length > 1);
  return {
    count: hypotheses.length,
    alone: classes.filter((each) => each.length === 1 && each[0] !== sound).length,
    classes: shared.filter((each) => !each.includes(sound)).map(namings),
    unseen: namings(shared.find((each) => each.includes(sound)) ?? []),
  };
}

/** Each call of each caller, and then a while. */
function storiesOf(bench: Bench): HistoryAct[][] {
  return callersOf(bench).flatMap((caller) =>
    (caller.kind.calls ?? []).map(({ acts }): HistoryAct[] => [
      ...acts.map(
        ({ control, value }): HistoryAct =>
          typeof value === 'number'
            ? { name: 'set', part: caller.id, control, value }
            : { name: 'operate', part: caller.id, control, position: value },
      ),
      { name: 'wait', seconds: STORY_SECONDS },
    ]),
  );
}

/** A class as some stand's tests part it: again and again, since few are told apart where many lie in a chain between them. */
function split(guide: Bench, twins: readonly Twin[], members: readonly number[], reached: Reached): number[][] {
  if (members.length < 2) return [[...members]];
  const own = twins.filter((twin) => members.includes(twin.hypothesis));
  const homes = own.map(({ bench }) => takeSnapshot(bench));
  const tests = testsAt(guide, own, reached);
  own.forEach(({ bench }, index) => {
    const home = homes[index];
    if (home) goBack(bench, home);
  });
  for (const { outcomes } of tests) {
    const parts = partsBy(own, members, outcomes);
    if (parts.length > 1) return parts.flatMap((part) => split(guide, twins, part, reached));
  }
  return [[...members]];
}

/** Names that share an outcome, directly or through others, stay together. */
function partsBy(own: readonly Twin[], members: readonly number[], outcomes: Int32Array): number[][] {
  const parts: { readonly names: Set<number>; readonly outcomes: Set<number> }[] = [];
  for (const name of members) {
    const shown = new Set(own.flatMap((twin, index) => (twin.hypothesis === name ? [outcomes[index] ?? 0] : [])));
    const touching = parts.filter((part) => [...shown].some((outcome) => part.outcomes.has(outcome)));
    for (const part of touching) parts.splice(parts.indexOf(part), 1);
    parts.push({
      names: new Set([name, ...touching.flatMap((part) => [...part.names])]),
      outcomes: new Set([...shown, ...touching.flatMap((part) => [...part.outcomes])]),
    });
  }
  return parts.map(({ names }) => [...names].sort((a, b) => a - b));
}
