import type { PlaceLookName } from '../../rig/places.ts';
import { type Box, downward, fillBox, lifted, line, type Pen, strokeBox } from '../pen.ts';
import type { Ground } from '../place.ts';
import { CREAM, light, MATERIAL, STEEL, shade, WOOD } from '../tokens.ts';
import { courses, FOOT, ledge, right, wall } from './walls.ts';

/** Upright lines across a wall: studs, joists, seams. */
function uprights(pen: Pen, bounds: Box, step: number, colour: string, width = 2): void {
  for (let x = bounds.x - (bounds.x % step); x < right(bounds); x += step) line(pen, [x, bounds.y, x, FOOT], colour, width);
}

const hall: Ground = {
  colour: MATERIAL.plaster,
  coverLook: 'enamel',
  cabinet: 'enamel',
  harness: false,
  wireWidth: 9,
  paint(pen, bounds) {
    wall(pen, bounds, MATERIAL.plasterLight, MATERIAL.plaster, MATERIAL.plasterShade);
    courses(pen, bounds, 60, shade(0.08));
    ledge(pen, bounds, MATERIAL.shelfEdge, MATERIAL.shelf);
  },
};

function planks(pen: Pen, bounds: Box): void {
  wall(pen, bounds, WOOD[1], MATERIAL.benchWood, WOOD[4]);
  for (let y = bounds.y; y < bounds.y + bounds.height; y += 54) {
    line(pen, [bounds.x, y, right(bounds), y], shade(0.28), 1.6);
    line(pen, [bounds.x, y + 21, right(bounds), y + 17], shade(0.1), 1.2);
    line(pen, [bounds.x, y + 36, right(bounds), y + 41], shade(0.08), 1.2);
  }
}

const mat: Ground = {
  colour: MATERIAL.benchWood,
  dark: true,
  coverLook: 'enamel',
  cabinet: 'enamel',
  harness: false,
  wireWidth: 9,
  paint(pen, bounds) {
    planks(pen, bounds);
    const sheet = { x: 28, y: 24, width: 744, height: 560 };
    lifted(pen, 8, () => {
      fillBox(pen, sheet, 10, downward(pen, sheet, MATERIAL.matTop, MATERIAL.matFoot));
    });
    for (let x = 68; x < 760; x += 40) line(pen, [x, 34, x, 574], light(0.1), 1);
    for (let y = 64; y < 576; y += 40) line(pen, [38, y, 762, y], light(0.1), 1);
    strokeBox(pen, { x: 34, y: 30, width: 732, height: 548 }, 7, light(0.22), 1.4);
  },
};

/** A wooden bench top, seen from above: for boards that are built to learn on. */
const workbench: Ground = {
  colour: MATERIAL.benchWood,
  coverLook: 'grey',
  cabinet: 'grey',
  harness: true,
  wireWidth: 6,
  paint: planks,
};

const closet: Ground = {
  colour: MATERIAL.closetWall,
  coverLook: 'enamel',
  cabinet: 'enamel',
  harness: true,
  wireWidth: 6,
  paint(pen, bounds) {
    wall(pen, bounds, CREAM[3], MATERIAL.closetWall, MATERIAL.closetShade);
    // Studs behind the closet's board.
    uprights(pen, bounds, 96, shade(0.1));
    ledge(pen, bounds, WOOD[2], MATERIAL.floor);
  },
};

/** Boarded walls and a concrete floor: a boiler or laundry room. */
const utility: Ground = {
  colour: CREAM[4],
  coverLook: 'enamel',
  cabinet: 'enamel',
  harness: true,
  wireWidth: 6,
  paint(pen, bounds) {
    wall(pen, bounds, CREAM[3], CREAM[4], CREAM[6]);
    uprights(pen, bounds, 48, shade(0.07));
    line(pen, [bounds.x, 560, right(bounds), 560], shade(0.16), 3);
    ledge(pen, bounds, MATERIAL.slab, MATERIAL.slabShade);
  },
};

const basement: Ground = {
  colour: MATERIAL.closetShade,
  coverLook: 'grey',
  cabinet: 'grey',
  harness: true,
  wireWidth: 8,
  paint(pen, bounds) {
    wall(pen, bounds, CREAM[4], CREAM[5], WOOD[3]);
    for (let y = bounds.y - (bounds.y % 44); y < FOOT; y += 44) {
      const shift = Math.abs(Math.round(y / 44)) % 2 === 0 ? 0 : 44;
      line(pen, [bounds.x, y, right(bounds), y], shade(0.16), 2);
      for (let x = bounds.x - (bounds.x % 88) + shift; x < right(bounds); x += 88) line(pen, [x, y, x, y + 44], shade(0.12), 2);
    }
    ledge(pen, bounds, WOOD[3], WOOD[4]);
  },
};

const attic: Ground = {
  colour: WOOD[2],
  coverLook: 'enamel',
  cabinet: 'enamel',
  harness: true,
  wireWidth: 6,
  paint(pen, bounds) {
    wall(pen, bounds, WOOD[0], WOOD[1], WOOD[4]);
    courses(pen, bounds, 46, shade(0.18));
    // Rafters before the boards.
    for (let x = bounds.x - (bounds.x % 196) - 60; x < right(bounds); x += 196) {
      fillBox(pen, { x, y: bounds.y, width: 30, height: FOOT - bounds.y }, 0, WOOD[2]);
      line(pen, [x, bounds.y, x, FOOT], shade(0.3), 2);
      line(pen, [x + 30, bounds.y, x + 30, FOOT], shade(0.22), 2);
    }
    ledge(pen, bounds, WOOD[1], WOOD[3]);
  },
};

const yard: Ground = {
  colour: MATERIAL.outdoorWall,
  coverLook: 'louvred',
  cabinet: 'weathered',
  harness: true,
  wireWidth: 6,
  paint(pen, bounds) {
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
  },
};

/** A flat roof under the sky, with its parapet. */
const roof: Ground = {
  colour: MATERIAL.sky,
  coverLook: 'louvred',
  cabinet: 'weathered',
  harness: true,
  wireWidth: 6,
  paint(pen, bounds) {
    pen.fillStyle = downward(pen, bounds, MATERIAL.skyHigh, MATERIAL.sky);
    pen.fillRect(bounds.x, bounds.y, bounds.width, bounds.height);
    fillBox(pen, { x: bounds.x, y: 470, width: bounds.width, height: 122 }, 0, CREAM[5]);
    for (let y = 492; y < 590; y += 24) line(pen, [bounds.x, y, right(bounds), y], shade(0.12), 2);
    fillBox(pen, { x: bounds.x, y: 462, width: bounds.width, height: 14 }, 0, STEEL[4]);
    pen.fillStyle = STEEL[6];
    pen.fillRect(bounds.x, 586, bounds.width, bounds.y + bounds.height - 586);
    for (let x = bounds.x - (bounds.x % 26); x < right(bounds); x += 26)
      line(pen, [x, 604 + ((x * 7) % 30), x + 9, 604 + ((x * 7) % 30)], shade(0.16), 2);
  },
};

/** Wall and floor by look. */
export const GROUNDS: Readonly<Record<PlaceLookName, Ground>> = {
  hall,
  mat,
  closet,
  yard,
  basement,
  attic,
  roof,
  workbench,
  utility,
};
