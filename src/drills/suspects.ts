import type { Action } from '../attempt/actions.ts';
import { arrive } from '../attempt/attempt.ts';
import type { Bench } from '../attempt/bench.ts';
import { signsOf } from '../attempt/notices.ts';
import type { Fault } from '../rig/faults.ts';
import type { Group, Population } from '../scenario/population.ts';
import type { Naming } from '../suspects/hypotheses.ts';
import { goBack } from '../suspects/snapshot.ts';
import type { Sentence } from './item.ts';
import { faultsOf, standingSaid } from './places.ts';
import type { Setting } from './setting.ts';

/** A fault that a question may name, in a world of its own. */
export interface Suspect {
  readonly naming: Naming;
  /** How common it is, beside the others of its company. */
  readonly weight: number;
  readonly faults: readonly Fault[];
  /** Its bench as somebody arrives; the same each time, back where it stood. */
  arrive(): Bench;
}

/** Faults of which the customer tells the same, those whose name says all of it: no suspect has a magnitude. */
export interface Company {
  /** What the customer tells: each sign that is not as it should be. */
  readonly complaint: readonly Sentence[];
  readonly suspects: readonly Suspect[];
}

const known = new WeakMap<Setting, readonly Company[]>();

/** The companies of a house, of two and more. */
export function companiesOf(setting: Setting): readonly Company[] {
  const found = known.get(setting);
  if (found) return found;
  const population = setting.population();
  const plain = new Set(faultsOf(setting).flatMap(({ naming, members }) => (members.length === 1 ? [keyOf(naming)] : [])));
  const companies = population.groups
    .map((group): Company => ({ complaint: complaintOf(population, group), suspects: suspectsOf(group, plain) }))
    .filter(({ suspects }) => suspects.length > 1);
  known.set(setting, companies);
  return companies;
}

/** How controls stand after these steps, and what the customer tells. */
export const circumstances = (setting: Setting, { complaint }: Company, steps: readonly Action[]): Sentence[] => [
  { key: 'standing', values: { standing: standingSaid(setting, steps) } },
  ...complaint,
];

const keyOf = ({ target, mode }: Naming) => `${target} ${mode}`;

function suspectsOf({ ground, faults }: Group, plain: ReadonlySet<string>): Suspect[] {
  return ground.field.twins.flatMap(({ hypothesis, bench, weight }, index): Suspect[] => {
    const naming = ground.field.hypotheses[hypothesis];
    const home = ground.homes[index];
    const own = faults[index];
    if (!naming || !home || !own || !plain.has(keyOf(naming))) return [];
    return [
      {
        naming,
        weight,
        faults: own,
        arrive: () => {
          goBack(bench, home);
          arrive(bench);
          return bench;
        },
      },
    ];
  });
}

function complaintOf({ sound }: Population, { observed, works }: Group): Sentence[] {
  return observed.flatMap(({ part: id, sign: key, is: value }): Sentence[] => {
    const part = sound.world.assembly.partById.get(id);
    const sense = part && signsOf(sound, part).find((sign) => sign.key === key)?.sense;
    if (sense === undefined || !works.some((each) => each.part === id && each.sign === key)) return [];
    return [{ key: 'complaint', values: { notice: { is: 'notice', notice: { part: id, key, value, sense } } } }];
  });
}
