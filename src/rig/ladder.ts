import type { Assembly } from './assemble.ts';
import { type Element, type ElementKind, elementsOf, type Supply } from './elements.ts';
import { type Nets, netsOf } from './nets.ts';
import type { Point } from './points.ts';
import type { RigWire } from './schema.ts';

/** Something on a rung, in the direction from the hot rail to the other. */
export interface Step {
  readonly part: string;
  readonly kind: ElementKind;
  readonly closed: boolean;
  readonly enter: Point;
  readonly leave: Point;
  /** The wires that lead to it from what comes before. */
  readonly wires: readonly RigWire[];
}

/** A string of things in series, and the wires from the last of them to what follows. */
export interface Way {
  readonly steps: readonly Step[];
  readonly wires: readonly RigWire[];
}

/** A load between two rails. */
export interface Rung {
  readonly load: Step;
  /** The strings that can feed it, side by side. */
  readonly ways: readonly Way[];
  /** From the load to the other rail. */
  readonly back: Way;
}

/** The rungs between two points of one supply. */
export interface Ladder {
  readonly supply: string;
  readonly hot: Point;
  readonly common: Point;
  /** What all of its rungs share, before the hot rail and after the other. */
  readonly feed: Way;
  readonly tail: Way;
  readonly rungs: readonly Rung[];
}

/** Strings that are shown side by side at most, and how many more things than the shortest a string may have. */
const WAYS = 4;
const LONGER = 3;
const LONGEST = 16;

type Hop = { readonly element: Element; readonly enter: Point; readonly leave: Point };

interface Circuit {
  readonly nets: Nets;
  /** What current passes through, by the net at either end: without being used up, and loads too. */
  readonly passes: ReadonlyMap<Point, readonly Hop[]>;
  readonly throughLoads: ReadonlyMap<Point, readonly Hop[]>;
  readonly loads: readonly Element[];
}

const isLoad = ({ kind }: Element): boolean => kind === 'coil' || kind === 'resistor';

function circuitOf(assembly: Assembly): { readonly circuit: Circuit; readonly supplies: readonly Supply[] } {
  const { elements, supplies } = elementsOf(assembly);
  const printed = new Set(assembly.parts.flatMap((part) => part.kind.terminals.map(({ id }) => `${part.id}.${id}`)));
  const isJoint = ({ kind, from, to }: Element): boolean => kind === 'link' && !(printed.has(from) && printed.has(to));
  const nets = netsOf(assembly.rig, elements.filter(isJoint));
  const hopsOf = (which: readonly Element[]): ReadonlyMap<Point, readonly Hop[]> => {
    const hops = new Map<Point, Hop[]>();
    for (const element of which)
      for (const [enter, leave] of [
        [element.from, element.to],
        [element.to, element.from],
      ] as const)
        hops.set(nets.of(enter), [...(hops.get(nets.of(enter)) ?? []), { element, enter, leave }]);
    return hops;
  };
  const shown = elements.filter((element) => !isJoint(element));
  const passes = hopsOf(shown.filter((element) => !isLoad(element)));
  return { circuit: { nets, passes, throughLoads: hopsOf(shown), loads: elements.filter(isLoad) }, supplies };
}

/** A make and a break of one relay cannot carry one after the other. */
function contradicts(a: Hop | undefined, b: Hop): boolean {
  return a !== undefined && a.element.part === b.element.part && a.leave === b.enter && a.element.closed !== b.element.closed;
}

/** Every string from a point to a rail that goes through nothing twice, the shortest first. */
function stringsFrom(
  nets: Nets,
  passes: Circuit['passes'],
  start: Point,
  avoid: Point,
  rails: ReadonlyMap<Point, Point>,
): { readonly rail: Point; readonly hops: readonly Hop[] }[] {
  const found: { readonly rail: Point; readonly hops: readonly Hop[] }[] = [];
  const seen = new Set<Point>([nets.of(avoid)]);
  const follow = (point: Point, hops: readonly Hop[]): void => {
    const net = nets.of(point);
    const rail = rails.get(net);
    if (rail !== undefined) {
      found.push({ rail, hops });
      return;
    }
    if (seen.has(net) || hops.length >= LONGEST) return;
    seen.add(net);
    for (const hop of passes.get(net) ?? []) if (!contradicts(hops.at(-1), hop)) follow(hop.leave, [...hops, hop]);
    seen.delete(net);
  };
  follow(start, []);
  return found.sort((a, b) => a.hops.length - b.hops.length);
}

/** The string as steps in the direction that it was found in, each with the wires before it. */
function wayOf({ nets }: Circuit, hops: readonly Hop[], from: Point, to: Point): Way {
  let at = from;
  const steps = hops.map(({ element, enter, leave }): Step => {
    const wires = nets.way(at, enter);
    at = leave;
    return { part: element.part, kind: element.kind, closed: element.closed, enter, leave, wires };
  });
  return { steps, wires: nets.way(at, to) };
}

const turned = (hops: readonly Hop[]): Hop[] =>
  hops.map(({ element, enter, leave }) => ({ element, enter: leave, leave: enter })).reverse();

/** The rung of a load, and the two points of the supply that it lies between; none where it is not between two. */
function rungOf(circuit: Circuit, load: Element, supply: Supply) {
  const rails = new Map(supply.rails.map((rail) => [circuit.nets.of(rail), rail]));
  const from = (start: Point, avoid: Point) => {
    const strings = stringsFrom(circuit.nets, circuit.passes, start, avoid, rails);
    // Nothing but through another load: they are in series.
    return strings.length > 0 ? strings : stringsFrom(circuit.nets, circuit.throughLoads, start, avoid, rails);
  };
  const [a, b] = [from(load.from, load.to), from(load.to, load.from)];
  const pairs = a.flatMap((one) => b.filter((other) => other.rail !== one.rail).map((other) => ({ one, other })));
  const shortest = pairs.sort((p, q) => p.one.hops.length + p.other.hops.length - q.one.hops.length - q.other.hops.length)[0];
  if (shortest === undefined) return undefined;
  const rank = (rail: Point): number => supply.rails.indexOf(rail);
  const straight = rank(shortest.one.rail) < rank(shortest.other.rail);
  const [hot, common] = straight ? [shortest.one, shortest.other] : [shortest.other, shortest.one];
  const [enter, leave] = straight ? [load.from, load.to] : [load.to, load.from];
  const inSeries = hot.hops.some(({ element }) => isLoad(element));
  const feeding = inSeries
    ? [hot]
    : (straight ? a : b).filter(({ rail, hops }) => rail === hot.rail && hops.length <= hot.hops.length + LONGER);
  const rung: Rung = {
    load: { part: load.part, kind: load.kind, closed: false, enter, leave, wires: [] },
    ways: feeding.slice(0, WAYS).map(({ hops }) => wayOf(circuit, turned(hops), hot.rail, enter)),
    back: wayOf(circuit, common.hops, leave, common.rail),
  };
  return { hot: hot.rail, common: common.rail, rung };
}

const same = (a: Step | undefined, b: Step): boolean => a?.enter === b.enter && a.leave === b.leave;

/** How many things all of several strings begin with. */
function sharedBy(strings: readonly (readonly Step[])[]): number {
  const [first = []] = strings;
  const differs = first.findIndex((step, index) => !strings.every((steps) => same(steps[index], step)));
  return strings.length < 2 ? 0 : differs < 0 ? first.length : differs;
}

/** Takes what all rungs begin and end with out of them. */
function trimmed(ladder: Ladder): Ladder {
  if (ladder.rungs.length < 2) return ladder;
  const ways = ladder.rungs.flatMap((rung) => rung.ways);
  const backs = ladder.rungs.map((rung) => rung.back);
  const head = sharedBy(ways.map(({ steps }) => steps));
  const foot = sharedBy(backs.map(({ steps }) => [...steps].reverse()));
  const [firstWay, firstBack] = [ways[0]?.steps ?? [], backs[0]?.steps ?? []];
  return {
    ...ladder,
    feed: { steps: firstWay.slice(0, head), wires: [] },
    tail: {
      // What leads to it from each load stays with its rung.
      steps: firstBack.slice(firstBack.length - foot).map((step, index) => (index === 0 ? { ...step, wires: [] } : step)),
      wires: foot === 0 ? [] : (backs[0]?.wires ?? []),
    },
    rungs: ladder.rungs.map((rung) => ({
      ...rung,
      ways: rung.ways.map(({ steps, wires }) => ({ steps: steps.slice(head), wires })),
      back: {
        steps: rung.back.steps.slice(0, rung.back.steps.length - foot),
        wires: foot === 0 ? rung.back.wires : (rung.back.steps.at(-foot)?.wires ?? []),
      },
    })),
  };
}

/**
 * The ladder diagrams of a rig as it was wired at the factory: for each supply and each two of its points the loads between
 * them, with what stands in series before and after each. Worked out from wires and branches alone; no fault is known to it.
 */
export function laddersOf(assembly: Assembly): readonly Ladder[] {
  const { circuit, supplies } = circuitOf(assembly);
  const ladders = new Map<string, Ladder>();
  const drawn = new Set<string>();
  for (const supply of supplies) {
    for (const load of circuit.loads) {
      const found = rungOf(circuit, load, supply);
      if (found === undefined) continue;
      const { hot, common, rung } = found;
      const all = [...(rung.ways[0]?.steps ?? []), rung.load, ...rung.back.steps];
      const once = all
        .map(({ enter, leave }) => [enter, leave].sort().join('-'))
        .sort()
        .join(' ');
      if (drawn.has(once)) continue;
      drawn.add(once);
      // What hangs on different breakers makes ladders of its own.
      const key = [hot, common, rung.ways[0]?.steps[0]?.part ?? ''].join(' ');
      const none = { steps: [], wires: [] };
      const ladder = ladders.get(key) ?? { supply: supply.part, hot, common, feed: none, tail: none, rungs: [] };
      ladders.set(key, { ...ladder, rungs: [...ladder.rungs, rung] });
    }
  }
  return [...ladders.values()].map(trimmed);
}
