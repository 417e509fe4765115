import { pick, shuffled } from '../../scenario/random.ts';
import type { Random } from '../../scenario/variant.ts';
import type { Draft, DrillKind, Misconception } from '../item.ts';
import { drawsOf, sizeOf, sumOf } from '../loads.ts';
import { saidApart } from '../said.ts';
import { drawWorked, mistakes, ofPeak, quantity, type Worked } from '../sums.ts';

/** VA taken, their share of the plate, and what the plate leaves. */
const FORMS = ['voltAmps', 'voltAmps', 'share', 'share', 'spare'] as const;
type Form = (typeof FORMS)[number];

/** What the loads that are told leave untold of a supply's current is less than this share. */
const UNTOLD_SHARE = 0.05;

/** How many VA are asked for? */
export const vaSum: DrillKind = {
  id: 'vaSum',
  skill: 'sums',
  choices: 4,
  draft: (setting, random) => {
    const worked = drawWorked(setting, random);
    const form = pick(random, FORMS);
    if (!worked || !form) return undefined;
    const { fed } = worked;
    const told = sizeOf(sumOf(fed.loads.map(({ amps }) => amps)));
    if (drawsOf(fed.loads).length < 2 || Math.abs(told - fed.amps) > UNTOLD_SHARE * fed.amps) return undefined;
    return draftOf(worked, form, random);
  },
};

function draftOf({ bench, fed, scene, given }: Worked, form: Form, random: Random): Draft | undefined {
  const { volts, rated } = fed;
  const draws = drawsOf(fed.loads);
  const amps = draws.reduce((sum, each) => sum + each.amps, 0);
  // More than is told: small loads beside these.
  if (fed.amps > amps) return undefined;
  const voltAmps = volts * amps;
  const unit = form === 'share' ? '%' : 'VA';
  const answer = (taken: number): number => (form === 'share' ? (100 * taken) / rated : form === 'spare' ? rated - taken : taken);
  // A transformer that is nearly full leaves nothing that a sum by hand would find again.
  if (form === 'spare' && voltAmps > rated / 2) return undefined;
  const line = bench.world.assembly.partById.get(fed.part)?.params.primaryVolts;
  const beliefs: (readonly [Misconception, number])[] = [
    ['ampsForVoltAmps', answer(amps)],
    ['plateForLoad', answer(rated)],
    ...(form === 'spare'
      ? [['lossForRest', voltAmps] as const]
      : ofPeak(voltAmps).map(([belief, value]) => [belief, answer(value)] as const)),
    ...(typeof line === 'number' && form !== 'spare' ? [['lineSide', answer(line * amps)] as const] : []),
  ];
  const forgotten = shuffled(random, draws).map((each) => ['loadLeftOut', answer(volts * (amps - each.amps))] as const);
  // Currents out of step with one another come to less than their sum: nothing that is wrong may be what a clamp would say.
  const solved = quantity(answer(volts * fed.amps), unit);
  const wrong = shuffled(random, mistakes(unit, [...beliefs, ...forgotten.slice(0, 2)]));
  const told = {
    volts: quantity(volts, 'V'),
    rated: quantity(rated, 'VA'),
    amps: quantity(amps, 'A'),
    voltAmps: quantity(voltAmps, 'VA'),
    right: quantity(answer(voltAmps), unit),
  };
  return {
    scene,
    ask: { key: form, values: { supply: { is: 'part', part: fed.part } } },
    given: [
      ...given,
      { key: 'supply', values: { supply: { is: 'part', part: fed.part }, volts: told.volts, rated: told.rated } },
      ...draws.map((each) => ({
        key: 'load',
        values: { part: { is: 'part', part: each.part }, amps: quantity(each.amps, 'A') } as const,
      })),
    ],
    marked: [fed.hot, fed.common],
    right: told.right,
    wrong: wrong.filter((each) => saidApart(each.said, solved)),
    why: [
      { key: 'sum', values: { amps: told.amps, volts: told.volts, voltAmps: told.voltAmps } },
      ...(form === 'voltAmps' ? [] : [{ key: form, values: { voltAmps: told.voltAmps, rated: told.rated, right: told.right } }]),
      { key: 'clamp', values: { clamp: quantity(fed.amps, 'A'), amps: told.amps } },
    ],
  };
}
