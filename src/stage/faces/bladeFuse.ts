import { type Face, fixed, type Handle, type Shape } from '../face.ts';
import { hollow } from '../hardware.ts';
import { disc, downward, fillBox, letter, lifted, line, type Pen, strokeBox } from '../pen.ts';
import { INK, LETTERS, light, MATERIAL, shade } from '../tokens.ts';

const SHAPE: Shape = {
  width: 88,
  height: 64,
  body: { x: 0, y: 5, width: 88, height: 38 },
  name: { x: 44, y: 54, most: 76 },
  terminals: { a: { x: 18, y: 24, way: 'left' }, b: { x: 70, y: 24, way: 'right' } },
};
const BODY = { x: -38, y: -14, width: 76, height: 28 } as const;

/** The coloured body with its window; the element in it is only drawn once it has been looked at. */
function body(pen: Pen, element: string | number | undefined): void {
  lifted(pen, 4, () => {
    fillBox(pen, BODY, INK.corner, downward(pen, BODY, MATERIAL.fuse, MATERIAL.fuseShade));
  });
  strokeBox(pen, BODY, INK.corner, MATERIAL.fuseElement);
  fillBox(pen, { x: -18, y: -11, width: 36, height: 22 }, 4, light(element === undefined ? 0.3 : 0.75));
  if (element === 'whole') line(pen, [-15, 7, -7, -5, 7, -5, 15, 7], MATERIAL.fuseElement, 4);
  if (element === 'blown') {
    disc(pen, 0, -1, 10, shade(0.45));
    line(pen, [-15, 7, -10, -1], MATERIAL.fuseBurnt, 4);
    line(pen, [10, -1, 15, 7], MATERIAL.fuseBurnt, 4);
    disc(pen, -8, -3, 3, MATERIAL.fuseBurnt);
    disc(pen, 8, -3, 3, MATERIAL.fuseBurnt);
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
    hollow(pen, SHAPE.body ?? BODY, MATERIAL.boardInset, 5);
    for (const x of [18, 70]) {
      fillBox(pen, { x: x - 8, y: 10, width: 16, height: 28 }, 2, MATERIAL.pin);
      fillBox(pen, { x: x - 8, y: 10, width: 5, height: 28 }, 2, MATERIAL.pinLight);
    }
    const out = part.pulledOut === true;
    if (out)
      letter(pen, words('stage:mark.pulled'), 44, 24, { size: LETTERS.small, weight: 600, colour: MATERIAL.boardInk, most: 34 });
    pen.save();
    pen.translate(out ? 30 : 44, out ? -22 : 24);
    if (out) pen.rotate(-0.32);
    body(pen, part.signs.element);
    pen.restore();
  },
  handles(part): readonly Handle[] {
    if (part.pulledOut === undefined) return [];
    const name = part.pulledOut ? 'plug' : 'unplug';
    return [{ box: { x: 0, y: 2, width: 88, height: 60 }, name, action: { name, part: part.id } }];
  },
};
