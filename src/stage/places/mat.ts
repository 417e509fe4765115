import { downward, fillBox, lifted, line, strokeBox } from '../pen.ts';
import type { PlaceLook } from '../place.ts';
import { MATERIAL } from '../tokens.ts';
import { right, wall } from './walls.ts';

/** The workbench with its mat. */
export const mat: PlaceLook = {
  coverLook: 'enamel',
  harness: false,
  wireWidth: 9,
  exits: [],
  joins: [],
  backdrop(pen, bounds) {
    wall(pen, bounds, '#A98A60', MATERIAL.benchWood, '#6E5739');
    for (let y = bounds.y; y < bounds.y + bounds.height; y += 54) {
      line(
        pen,
        [
          [bounds.x, y],
          [right(bounds), y],
        ],
        'rgba(60, 42, 20, 0.28)',
        1.6,
      );
      line(
        pen,
        [
          [bounds.x, y + 21],
          [right(bounds), y + 17],
        ],
        'rgba(60, 42, 20, 0.1)',
        1.2,
      );
      line(
        pen,
        [
          [bounds.x, y + 36],
          [right(bounds), y + 41],
        ],
        'rgba(60, 42, 20, 0.08)',
        1.2,
      );
    }
    const sheet = { x: 28, y: 24, width: 744, height: 560 };
    lifted(pen, 8, () => {
      fillBox(pen, sheet, 10, downward(pen, sheet, '#46645B', '#38534B'));
    });
    for (let x = 68; x < 760; x += 40)
      line(
        pen,
        [
          [x, 34],
          [x, 574],
        ],
        'rgba(160, 190, 175, 0.1)',
        1,
      );
    for (let y = 64; y < 576; y += 40)
      line(
        pen,
        [
          [38, y],
          [762, y],
        ],
        'rgba(160, 190, 175, 0.1)',
        1,
      );
    strokeBox(pen, { x: 34, y: 30, width: 732, height: 548 }, 7, 'rgba(190, 214, 200, 0.22)', 1.4);
  },
  captions: (view) =>
    view.parts.some((part) => part.body === 'mat')
      ? [{ x: 60, y: 62, heading: 'stage:heading.mat', line: 'stage:heading.matLine' }]
      : [{ x: 60, y: 62, heading: 'stage:heading.matEmpty', line: 'stage:heading.matEmptyLine', most: 480 }],
};
