/** An item's circuit, put together anew from its scene and solved by another simulator. */
import { type Attempt, begin, perform } from '../../src/attempt/attempt.ts';
import { spiceBranchNames, spiceNodeNames, toSpice } from '../../src/circuit/spice.ts';
import type { Item } from '../../src/drills/item.ts';
import type { Scene } from '../../src/drills/scene.ts';
import { layHouse } from '../../src/rig/house.ts';
import { runSpice, type SpicePhasor } from '../reference/ngspice.ts';
import { library } from '../scenario/shipped.ts';

/** The scene as an attempt that was walked through step by step. */
export function walked({ rig, house, weather, tools, history, faults, actions }: Scene): Attempt {
  const complaint = { history, observed: [], works: [] };
  const attempt = begin({ id: 'drill', rig, faults, weather, tools, complaint }, layHouse(library.rigs.get(rig)!, house));
  for (const action of actions) {
    const outcome = perform(attempt, action);
    if (!outcome.ok) throw new Error(`${outcome.refusal.code}: ${JSON.stringify(action)}`);
  }
  return attempt;
}

export interface Solved {
  /** Volts from b to a. */
  ac(a: string, b: string): SpicePhasor;
  dc(a: string, b: string): number;
  /** Amps of a branch by its place in the network, or the first of the name that the network gives it. */
  amps(branch: string | number): SpicePhasor;
}

/** @param extra lines for the deck, given the deck's name of a point: what somebody puts across the circuit */
export async function solvedBySpice(
  attempt: Attempt,
  extra: (node: (point: string) => string) => string[] = () => [],
): Promise<Solved> {
  const { wiring, values, assembly } = attempt.bench.world;
  const { topology } = wiring;
  const names = spiceNodeNames(topology);
  const node = (point: string) => names[wiring.nodeOf.get(point)!]!;
  const deck = toSpice(topology, values, assembly.rig.hertz, 'drill', { ammeters: true });
  const result = await runSpice(deck.replace(/^\.op$/m, [...extra(node), '.op'].join('\n')));
  const branches = spiceBranchNames(topology);
  return {
    ac: (a, b) => {
      const [x, y] = [result.ac.get(node(a))!, result.ac.get(node(b))!];
      return { re: x.re - y.re, im: x.im - y.im };
    },
    dc: (a, b) => result.op.get(node(a))! - result.op.get(node(b))!,
    amps: (branch) => {
      const place = typeof branch === 'number' ? branch : topology.branches.findIndex(({ name }) => name === branch);
      return result.acAmps.get(`vamps__${branches[place]}`)!;
    },
  };
}

export const abs = ({ re, im }: SpicePhasor): number => Math.hypot(re, im);

/** The value of a quantity that an item says somewhere. */
export function quantityIn({ given, why }: Pick<Item, 'given' | 'why'>, name: string): number {
  const said = [...given, ...why].map(({ values }) => values[name]).find((each) => each !== undefined);
  if (said?.is !== 'quantity' && said?.is !== 'number') throw new Error(`no ${name}`);
  return said.value;
}

export function choiceValue({ choices }: Item, index: number): number {
  const said = choices[index]?.said;
  if (said?.is !== 'quantity') throw new Error('no quantity');
  return said.value;
}

/** Nothing is nearer to what another simulator found than this, but what is right: a share of the larger. */
const APART = 0.05;

/** Wrong choices that another simulator would call right. */
export function nearlyRight(item: Item, found: number): number[] {
  return item.choices
    .map((_, index) => choiceValue(item, index))
    .filter((value, index) => index !== item.right && Math.abs(value - found) < APART * Math.max(Math.abs(value), Math.abs(found)));
}
