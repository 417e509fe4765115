import { type Box, downward, fillBox, lifted, line, strokeBox } from '../pen.ts';
import type { PlaceLook } from '../place.ts';
import { CREAM, MATERIAL, STEEL, shade } from '../tokens.ts';
import { right, wall } from './walls.ts';

const UNIT: Box = { x: 178, y: 14, width: 616, height: 584 };

/** The condensing unit on its slab, with its disconnect. */
export const outdoor: PlaceLook = {
  coverLook: 'louvred',
  harness: true,
  wireWidth: 6,
  lean: [
    { x: 6, y: 398, width: 92, height: 150 },
    { x: 22, y: 424, width: 134, height: 182 },
  ],
  tags: [
    { x: 12, y: 26 },
    { x: 12, y: 70 },
  ],
  exits: [
    { x: 198, y: 138 },
    { x: 89, y: 128 },
  ],
  joins: [{ from: { x: 118, y: 372 }, to: { x: 190, y: 470 } }],
  backdrop(pen, bounds) {
    wall(pen, bounds, MATERIAL.sidingLight, MATERIAL.outdoorWall, MATERIAL.sidingShade);
    for (let y = bounds.y - (bounds.y % 34); y < 560; y += 34) line(pen, [bounds.x, y, right(bounds), y], shade(0.2), 2);
    pen.fillStyle = MATERIAL.grass;
    pen.fillRect(bounds.x, 574, bounds.width, bounds.y + bounds.height - 574);
    pen.fillStyle = MATERIAL.grassShade;
    for (let x = bounds.x; x < right(bounds); x += 22) {
      pen.beginPath();
      pen.moveTo(x, 576);
      pen.lineTo(x + 5, 566);
      pen.lineTo(x + 10, 576);
      pen.fill();
    }
    pen.fillStyle = MATERIAL.slab;
    pen.fillRect(160, 592, 660, 18);
    pen.fillStyle = MATERIAL.slabShade;
    pen.fillRect(160, 604, 660, 6);
    // The whip from the disconnect, and the line set.
    pen.lineCap = 'round';
    for (const [colour, width] of [
      [STEEL[9], 15],
      [STEEL[7], 9],
    ] as const) {
      pen.beginPath();
      pen.moveTo(118, 358);
      pen.bezierCurveTo(118, 440, 140, 470, 184, 470);
      pen.strokeStyle = colour;
      pen.lineWidth = width;
      pen.stroke();
    }
    line(pen, [bounds.x, 540, 178, 540], STEEL[10], 16);
    line(pen, [bounds.x, 562, 178, 562], MATERIAL.copperPipe, 7);
    pen.lineCap = 'butt';
    lifted(pen, 12, () => {
      fillBox(pen, UNIT, 10, downward(pen, UNIT, CREAM[4], MATERIAL.outdoorUnitShade));
    });
    strokeBox(pen, UNIT, 10, CREAM[7], 1.4);
  },
};
