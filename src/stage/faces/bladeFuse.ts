import { type Face, fixed, type Handle, type Shape } from '../face.ts';
import { nameTape } from '../hardware.ts';
import { downward, fillBox, letter, lifted, line, type Pen, strokeBox } from '../pen.ts';
import { light, MATERIAL, STEEL, shade } from '../tokens.ts';

const SHAPE: Shape = {
  width: 88,
  height: 64,
  terminals: { a: { x: 18, y: 24, way: 'left' }, b: { x: 70, y: 24, way: 'right' } },
};

/** The coloured body with its window; the element in it is only drawn once it has been looked at. */
function body(pen: Pen, element: string | number | undefined): void {
  lifted(pen, 4, () => {
    fillBox(
      pen,
      { x: -38, y: -14, width: 76, height: 28 },
      6,
      downward(pen, { x: -38, y: -14, width: 76, height: 28 }, MATERIAL.fuse, MATERIAL.fuseShade),
    );
  });
  fillBox(pen, { x: -16, y: -10, width: 32, height: 20 }, 4, light(0.35));
  if (element === 'whole')
    line(
      pen,
      [
        [-14, 6],
        [-6, -5],
        [6, -5],
        [14, 6],
      ],
      MATERIAL.fuseElement,
      3,
    );
  if (element === 'blown') {
    line(
      pen,
      [
        [-14, 6],
        [-8, -3],
      ],
      MATERIAL.fuseBurnt,
      3,
    );
    line(
      pen,
      [
        [8, -3],
        [14, 6],
      ],
      MATERIAL.fuseBurnt,
      3,
    );
    fillBox(pen, { x: -7, y: -8, width: 14, height: 14 }, 7, shade(0.6));
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
    fillBox(pen, { x: 0, y: 5, width: 88, height: 38 }, 5, MATERIAL.boardInset);
    strokeBox(pen, { x: 0, y: 5, width: 88, height: 38 }, 5, STEEL[11], 1);
    for (const x of [18, 70]) fillBox(pen, { x: x - 8, y: 10, width: 16, height: 28 }, 2, MATERIAL.pin);
    pen.save();
    if (part.pulledOut === true) {
      pen.translate(30, -30);
      pen.rotate(-0.32);
    } else pen.translate(44, 24);
    body(pen, part.signs.element);
    pen.restore();
    nameTape(pen, words(`rig:part.${part.id}`), 44, 54, 88, true, 'center');
    if (part.pulledOut === true)
      letter(pen, words('stage:mark.pulled'), 44, 24, { size: 13, weight: 600, colour: MATERIAL.boardInk, most: 40 });
  },
  handles(part): readonly Handle[] {
    if (part.pulledOut === undefined) return [];
    const name = part.pulledOut ? 'plug' : 'unplug';
    return [{ box: { x: 0, y: 2, width: 88, height: 60 }, name, action: { name, part: part.id } }];
  },
};
