import { labelOf, type Words } from './face.ts';
import { type Box, fillBox, letter, type Pen, wrapped } from './pen.ts';
import type { PlacedPart } from './placed.ts';
import { FAMILIES, LETTERS, MATERIAL, shade } from './tokens.ts';

/** Half of the height of a name's tape, and what a second row adds to it. */
const HALF = 9;
const ROW = 14;

/** Wide enough for a terminal's letters in the display face, scene units; known without a canvas. */
function widthOf(text: string, size: number): number {
  return text.length * size * 0.72;
}

/** A terminal's letters in rows: words under one another where they stand over their blade. */
function rowsOf(text: string, stacked: boolean): string[] {
  return stacked ? text.split(' ') : [text];
}

interface Print {
  readonly text: string;
  readonly row: number;
  readonly box: Box;
  readonly align: CanvasTextAlign;
  readonly size: number;
  readonly dark: boolean;
}

/** The letters printed beside a part's terminals, in scene units. */
export function printsOf({ part, shape, x, y }: PlacedPart): Print[] {
  return Object.entries(shape.terminals).flatMap(([id, spot]) => {
    const text = labelOf(part, id);
    if (spot.letter === undefined || text === '') return [];
    const { dx, dy, align = 'center', dark = false } = spot.letter;
    const rows = rowsOf(text, align === 'center');
    const size = spot.letter.size ?? (rows.length > 1 || text.length > 2 ? LETTERS.small : LETTERS.terminal);
    return rows.map((row, index) => {
      const width = Math.min(spot.letter?.most ?? 46, widthOf(row, size));
      const left = align === 'center' ? -width / 2 : align === 'left' ? 0 : -width;
      const box = { x: x + spot.x + dx + left, y: y + spot.y + dy + index * 12 - size * 0.42, width, height: size * 0.84 };
      return { text: row, row: index, box, align, size, dark };
    });
  });
}

/** Room that a part's name may take, whatever the language: two rows. */
export function nameBox({ shape, x, y }: PlacedPart): Box | undefined {
  const name = shape.name;
  if (name === undefined) return undefined;
  const width = name.most + 12;
  return { x: x + name.x - width / 2, y: y + name.y - HALF, width, height: HALF * 2 + ROW };
}

/** Everything printed on and beside uncovered parts that wires must keep off. */
export function labelBoxes(parts: readonly PlacedPart[]): Box[] {
  return parts.flatMap((placed) => {
    const name = nameBox(placed);
    const keep = (placed.shape.keep ?? []).map((box) => ({ ...box, x: placed.x + box.x, y: placed.y + box.y }));
    return [...(name === undefined ? [] : [name]), ...printsOf(placed).map(({ box }) => box), ...keep];
  });
}

/** Writes a part's name on its tape and the letters of its terminals: one hand for all faces. */
export function drawLabels(pen: Pen, placed: PlacedPart, words: Words): void {
  for (const { text, box, align, size, dark } of printsOf(placed)) {
    const at = align === 'center' ? box.x + box.width / 2 : align === 'left' ? box.x : box.x + box.width;
    letter(pen, text, at, box.y + box.height / 2, {
      size,
      weight: 750,
      family: 'display',
      align,
      colour: dark ? MATERIAL.labelInk : MATERIAL.boardInk,
      most: box.width,
    });
  }
  const name = placed.shape.name;
  if (name !== undefined)
    nameTape(pen, words(`rig:part.${placed.part.id}`), placed.x + name.x, placed.y + name.y, name.most, name.paper === true);
}

/** A name on dark tape, or in ink where a paper ground is light; long names take a second row below the first. */
export function nameTape(pen: Pen, text: string, x: number, y: number, most: number, paper = false): void {
  pen.font = `600 ${String(LETTERS.name)}px ${FAMILIES.display}`;
  const rows = pen.measureText(text).width <= most * 1.12 ? [text] : wrapped(pen, text, most);
  const width = Math.min(most, Math.max(...rows.map((row) => pen.measureText(row).width))) + 12;
  if (!paper) fillBox(pen, { x: x - width / 2, y: y - HALF, width, height: HALF * 2 + (rows.length - 1) * ROW }, 4, shade(0.78));
  rows.forEach((row, index) => {
    letter(pen, row, x, y + index * ROW, {
      size: LETTERS.name,
      colour: paper ? MATERIAL.labelInk : MATERIAL.boardInk,
      weight: 600,
      family: 'display',
      most,
    });
  });
}
