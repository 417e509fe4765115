import type { BenchView, CoverView } from '../../attempt/view.ts';
import { holds, solidBox } from '../boxes.ts';
import type { Box } from '../pen.ts';
import type { Join } from '../place.ts';
import type { PlacedPart } from '../placed.ts';
import { SCENE } from '../tokens.ts';
import type { Spot } from '../wires.ts';

/** How far inside an enclosure's edge its holes are, and how far apart those of one wall, scene units. */
const INSET = 16;
const STEP = 12;
const GROMMETS = 46;
/** The widest wall between two enclosures that grommets go through, scene units. */
const WALL = 44;

/** The bare wall, as an enclosure that has no cover. */
const WALLS: Box = { x: -2, y: -2, width: SCENE.width + 4, height: 602 };

/** Where the spots of an edge are, by going round a box. */
function edge({ x, y, width, height }: Box, inset: number): Spot[] {
  const spots: Spot[] = [];
  for (let along = inset; along <= width - inset; along += STEP)
    spots.push({ x: x + along, y: y + height - inset }, { x: x + along, y: y + inset });
  for (let along = inset; along <= height - inset; along += STEP)
    spots.push({ x: x + inset, y: y + along }, { x: x + width - inset, y: y + along });
  return spots;
}

/** The spot just inside an enclosure's edge that is nearest to another spot and clear of what stands there; on the very edge in a tight one. */
function edgeSpot(box: Box, to: Spot, taken: readonly Box[], margins: readonly number[] = [15, 6, 0]): Spot {
  const far = (spot: Spot): number => Math.hypot(spot.x - to.x, spot.y - to.y);
  const nearest = (spots: readonly Spot[]): Spot | undefined =>
    spots.reduce<Spot | undefined>((best, spot) => (best === undefined || far(spot) < far(best) ? spot : best), undefined);
  for (const margin of margins) {
    const spot = nearest(edge(box, margin === 0 ? 3 : INSET).filter((each) => !taken.some((other) => holds(other, each, margin))));
    if (spot !== undefined) return spot;
  }
  return nearest(edge(box, 3)) ?? to;
}

function middle(box: Box): Spot {
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

function mean(spots: readonly Spot[]): Spot {
  return {
    x: spots.reduce((sum, { x }) => sum + x, 0) / spots.length,
    y: spots.reduce((sum, { y }) => sum + y, 0) / spots.length,
  };
}

/** Grommets in the wall between two enclosures that stand side by side; none when they are farther apart. */
function grommets(a: Box, b: Box): Spot[] {
  const between = (axis: 'x' | 'y', size: 'width' | 'height'): readonly [number, number] => [
    Math.max(a[axis], b[axis]),
    Math.min(a[axis] + a[size], b[axis] + b[size]),
  ];
  const [left, right] = between('x', 'width');
  const [top, foot] = between('y', 'height');
  const spots: Spot[] = [];
  if (right - left > 60 && top >= foot - 2 && top - foot <= WALL)
    for (let x = left + 30; x <= right - 24; x += GROMMETS) spots.push({ x, y: (top + foot) / 2 });
  if (foot - top > 60 && left >= right - 2 && left - right <= WALL)
    for (let y = top + 30; y <= foot - 24; y += GROMMETS) spots.push({ x: (left + right) / 2, y });
  return spots;
}

interface End {
  readonly spot: Spot;
  readonly home: PlacedPart;
  /** The cover's id, empty on the bare wall. */
  readonly cover: string;
}

/** Where wires leave a place and go between its enclosures, worked out from which wires do. */
export function holesOf(
  view: Pick<BenchView, 'wires'>,
  parts: readonly PlacedPart[],
  covers: readonly CoverView[],
  words: readonly Box[],
): { readonly exits: Spot[]; readonly joins: Join[] } {
  const byId = new Map(parts.map((part) => [part.part.id, part]));
  const taken = [...parts.map(solidBox), ...words];
  const endOf = (point: string): End | undefined => {
    const [id = '', terminal = ''] = point.split('.');
    const home = byId.get(id);
    const at = home?.shape.terminals[terminal];
    return home && at && { home, spot: { x: home.x + at.x, y: home.y + at.y }, cover: home.part.cover ?? '' };
  };
  const boxOf = (cover: string): Box => covers.find(({ id }) => id === cover)?.at ?? WALLS;
  const leaving = new Map<string, Spot[]>();
  const between = new Map<string, { readonly a: End; readonly b: End }[]>();
  const add = <T>(map: Map<string, T[]>, key: string, value: T): void => void map.set(key, [...(map.get(key) ?? []), value]);
  for (const wire of view.wires) {
    const [from, to] = [endOf(wire.ends.from.home), endOf(wire.ends.to.home)];
    const only = from ?? to;
    if (from === undefined || to === undefined) {
      if (only !== undefined && only.home.shape.exit === undefined) add(leaving, only.cover, only.spot);
    } else if (from.cover !== to.cover) {
      const [a, b] = from.cover < to.cover ? [from, to] : [to, from];
      // Each part on the bare wall has a conduit of its own.
      add(between, `${a.cover} ${b.cover} ${a.cover === '' ? a.home.part.id : ''}`, { a, b });
    }
  }
  const exits = [...leaving].map(([cover, spots]) => {
    const blocked = cover === '' ? [...taken, ...covers.map(({ at }) => at)] : taken;
    return edgeSpot(boxOf(cover), mean(spots), blocked);
  });
  const joins = [...between.values()].flatMap((pairs): Join[] => {
    const [first] = pairs;
    if (first === undefined) return [];
    const inner = boxOf(first.b.cover);
    const ids: Join['between'] = [first.a.cover, first.b.cover];
    if (first.a.cover !== '') {
      const outer = boxOf(first.a.cover);
      const wall = grommets(outer, inner);
      if (wall.length > 0) return wall.map((spot) => ({ from: spot, to: spot, between: ids }));
      const from = edgeSpot(outer, middle(inner), taken);
      return [{ from, to: edgeSpot(inner, from, taken), between: ids }];
    }
    const box = solidBox(first.a.home);
    const near = edgeSpot(inner, mean(pairs.map(({ a }) => a.spot)), taken);
    const outside = { x: box.x - 24, y: box.y - 24, width: box.width + 48, height: box.height + 48 };
    const from = edgeSpot(outside, near, [...taken, ...covers.map(({ at }) => at)], [4, 0]);
    return [{ from, to: near, between: ids }];
  });
  return { exits, joins };
}
