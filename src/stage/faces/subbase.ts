import { type Face, fixed, labelOf, type Shape, spaced } from '../face.ts';
import { enamelCase, screw } from '../hardware.ts';
import { downward, fillBox, letter, strokeBox } from '../pen.ts';
import { MATERIAL } from '../tokens.ts';

/** Letters left to right as the wires land; the thermostat's pins meet them. */
export const LANDING_ORDER = ['R', 'W', 'Y', 'G', 'C'] as const;

const SHAPE: Shape = {
  width: 372,
  height: 178,
  terminals: spaced(LANDING_ORDER, { x: 62, y: 58 }, { x: 62, y: 0 }, 'down', 12.5),
  exit: { x: 186, y: 136 },
};

/** The plate on the hallway's wall: five screws and the hole that the cable comes out of. */
export const subbase: Face = {
  shape: fixed(SHAPE),
  draw(pen, part) {
    enamelCase(pen, { x: 0, y: 0, width: SHAPE.width, height: SHAPE.height });
    const inner = { x: 14, y: 14, width: SHAPE.width - 28, height: SHAPE.height - 28 };
    fillBox(pen, inner, 8, downward(pen, inner, MATERIAL.enamel, MATERIAL.enamel));
    strokeBox(pen, inner, 8, MATERIAL.enamelLine, 1);
    pen.beginPath();
    pen.ellipse(186, 134, 50, 19, 0, 0, Math.PI * 2);
    pen.fillStyle = MATERIAL.hole;
    pen.fill();
    for (const [id, spot] of Object.entries(SHAPE.terminals)) {
      screw(pen, spot.x, spot.y);
      letter(pen, labelOf(part, id), spot.x, 31, {
        size: 16.5,
        weight: 750,
        wide: true,
        family: 'display',
        colour: MATERIAL.labelInk,
      });
    }
  },
};
