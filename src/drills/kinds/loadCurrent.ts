import { readClamp } from '../../meter/read.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import type { Random } from '../../scenario/variant.ts';
import { ampsThrough } from '../../world/world.ts';
import type { Draft, DrillKind, Misconception } from '../item.ts';
import { type Amps, drawsOf, type Load, sizeOf } from '../loads.ts';
import { loadsOf } from '../loops.ts';
import { saidApart } from '../said.ts';
import { confirmed, drawWorked, mistakes, ofPeak, quantity, type Worked } from '../sums.ts';

/** The current of one coil; of loads side by side as a clamp shows it; what flows by a clamp through which a conductor passes several times. */
const FORMS = ['coil', 'coil', 'clamp', 'clamp', 'turns'] as const;

/** A coil whose reactance is less than this share of its resistance is a resistor to anybody's sum. */
const LEAST_REACTANCE = 0.4;
/** Less than this is read with turns or not at all, amps. */
const LEAST_AMPS = 0.1;
/** What a control circuit's coil is not on, volts. */
const LINE_VOLTS = 120;
/** How often a conductor passes through the jaw. */
const TURNS = [3, 4, 5, 6, 8, 10] as const;

/** How much current flows? */
export const loadCurrent: DrillKind = {
  id: 'loadCurrent',
  skill: 'sums',
  choices: 4,
  draft: (setting, random) => {
    const worked = drawWorked(setting, random);
    const form = pick(random, FORMS);
    if (!worked || !form) return undefined;
    return { coil: ofCoil, clamp: ofClamp, turns: ofTurns }[form](worked, random);
  },
};

/** Impedance of resistance and reactance in one coil: the sides of a right triangle. */
function ofCoil({ fed, scene, given }: Worked, random: Random): Draft | undefined {
  const load = pick(
    random,
    fed.loads.filter(({ ohms, reactance, amps }) => reactance > LEAST_REACTANCE * ohms && sizeOf(amps) > LEAST_AMPS),
  );
  if (!load) return undefined;
  const { volts, ohms, reactance } = load;
  const impedance = Math.hypot(ohms, reactance);
  const amps = volts / impedance;
  if (!confirmed(amps, sizeOf(load.amps))) return undefined;
  const wrong = mistakes('A', [
    ['resistanceForImpedance', volts / ohms],
    ['addedStraight', volts / (ohms + reactance)],
    ['lineSide', LINE_VOLTS / impedance],
    ...ofPeak(amps),
    ['ampsForVoltAmps', volts * amps],
  ]);
  const part = { is: 'part', part: load.part } as const;
  const shown = { volts: quantity(volts, 'V'), ohms: quantity(ohms, 'Ω'), reactance: quantity(reactance, 'Ω') };
  return {
    scene,
    ask: { key: 'coil', values: { part } },
    given: [
      ...given,
      { key: 'volts', values: { part, volts: shown.volts } },
      { key: 'coil', values: { ohms: shown.ohms, reactance: shown.reactance } },
    ],
    marked: [load.from, load.to],
    right: quantity(amps, 'A'),
    wrong: shuffled(random, wrong),
    why: [
      { key: 'impedance', values: { ohms: shown.ohms, reactance: shown.reactance, impedance: quantity(impedance, 'Ω') } },
      { key: 'ohm', values: { volts: shown.volts, impedance: quantity(impedance, 'Ω'), amps: quantity(amps, 'A') } },
    ],
  };
}

interface Carrying {
  readonly wire: string;
  readonly amps: Amps;
  readonly loads: readonly Load[];
}

/** Wires around which a clamp sees some of the loads, and nothing else. */
function carryingOf({ bench, fed }: Worked): Carrying[] {
  const { assembly, wiring } = bench.world;
  return assembly.wires.flatMap((wire): Carrying[] => {
    if (wire.data.pin || wire.data.fixed) return [];
    const amps = ampsThrough(bench.world, wiring.wires[wire.index]?.body ?? 0);
    const loads = sizeOf(amps) < LEAST_AMPS ? undefined : loadsOf(fed, amps);
    return loads ? [{ wire: wire.id, amps, loads }] : [];
  });
}

const pointsOf = ({ bench }: Worked, id: string): string[] => {
  const wire = bench.world.assembly.wireById.get(id);
  return wire ? [wire.data.from, wire.data.to] : [];
};

function ofClamp(worked: Worked, random: Random): Draft | undefined {
  const { fed, scene, given } = worked;
  const carrying = pick(
    random,
    carryingOf(worked).filter(({ loads }) => drawsOf(loads).length > 1),
  );
  if (!carrying) return undefined;
  const draws = drawsOf(carrying.loads);
  const sum = draws.reduce((all, { amps }) => all + amps, 0);
  // What is out of step comes to less than the sum: then this is no sum by hand.
  if (!confirmed(sum, sizeOf(carrying.amps))) return undefined;
  const inSeries = fed.volts / draws.reduce((all, { amps }) => all + fed.volts / amps, 0);
  const forgotten = shuffled(random, draws).map(({ amps }) => ['loadLeftOut', sum - amps] as const);
  const beliefs: (readonly [Misconception, number])[] = [...forgotten, ...ofPeak(sum), ['ampsForVoltAmps', sum * fed.volts]];
  const right = quantity(sum, 'A');
  return {
    scene,
    ask: { key: 'clamp', values: { wire: { is: 'wire', wire: carrying.wire } } },
    given: [
      ...given,
      ...draws.map(({ part, amps }) => ({
        key: 'load',
        values: { part: { is: 'part', part }, amps: quantity(amps, 'A') } as const,
      })),
    ],
    marked: pointsOf(worked, carrying.wire),
    right,
    wrong: [...mistakes('A', [['seriesForParallel', inSeries]]), ...shuffled(random, mistakes('A', beliefs))],
    why: [{ key: 'sum', values: { amps: right, wire: { is: 'wire', wire: carrying.wire } } }],
  };
}

function ofTurns(worked: Worked, random: Random): Draft | undefined {
  const carrying = pick(random, carryingOf(worked));
  const turns = pick(random, TURNS);
  if (!carrying || turns === undefined) return undefined;
  const shown = readClamp([carrying.amps], turns).value;
  const amps = shown / turns;
  if (!confirmed(amps, sizeOf(carrying.amps))) return undefined;
  const wire = { is: 'wire', wire: carrying.wire } as const;
  const said = { turns: { is: 'number', value: turns }, shown: quantity(shown, 'A'), amps: quantity(amps, 'A') } as const;
  const wrong = mistakes('A', [
    ['turnsForgotten', shown],
    ['turnsTheOtherWay', shown * turns],
    ['turnsMiscounted', shown / (turns - 1)],
    ['turnsTwice', amps / 2],
    ['turnsTwice', amps / turns],
    ...ofPeak(amps),
  ]);
  return {
    scene: worked.scene,
    ask: { key: 'turns', values: { wire } },
    given: [...worked.given, { key: 'turns', values: { turns: said.turns, shown: said.shown } }],
    marked: pointsOf(worked, carrying.wire),
    right: said.amps,
    wrong: shuffled(random, wrong).filter((each) => saidApart(each.said, said.amps)),
    why: [{ key: 'turns', values: { shown: said.shown, turns: said.turns, amps: said.amps } }],
  };
}
