import type { BenchView, PartView } from '../../attempt/view.ts';
import { type Face, fixed, type Shape } from '../face.ts';
import { hollow, shell } from '../hardware.ts';
import { fillBox, letter, strokeBox } from '../pen.ts';
import { MATERIAL, STEEL } from '../tokens.ts';
import { BACK, batteryThermostat } from './thermostat.ts';

const SHAPE: Shape = {
  width: 138,
  height: 48,
  terminals: { N: { x: 9, y: 24, way: 'down' }, P: { x: 129, y: 24, way: 'down' } },
};

/** In the back of the thermostat that they feed; beside it on the mat. Out of sight while its front is all that is seen. */
function spot(part: PartView, view: BenchView): { readonly x: number; readonly y: number } {
  const body = view.parts.find((other) => other.id === part.carrier);
  const at = body === undefined ? part.at : (batteryThermostat.spot?.(body, view) ?? body.at);
  return body?.body === 'mat' ? { x: at.x - 190, y: at.y + 64 } : { x: at.x + BACK.x + 208, y: at.y + BACK.y + 26 };
}

/** Two cells in their bay, a contact at each end. */
export const cells: Face = {
  over: true,
  shape: fixed(SHAPE),
  spot,
  draw(pen, _part, words) {
    const bay = { x: 0, y: 0, width: SHAPE.width, height: SHAPE.height };
    hollow(pen, bay, MATERIAL.boardInset, 8);
    for (let cell = 0; cell < 2; cell += 1) {
      const box = { x: 20, y: 5 + cell * 20, width: 98, height: 18 };
      shell(pen, box, 'zinc', 2, 5);
      fillBox(pen, { x: cell === 0 ? 118 : 16, y: box.y + 6, width: 4, height: 6 }, 1, MATERIAL.steelLight);
    }
    const print = { x: 34, y: 13, width: 70, height: 22 };
    fillBox(pen, print, 11, MATERIAL.steelLight);
    letter(pen, words('stage:thermostat.cells'), 69, 24, { size: 13, weight: 700, family: 'display', colour: STEEL[9], most: 62 });
    for (const x of [9, 129]) {
      fillBox(pen, { x: x - 5, y: 8, width: 10, height: 32 }, 2, MATERIAL.pin);
      strokeBox(pen, { x: x - 5, y: 8, width: 10, height: 32 }, 2, MATERIAL.brassShade, 1);
    }
    letter(pen, '−', 9, 24, { size: 15, weight: 800, colour: MATERIAL.cautionInk });
    letter(pen, '+', 129, 24, { size: 15, weight: 800, colour: MATERIAL.cautionInk });
  },
};
