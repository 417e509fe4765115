import type { Action } from '../attempt/actions.ts';
import type { BenchView, PartView } from '../attempt/view.ts';
import type { Box, Pen } from './pen.ts';

/** Where a wire leaves a terminal for. */
export type Way = 'up' | 'down' | 'left' | 'right';

export interface TerminalSpot {
  /** The middle of the screw, blade or pin, from the face's top left corner in scene units. */
  readonly x: number;
  readonly y: number;
  readonly way: Way;
  /** A screw of this radius holds the wires down: its head lies over them. Without one they push on as crimped sleeves. */
  readonly screw?: number;
  /** Where what is printed beside it stands, from its middle; nothing is written without. */
  readonly letter?: LetterSpot;
}

/** Printed letters of a terminal. `dark` ink is for light ground. */
export interface LetterSpot {
  readonly dx: number;
  readonly dy: number;
  readonly align?: 'left' | 'right' | 'center';
  readonly dark?: boolean;
  readonly size?: number;
  /** Widest that they may run, scene units. */
  readonly most?: number;
}

/** How large a face is and where its terminals sit. */
export interface Shape {
  readonly width: number;
  readonly height: number;
  readonly terminals: Readonly<Record<string, TerminalSpot>>;
  /** The middle of the part's name; `paper`: in ink on light ground, else on dark tape. */
  readonly name?: { readonly x: number; readonly y: number; readonly most: number; readonly paper?: boolean };
  /** What of it is solid, where that is less than all: wires may run through the rest. */
  readonly body?: Box;
  /** Other words on the face that wires keep off. */
  readonly keep?: readonly Box[];
  /** Of a body that is turned over: its back, held beside its front. */
  readonly back?: Box;
  /** Where wires that go to another place disappear. */
  readonly exit?: { readonly x: number; readonly y: number };
}

/** A region of a face that the hand can work; what is done is decided by who gets the action. */
export interface Handle {
  readonly box: Box;
  /** Key of its name under `stage:handle.`. */
  readonly name: string;
  readonly action: Action;
}

/** Something on a face that moves by itself: a small picture, painted once, and how it moves. */
export interface Moving {
  /** Two pictures with the same key are the same picture. */
  readonly picture: string;
  /** Centre, from the face's top left corner. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Paints with the picture's centre as origin. */
  paint(pen: Pen): void;
  readonly motion: Motion;
}

export type Motion =
  | { readonly kind: 'spin'; readonly turnsPerSecond: number }
  | { readonly kind: 'shake'; readonly reach: number }
  | { readonly kind: 'flicker' }
  | { readonly kind: 'breathe' }
  /** Flashes `count` times, then pauses; 0 is steadily lit. */
  | { readonly kind: 'flash'; readonly count: number };

export type Words = (key: string, values?: Record<string, unknown>) => string;

/** How one kind of part looks. It may only use the signs that the view holds: what is not there cannot be perceived. */
export interface Face {
  shape(part: PartView): Shape;
  /** Where it stands when that is not the rig's `at` (a thermostat on its sub-base, cells in a thermostat's back). */
  spot?(part: PartView, view: Pick<BenchView, 'parts'>): { readonly x: number; readonly y: number };
  draw(pen: Pen, part: PartView, words: Words): void;
  /** What shows through a closed cover, and where; drawn only when the view holds a sign of it. */
  through?(pen: Pen, part: PartView, words: Words): void;
  handles?(part: PartView): readonly Handle[];
  moving?(part: PartView): readonly Moving[];
  /** Moving things that show through a closed cover. */
  movingThrough?(part: PartView): readonly Moving[];
  /** A wide flat ground (a wall plate) that letters of wires may stand on. */
  readonly sheet?: boolean;
  /** Drawn over wires that land on it (a seated thermostat hides its sub-base). */
  readonly over?: boolean;
  /** Stands on a closed cover and goes with it when it is taken off. */
  readonly onCover?: boolean;
}

/** A shape that is the same whatever state the part is in. */
export function fixed(shape: Shape): () => Shape {
  return () => shape;
}

/** Evenly spaced terminals in a row or column. */
export function spaced(
  ids: readonly string[],
  from: { readonly x: number; readonly y: number },
  step: { readonly x: number; readonly y: number },
  way: Way,
  more: { readonly screw?: number; readonly letter?: LetterSpot } = {},
): Record<string, TerminalSpot> {
  return Object.fromEntries(ids.map((id, index) => [id, { x: from.x + step.x * index, y: from.y + step.y * index, way, ...more }]));
}

/** The printed label of a terminal, empty when nothing is printed there or the view does not hold it. */
export function labelOf(part: PartView, terminal: string): string {
  return part.terminals.find((known) => known.id === terminal)?.label ?? '';
}

/** The action that moves a control with positions to the one after its present position. */
export function nextPosition(part: PartView, control: string): Action | undefined {
  const found = part.controls.find((each) => each.id === control);
  if (found?.positions === undefined || found.positions.length === 0) return undefined;
  const index = found.positions.indexOf(String(found.value));
  const position = found.positions[(index + 1) % found.positions.length];
  return position === undefined ? undefined : { name: 'operate', part: part.id, control, position };
}

/** A handle that steps through a control's positions; none when the view does not offer the control. */
export function stepper(part: PartView, control: string, box: Box): Handle[] {
  const action = nextPosition(part, control);
  return action === undefined ? [] : [{ box, name: control, action }];
}

/** The action that moves a setting by a number of presses of its key, kept inside its range. */
export function nudged(part: PartView, control: string, presses: number): Action | undefined {
  const found = part.controls.find((each) => each.id === control);
  if (found?.range === undefined) return undefined;
  const value = Math.min(found.range.to, Math.max(found.range.from, Number(found.value) + presses * found.range.press));
  return { name: 'set', part: part.id, control, value };
}
