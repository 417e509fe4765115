import { arrive } from '../attempt/attempt.ts';
import { type Bench, createBench } from '../attempt/bench.ts';
import { assemble } from '../rig/assemble.ts';
import type { Fault } from '../rig/faults.ts';
import { layHouse } from '../rig/house.ts';
import { pick } from '../scenario/random.ts';
import { drawVariant, type Random } from '../scenario/variant.ts';
import type { Draft, Misconception, Sentence } from './item.ts';
import { type Fed, fedOf } from './loads.ts';
import { faultSaid, standingSaid } from './places.ts';
import type { QuantityUnit, Said } from './said.ts';
import type { Scene } from './scene.ts';
import type { Setting } from './setting.ts';

/** Cables that a sum is asked of: longer than in most houses, so that there is something to lose in them; common practice, no source. */
const FEET = { from: 20, to: 300 } as const;
export const GAUGES = [16, 18, 18, 20, 22] as const;
/** How often an armature is stuck, so that its coil draws what it draws before it seats. */
const JAMMED_SHARE = 0.35;

/** A house with cables of its own, its call, and a supply at work in it: what a sum is asked about. */
export interface Worked {
  readonly bench: Bench;
  readonly fed: Fed;
  readonly scene: Scene;
  /** What the question tells of them. */
  readonly given: readonly Sentence[];
}

/** Draws other cables and another call in this house; undefined where nothing is fed. */
export function drawWorked(setting: Setting, random: Random): Worked | undefined {
  const drawn = Object.fromEntries(
    setting.rig.cables.map(({ id }) => {
      const feet = FEET.from + Math.floor(random() * (FEET.to - FEET.from + 1));
      return [id, { feet, awg: pick(random, GAUGES) }];
    }),
  );
  const cables = { ...setting.variant.house.cables, ...drawn };
  const rig = layHouse(setting.rig, { cables });
  const { weather, history } = drawVariant(rig, random);
  const faults = random() < JAMMED_SHARE ? jammed(setting, random) : [];
  const house = { ...setting.variant.house, cables };
  const scene = { ...setting.scene(faults, []), house, weather, history, tools: undefined };
  const bench = createBench(assemble(rig), faults, { weather, tools: undefined, complaint: { history, observed: [], works: [] } });
  arrive(bench);
  const fed = pick(
    random,
    fedOf(bench).filter(({ loads }) => loads.length > 0),
  );
  // A stuck armature of a coil that nothing calls for is beside the question.
  if (!fed || !faults.every(({ target }) => fed.loads.some(({ part }) => part === target))) return undefined;
  const standing = standingSaid({ ...setting, variant: { ...setting.variant, history } });
  const given: Sentence[] = [
    { key: 'fault', values: { fault: faultSaid(setting, faults) } },
    { key: 'standing', values: { standing } },
  ];
  return { bench, fed, scene, given };
}

/** Some contactor or relay whose armature does not move; nothing where there is none. */
function jammed({ assembly }: Setting, random: Random): readonly Fault[] {
  const part = pick(
    random,
    assembly.parts.filter(({ kind }) => kind.modes.some(({ id }) => id === 'jammed')),
  );
  return part ? [{ target: part.id, mode: 'jammed', magnitude: 0 }] : [];
}

export const quantity = (value: number, unit: QuantityUnit): Said => ({ is: 'quantity', value, unit });

/** Wrong answers of one unit, each with the belief that leads to it. */
export const mistakes = (unit: QuantityUnit, beliefs: readonly (readonly [Misconception, number])[]): Draft['wrong'] =>
  beliefs.map(([misconception, value]) => ({ said: quantity(value, unit), misconception }));

/** Peak for effective value, and effective value taken once more of what is one already. */
export const ofPeak = (right: number): (readonly [Misconception, number])[] => [
  ['peak', right * Math.SQRT2],
  ['effectiveTwice', right * Math.SQRT1_2],
];

/** A sum by hand and the solved circuit, which rounds nothing and knows every joint: nearer than this share they are one. */
const CONFIRMED_SHARE = 0.02;

export const confirmed = (byHand: number, solved: number): boolean =>
  Math.abs(byHand - solved) <= CONFIRMED_SHARE * Math.abs(solved);
