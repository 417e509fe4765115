import type { CoverView, WireView } from '../attempt/view.ts';
import { WIRE_ENDS, type WireEnd } from '../rig/points.ts';
import { solidBox, terminalSpots } from './boxes.ts';
import type { TerminalSpot, Way } from './face.ts';
import { labelBoxes } from './labels.ts';
import type { Join, PlaceLook } from './place.ts';
import type { PlacedEnd, PlacedPart, Run } from './placed.ts';
import { type Errand, routed } from './routing.ts';
import { ahead, beside, intoHole, type Spot, sampled, wireCurve } from './wires.ts';

interface Landing {
  /** Where the wire is held, or was before it was lifted. */
  readonly spot: Spot;
  readonly way: Way;
  readonly home: PlacedPart;
  readonly lifted: boolean;
  readonly screwed: boolean;
}

type ById = ReadonlyMap<string, PlacedPart>;

/** Where an end of a wire is in the scene; undefined when it is not in it. */
function landing(wire: WireView, end: WireEnd, byId: ById): Landing | undefined {
  const ending = wire.ends[end];
  const at = ending.landedOn ?? (ending.lifted ? ending.home : undefined);
  if (at === undefined) return undefined;
  const [partId = '', terminal = ''] = at.split('.');
  const home = byId.get(partId);
  const spot: TerminalSpot | undefined = home?.shape.terminals[terminal];
  if (home === undefined || spot === undefined) return undefined;
  const here = { x: home.x + spot.x, y: home.y + spot.y };
  if (ending.lifted) return { spot: here, way: spot.way, home, lifted: true, screwed: false };
  const landedHere = home.part.terminals.find((each) => each.id === terminal)?.wires ?? [];
  const index = Math.max(0, landedHere.indexOf(wire.id));
  const shift = landedHere.length < 2 ? 0 : (index - (landedHere.length - 1) / 2) * Math.min(8, 26 / landedHere.length);
  return { spot: beside(here, spot.way, shift), way: spot.way, home, lifted: false, screwed: spot.screw !== undefined };
}

/** Where a lifted end hangs: off its screw and aside. */
function bareSpot({ spot, way }: Landing): Spot {
  return beside(ahead(spot, way, 46), way, 15);
}

/** Where the rig lands an end, whether it is uncovered or not; undefined when that is in another place. */
function homeSpot(wire: WireView, end: WireEnd, byId: ById): { readonly spot: Spot; readonly home: PlacedPart } | undefined {
  const [partId = '', terminal = ''] = wire.ends[end].home.split('.');
  const home = byId.get(partId);
  const spot = home?.shape.terminals[terminal];
  return home === undefined || spot === undefined ? undefined : { spot: { x: home.x + spot.x, y: home.y + spot.y }, home };
}

function nearest(spots: readonly Spot[], to: Spot): Spot | undefined {
  const far = (spot: Spot): number => Math.hypot(spot.x - to.x, spot.y - to.y);
  return spots.reduce<Spot | undefined>((best, spot) => (best === undefined || far(spot) < far(best) ? spot : best), undefined);
}

/**
 * The conduit or grommet that makes the shortest way between two spots, turned so that `from` is on the first spot's side.
 * `more` is what a hole costs beyond the way, scene units.
 */
export function shortestJoin(joins: readonly Join[], a: Spot, b: Spot, more: (join: Join) => number = () => 0): Join | undefined {
  const far = (p: Spot, q: Spot): number => Math.hypot(p.x - q.x, p.y - q.y);
  const costs = joins.flatMap((join) =>
    [join, { from: join.to, to: join.from }].map((turned) => ({
      join: turned,
      cost: far(a, turned.from) + far(turned.to, b) + more(join),
    })),
  );
  return costs.reduce<(typeof costs)[number] | undefined>(
    (best, each) => (best === undefined || each.cost < best.cost ? each : best),
    undefined,
  )?.join;
}

/** The joins that lead between two enclosures, by their covers. */
function joinsBetween(joins: readonly Join[], a: PlacedPart, b: PlacedPart): readonly Join[] {
  const ids = [a.part.cover ?? '', b.part.cover ?? ''].sort();
  return joins.filter(({ between }) => between === undefined || between.join() === ids.join());
}

type Chooser = (a: Spot, b: Spot, from: PlacedPart, to: PlacedPart) => Join | undefined;

/** Chooses holes so that wires spread over the grommets of a wall; a conduit takes all that want it. */
function crowded(joins: readonly Join[]): Chooser {
  const taken = new Map<string, number>();
  const key = ({ from, to }: Join): string => [from.x + to.x, from.y + to.y].join();
  return (a, b, from, to) => {
    const join = shortestJoin(joinsBetween(joins, from, to), a, b, (each) =>
      each.from.x === each.to.x ? 70 * (taken.get(key(each)) ?? 0) : 0,
    );
    if (join !== undefined) taken.set(key(join), (taken.get(key(join)) ?? 0) + 1);
    return join;
  };
}

/** Small even offsets by which wires that share a hole stay apart. */
function offset(spot: Spot, index: number): Spot {
  const angle = index * 2.4;
  const radius = Math.min(8, 1.4 * Math.sqrt(index + 1));
  return { x: spot.x + Math.cos(angle) * radius, y: spot.y + Math.sin(angle) * radius };
}

/** Conductors come out of a sub-base's hole side by side, in the order of their screws. */
function spreadAcross(hole: Spot, landed: Landing): Spot {
  return { x: hole.x + (landed.spot.x - hole.x) * 0.18, y: hole.y };
}

/** A run before its course is known: from a terminal to another or into a hole. */
interface Plan {
  readonly wire: WireView;
  readonly from: Landing;
  readonly to: Landing | Spot;
}

const isLanding = (to: Landing | Spot): to is Landing => 'home' in to;

/** What a wire's runs are planned from; those that end behind a closed cover stay unseen. */
function plansFor(wire: WireView, index: number, byId: ById, look: PlaceLook, join: Chooser): Plan[] {
  return allPlans(wire, index, byId, look, join).filter(
    ({ from, to }) => from.home.part.visible && (!isLanding(to) || to.home.part.visible),
  );
}

function allPlans(wire: WireView, index: number, byId: ById, look: PlaceLook, join: Chooser): Plan[] {
  const from = landing(wire, 'from', byId);
  const to = landing(wire, 'to', byId);
  if (from !== undefined && to !== undefined) {
    const through =
      from.home.part.cover === to.home.part.cover
        ? undefined
        : shortestJoin(joinsBetween(look.joins, from.home, to.home), from.spot, to.spot);
    if (through === undefined) return [{ wire, from, to }];
    return [
      { wire, from, to: offset(through.from, index) },
      { wire, from: to, to: offset(through.to, index) },
    ];
  }
  const only = from ?? to;
  if (only === undefined) return [];
  const own = only.home.shape.exit;
  if (own !== undefined) return [{ wire, from: only, to: spreadAcross({ x: only.home.x + own.x, y: only.home.y + own.y }, only) }];
  // The other end may be in this place behind a closed cover: then the wire goes into the conduit or grommet that leads there.
  const hidden = homeSpot(wire, from === undefined ? 'from' : 'to', byId);
  const passage = hidden === undefined ? undefined : join(only.spot, hidden.spot, only.home, hidden.home)?.from;
  const hole = passage ?? nearest(look.exits, only.spot);
  return hole === undefined ? [] : [{ wire, from: only, to: offset(hole, index) }];
}

/** The course with an end that hangs off its screw. `path` starts at that end. */
function drooping(path: readonly Spot[], bare: Spot): Spot[] {
  const keep = path.slice(Math.min(16, Math.floor(path.length / 2)));
  const root = keep[0] ?? bare;
  const bend = keep[Math.min(4, keep.length - 1)] ?? bare;
  const control = { x: root.x * 2 - bend.x, y: root.y * 2 - bend.y };
  const curve = sampled([bare, bare, control, root]);
  return [...curve, ...keep.slice(1)];
}

function errandOf({ from, to }: Plan, id: string, covers: readonly CoverView[]): Errand {
  const room = covers.find((cover) => cover.id === from.home.part.cover)?.at;
  const start = { id, room, from: from.spot, fromWay: from.way };
  return isLanding(to) ? { ...start, to: to.spot, toWay: to.way } : { ...start, to };
}

/** The courses of all wires in a place: straight from terminal to hole on a bare wall, in lanes inside a cabinet. */
export function runsOf(
  wires: readonly WireView[],
  parts: readonly PlacedPart[],
  covers: readonly CoverView[],
  byId: ById,
  look: PlaceLook,
): Run[] {
  const joins = crowded(look.joins);
  const plans = wires.flatMap((wire, index) => plansFor(wire, index, byId, look, joins));
  const ways = look.harness
    ? routed(
        plans.map((plan, index) => errandOf(plan, String(index), covers)),
        {
          words: labelBoxes(parts),
          nests: terminalSpots(parts),
          faces: parts.filter(({ face }) => face.over !== true).map(solidBox),
          rooms: covers.map(({ at }) => at),
        },
      )
    : undefined;
  return plans.map((plan, index) => {
    const { wire, from, to } = plan;
    let path =
      ways?.get(String(index)) ??
      sampled(isLanding(to) ? wireCurve(from.spot, from.way, to.spot, to.way) : intoHole(from.spot, from.way, to));
    if (from.lifted) path = drooping(path, bareSpot(from));
    if (isLanding(to) && to.lifted) path = drooping([...path].reverse(), bareSpot(to)).reverse();
    return {
      wire: wire.id,
      cable: wire.cable,
      colour: wire.colour,
      path,
      landed: [!from.lifted, isLanding(to) && !to.lifted],
      screwed: [from.screwed, isLanding(to) && to.screwed],
    };
  });
}

/** Every end of the wires in a place that can be taken hold of. */
export function endsOf(wires: readonly WireView[], byId: ById): PlacedEnd[] {
  return wires.flatMap((wire) =>
    WIRE_ENDS.flatMap((end): PlacedEnd[] => {
      const held = landing(wire, end, byId);
      if (held === undefined || !wire.ends[end].visible) return [];
      const root = held.lifted ? bareSpot(held) : held.spot;
      const grip = ahead(root, held.way, held.lifted ? -8 : 24);
      return [{ wire: wire.id, end, lifted: held.lifted, point: wire.ends[end].point, x: grip.x, y: grip.y, root }];
    }),
  );
}
