import { holds } from './boxes.ts';
import type { Way } from './face.ts';
import type { Box } from './pen.ts';
import { SCENE } from './tokens.ts';
import { ahead, type Spot } from './wires.ts';

/** A wire that wants a way from one spot to another. With a `way`, it leaves or arrives like a wire under a screw. */
export interface Errand {
  readonly id: string;
  readonly from: Spot;
  readonly fromWay?: Way;
  readonly to: Spot;
  readonly toWay?: Way;
  /** The cabinet that it keeps inside of; without one it keeps out of all of them. */
  readonly room: Box | undefined;
}

/** Lanes that wires keep to, scene units. */
const LANE = 8;
const COLUMNS = Math.ceil(SCENE.width / LANE);
const ROWS = Math.ceil(600 / LANE);
const CELLS = COLUMNS * ROWS;
/** How far a wire runs straight out of its terminal, scene units. */
const STRAIGHT = 22;
/** What a step costs beyond its length, in thirds of a lane: a bend, a neighbour's lane, a crossing, a face to hide behind, words. */
const COST = { step: 3, bend: 12, shared: 40, beside: 4, cross: 10, face: 24, nest: 300, words: 3000, astray: 120 } as const;

/** Ground that wires pay for: words are all but forbidden, other terminals too, faces are dear. */
export interface Ground {
  readonly words: readonly Box[];
  readonly nests: readonly Spot[];
  readonly faces: readonly Box[];
  readonly rooms: readonly Box[];
}

const clampTo = (value: number, most: number): number => Math.min(most, Math.max(0, value));
const cellOf = (spot: Spot): number =>
  clampTo(Math.floor(spot.y / LANE), ROWS - 1) * COLUMNS + clampTo(Math.floor(spot.x / LANE), COLUMNS - 1);
const middleOf = (cell: number): Spot => ({
  x: ((cell % COLUMNS) + 0.5) * LANE,
  y: (Math.floor(cell / COLUMNS) + 0.5) * LANE,
});

function priced(ground: Ground, room: Box | undefined): Int32Array {
  const price = new Int32Array(CELLS);
  for (let cell = 0; cell < CELLS; cell += 1) {
    const spot = middleOf(cell);
    const astray = room === undefined ? ground.rooms.some((each) => holds(each, spot, 0)) : !holds(room, spot, -4);
    price[cell] = astray ? COST.astray : COST.step;
  }
  const add = (box: Box, cost: number, margin: number): void => {
    const from = cellOf({ x: box.x - margin, y: box.y - margin });
    const to = cellOf({ x: box.x + box.width + margin, y: box.y + box.height + margin });
    for (let row = Math.floor(from / COLUMNS); row <= Math.floor(to / COLUMNS); row += 1) {
      for (let column = from % COLUMNS; column <= to % COLUMNS; column += 1) {
        const cell = row * COLUMNS + column;
        if (holds(box, middleOf(cell), margin) && (price[cell] ?? 0) < cost) price[cell] = cost;
      }
    }
  };
  for (const box of ground.faces) add(box, COST.face, 0);
  for (const { x, y } of ground.nests) add({ x: x - 12, y: y - 12, width: 24, height: 24 }, COST.nest, 5);
  for (const box of ground.words) add(box, COST.words, 7);
  return price;
}

const STEPS = [
  { dx: 1, dy: 0, axis: 0 },
  { dx: -1, dy: 0, axis: 0 },
  { dx: 0, dy: 1, axis: 1 },
  { dx: 0, dy: -1, axis: 1 },
] as const;

/** Lanes in use: how many wires run through a cell level and upright. */
type Used = readonly [Uint8Array, Uint8Array];

/** The cheapest way between two cells (Dijkstra with a bucket for each cost), as the cells that it goes through. */
function cheapest(price: Int32Array, used: Used, from: number, to: number, startAxis: 0 | 1 | undefined): number[] {
  const known = new Int32Array(CELLS * 2).fill(0x7fffffff);
  const came = new Int32Array(CELLS * 2).fill(-1);
  const buckets: number[][] = [];
  const push = (state: number, cost: number, before: number): void => {
    if (cost >= (known[state] ?? 0)) return;
    known[state] = cost;
    came[state] = before;
    let bucket = buckets[cost];
    if (bucket === undefined) {
      bucket = [];
      buckets[cost] = bucket;
    }
    bucket.push(state);
  };
  for (const axis of [0, 1] as const) push(from * 2 + axis, startAxis === undefined || startAxis === axis ? 0 : COST.bend, -1);
  for (let cost = 0; cost < buckets.length; cost += 1) {
    for (const state of buckets[cost] ?? []) {
      if (known[state] !== cost) continue;
      const cell = state >> 1;
      if (cell === to) return unwound(came, state);
      const x = cell % COLUMNS;
      const y = (cell - x) / COLUMNS;
      for (const { dx, dy, axis } of STEPS) {
        const [nx, ny] = [x + dx, y + dy];
        if (nx < 0 || ny < 0 || nx >= COLUMNS || ny >= ROWS) continue;
        const next = ny * COLUMNS + nx;
        const along = used[axis];
        const side = axis === 0 ? COLUMNS : 1;
        const crowd =
          (along[next] ?? 0) * COST.shared +
          ((along[next - side] ?? 0) + (along[next + side] ?? 0) > 0 ? COST.beside : 0) +
          (used[axis === 0 ? 1 : 0][next] ?? 0) * COST.cross;
        push(next * 2 + axis, cost + (price[next] ?? 0) + crowd + (axis === (state & 1) ? 0 : COST.bend), state);
      }
    }
    delete buckets[cost];
  }
  return [from, to];
}

function unwound(came: Int32Array, last: number): number[] {
  const cells: number[] = [];
  for (let state = last; state >= 0; state = came[state] ?? -1) if (cells.at(-1) !== state >> 1) cells.push(state >> 1);
  return cells.reverse();
}

/** The spots where a way through cells turns, with its first and last. */
function corners(cells: readonly number[]): Spot[] {
  return cells.flatMap((cell, index) => {
    const before = cells[index - 1];
    const after = cells[index + 1];
    return before !== undefined && after !== undefined && after - cell === cell - before ? [] : [middleOf(cell)];
  });
}

/** Slides the first stretch of a way sideways, so that it starts from `spot` exactly and stays level or upright. */
function anchored(way: readonly Spot[], spot: Spot): Spot[] {
  const [first, second, ...rest] = way;
  if (first === undefined || second === undefined) return [spot];
  if (rest.length === 0) return [spot, second];
  const upright = Math.abs(first.x - second.x) < 0.01;
  return [spot, upright ? { x: spot.x, y: second.y } : { x: second.x, y: spot.y }, ...rest];
}

/** Rounds the corners of a way and gives it as spots about 4 units apart. */
export function rounded(way: readonly Spot[], radius = 15): Spot[] {
  const path: Spot[] = [];
  const lineTo = (to: Spot): void => {
    const from = path.at(-1);
    const far = from === undefined ? 0 : Math.hypot(to.x - from.x, to.y - from.y);
    const count = Math.max(1, Math.ceil(far / 4));
    for (let step = from === undefined ? count : 1; step <= count; step += 1) {
      const t = step / count;
      path.push(from === undefined ? to : { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t });
    }
  };
  way.forEach((corner, index) => {
    const before = way[index - 1];
    const after = way[index + 1];
    if (before === undefined || after === undefined) {
      lineTo(corner);
      return;
    }
    const [a, b] = [Math.hypot(before.x - corner.x, before.y - corner.y), Math.hypot(after.x - corner.x, after.y - corner.y)];
    const cut = Math.min(radius, a / 2, b / 2);
    if (cut < 0.5) return;
    const start = { x: corner.x + ((before.x - corner.x) * cut) / a, y: corner.y + ((before.y - corner.y) * cut) / a };
    const end = { x: corner.x + ((after.x - corner.x) * cut) / b, y: corner.y + ((after.y - corner.y) * cut) / b };
    lineTo(start);
    for (let step = 1; step <= 6; step += 1) {
      const t = step / 6;
      const u = 1 - t;
      path.push({
        x: start.x * u * u + corner.x * 2 * u * t + end.x * t * t,
        y: start.y * u * u + corner.y * 2 * u * t + end.y * t * t,
      });
    }
  });
  return path;
}

function routedAnew(errands: readonly Errand[], ground: Ground): ReadonlyMap<string, readonly Spot[]> {
  const prices = new Map([undefined, ...ground.rooms].map((room) => [JSON.stringify(room), priced(ground, room)]));
  const used: Used = [new Uint8Array(CELLS), new Uint8Array(CELLS)];
  const far = ({ from, to }: Errand): number => Math.hypot(from.x - to.x, from.y - to.y);
  const paths = new Map<string, readonly Spot[]>();
  for (const errand of [...errands].sort((a, b) => far(a) - far(b) || (a.id < b.id ? -1 : 1))) {
    const out = errand.fromWay === undefined ? errand.from : ahead(errand.from, errand.fromWay, STRAIGHT);
    const home = errand.toWay === undefined ? errand.to : ahead(errand.to, errand.toWay, STRAIGHT);
    const axis = errand.fromWay === undefined ? undefined : errand.fromWay === 'left' || errand.fromWay === 'right' ? 0 : 1;
    const price = prices.get(JSON.stringify(errand.room)) ?? priced(ground, errand.room);
    const cells = cheapest(price, used, cellOf(out), cellOf(home), axis);
    cells.forEach((cell, index) => {
      const beside = cells[index + 1] ?? cells[index - 1] ?? cell;
      const lane = used[Math.abs(beside - cell) < COLUMNS ? 0 : 1];
      lane[cell] = (lane[cell] ?? 0) + 1;
    });
    const way = anchored(anchored(corners(cells), out).reverse(), home).reverse();
    paths.set(errand.id, rounded([errand.from, ...way, errand.to]));
  }
  return paths;
}

const KEPT = 12;
const kept = new Map<string, ReadonlyMap<string, readonly Spot[]>>();

/**
 * Ways for wires that keep off words and terminals, run beside one another and hide behind faces only when there is no other way;
 * each as spots about 4 scene units apart. The same question is answered from memory.
 */
export function routed(errands: readonly Errand[], ground: Ground): ReadonlyMap<string, readonly Spot[]> {
  const key = JSON.stringify([errands, ground]);
  const before = kept.get(key);
  if (before !== undefined) return before;
  const fresh = routedAnew(errands, ground);
  if (kept.size >= KEPT) kept.delete(kept.keys().next().value ?? '');
  kept.set(key, fresh);
  return fresh;
}
