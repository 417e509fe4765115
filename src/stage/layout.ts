import type { BenchView, CoverView } from '../attempt/view.ts';
import { type Point, WIRE_ENDS } from '../rig/points.ts';
import type { Way } from './face.ts';
import type { Box } from './pen.ts';
import type { PlaceLook } from './place.ts';
import type { PlacedEnd, PlacedPart, Run } from './placed.ts';
import { partsHere } from './placing.ts';
import { endsOf, runsOf } from './runs.ts';
import { lookOf } from './surroundings.ts';
import { SCENE } from './tokens.ts';
import type { Spot } from './wires.ts';

export interface PlacedTerminal extends Spot {
  readonly point: Point;
  readonly part: string;
  readonly label: string;
  readonly way: Way;
}

/** What of a view it takes to lay out a place. */
export type SceneView = Pick<BenchView, 'place' | 'looks' | 'parts' | 'wires' | 'covers'>;

/** Everything of a view that stands in the trainee's place, in scene units. */
export interface Scene {
  readonly place: string;
  readonly look: PlaceLook;
  /** Uncovered parts, those that others are drawn over first. */
  readonly parts: readonly PlacedPart[];
  /** Parts behind closed covers of which something shows or can be worked through. */
  readonly behind: readonly PlacedPart[];
  readonly covers: readonly CoverView[];
  readonly terminals: ReadonlyMap<Point, PlacedTerminal>;
  readonly ends: readonly PlacedEnd[];
  readonly runs: readonly Run[];
}

function encloses(box: Box, spot: Spot): boolean {
  return spot.x >= box.x && spot.x <= box.x + box.width && spot.y >= box.y && spot.y <= box.y + box.height;
}

/** Whether something that stands on a door is to be drawn: only while that door is on. */
function onClosedCover(part: PlacedPart, covers: readonly CoverView[]): boolean {
  const middle = { x: part.x + part.shape.width / 2, y: part.y + part.shape.height / 2 };
  return covers.some((cover) => !cover.open && encloses(cover.at, middle));
}

/** Lays out what a view shows of the place that the trainee stands in. */
export function sceneOf(view: SceneView): Scene {
  const covers = view.covers.filter((cover) => cover.place === view.place);
  const here = partsHere(view);
  const look = lookOf(view, here);
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
  // Pins and their sockets are not wires to look at.
  const wires = view.wires.filter((wire) => !WIRE_ENDS.some((end) => bodies.has(wire.ends[end].home.split('.')[0] ?? '')));
  const runs = runsOf(wires, parts, covers, byId, look);
  const ends = endsOf(wires, byId);
  return { place: view.place, look, parts, behind, covers, terminals, ends, runs };
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
