import type { BenchView, CoverView } from '../attempt/view.ts';
import { MAT_PLACE } from '../rig/points.ts';
import { overlaps, solidBox } from './boxes.ts';
import { labelBoxes } from './labels.ts';
import { GROUNDS } from './looks/grounds.ts';
import { holesOf } from './looks/holes.ts';
import type { Box } from './pen.ts';
import type { Cabinet, Pipe, PlaceLook } from './place.ts';
import type { PlacedPart } from './placed.ts';
import { SCENE } from './tokens.ts';

/** A cover that is off, leant where nothing else says how large. */
const LEANING = { width: 150, height: 134 } as const;
/** Where the scene's parts end and its floor begins. */
const FLOOR = 606;

/** A box of a size that lies on none of others, as near to a corner of the scene as can be; the lower left corner if there is no room. */
function freeBox(size: { readonly width: number; readonly height: number }, taken: readonly Box[]): Box {
  const corner = { x: 4, y: FLOOR - size.height };
  for (let up = 0; up < FLOOR - size.height; up += 12)
    for (const x of [4, SCENE.width - size.width - 4]) {
      const box = { x, y: corner.y - up, ...size };
      if (!taken.some((other) => overlaps(box, other, 2))) return box;
    }
  return { ...corner, ...size };
}

/** Where covers that are off lean: beside everything where there is room, each a little before the last. */
function leaning(covers: readonly CoverView[], taken: readonly Box[]): Box[] {
  const sizes = [LEANING, { width: 110, height: 110 }, { width: 60, height: 130 }];
  const first = sizes.map((size) => freeBox(size, taken)).find((box) => !taken.some((other) => overlaps(box, other, 2)));
  const at = first ?? freeBox(LEANING, []);
  const step = covers.length < 2 ? 0 : Math.min(14, 40 / covers.length);
  return covers.map((_, index) => ({ ...at, x: at.x + step * index, y: at.y + step * index }));
}

/** Tags stand one below the other on the covers that lean. */
function tagSpots(lean: readonly Box[]): { readonly x: number; readonly y: number }[] {
  const [first] = lean;
  return lean.map((_, index) => ({
    x: Math.min(SCENE.width - 164, (first?.x ?? 0) + 6),
    y: Math.min(FLOOR - 36, (first?.y ?? 0) + 20) + (index - Math.max(0, lean.length - 3)) * 42,
  }));
}

/** A cabinet round the covers of each enclosure; covers that stand side by side have one. */
function cabinetsRound(covers: readonly CoverView[], finish: Cabinet['finish']): Cabinet[] {
  const boxes: Box[] = [];
  for (const { at } of covers) {
    const near = boxes.find((box) => overlaps(box, at, 12));
    if (near === undefined) boxes.push(at);
    else boxes[boxes.indexOf(near)] = united(near, at);
  }
  return boxes.map((box) => ({ x: box.x - 8, y: box.y - 8, width: box.width + 16, height: box.height + 16, finish }));
}

function united(a: Box, b: Box): Box {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)];
  const [right, foot] = [Math.max(a.x + a.width, b.x + b.width), Math.max(a.y + a.height, b.y + b.height)];
  return { x, y, width: right - x, height: foot - y };
}

/** Conduits for the joins that were worked out and lead from one enclosure to another. */
function conduits(joins: PlaceLook['joins']): Pipe[] {
  return joins
    .filter(({ from, to }) => Math.hypot(from.x - to.x, from.y - to.y) > 44)
    .map(({ from, to }) => ({ of: 'conduit', along: [from, to] }));
}

/** How the place that the trainee stands in looks: what the rig says of it, and the rest worked out from its parts and covers. */
export function lookOf(view: Pick<BenchView, 'place' | 'looks' | 'covers' | 'wires'>, here: readonly PlacedPart[]): PlaceLook {
  const told = view.looks[view.place];
  const covers = view.covers.filter((cover) => cover.place === view.place);
  const usual = view.place === MAT_PLACE ? 'mat' : covers.length > 0 ? 'utility' : 'hall';
  const ground = GROUNDS[told?.look ?? usual];
  const fixed = here.filter(({ part, face }) => part.body === undefined && face.over !== true);
  const taken = [...fixed.map(solidBox), ...covers.map(({ at }) => at)];
  const cabinets = told?.cabinets ?? cabinetsRound(covers, ground.cabinet);
  const harness = told?.harness ?? (ground.harness || covers.length > 0);
  const holes =
    harness && (told?.exits === undefined || told.joins === undefined)
      ? holesOf(view, fixed, covers, labelBoxes(fixed))
      : { exits: [], joins: [] };
  const lean = told?.lean ?? leaning(covers, [...taken, ...cabinets]);
  return {
    ground,
    cabinets,
    harness,
    pipes: [...(told?.pipes ?? []), ...(told?.joins === undefined && told?.pipes === undefined ? conduits(holes.joins) : [])],
    coverLook: told?.coverLook ?? ground.coverLook,
    wireWidth: told?.wireWidth ?? ground.wireWidth,
    exits: told?.exits ?? holes.exits,
    joins: told?.joins ?? holes.joins,
    lean,
    tags: told?.tags ?? tagSpots(lean),
  };
}
