import { fixed, type Face, type Handle, type Shape } from '../face.ts';
import { nameTape } from '../hardware.ts';
import { downward, fillBox, letter, lifted, line, strokeBox, type Pen } from '../pen.ts';
import { MATERIAL } from '../tokens.ts';

const SHAPE: Shape = {
  width: 116,
  height: 76,
  terminals: { a: { x: 32, y: 34, way: 'left' }, b: { x: 84, y: 34, way: 'right' } },
};

/** The coloured body with its window; the element in it is only drawn once it has been looked at. */
function body(pen: Pen, element: string | number | undefined): void {
  lifted(pen, 4, () => {
    fillBox(pen, { x: -40, y: -15, width: 80, height: 30 }, 6, downward(pen, { x: -40, y: -15, width: 80, height: 30 }, '#B58BC4', '#8C5F9E'));
  });
  fillBox(pen, { x: -16, y: -10, width: 32, height: 20 }, 4, 'rgba(255, 255, 255, 0.35)');
  if (element === 'whole') line(pen, [[-14, 6], [-6, -5], [6, -5], [14, 6]], '#5C3F68', 3);
  if (element === 'blown') {
    line(pen, [[-14, 6], [-8, -3]], '#3A2A42', 3);
    line(pen, [[8, -3], [14, 6]], '#3A2A42', 3);
    fillBox(pen, { x: -7, y: -8, width: 14, height: 14 }, 7, 'rgba(30, 18, 10, 0.6)');
  }
  for (const x of [-26, 26]) {
    fillBox(pen, { x: x - 6, y: -7, width: 12, height: 12 }, 2, MATERIAL.steelLight);
    strokeBox(pen, { x: x - 6, y: -7, width: 12, height: 12 }, 2, MATERIAL.steelDark, 1);
  }
}

/** The blade fuse of the 24 V side in its holder; pulled, it lies in the hand beside the empty holder. */
export const bladeFuse: Face = {
  shape: fixed(SHAPE),
  draw(pen, part, words) {
    fillBox(pen, { x: 10, y: 14, width: 96, height: 40 }, 5, '#1D2A25');
    strokeBox(pen, { x: 10, y: 14, width: 96, height: 40 }, 5, '#0F1814', 1);
    for (const x of [32, 84]) fillBox(pen, { x: x - 8, y: 20, width: 16, height: 28 }, 2, MATERIAL.pin);
    pen.save();
    if (part.pulledOut === true) {
      pen.translate(20, -16);
      pen.rotate(-0.32);
    } else pen.translate(58, 34);
    body(pen, part.signs['element']);
    pen.restore();
    nameTape(pen, words(`rig:part.${part.id}`), 58, 66, 116, true, 'center');
    if (part.pulledOut === true) letter(pen, words('stage:mark.pulled'), 58, 34, { size: 13, weight: 600, colour: MATERIAL.boardInk, most: 40 });
  },
  handles(part): readonly Handle[] {
    if (part.pulledOut === undefined) return [];
    const name = part.pulledOut ? 'plug' : 'unplug';
    return [{ box: { x: 6, y: 10, width: 104, height: 50 }, name, action: { name, part: part.id } }];
  },
};
