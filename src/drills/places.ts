import { reachablePoints } from '../attempt/access.ts';
import type { Action } from '../attempt/actions.ts';
import type { Bench } from '../attempt/bench.ts';
import type { HistoryAct } from '../attempt/job.ts';
import type { MeterFunction } from '../meter/functions.ts';
import type { Assembly } from '../rig/assemble.ts';
import { elementsOf, type Supply } from '../rig/elements.ts';
import type { Fault } from '../rig/faults.ts';
import { netsOf } from '../rig/nets.ts';
import type { Point } from '../rig/points.ts';
import { type Hypothesis, hypothesesOf } from '../suspects/hypotheses.ts';
import { reach } from '../suspects/library.ts';
import { standsOf } from '../suspects/stands.ts';
import { voltsBetween } from '../world/world.ts';
import type { Said } from './said.ts';
import { type Setting, takeAll } from './setting.ts';

/** Somewhere to stand with a meter, and the way there from the door. */
export interface Spot {
  readonly way: readonly Action[];
  /** What a probe reaches there. */
  readonly points: readonly Point[];
}

const known = new WeakMap<Setting, readonly Spot[]>();

/** Everywhere in a house where two leads have somewhere to go: which way leads there does not depend on what is wrong. */
export function spotsOf(setting: Setting): readonly Spot[] {
  const found = known.get(setting);
  if (found) return found;
  const bench = setting.bench([]);
  const spots = reach(bench, standsOf(bench)).flatMap(({ way }): Spot[] => {
    const here = setting.bench([]);
    if (!takeAll(here, way)) return [];
    const points = reachablePoints(here);
    return points.length < 2 ? [] : [{ way, points }];
  });
  known.set(setting, spots);
  return spots;
}

const faultsKnown = new WeakMap<Setting, readonly Hypothesis[]>();

/** Everything that can be wrong in a house. */
export function faultsOf(setting: Setting): readonly Hypothesis[] {
  const found = faultsKnown.get(setting) ?? hypothesesOf(setting.rig);
  faultsKnown.set(setting, found);
  return found;
}

/** What is wrong, by name; a sound system where nothing is. */
export function faultSaid(setting: Setting, faults: readonly Fault[]): Said {
  const [first] = faults;
  const found = faultsOf(setting).find(({ naming }) => naming.target === first?.target && naming.mode === first.mode);
  return { is: 'fault', naming: first && found?.naming };
}

/** Leads and key for a reading, from a meter that is off and free. */
export const readingSteps = (fn: MeterFunction, red: Point, black: Point): Action[] => [
  { name: 'probe', lead: 'black', at: black },
  { name: 'probe', lead: 'red', at: red },
  { name: 'meter', fn },
];

/** The bench with these faults after these steps; undefined where one cannot be taken. It is good until the next one is asked for. */
export function benchAfter(setting: Setting, faults: readonly Fault[], steps: readonly Action[]): Bench | undefined {
  const bench = setting.bench(faults);
  return takeAll(bench, steps) ? bench : undefined;
}

/** Above this a supply is no control circuit's, volts: the limit of Class 2, NFPA 70 chapter 9 table 11(A) (from memory). */
const LOW_VOLTS = 30;

const supplied = new WeakMap<Assembly, readonly Supply[]>();

/** Where power comes from in a house. */
export function suppliesOf(assembly: Assembly): readonly Supply[] {
  const found = supplied.get(assembly) ?? elementsOf(assembly).supplies;
  supplied.set(assembly, found);
  return found;
}

/** Below this a supply is as good as dead, volts. */
const DEAD_VOLTS = 10;

/** The rails of the low-voltage supply, the first that is live where there are several, in the world of this bench. */
export function railsOf({ world }: Bench): { readonly hot: Point; readonly common: Point } | undefined {
  const supplies = suppliesOf(world.assembly);
  const node = (point: Point) => world.wiring.nodeOf.get(point) ?? 0;
  const rails = supplies.flatMap(({ rails: [hot, common] }) =>
    hot === undefined || common === undefined ? [] : [{ hot, common }],
  );
  const volts = ({ hot, common }: { hot: Point; common: Point }) => voltsBetween(world, node(hot), node(common));
  return rails.find((each) => volts(each) > DEAD_VOLTS && volts(each) < LOW_VOLTS);
}

/** How controls stand after the story and these steps, those that somebody set: the last of each. */
export function standingSaid({ variant }: Setting, steps: readonly Action[] = []): Said {
  const last = new Map<string, HistoryAct>();
  for (const act of [...variant.history, ...steps]) {
    if (act.name !== 'operate' && act.name !== 'set') continue;
    const key = `${act.part}.${act.control}`;
    last.delete(key);
    last.set(key, act);
  }
  return { is: 'acts', acts: [...last.values()] };
}

const joined = new WeakMap<Setting, (a: Point, b: Point) => boolean>();

/** Whether two points belong to one supply, whatever stands open between them: volts between two supplies are nobody's question. */
export function sameSupply(setting: Setting): (a: Point, b: Point) => boolean {
  const found = joined.get(setting);
  if (found) return found;
  const { assembly } = setting;
  const nets = netsOf(assembly.rig, elementsOf(assembly).elements);
  const together = (a: Point, b: Point) => nets.of(a) === nets.of(b);
  joined.set(setting, together);
  return together;
}
