import type { BenchView, CoverView, PartView, WireView } from '../attempt/view.ts';
import { type Point, WIRE_ENDS, type WireEnd } from '../rig/points.ts';
import type { Face, Shape, TerminalSpot, Way } from './face.ts';
import { faceOf } from './faces.ts';
import type { Box } from './pen.ts';
import type { Join } from './place.ts';
import { lookOf } from './places.ts';
import { SCENE } from './tokens.ts';
import { ahead, beside, type Curve, intoHole, type Spot, wireCurve } from './wires.ts';

/** A part with its face, standing in the scene. */
export interface PlacedPart {
  readonly part: PartView;
  readonly face: Face;
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
}

export interface PlacedTerminal extends Spot {
  readonly point: Point;
  readonly part: string;
  readonly label: string;
  readonly way: Way;
}

/** One end of a wire as it can be taken hold of: under its screw, or lifted and bare. */
export interface PlacedEnd extends Spot {
  readonly wire: string;
  readonly end: WireEnd;
  readonly lifted: boolean;
  readonly point: Point;
  /** Where the insulation ends. */
  readonly root: Spot;
}

/** A visible run of a wire. */
export interface Run {
  readonly wire: string;
  readonly cable: string | undefined;
  readonly colour: string;
  readonly curve: Curve;
  /** Which ends of the curve are at a terminal: only these lie in front of the faces where wires run behind. */
  readonly landed: readonly [boolean, boolean];
  /** Whether a screw holds it there. */
  readonly screwed: readonly [boolean, boolean];
}

/** Everything of a view that stands in the trainee's place, in scene units. */
export interface Scene {
  readonly place: string;
  /** Uncovered parts, those that others are drawn over first. */
  readonly parts: readonly PlacedPart[];
  /** Parts behind closed covers of which something shows or can be worked through. */
  readonly behind: readonly PlacedPart[];
  readonly covers: readonly CoverView[];
  readonly terminals: ReadonlyMap<Point, PlacedTerminal>;
  readonly ends: readonly PlacedEnd[];
  readonly runs: readonly Run[];
}

function placed(part: PartView, view: BenchView): PlacedPart {
  const face = faceOf(part.kind);
  const spot = face.spot?.(part, view) ?? part.at;
  return { part, face, shape: face.shape(part), x: spot.x, y: spot.y };
}

function encloses(box: Box, spot: Spot): boolean {
  return spot.x >= box.x && spot.x <= box.x + box.width && spot.y >= box.y && spot.y <= box.y + box.height;
}

/** Whether something that stands on a door is to be drawn: only while that door is on. */
function onClosedCover(part: PlacedPart, covers: readonly CoverView[]): boolean {
  const middle = { x: part.x + part.shape.width / 2, y: part.y + part.shape.height / 2 };
  return covers.some((cover) => !cover.open && encloses(cover.at, middle));
}

interface Landing {
  readonly spot: Spot;
  readonly way: Way;
  readonly home: PlacedPart;
  readonly lifted: boolean;
  readonly screwed: boolean;
}

/** Where an end of a wire is in the scene; undefined when it is not in it. */
function landing(wire: WireView, end: WireEnd, byId: ReadonlyMap<string, PlacedPart>): Landing | undefined {
  const ending = wire.ends[end];
  const at = ending.landedOn ?? (ending.lifted ? ending.home : undefined);
  if (at === undefined) return undefined;
  const [partId = '', terminal = ''] = at.split('.');
  const home = byId.get(partId);
  const spot: TerminalSpot | undefined = home?.shape.terminals[terminal];
  if (home === undefined || spot === undefined) return undefined;
  const here = { x: home.x + spot.x, y: home.y + spot.y };
  if (ending.lifted)
    return { spot: beside(ahead(here, spot.way, 46), spot.way, 15), way: spot.way, home, lifted: true, screwed: false };
  const landedHere = home.part.terminals.find((each) => each.id === terminal)?.wires ?? [];
  const index = Math.max(0, landedHere.indexOf(wire.id));
  const shift = landedHere.length < 2 ? 0 : (index - (landedHere.length - 1) / 2) * Math.min(7, 22 / landedHere.length);
  return { spot: beside(here, spot.way, shift), way: spot.way, home, lifted: false, screwed: spot.screw !== undefined };
}

/** Where the rig lands an end, whether it is uncovered or not; undefined when that is in another place. */
function homeSpot(wire: WireView, end: WireEnd, byId: ReadonlyMap<string, PlacedPart>): Spot | undefined {
  const [partId = '', terminal = ''] = wire.ends[end].home.split('.');
  const home = byId.get(partId);
  const spot = home?.shape.terminals[terminal];
  return home === undefined || spot === undefined ? undefined : { x: home.x + spot.x, y: home.y + spot.y };
}

function nearest(spots: readonly Spot[], to: Spot): Spot | undefined {
  return spots.reduce<Spot | undefined>(
    (best, spot) =>
      best === undefined || Math.hypot(spot.x - to.x, spot.y - to.y) < Math.hypot(best.x - to.x, best.y - to.y) ? spot : best,
    undefined,
  );
}

/** The conduit or grommet that makes the shortest way between two spots, turned so that `from` is on the first spot's side. */
export function shortestJoin(joins: readonly Join[], a: Spot, b: Spot): Join | undefined {
  const far = (p: Spot, q: Spot): number => Math.hypot(p.x - q.x, p.y - q.y);
  return joins
    .flatMap((join) => [join, { from: join.to, to: join.from }])
    .reduce<Join | undefined>((best, join) => {
      const length = far(a, join.from) + far(join.to, b);
      return best === undefined || length < far(a, best.from) + far(best.to, b) ? join : best;
    }, undefined);
}

/** Small even offsets by which wires that share a hole stay apart. */
function offset(spot: Spot, index: number): Spot {
  const angle = index * 2.4;
  const radius = Math.min(8, 1.4 * Math.sqrt(index + 1));
  return { x: spot.x + Math.cos(angle) * radius * 1.4, y: spot.y + Math.sin(angle) * radius * 0.7 };
}

function runsOf(
  wire: WireView,
  index: number,
  from: Landing | undefined,
  to: Landing | undefined,
  byId: ReadonlyMap<string, PlacedPart>,
  place: string,
): Run[] {
  const look = lookOf(place);
  const run = (curve: Curve, start: Landing, end?: Landing): Run => ({
    wire: wire.id,
    cable: wire.cable,
    colour: wire.colour,
    curve,
    landed: [!start.lifted, end !== undefined && !end.lifted],
    screwed: [start.screwed, end?.screwed ?? false],
  });
  if (from !== undefined && to !== undefined) {
    if (from.home.part.cover === to.home.part.cover) {
      return [run(wireCurve(from.spot, from.way, to.spot, to.way), from, to)];
    }
    const join = shortestJoin(look.joins, from.spot, to.spot);
    if (join === undefined) return [run(wireCurve(from.spot, from.way, to.spot, to.way), from, to)];
    return [
      run(intoHole(from.spot, from.way, offset(join.from, index)), from),
      run(intoHole(to.spot, to.way, offset(join.to, index)), to),
    ];
  }
  const only = from ?? to;
  if (only === undefined) return [];
  const own = only.home.shape.exit;
  // The other end may be in this place behind a closed cover: then the wire goes into the conduit or grommet that leads there.
  const hidden = homeSpot(wire, from === undefined ? 'from' : 'to', byId);
  const passage = hidden === undefined ? undefined : shortestJoin(look.joins, only.spot, hidden)?.from;
  const hole = own === undefined ? (passage ?? nearest(look.exits, only.spot)) : { x: only.home.x + own.x, y: only.home.y + own.y };
  if (hole === undefined) return [];
  return [run(intoHole(only.spot, only.way, own === undefined ? offset(hole, index) : spreadAcross(hole, only)), only)];
}

/** Conductors come out of a sub-base's hole side by side, in the order of their screws. */
function spreadAcross(hole: Spot, landed: Landing): Spot {
  return { x: hole.x + (landed.spot.x - hole.x) * 0.18, y: hole.y };
}

/** Lays out what a view shows of the place that the trainee stands in. */
export function sceneOf(view: BenchView): Scene {
  const covers = view.covers.filter((cover) => cover.place === view.place);
  const here = view.parts.filter((part) => part.place === view.place).map((part) => placed(part, view));
  const shown = here.filter(({ part }) => part.visible);
  const parts = [
    ...shown.filter((each) => each.face.over !== true && each.face.onCover !== true),
    ...shown.filter((each) => each.face.over === true),
    ...shown.filter((each) => each.face.onCover === true && onClosedCover(each, covers)),
  ];
  const behind = here.filter(({ part }) => !part.visible && part.cover !== undefined && Object.keys(part.signs).length > 0);
  const byId = new Map(here.map((each) => [each.part.id, each]));

  const terminals = new Map<Point, PlacedTerminal>();
  for (const { part, shape, x, y } of parts) {
    for (const terminal of part.terminals) {
      const spot = shape.terminals[terminal.id];
      if (spot === undefined) continue;
      terminals.set(terminal.point, {
        point: terminal.point,
        part: part.id,
        label: terminal.label,
        x: x + spot.x,
        y: y + spot.y,
        way: spot.way,
      });
    }
  }

  const bodies = new Set(view.parts.filter((part) => part.body !== undefined).map((part) => part.id));
  const ends: PlacedEnd[] = [];
  const runs: Run[] = [];
  view.wires.forEach((wire, index) => {
    // Pins and their sockets are not wires to look at.
    if (WIRE_ENDS.some((end) => bodies.has(wire.ends[end].home.split('.')[0] ?? ''))) return;
    const from = landing(wire, 'from', byId);
    const to = landing(wire, 'to', byId);
    runs.push(...runsOf(wire, index, from, to, byId, view.place));
    for (const end of WIRE_ENDS) {
      const spot = end === 'from' ? from : to;
      if (spot === undefined || !wire.ends[end].visible) continue;
      const grip = ahead(spot.spot, spot.way, spot.lifted ? -8 : 24);
      ends.push({ wire: wire.id, end, lifted: spot.lifted, point: wire.ends[end].point, x: grip.x, y: grip.y, root: spot.spot });
    }
  });
  return { place: view.place, parts, behind, covers, terminals, ends, runs };
}

/** What a small screen opens on: the removable body where its pins or keys are, else the face with the most terminals. */
export function focusOf(scene: Scene): Spot {
  const body = scene.parts.find(({ part }) => part.body !== undefined);
  const main = body ?? [...scene.parts].sort((a, b) => b.part.terminals.length - a.part.terminals.length)[0];
  if (main === undefined || main.part.body === 'mat') return { x: SCENE.width / 2, y: SCENE.height / 2 };
  const pins = main.part.body === undefined ? [] : Object.values(main.shape.terminals);
  const middle =
    pins.length > 0
      ? { x: pins.reduce((sum, pin) => sum + pin.x, 0) / pins.length, y: pins.reduce((sum, pin) => sum + pin.y, 0) / pins.length }
      : { x: main.shape.width / 2, y: main.shape.height / 2 };
  return { x: main.x + middle.x, y: main.y + middle.y };
}

/** Where a point that a probe or clip can be on is drawn: its terminal, or a lifted wire's bare end. */
export function spotOf(scene: Scene, point: Point | undefined): Spot | undefined {
  if (point === undefined) return undefined;
  const terminal = scene.terminals.get(point);
  if (terminal !== undefined) return terminal;
  return scene.ends.find((end) => end.lifted && end.point === point);
}
