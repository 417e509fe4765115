import type { ControlView, PartView } from '../../attempt/view.ts';
import { type Face, type Handle, nextPosition, nudged, type Shape, spaced, type Words } from '../face.ts';
import { shell } from '../hardware.ts';
import { type Box, fillBox, letter, type Pen, strokeBox, wrapped } from '../pen.ts';
import { LETTERS, MATERIAL } from '../tokens.ts';

/** From one terminal to the next, scene units. */
const STEP = 56;
/** The most terminals in one row; more are shared out over a row above and one below. */
const ROW = 6;
const HEIGHT = { row: 58, name: 42, signs: 40, control: 38 } as const;

interface Layout {
  readonly width: number;
  readonly height: number;
  readonly upper: readonly string[];
  readonly lower: readonly string[];
  readonly nameTop: number;
  readonly signs: Box;
  readonly controls: readonly { readonly control: ControlView; readonly box: Box }[];
}

function layout(part: PartView): Layout {
  const ids = part.terminals.map(({ id }) => id);
  const first = ids.length > ROW ? Math.ceil(ids.length / 2) : 0;
  const [upper, lower] = [ids.slice(0, first), ids.slice(first)];
  const width = Math.max(150, 24 + Math.max(upper.length, lower.length) * STEP);
  const nameTop = upper.length > 0 ? HEIGHT.row : 6;
  const signs = { x: 12, y: nameTop + HEIGHT.name, width: width - 24, height: HEIGHT.signs };
  const controls = part.controls.map((control, index) => ({
    control,
    box: { x: 12, y: signs.y + signs.height + index * HEIGHT.control, width: width - 24, height: HEIGHT.control - 6 },
  }));
  const height = signs.y + signs.height + controls.length * HEIGHT.control + (lower.length > 0 ? HEIGHT.row : 6);
  return { width, height, upper, lower, nameTop, signs, controls };
}

function shape(part: PartView): Shape {
  const { width, height, upper, lower, nameTop, signs, controls } = layout(part);
  const from = (ids: readonly string[]): number => (width - (ids.length - 1) * STEP) / 2;
  const screwed = { screw: 12 } as const;
  return {
    width,
    height,
    name: { x: width / 2, y: nameTop + 12, most: width - 24, paper: true },
    keep: [signs, ...controls.map(({ box }) => box)],
    terminals: {
      ...spaced(upper, { x: from(upper), y: 20 }, { x: STEP, y: 0 }, 'up', { ...screwed, letter: { dx: 0, dy: 24, dark: true } }),
      ...spaced(lower, { x: from(lower), y: height - 20 }, { x: STEP, y: 0 }, 'down', {
        ...screwed,
        letter: { dx: 0, dy: -24, dark: true },
      }),
    },
  };
}

/** What is seen of it, in the words of the list bench; a bare key and value where there are none yet. */
function signWords(part: PartView, words: Words): string {
  const said = Object.entries(part.signs).flatMap(([key, value]) => {
    const numbered = typeof value === 'number' && value !== 0 && value !== 1;
    // keys: parts:sign.*
    const text = numbered ? words(`parts:sign.${key}.value`, { value }) : words(`parts:sign.${key}.${String(value)}`);
    if (text === '') return [];
    return text.startsWith('sign.') || text.startsWith('parts:') ? `${key} ${String(value)}` : text;
  });
  return said.join(' · ');
}

/** What stands in a control's window: its position, or its number. */
function standing(value: string | number, words: Words): string {
  return typeof value === 'number' ? String(value) : words(`parts:position.${value}`);
}

function draw(pen: Pen, part: PartView, words: Words): void {
  const { width, height, signs, controls } = layout(part);
  shell(pen, { x: 0, y: 0, width, height }, 'zinc');
  fillBox(pen, signs, 3, MATERIAL.label);
  strokeBox(pen, signs, 3, MATERIAL.enamelLine, 1);
  const how = { size: LETTERS.small, colour: MATERIAL.labelInk, most: signs.width - 10 } as const;
  letter(pen, ' ', signs.x, signs.y, how);
  const rows = wrapped(pen, signWords(part, words), signs.width - 10).slice(0, 2);
  rows.forEach((row, index) => {
    letter(pen, row, width / 2, signs.y + signs.height / 2 + (index - (rows.length - 1) / 2) * 16, how);
  });
  for (const { control, box } of controls) {
    shell(pen, box, 'signal', 2);
    letter(pen, standing(control.value, words), width / 2, box.y + box.height / 2, { ...how, weight: 650 });
    if (control.range === undefined) continue;
    letter(pen, '−', box.x + 18, box.y + box.height / 2, { ...how, size: 20, weight: 700 });
    letter(pen, '+', box.x + box.width - 18, box.y + box.height / 2, { ...how, size: 20, weight: 700 });
  }
}

function handles(part: PartView): readonly Handle[] {
  return layout(part).controls.flatMap(({ control, box }): Handle[] => {
    const next = nextPosition(part, control.id);
    if (next !== undefined) return [{ box, name: 'operate', action: next }];
    const half = { ...box, width: box.width / 2 };
    const [down, up] = [nudged(part, control.id, -1), nudged(part, control.id, 1)];
    if (down === undefined || up === undefined) return [];
    return [
      { box: half, name: 'down', action: down },
      { box: { ...half, x: box.x + half.width }, name: 'up', action: up },
    ];
  });
}

/**
 * A part that no face has been drawn for yet: a box with its name, what is seen of it in words, its controls as keys and its
 * terminals in a row below, or above and below; as playable as any other.
 */
export const plain: Face = { shape, draw, handles };
