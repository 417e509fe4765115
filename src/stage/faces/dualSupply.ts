import { type Face, fixed, type Shape, spaced, stepper } from '../face.ts';
import { shell } from '../hardware.ts';
import { fillBox, letter } from '../pen.ts';
import { COLOURS, LETTERS, MATERIAL } from '../tokens.ts';
import { drawPlate } from './subbase.ts';
import { drawTrace, thermostatFace } from './thermostatBody.ts';

/** Letters left to right as the wires land, the two supplies side by side; the thermostat's pins meet them. */
const ORDER = ['Rh', 'Rc', 'W', 'Y', 'G', 'C'] as const;

const PLATE: Shape = {
  width: 372,
  height: 178,
  terminals: spaced(ORDER, { x: 46, y: 76 }, { x: 56, y: 0 }, 'down', {
    screw: 12.5,
    letter: { dx: 0, dy: -25, dark: true, size: LETTERS.name },
  }),
  keep: [{ x: 34, y: 18, width: 322, height: 20 }],
  exit: { x: 186, y: 136 },
};

/** The plate on the wall, with the strap that joins Rh and Rc: in its two holes, or hung on its nail beside them. */
export const dualSubbase: Face = {
  shape: fixed(PLATE),
  sheet: true,
  draw(pen, part, words) {
    drawPlate(pen, PLATE);
    const jumper = part.signs.jumper;
    if (jumper === undefined) return;
    const isIn = jumper === 'in';
    for (const x of [46, 102]) fillBox(pen, { x: x - 5, y: 22, width: 10, height: 12 }, 3, MATERIAL.hole);
    if (isIn) shell(pen, { x: 38, y: 23, width: 72, height: 10 }, 'signal', 3, 4);
    else shell(pen, { x: 132, y: 23, width: 72, height: 10 }, 'brass', 3, 4);
    letter(pen, words(isIn ? 'stage:mark.jumperIn' : 'stage:mark.jumperOut'), 290, 28, {
      size: LETTERS.small,
      weight: 700,
      family: 'display',
      colour: isIn ? COLOURS.actionInk : COLOURS.inkSoft,
      most: 140,
    });
  },
  handles: (part) => stepper(part, 'jumper', { x: 34, y: 14, width: 172, height: 28 }),
};

/** A thermostat for two supplies: one relay on the heating supply, two on the other. */
export const dualSupplyThermostat = thermostatFace({
  plate: PLATE,
  pins: ORDER,
  apart: 84,
  drawSwitches(pen, back, pins) {
    for (const [id, x, drop] of [
      ['G', 34, 14],
      ['Y', 90, 20],
      ['W', 146, 8],
    ] as const) {
      shell(pen, { x: back.x + x, y: back.y + 30, width: 48, height: 40 }, 'plastic', 2, 3);
      drawTrace(pen, { x: back.x + x + 24, y: back.y + 70 }, back.y + 70 + drop, pins[id]);
    }
  },
});
