import type { PartView } from '../../attempt/view.ts';
import { type Face, fixed, type Shape, spaced } from '../face.ts';
import { shell } from '../hardware.ts';
import { fillBox, line, type Pen, strokeBox } from '../pen.ts';
import { COLOURS } from '../tokens.ts';
import { drawPlate } from './subbase.ts';
import { thermostatFace } from './thermostatBody.ts';
import { frontLayout } from './thermostatFront.ts';

/** Screws left to right as the wires land; the spare one is last. Pins meet all but that. */
const ORDER = ['R', 'C', 'W1', 'W2', 'Y1', 'Y2', 'G', 'X'] as const;

const BASE: Shape = {
  width: 420,
  height: 178,
  terminals: spaced(ORDER, { x: 42, y: 58 }, { x: 48, y: 0 }, 'down', {
    screw: 12.5,
    letter: { dx: 0, dy: -27, dark: true, size: 15.5 },
  }),
  exit: { x: 210, y: 136 },
};

/** The plate on the wall for a two-stage thermostat. */
export const twoStageSubbase: Face = {
  shape: fixed(BASE),
  sheet: true,
  draw: (pen) => drawPlate(pen, BASE),
};

/** Two bars at the display's edge: as many are filled as stages are called. How many it is set up for is framed once looked at. */
function drawStages(pen: Pen, part: PartView, { width, height }: { readonly width: number; readonly height: number }): void {
  if (part.signs.display !== 'on' || (part.signs.stage ?? part.signs.stages) === undefined) return;
  const { display } = frontLayout(width, height);
  const stage = Number(part.signs.stage ?? 0);
  const setUp = part.signs.stages === undefined ? 2 : Number(part.signs.stages);
  for (let bar = 0; bar < 2; bar += 1) {
    const box = {
      x: display.x + display.width - 34 + bar * 13,
      y: display.y + display.height - 30 - bar * 6,
      width: 9,
      height: 14 + bar * 6,
    };
    if (bar < stage) fillBox(pen, box, 2, COLOURS.displayInk);
    else if (bar < setUp) strokeBox(pen, box, 2, COLOURS.displayInk, 1.4);
    else line(pen, [box.x, box.y + box.height, box.x + box.width, box.y], COLOURS.displayInk, 1.6);
  }
}

/** The two-stage thermostat: five relays in its back. */
export const twoStageThermostat = thermostatFace({
  plate: BASE,
  pins: ORDER.slice(0, -1),
  apart: 100,
  frontWidth: 340,
  drawSwitches(pen, back) {
    for (let relay = 0; relay < 5; relay += 1)
      shell(pen, { x: back.x + 52 + relay * 64, y: back.y + 34, width: 50, height: 40 }, 'plastic', 2, 3);
  },
  drawMore: drawStages,
});
