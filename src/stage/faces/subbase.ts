import { type Face, fixed, type Shape, spaced } from '../face.ts';
import { shell } from '../hardware.ts';
import { type Pen, strokeBox } from '../pen.ts';
import { light, MATERIAL, shade } from '../tokens.ts';

/** Letters left to right as the wires land; the thermostat's pins meet them. */
export const LANDING_ORDER = ['R', 'W', 'Y', 'G', 'C'] as const;

/** The plate of five screws. */
export const PLATE: Shape = {
  width: 372,
  height: 178,
  terminals: spaced(LANDING_ORDER, { x: 62, y: 58 }, { x: 62, y: 0 }, 'down', {
    screw: 12.5,
    letter: { dx: 0, dy: -27, dark: true, size: 16.5 },
  }),
  exit: { x: 186, y: 136 },
};

/** A wall plate of this shape, with the hole that the cable comes out of. */
export function drawPlate(pen: Pen, { width, height }: Shape): void {
  shell(pen, { x: 0, y: 0, width, height }, 'enamel', 10, 14);
  const inner = { x: 14, y: 14, width: width - 28, height: height - 28 };
  strokeBox(pen, { ...inner, x: 15, y: 15 }, 8, light(0.8));
  strokeBox(pen, inner, 8, MATERIAL.enamelLine);
  for (const [lift, colour] of [
    [2, light(0.9)],
    [0, MATERIAL.hole],
  ] as const) {
    pen.beginPath();
    pen.ellipse(width / 2, 134 + lift, 50, 19, 0, 0, Math.PI * 2);
    pen.fillStyle = colour;
    pen.fill();
  }
  pen.beginPath();
  pen.ellipse(width / 2, 134, 48, 17, 0, Math.PI, 0);
  pen.strokeStyle = shade(0.6);
  pen.lineWidth = 4;
  pen.stroke();
}

/** The plate on the hallway's wall: five screws and the hole that the cable comes out of. */
export const subbase: Face = {
  shape: fixed(PLATE),
  sheet: true,
  draw: (pen) => drawPlate(pen, PLATE),
};
