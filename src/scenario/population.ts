/** All that can be wrong in one house after one story, lived through once, and put together by what its customer can tell. */
import { type Bench, createBench } from '../attempt/bench.ts';
import type { Observed } from '../attempt/job.ts';
import { signsOf } from '../attempt/notices.ts';
import type { Sign } from '../parts/part.ts';
import { type AssembledPart, type Assembly, assemble } from '../rig/assemble.ts';
import type { Fault } from '../rig/faults.ts';
import type { Ground } from '../suspects/ground.ts';
import { hypothesesOf, type Naming } from '../suspects/hypotheses.ts';
import { type Choose, type NextTest, nextTest } from '../suspects/shortWay.ts';
import { goBack, takeSnapshot } from '../suspects/snapshot.ts';
import { symptomOf } from './symptom.ts';
import type { Variant } from './variant.ts';

/** As many signs as a complaint names, and as many as say that it is over. */
export const MOST_OBSERVED = 10;
export const MOST_WORKS = 6;

/** Faults whose story ends alike, for all that the customer can tell. */
export interface Group {
  readonly observed: readonly Observed[];
  readonly works: readonly Observed[];
  /** What the customer of a twin would call it; the twin is put back to the end of its story. */
  readonly told: (twin: number) => ReturnType<typeof symptomOf>;
  /** Its faults as a ticket's suspects. */
  readonly ground: Ground;
  /** The faults of each twin. */
  readonly faults: readonly (readonly Fault[])[];
  /** The reference way's choices, kept: from who is left and what was done follows what comes next. */
  readonly choose: Choose;
}

export interface Population {
  readonly assembly: Assembly;
  /** A sound system at the end of the story. */
  readonly sound: Bench;
  /** Hypotheses in all. */
  readonly count: number;
  readonly groups: readonly Group[];
}

type Told = string | number | undefined;

interface Lived {
  readonly naming: Naming;
  readonly weight: number;
  readonly faults: readonly Fault[];
  readonly bench: Bench;
}

/** Lets every fault of a house live the story. */
export function populate({ rig, weather, history, tools }: Variant): Population {
  const assembly = assemble(rig);
  const job = { weather, tools, complaint: { history, observed: [], works: [] } };
  const sound = createBench(assembly, [], job);
  const hypotheses = hypothesesOf(rig);
  const lived = hypotheses.flatMap(({ naming, weight, members }): Lived[] =>
    members.map((faults) => ({
      naming,
      weight,
      faults,
      bench: createBench(assembly, faults, job),
    })),
  );
  const all = assembly.parts.flatMap((part) => plainSigns(sound, part).map((sign) => ({ part, key: sign.key })));
  const varied = (key: { part: AssembledPart; key: string }) =>
    lived.filter(({ bench }) => told(bench, key) !== told(sound, key)).length;
  const keys = all
    .map((key) => ({ key, times: varied(key) }))
    .filter(({ times }) => times > 0)
    .sort((a, b) => b.times - a.times)
    .slice(0, MOST_OBSERVED)
    .map(({ key }) => key);
  const vector = (bench: Bench) => keys.map((key) => told(bench, key));
  const should = vector(sound);
  const vectors = lived.map(({ bench }) => vector(bench));
  const groups = new Map<string, Told[]>();
  for (const each of vectors) groups.set(JSON.stringify(each.map((value) => value ?? null)), each);
  const observedOf = (values: readonly Told[]): Observed[] =>
    keys.flatMap(({ part, key }, index) => {
      const is = values[index];
      return is === undefined ? [] : [{ part: part.id, sign: key, is }];
    });
  return {
    assembly,
    sound,
    count: hypotheses.length,
    groups: [...groups.values()].flatMap((values) => {
      const members = lived.filter((_, index) =>
        values.every((value, at) => value === undefined || vectors[index]?.[at] === value),
      );
      const works = observedOf(should.map((value, index) => (value === values[index] ? undefined : value))).slice(0, MOST_WORKS);
      const complains = values.some((value, index) => value !== undefined && value !== should[index]);
      if (!complains || works.length === 0) return [];
      const gathered = gather(assembly, members);
      const { field, homes } = gathered.ground;
      return [
        {
          ...gathered,
          told: (index) => {
            const twin = field.twins[index];
            const home = homes[index];
            if (!twin || !home) throw new Error(`no twin ${index}`);
            goBack(twin.bench, home);
            return symptomOf(twin.bench, sound);
          },
          observed: observedOf(values),
          works,
        },
      ];
    }),
  };
}

/** What a customer can tell of a part: all on the wall, what goes on running, and what shows of that which brings the heat. */
export function plainSigns(bench: Bench, part: AssembledPart): Sign[] {
  const { rig } = bench.world.assembly;
  const sources = new Set(rig.rooms.flatMap((room) => room.sources.map((source) => source.part)));
  return signsOf(bench, part).filter((sign) => {
    if (sign.minor === true || sign.quiet === true || sign.sense === 'inspect') return false;
    if (part.kind.calls !== undefined) return sign.sense === 'see';
    if (sign.sense === 'hear') return part.kind.sounds?.lasting?.[sign.key] !== undefined;
    return sign.through === true && sources.has(part.id);
  });
}

function told(bench: Bench, { part, key }: { readonly part: AssembledPart; readonly key: string }): Told {
  return signsOf(bench, part).find((sign) => sign.key === key)?.value;
}

function gather(assembly: Assembly, members: readonly Lived[]): Pick<Group, 'ground' | 'faults' | 'choose'> {
  const hypotheses = [...new Set(members.map(({ naming }) => naming))];
  const weights = hypotheses.map((naming) => members.find((each) => each.naming === naming)?.weight ?? 0);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const priors = weights.map((weight) => weight / total);
  const twins = members.map(({ naming, bench }) => {
    const hypothesis = hypotheses.indexOf(naming);
    const brothers = members.filter((each) => each.naming === naming).length;
    return { hypothesis, bench, weight: (priors[hypothesis] ?? 0) / brothers };
  });
  const kept = new Map<string, NextTest | undefined>();
  const choose: Choose = (alive, done, truth) => {
    const key = `${alive.join()} ${JSON.stringify(done)}`;
    if (kept.has(key)) return kept.get(key);
    const next = nextTest(
      truth,
      alive.flatMap((index) => twins[index] ?? []),
      hypotheses,
    );
    kept.set(key, next);
    return next;
  };
  const ground = { assembly, field: { hypotheses, priors, twins }, homes: twins.map(({ bench }) => takeSnapshot(bench)) };
  return { ground, faults: members.map(({ faults }) => faults), choose };
}
