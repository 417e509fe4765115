import type { PartView } from '../../attempt/view.ts';
import { type Face, fixed, type Shape, spaced } from '../face.ts';
import { shell } from '../hardware.ts';
import { fillBox, letter, type Pen } from '../pen.ts';
import { MATERIAL } from '../tokens.ts';
import { drawPlate } from './subbase.ts';
import { drawTrace, thermostatFace } from './thermostatBody.ts';

/** Letters left to right as the wires land; the thermostat's pins meet them. */
const ORDER = ['R', 'C', 'Y', 'G', 'O', 'W2', 'E'] as const;

const PLATE: Shape = {
  width: 372,
  height: 178,
  terminals: spaced(ORDER, { x: 39, y: 58 }, { x: 49, y: 0 }, 'down', {
    screw: 12.5,
    letter: { dx: 0, dy: -27, dark: true, size: 15.5, most: 46 },
  }),
  exit: { x: 186, y: 136 },
};

/** The plate on the wall behind a heat pump's thermostat: seven screws and the hole that the cable comes out of. */
export const heatPumpSubbase: Face = {
  shape: fixed(PLATE),
  sheet: true,
  draw: (pen) => drawPlate(pen, PLATE),
};

/** What its set-up menu says, once somebody has looked: a slip of display under its keys. */
function drawSetUp(pen: Pen, part: PartView, { height }: { readonly height: number }): void {
  const { reversing, auxiliary } = part.signs;
  if (part.body === 'mat' || (reversing === undefined && auxiliary === undefined)) return;
  const box = { x: 18, y: height - 15, width: 120, height: 24 };
  fillBox(pen, box, 4, MATERIAL.displayIdle);
  const stages = auxiliary === 'none' ? '1' : '1 + W2';
  const middle = box.x + box.width / 2;
  const ink = { size: 14, weight: 650, colour: MATERIAL.labelInk, most: 112 };
  letter(pen, `${String(reversing ?? '')} · ${stages}`, middle, box.y + 12, ink);
}

/** The heat pump's thermostat: five relays in a row above the pins, which are mirrored. */
export const heatPumpThermostat = thermostatFace({
  plate: PLATE,
  pins: ORDER,
  pigtails: { W2: 'white' },
  tags: { O: 'O/B' },
  apart: 66,
  third: true,
  drawSwitches(pen, back, pins) {
    (['Y', 'G', 'O', 'W2', 'E'] as const).forEach((id, index) => {
      const x = back.x + back.width - 72 - index * 60;
      shell(pen, { x: x - 22, y: back.y + 30, width: 44, height: 36 }, 'plastic', 2, 3);
      drawTrace(pen, { x, y: back.y + 66 }, back.y + 78 + index * 5, pins[id]);
    });
  },
  drawMore: drawSetUp,
});
