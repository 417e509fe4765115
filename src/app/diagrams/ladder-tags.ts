import { DISCERNMENT } from '../../meter/apart.ts';
import type { Box } from '../../stage/pen.ts';
import type { Spot } from '../../stage/wires.ts';
import { type Cell, type Drawing, SYMBOL } from './ladder-layout.ts';
import { placeTags } from './tags.ts';
import type { PointValue } from './value-tag.tsx';

/** A value on a ladder: the spot of the wire that has it, and where it stands. */
export interface LadderTag {
  readonly value: PointValue;
  readonly spot: Spot;
  readonly box: Box;
}

/** What is written at a cell, CSS pixels from its middle: name above, letters below. See the drawing of a cell. */
export interface CellWords {
  readonly lines: readonly string[];
  readonly left: string;
  readonly right: string;
}

const LETTER = 7.2;
/** From a wire's end to where its value hangs. */
const INWARD = 16;

/** Volts that a technician would not call different are one. */
const alike = (a: PointValue, b: PointValue): boolean =>
  a.alive === b.alive && Math.abs((a.volts ?? 0) - (b.volts ?? 0)) <= DISCERNMENT.floors.voltsAc;

function writtenAt({ x, y }: Cell, { lines, left, right }: CellWords): Box[] {
  const names = lines.map((line, index) => {
    const width = line.length * LETTER;
    return { x: x - width / 2, y: y - 31 - (lines.length - 1 - index) * 12, width, height: 13 };
  });
  return [
    ...names,
    { x: x - SYMBOL / 2, y: y - 13, width: SYMBOL, height: 26 },
    { x: x - 12 - left.length * LETTER, y: y + 9, width: left.length * LETTER, height: 13 },
    { x: x + 12, y: y + 9, width: right.length * LETTER, height: 13 },
  ];
}

/**
 * Values along a ladder: one on each rail, and one on every wire that hangs on none, or has another than its rail. A wire whose two ends differ (it is
 * open, or loses volts) has both.
 */
export function ladderTags(
  drawing: Drawing,
  values: ReadonlyMap<string, PointValue>,
  wordsOf: (cell: Cell) => CellWords,
): readonly LadderTag[] {
  const { cells, stretches, rails, top, width, height } = drawing;
  const cellAt = (x: number, y: number) => cells.find((cell) => cell.y === y && Math.abs(cell.x - x) < 1);
  const first = cells.filter(({ y }) => y === top).sort((a, b) => a.x - b.x);
  const railValues = [values.get(first[0]?.left ?? ''), values.get(first.at(-1)?.right ?? '')] as const;
  const wanted: { readonly value: PointValue; readonly spot: Spot }[] = [];
  railValues.forEach((value, side) => {
    if (value) wanted.push({ value, spot: { x: rails[side] ?? 0, y: top - 14 } });
  });
  for (const { x1, x2, y1, y2 } of stretches) {
    if (y1 !== y2) continue;
    const leftRail = x1 === rails[0] ? railValues[0] : undefined;
    const rightRail = x2 === rails[1] ? railValues[1] : undefined;
    const from = leftRail ?? values.get(cellAt(x1 - SYMBOL / 2, y1)?.right ?? '');
    const to = rightRail ?? values.get(cellAt(x2 + SYMBOL / 2, y1)?.left ?? '');
    const isRail = (value: PointValue): boolean => [leftRail, rightRail].some((rail) => rail !== undefined && alike(rail, value));
    const ends = from && to && alike(from, to) ? [from] : [from, to];
    ends.forEach((value, index) => {
      if (value === undefined || isRail(value)) return;
      const one = ends.length === 1;
      const x = one ? (x1 + x2) / 2 : index === 0 ? Math.min(x1 + INWARD, x2) : Math.max(x2 - INWARD, x1);
      wanted.push({ value, spot: { x, y: y1 } });
    });
  }
  const boxes = placeTags(
    wanted.map(({ value, spot }) => ({ spot, text: value.text })),
    {
      frame: { x: 0, y: 0, width, height },
      taken: [
        ...cells.flatMap((cell) => writtenAt(cell, wordsOf(cell))),
        ...stretches.filter(({ y1, y2 }) => y1 === y2).flatMap(wireBoxes),
        ...drawing.rows.map((y) => ({ x: rails[0] - 24, y: y - 8, width: 18, height: 16 })),
      ],
      wires: [],
    },
  );
  return wanted.flatMap((tag, index) => {
    const box = boxes[index];
    return box === undefined ? [] : [{ ...tag, box }];
  });
}

/** A wire and the letters of its colours above it. */
const wireBoxes = ({ x1, y1, x2, wires }: Drawing['stretches'][number]): Box[] => {
  const middle = x1 + Math.min((x2 - x1) / 2, 40);
  const half = (wires.length * 20) / 2;
  return [
    { x: x1, y: y1 - 2, width: x2 - x1, height: 4 },
    ...(wires.length === 0 ? [] : [{ x: middle - half, y: y1 - 17, width: 2 * half, height: 13 }]),
  ];
};
