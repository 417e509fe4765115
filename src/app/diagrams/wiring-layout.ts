import type { Assembly } from '../../rig/assemble.ts';
import type { Point } from '../../rig/points.ts';
import { overlaps, solidBox } from '../../stage/boxes.ts';
import { type BodiesOff, factoryScene } from '../../stage/factory.ts';
import type { PlacedTerminal, Scene } from '../../stage/layout.ts';
import type { Box } from '../../stage/pen.ts';
import { SCENE } from '../../stage/tokens.ts';
import { type Flag, flagsOf } from '../../stage/wireMarks.ts';
import type { Spot } from '../../stage/wires.ts';
import { writtenOn } from './part-figure.tsx';
import { placeTags } from './tags.ts';

/** Letters at a point, put where there is room. */
export interface PlacedTag {
  readonly point: Point;
  readonly text: string;
  readonly spot: Spot;
  readonly box: Box;
}

export interface WiringLayout {
  readonly scene: Scene;
  readonly frame: Box;
  readonly flags: readonly Flag[];
  /** Points with a ring that are in this place. */
  readonly marks: readonly PlacedTerminal[];
  readonly values: readonly PlacedTag[];
  /** Where there is room for what is perceived of a part, by its id. */
  readonly states: ReadonlyMap<string, Box>;
}

/** Half of the room that a terminal takes, and one with a ring. */
const TERMINAL = 7;
const RING = 13.5;

export interface Written {
  readonly off?: BodiesOff;
  /** Points with a ring. */
  readonly marked?: readonly Point[];
  readonly values?: readonly { readonly point: Point; readonly text: string }[];
  /** Sizes of what is drawn of a part's state. */
  readonly states?: readonly { readonly part: string; readonly width: number; readonly height: number }[];
}

/** Where everything of a place's drawing stands, scene units. What has no room or is not in this place is left out. */
export function layWiring(
  assembly: Assembly,
  place: string,
  { off = {}, marked = [], values = [], states = [] }: Written,
): WiringLayout {
  const scene = factoryScene(assembly, place, off);
  const frame = frameOf(scene);
  const written = scene.parts.flatMap(writtenOn);
  const flags = flagsOf(scene.runs, scene.parts, 5).filter(({ box }) => !written.some((each) => overlaps(box, each, 0)));
  const ringed = new Set(marked);
  const nests = [...scene.terminals.values()].map(({ point, x, y }) => {
    const half = ringed.has(point) ? RING : TERMINAL;
    return { x: x - half, y: y - half, width: 2 * half, height: 2 * half };
  });
  const wanted = values.flatMap(({ point, text }) => {
    const spot = scene.terminals.get(point);
    return spot === undefined ? [] : [{ point, text, spot }];
  });
  const taken = [...written, ...flags.map(({ box }) => box), ...nests];
  const wires = scene.runs.flatMap(({ path }) => path);
  const seen = new Map<string, Box>();
  for (const { part, ...size } of states) {
    const placed = scene.parts.find((each) => each.part.id === part);
    if (placed === undefined) continue;
    const body = solidBox(placed);
    const spot = { x: body.x + body.width / 2, y: body.y + body.height / 2 };
    // On the part where it can be, else beside it.
    const place = (within: Box) => placeTags([{ spot, size }], { frame: within, taken: [...taken, ...seen.values()], wires })[0];
    const box = place(body) ?? place(frame);
    if (box !== undefined) seen.set(part, box);
  }
  const boxes = placeTags(wanted, { frame, taken: [...taken, ...seen.values()], wires });
  return {
    scene,
    frame,
    flags,
    marks: [...scene.terminals.values()].filter(({ point }) => ringed.has(point)),
    values: wanted.flatMap((tag, index) => {
      const box = boxes[index];
      return box === undefined ? [] : [{ ...tag, box }];
    }),
    states: seen,
  };
}

/** What of the scene the drawing shows: all that stands in it, with a margin for names. */
function frameOf({ parts, covers, runs, terminals }: Scene): Box {
  const backs = parts.flatMap(({ shape, x, y }) =>
    shape.back ? [{ ...shape.back, x: x + shape.back.x, y: y + shape.back.y }] : [],
  );
  const boxes = [...parts.map(solidBox), ...backs, ...covers.map(({ at }) => at)];
  const spots = [...runs.flatMap(({ path }) => path), ...terminals.values()];
  const [left, top] = [
    Math.max(0, Math.min(...boxes.map(({ x }) => x), ...spots.map(({ x }) => x)) - 20),
    Math.max(0, Math.min(...boxes.map(({ y }) => y), ...spots.map(({ y }) => y)) - 34),
  ];
  const right = Math.min(SCENE.width, Math.max(...boxes.map(({ x, width }) => x + width), ...spots.map(({ x }) => x)) + 20);
  const foot = Math.min(SCENE.height, Math.max(...boxes.map(({ y, height }) => y + height), ...spots.map(({ y }) => y)) + 40);
  return { x: left, y: top, width: right - left, height: foot - top };
}
