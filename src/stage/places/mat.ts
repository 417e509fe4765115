import { downward, fillBox, lifted, line, strokeBox } from '../pen.ts';
import type { PlaceLook } from '../place.ts';
import { light, MATERIAL, shade, WOOD } from '../tokens.ts';
import { right, wall } from './walls.ts';

/** The workbench with its mat. */
export const mat: PlaceLook = {
  coverLook: 'enamel',
  harness: false,
  wireWidth: 9,
  exits: [],
  joins: [],
  backdrop(pen, bounds) {
    wall(pen, bounds, WOOD[1], MATERIAL.benchWood, WOOD[4]);
    for (let y = bounds.y; y < bounds.y + bounds.height; y += 54) {
      line(pen, [bounds.x, y, right(bounds), y], shade(0.28), 1.6);
      line(pen, [bounds.x, y + 21, right(bounds), y + 17], shade(0.1), 1.2);
      line(pen, [bounds.x, y + 36, right(bounds), y + 41], shade(0.08), 1.2);
    }
    const sheet = { x: 28, y: 24, width: 744, height: 560 };
    lifted(pen, 8, () => {
      fillBox(pen, sheet, 10, downward(pen, sheet, MATERIAL.matTop, MATERIAL.matFoot));
    });
    for (let x = 68; x < 760; x += 40) line(pen, [x, 34, x, 574], light(0.1), 1);
    for (let y = 64; y < 576; y += 40) line(pen, [38, y, 762, y], light(0.1), 1);
    strokeBox(pen, { x: 34, y: 30, width: 732, height: 548 }, 7, light(0.22), 1.4);
  },
  captions: (view) =>
    view.parts.some((part) => part.body === 'mat')
      ? [{ x: 60, y: 62, heading: 'stage:heading.mat', line: 'stage:heading.matLine' }]
      : [{ x: 60, y: 62, heading: 'stage:heading.matEmpty', line: 'stage:heading.matEmptyLine', most: 480 }],
};
