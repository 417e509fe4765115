import { downward, fillBox, lifted, line, strokeBox } from '../pen.ts';
import type { PlaceLook } from '../place.ts';
import { CREAM, MATERIAL, STEEL, shade, WOOD } from '../tokens.ts';
import { FOOT, ledge, right, wall } from './walls.ts';

/** The basement wall with the electrical panel. */
export const panel: PlaceLook = {
  coverLook: 'grey',
  lean: [{ x: 672, y: 322, width: 122, height: 296 }],
  tags: [{ x: 156, y: 606 }],
  harness: true,
  wireWidth: 8,
  exits: [
    { x: 178, y: 560 },
    { x: 622, y: 560 },
    { x: 386, y: 566 },
  ],
  joins: [],
  backdrop(pen, bounds) {
    wall(pen, bounds, CREAM[4], CREAM[5], WOOD[3]);
    for (let y = bounds.y - (bounds.y % 44); y < FOOT; y += 44) {
      const shift = Math.abs(Math.round(y / 44)) % 2 === 0 ? 0 : 44;
      line(pen, [bounds.x, y, right(bounds), y], shade(0.16), 2);
      for (let x = bounds.x - (bounds.x % 88) + shift; x < right(bounds); x += 88) line(pen, [x, y, x, y + 44], shade(0.12), 2);
    }
    ledge(pen, bounds, WOOD[3], WOOD[4]);
    fillBox(pen, { x: 384, y: bounds.y, width: 32, height: 30 - bounds.y }, 0, MATERIAL.steelShade);
    const box = { x: 138, y: 4, width: 524, height: 592 };
    lifted(pen, 12, () => {
      fillBox(pen, box, 8, downward(pen, box, STEEL[4], MATERIAL.panelGreyShade));
    });
    strokeBox(pen, box, 8, MATERIAL.steelDark, 1.4);
  },
};
