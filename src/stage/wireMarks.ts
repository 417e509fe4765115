import { holds, overlaps, solidBox, terminalSpots } from './boxes.ts';
import { labelBoxes } from './labels.ts';
import { type Box, fillBox, letter, type Pen, strokeBox } from './pen.ts';
import type { PlacedPart, Run } from './placed.ts';
import { LETTERS, MATERIAL, type WIRE } from './tokens.ts';
import type { Spot } from './wires.ts';

type Colour = keyof typeof WIRE;

/** How a colour of insulation is told without seeing it: its letters by IEC 60757, and what runs along it. */
interface Mark {
  readonly code: string;
  /** Lengths of ink and gap along the wire, in scene units; none: plain. */
  readonly dash?: readonly number[];
  /** How much of the wire's width the ink takes, 0…1; 1 is a ring round it. */
  readonly part?: number;
  readonly ink?: string;
}

const LIGHT = MATERIAL.white;
const DARK = MATERIAL.outline;

/** Every colour has letters and a pattern of its own; black and white are told apart by their lightness and stay plain. */
export const MARKS: Readonly<Record<Colour, Mark>> = {
  black: { code: 'BK' },
  white: { code: 'WH' },
  red: { code: 'RD', dash: [2.4, 21.6], part: 1, ink: LIGHT },
  yellow: { code: 'YE', dash: [1.6, 8.4], part: 0.42, ink: DARK },
  green: { code: 'GN', dash: [1, 0], part: 0.3, ink: MATERIAL.caution },
  blue: { code: 'BU', dash: [9, 7], part: 0.3, ink: LIGHT },
  brown: { code: 'BN', dash: [2.2, 3, 2.2, 18.6], part: 1, ink: LIGHT },
  orange: { code: 'OG', dash: [2.4, 9.6], part: 1, ink: DARK },
  grey: { code: 'GY', dash: [2, 2.6, 2, 2.6, 2, 16.8], part: 1, ink: DARK },
  copper: { code: 'CU', dash: [1.4, 3.2], part: 0.7, ink: MATERIAL.brassSlot },
};

/** The mark of a rig's colour name; an unknown one counts as bare copper. */
export function markOf(colour: string): Mark {
  return (MARKS as Readonly<Record<string, Mark>>)[colour] ?? MARKS.copper;
}

/** A wire's letters on its sleeve: a small flag that rides on it. */
export interface Flag {
  readonly wire: string;
  readonly text: string;
  readonly box: Box;
}

const FLAG = { width: 23, height: 15 } as const;
/** Spots of a course that lie in front of the face that it starts from. */
const STUB = 7;
/** How far from its edges the middle of a flag begins, which belongs to its wire alone. */
export const CORE = 4.5;

/** Whether a flag tells a run's colour on a stretch of it: wires of one colour that run together share one. */
export function tells(flag: Flag, run: Run, path: readonly Spot[] = run.path): boolean {
  return flag.text === markOf(run.colour).code && path.some((spot) => holds(flag.box, spot, 0));
}

/** Puts flags on a place's wires, near both ends where there is room: off words, terminals, other wires and faces. */
export function flagsOf(runs: readonly Run[], parts: readonly PlacedPart[], wireWidth: number): Flag[] {
  const words = labelBoxes(parts);
  const solid = parts.filter(({ face }) => face.over !== true && face.sheet !== true).map(solidBox);
  const nests = terminalSpots(parts).map(({ x, y }) => ({ x: x - 10, y: y - 10, width: 20, height: 20 }));
  const flags: Flag[] = [];
  const around = new Map(runs.map((run) => [run, boundsOf(run.path)]));
  const nearIt = (run: Run, box: Box): boolean => {
    const bounds = around.get(run);
    return bounds !== undefined && overlaps(bounds, box, wireWidth);
  };
  const fits = (box: Box, run: Run, clear: number): boolean =>
    !words.some((word) => overlaps(box, word, 1)) &&
    !nests.some((nest) => overlaps(box, nest, 0)) &&
    !flags.some((flag) => overlaps(box, flag.box, 1)) &&
    !runs.some((other) => other.colour !== run.colour && nearIt(other, box) && other.path.some((spot) => holds(box, spot, clear)));
  const place = (run: Run, path: readonly Spot[], to: number, clear: number): void => {
    for (let index = 4; index < to; index += 1) {
      const spot = path[index];
      if (spot === undefined) continue;
      const box = { x: spot.x - FLAG.width / 2, y: spot.y - FLAG.height / 2, ...FLAG };
      // Behind a face the wire is not seen, save its last bit before the terminal.
      const hidden = index > STUB && solid.some((face) => holds(face, spot, 0));
      if (hidden || !fits(box, run, clear)) continue;
      flags.push({ wire: run.wire, text: markOf(run.colour).code, box });
      return;
    }
  };
  // Short wires have the least choice and come first. Where lanes lie close, a flag may touch a neighbour with its edges only.
  const shortFirst = [...runs].sort((a, b) => a.path.length - b.path.length);
  for (const clear of [wireWidth / 2 - 1, -CORE]) {
    for (const run of shortFirst) {
      const half = run.path.length > 45 ? run.path.length / 2 : run.path.length;
      for (const path of [run.path, [...run.path].reverse()]) {
        const near = path.slice(0, half);
        if (!flags.some((flag) => tells(flag, run, near))) place(run, path, half, clear);
      }
    }
  }
  return flags;
}

/** The least box around a course. */
function boundsOf(path: readonly Spot[]): Box {
  const [xs, ys] = [path.map(({ x }) => x), path.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

export function drawFlag(pen: Pen, { box, text }: Flag): void {
  fillBox(pen, box, 3, MATERIAL.label);
  strokeBox(pen, box, 3, MATERIAL.outline, 1);
  letter(pen, text, box.x + box.width / 2, box.y + box.height / 2, {
    size: LETTERS.small,
    weight: 750,
    family: 'display',
    colour: MATERIAL.labelInk,
    most: box.width - 4,
  });
}
