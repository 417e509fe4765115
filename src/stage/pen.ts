import { FAMILIES, INK, MATERIAL } from './tokens.ts';

/** What the stage draws with: a canvas context whose unit is the scene unit. */
export type Pen = CanvasRenderingContext2D;

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Traces a rectangle with rounded corners, ready to fill or stroke. */
export function traceBox(pen: Pen, box: Box, corner: number): void {
  pen.beginPath();
  pen.roundRect(box.x, box.y, box.width, box.height, corner);
}

export function fillBox(pen: Pen, box: Box, corner: number, fill: string | CanvasGradient): void {
  traceBox(pen, box, corner);
  pen.fillStyle = fill;
  pen.fill();
}

export function strokeBox(pen: Pen, box: Box, corner: number, stroke: string, width: number = INK.edge): void {
  traceBox(pen, box, corner);
  pen.strokeStyle = stroke;
  pen.lineWidth = width;
  pen.stroke();
}

/** A fill from one colour at the upper left of the box to another at its lower right: the lamp stands up there, for all. */
export function downward(pen: Pen, box: Box, top: string, foot: string): CanvasGradient {
  const aside = Math.min(box.width, box.height) * 0.4;
  const gradient = pen.createLinearGradient(box.x, box.y, box.x + aside, box.y + box.height);
  gradient.addColorStop(0, top);
  gradient.addColorStop(1, foot);
  return gradient;
}

/** Runs `paint` with a soft shadow under everything that it fills. `lift` in scene units. */
export function lifted(pen: Pen, lift: number, paint: () => void): void {
  // Shadows are measured in device pixels: the transform does not scale them.
  const scale = pen.getTransform().a;
  pen.save();
  pen.shadowColor = MATERIAL.shadow;
  pen.shadowBlur = lift * 1.6 * scale;
  pen.shadowOffsetX = lift * 0.35 * scale;
  pen.shadowOffsetY = lift * 0.6 * scale;
  paint();
  pen.restore();
}

/** A line through spots, given as x, y, x, y… */
export function line(pen: Pen, spots: readonly number[], stroke: string, width: number = INK.fine): void {
  pen.beginPath();
  for (let index = 0; index + 1 < spots.length; index += 2) pen.lineTo(spots[index] ?? 0, spots[index + 1] ?? 0);
  pen.strokeStyle = stroke;
  pen.lineWidth = width;
  pen.stroke();
}

export function disc(pen: Pen, x: number, y: number, radius: number, fill: string | CanvasGradient): void {
  pen.beginPath();
  pen.arc(x, y, radius, 0, Math.PI * 2);
  pen.fillStyle = fill;
  pen.fill();
}

export function ring(pen: Pen, x: number, y: number, radius: number, stroke: string, width: number = INK.edge): void {
  pen.beginPath();
  pen.arc(x, y, radius, 0, Math.PI * 2);
  pen.strokeStyle = stroke;
  pen.lineWidth = width;
  pen.stroke();
}

export interface Lettering {
  readonly size: number;
  readonly colour: string;
  readonly weight?: number;
  readonly family?: keyof typeof FAMILIES;
  readonly align?: CanvasTextAlign;
  /** Wide letters, for names. */
  readonly wide?: boolean;
  /** Squeezes the text when it is longer than this. */
  readonly most?: number;
}

/** Writes one line; `y` is the middle of its capitals. */
export function letter(pen: Pen, text: string, x: number, y: number, how: Lettering): void {
  if (text === '') return;
  const family = FAMILIES[how.family ?? 'text'];
  pen.font = `${String(how.weight ?? 400)} ${how.wide === true ? 'semi-expanded ' : ''}${String(how.size)}px ${family}`;
  pen.textAlign = how.align ?? 'center';
  pen.textBaseline = 'middle';
  pen.fillStyle = how.colour;
  pen.fillText(text, x, y + how.size * 0.04, how.most);
}

/** Breaks a sentence into lines no wider than `most`, as set in the face last used by `letter`. */
export function wrapped(pen: Pen, text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && pen.measureText(longer).width <= most) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
