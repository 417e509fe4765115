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

function overlaps(a: Box, b: Box, margin: number): boolean {
  return (
    a.x < b.x + b.width + margin && b.x < a.x + a.width + margin && a.y < b.y + b.height + margin && b.y < a.y + a.height + margin
  );
}

function holds(box: Box, { x, y }: Spot, margin: number): boolean {
  return x > box.x - margin && x < box.x + box.width + margin && y > box.y - margin && y < box.y + box.height + margin;
}

/** Puts flags on a place's wires, near both ends where there is room: off words, terminals, other wires and faces. */
export function flagsOf(runs: readonly Run[], parts: readonly PlacedPart[], wireWidth: number): Flag[] {
  const words = labelBoxes(parts);
  const solid = parts
    .filter(({ face }) => face.over !== true && face.sheet !== true)
    .map(({ x, y, shape }) =>
      shape.body ? { ...shape.body, x: x + shape.body.x, y: y + shape.body.y } : { x, y, width: shape.width, height: shape.height },
    );
  const nests = parts.flatMap(({ shape, x, y }) =>
    Object.values(shape.terminals).map((spot) => ({ x: x + spot.x - 13, y: y + spot.y - 13, width: 26, height: 26 })),
  );
  const flags: Flag[] = [];
  const fits = (box: Box, run: Run, strict: boolean): boolean =>
    !words.some((word) => overlaps(box, word, 1)) &&
    !nests.some((nest) => overlaps(box, nest, 0)) &&
    !(strict && solid.some((face) => overlaps(box, face, 0))) &&
    !flags.some((flag) => overlaps(box, flag.box, 2)) &&
    !runs.some((other) => other !== run && other.path.some((spot) => holds(box, spot, wireWidth / 2 - 1)));
  const place = (run: Run, path: readonly Spot[], from: number, to: number): boolean => {
    for (let index = from; index < to; index += 1) {
      const spot = path[index];
      if (spot === undefined) continue;
      const box = { x: spot.x - FLAG.width / 2, y: spot.y - FLAG.height / 2, ...FLAG };
      // On a face the wire runs behind it, save its last bit before the terminal.
      if (!fits(box, run, index > STUB)) continue;
      flags.push({ wire: run.wire, text: markOf(run.colour).code, box });
      return true;
    }
    return false;
  };
  for (const run of runs) {
    const half = Math.floor(run.path.length / 2);
    const backwards = [...run.path].reverse();
    const long = run.path.length > 45;
    const first = place(run, run.landed[0] ? run.path : backwards, 5, long ? half : run.path.length);
    if (long || !first) place(run, run.landed[0] ? backwards : run.path, 5, long ? half : run.path.length);
  }
  return flags;
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
