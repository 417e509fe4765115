import type { ElementKind } from '../../rig/elements.ts';
import type { Ladder, Step } from '../../rig/ladder.ts';
import type { Point } from '../../rig/points.ts';
import type { RigWire } from '../../rig/schema.ts';

/** One thing on the drawing, its middle, and its terminals from left to right. */
export interface Cell {
  readonly x: number;
  readonly y: number;
  readonly part: string;
  readonly kind: ElementKind | 'supply' | 'load';
  readonly closed: boolean;
  readonly left: Point;
  readonly right: Point;
}

/** A stretch of wire from left to right, or upright where strings join. */
export interface Stretch {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly wires: readonly RigWire[];
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly cells: readonly Cell[];
  readonly stretches: readonly Stretch[];
  readonly dots: readonly { readonly x: number; readonly y: number }[];
  readonly rails: readonly [number, number];
  readonly top: number;
  readonly foot: number;
  /** Height of each rung's line, in the order of the rungs. */
  readonly rows: readonly number[];
}

const CELL = 112;
export const SYMBOL = 40;
const ROW = 86;
const EDGE = 44;
const TOP = 54;

/** A cell before its place is known. */
type Loose = Omit<Cell, 'x' | 'y'>;

const forward = ({ part, kind, closed, enter, leave }: Step): Loose => ({ part, kind, closed, left: enter, right: leave });
const backward = (step: Step): Loose => ({ ...forward(step), left: step.leave, right: step.enter });

/**
 * Where everything of a ladder stands, CSS pixels: its supply on top with what all rungs share, then a row for every
 * string. Loads stand before what leads back to the right rail.
 */
export function drawLadder(ladder: Ladder): Drawing {
  const { feed, tail, rungs } = ladder;
  const columns = Math.max(
    3,
    feed.steps.length + 1 + tail.steps.length,
    ...rungs.map(({ ways, back }) => Math.max(...ways.map(({ steps }) => steps.length)) + 1 + back.steps.length),
  );
  const rails = [EDGE, EDGE + columns * CELL] as const;
  const middleOf = (column: number): number => EDGE + (column + 0.5) * CELL;
  const cells: Cell[] = [];
  const stretches: Stretch[] = [];
  const dots: { x: number; y: number }[] = [];
  /** Draws things from left to right, each with the wires before it, from `x` on; gives where the last one ends. */
  const run = (y: number, x: number, things: readonly { at: number; cell: Loose; wires: readonly RigWire[] }[]): number =>
    things.reduce((from, { at, cell, wires }) => {
      cells.push({ ...cell, x: at, y });
      stretches.push({ x1: from, y1: y, x2: at - SYMBOL / 2, y2: y, wires });
      return at + SYMBOL / 2;
    }, x);

  // The supply with the feed to its left, from the rail inwards, and the tail to its right.
  const supplyAt = Math.max(feed.steps.length, Math.min(columns - 1 - tail.steps.length, Math.floor((columns - 1) / 2)));
  const supply: Loose = { part: ladder.supply, kind: 'supply', closed: false, left: ladder.hot, right: ladder.common };
  const fed = [...feed.steps].reverse();
  const tailed = [...tail.steps].reverse();
  const end = run(TOP, rails[0], [
    ...fed.map((step, index) => ({
      at: middleOf(index),
      cell: backward(step),
      wires: index === 0 ? feed.wires : (fed[index - 1]?.wires ?? []),
    })),
    { at: middleOf(supplyAt), cell: supply, wires: fed.at(-1)?.wires ?? feed.wires },
    ...tailed.map((step, index) => ({
      at: middleOf(columns - tailed.length + index),
      cell: backward(step),
      wires: index === 0 ? tail.wires : (tailed[index - 1]?.wires ?? []),
    })),
  ]);
  stretches.push({ x1: end, y1: TOP, x2: rails[1], y2: TOP, wires: tailed.at(-1)?.wires ?? tail.wires });

  let y = TOP;
  const rows = rungs.map(({ load, ways, back }) => {
    y += ROW;
    const row = y;
    const loadAt = columns - 1 - back.steps.length;
    const before = middleOf(loadAt) - SYMBOL / 2;
    ways.forEach(({ steps, wires }, index) => {
      if (index > 0) y += ROW;
      const last = run(
        y,
        rails[0],
        steps.map((step, column) => ({ at: middleOf(column), cell: forward(step), wires: step.wires })),
      );
      dots.push({ x: rails[0], y });
      const join = before - (ways.length > 1 ? 22 : 0);
      stretches.push({ x1: last, y1: y, x2: index === 0 ? before : join, y2: y, wires });
      if (index === 0) return;
      stretches.push({ x1: join, y1: row, x2: join, y2: y, wires: [] });
      dots.push({ x: join, y: row });
    });
    cells.push({ ...forward(load), kind: load.kind === 'coil' ? 'coil' : 'load', x: middleOf(loadAt), y: row });
    const first = back.steps.length;
    const ended = run(
      row,
      middleOf(loadAt) + SYMBOL / 2,
      back.steps.map((step, index) => ({ at: middleOf(columns - first + index), cell: forward(step), wires: step.wires })),
    );
    stretches.push({ x1: ended, y1: row, x2: rails[1], y2: row, wires: back.wires });
    dots.push({ x: rails[1], y: row });
    return row;
  });
  return { width: rails[1] + EDGE, height: y + 44, cells, stretches, dots, rails, top: TOP, foot: y, rows };
}
