import { type Box, downward, fillBox, lifted, line, strokeBox } from '../pen.ts';
import type { PlaceLook } from '../place.ts';
import { CREAM, MATERIAL, shade, WOOD } from '../tokens.ts';
import { FOOT, ledge, right, wall } from './walls.ts';

const CABINET: Box = { x: 176, y: 6, width: 622, height: 592 };

/** Holes in the wall between the burners' and the blower's compartment. */
const GROMMETS = [310, 356, 402, 448, 494, 540, 586, 632] as const;

/** The closet with the furnace in it. */
export const furnace: PlaceLook = {
  coverLook: 'enamel',
  harness: true,
  wireWidth: 5,
  lean: [
    { x: 4, y: 470, width: 150, height: 140 },
    { x: 16, y: 486, width: 150, height: 134 },
  ],
  tags: [
    { x: 10, y: 500 },
    { x: 10, y: 546 },
  ],
  exits: [
    { x: 200, y: 574 },
    { x: 10, y: 236 },
    { x: 10, y: 330 },
  ],
  joins: [
    ...GROMMETS.map((x) => ({ from: { x, y: 295 }, to: { x, y: 295 } })),
    { from: { x: 94, y: 212 }, to: { x: 192, y: 312 } },
    { from: { x: 164, y: 320 }, to: { x: 194, y: 350 } },
  ],
  backdrop(pen, bounds) {
    wall(pen, bounds, CREAM[3], MATERIAL.closetWall, MATERIAL.closetShade);
    // Studs behind the closet's board.
    for (let x = bounds.x - (bounds.x % 96); x < right(bounds); x += 96) line(pen, [x, bounds.y, x, FOOT], shade(0.1), 2);
    ledge(pen, bounds, WOOD[2], MATERIAL.floor);
    // Flue and supply duct above, conduit from the switch.
    pen.lineCap = 'round';
    line(pen, [94, 206, 94, 246, 120, 262, 176, 300], MATERIAL.steelShade, 13);
    line(pen, [94, 206, 94, 246, 120, 262, 176, 300], MATERIAL.steel, 8);
    pen.lineCap = 'butt';
    lifted(pen, 10, () => {
      fillBox(pen, CABINET, 8, downward(pen, CABINET, CREAM[3], MATERIAL.cabinetShade));
    });
    strokeBox(pen, CABINET, 8, MATERIAL.cabinetLine, 1.4);
  },
};
