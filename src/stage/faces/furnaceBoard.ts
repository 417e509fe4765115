import type { PartView } from '../../attempt/view.ts';
import { type Face, fixed, labelOf, type Moving, type Shape, spaced, type Words } from '../face.ts';
import { blade, fixing, nameTape, screw } from '../hardware.ts';
import { disc, downward, fillBox, letter, lifted, line, type Pen, ring, strokeBox } from '../pen.ts';
import { CREAM, MATERIAL, STEEL } from '../tokens.ts';

const SHAPE: Shape = {
  width: 332,
  height: 252,
  terminals: {
    ...spaced(['FS', 'PSOUT', 'PSIN', 'LIMOUT', 'LIMIN', 'GV', 'GVC'], { x: 28, y: 22 }, { x: 46, y: 0 }, 'up'),
    ...spaced(['L1', 'N'], { x: 22, y: 76 }, { x: 0, y: 50 }, 'left'),
    ...spaced(['IND', 'IGN', 'HEAT', 'COOL'], { x: 316, y: 68 }, { x: 0, y: 44 }, 'right'),
    ...spaced(['R', 'C', 'W', 'Y', 'G'], { x: 106, y: 228 }, { x: 44, y: 0 }, 'down', 12),
  },
};

/** Where the status light sits. */
const LIGHT = { x: 216, y: 92 } as const;

/** The light as the view shows it: a still picture when steady, else one that flashes its code and pauses. */
export function lightMotion(light: string | number | undefined): Moving['motion'] | undefined {
  if (light === undefined || light === 'off') return undefined;
  if (light === 'steady') return { kind: 'flash', count: 0 };
  const count = Number(light);
  return Number.isInteger(count) && count > 0 ? { kind: 'flash', count } : undefined;
}

function lit(part: PartView, x: number, y: number): Moving[] {
  const motion = lightMotion(part.signs.light);
  if (motion === undefined) return [];
  return [
    {
      picture: 'statusLight',
      x,
      y,
      width: 44,
      height: 44,
      paint(pen) {
        const halo = pen.createRadialGradient(0, 0, 3, 0, 0, 21);
        halo.addColorStop(0, MATERIAL.lightHalo);
        halo.addColorStop(1, MATERIAL.lightGone);
        disc(pen, 0, 0, 21, halo);
        disc(pen, 0, 0, 7, MATERIAL.lightOn);
        disc(pen, -2, -2, 2.6, MATERIAL.spark);
      },
      motion,
    },
  ];
}

function relay(pen: Pen, x: number, y: number): void {
  lifted(pen, 2, () => {
    fillBox(pen, { x, y, width: 40, height: 34 }, 3, MATERIAL.relay);
  });
  fillBox(pen, { x: x + 4, y: y + 4, width: 32, height: 26 }, 2, MATERIAL.relayFace);
}

function print(pen: Pen, text: string, x: number, y: number, align: CanvasTextAlign = 'center', most = 46): void {
  const style = { size: 13, weight: 600, colour: MATERIAL.boardInk, align, most } as const;
  const words = text.split(' ');
  if (align === 'center' && words.length > 1) {
    words.forEach((word, row) => {
      letter(pen, word, x, y + row * 12, style);
    });
  } else letter(pen, text, x, align === 'center' && words.length === 1 ? y : y, style);
}

function drawPrint(pen: Pen, part: PartView): void {
  for (const [id, spot] of Object.entries(SHAPE.terminals)) {
    const text = labelOf(part, id);
    if (spot.way === 'up') print(pen, text, id === 'GVC' ? spot.x - 7 : spot.x, spot.y + 21);
    else if (spot.way === 'down')
      letter(pen, text, spot.x, spot.y - 23, { size: 16, weight: 750, wide: true, family: 'display', colour: MATERIAL.boardInk });
    else if (spot.way === 'left') print(pen, text, spot.x + 19, spot.y, 'left');
    else print(pen, text, spot.x - 19, spot.y > 190 ? spot.y - 11 : spot.y, 'right');
  }
}

/** Flash codes of this board, as the door's label prints them. */
const CODES = ['steady', '1', '2', '4', '5', '6', '7'] as const;

function drawCodes(pen: Pen, words: Words): void {
  const box = { x: -104, y: 40, width: 276, height: 182 };
  fillBox(pen, box, 3, MATERIAL.label);
  strokeBox(pen, box, 3, CREAM[5], 1);
  const ink = { colour: MATERIAL.labelInk, align: 'left' } as const;
  letter(pen, words('stage:codes.title'), box.x + 14, box.y + 18, { ...ink, size: 14, weight: 700, family: 'display' });
  CODES.forEach((code, row) => {
    const y = box.y + 42 + row * 20;
    letter(pen, words(`stage:codes.mark.${code}`), box.x + 14, y, { ...ink, size: 13, weight: 700 });
    letter(pen, words(`stage:codes.${code}`), box.x + 70, y, { ...ink, size: 13, most: 198 });
  });
}

/** The furnace's control board: blades for the safeties above, line voltage at the sides, five screws for the thermostat below. */
export const furnaceBoard: Face = {
  shape: fixed(SHAPE),
  draw(pen, part, words) {
    const box = { x: 0, y: 0, width: SHAPE.width, height: SHAPE.height };
    lifted(pen, 5, () => {
      fillBox(pen, box, 6, downward(pen, box, MATERIAL.boardTop, MATERIAL.boardLow));
    });
    strokeBox(pen, box, 6, MATERIAL.boardEdge, 1.2);
    for (const trace of [
      [106, 196, 106, 174, 144],
      [150, 196, 150, 170, 164],
      [194, 196, 194, 172, 200],
      [238, 196, 238, 160, 236],
    ] as const) {
      line(
        pen,
        [
          [trace[0], trace[1]],
          [trace[2], trace[3]],
          [trace[4], trace[3]],
        ],
        MATERIAL.boardTrace,
        1.6,
      );
    }
    for (const y of [68, 112, 156, 200])
      line(
        pen,
        [
          [250, y],
          [232, y],
          [226, y - 10],
        ],
        MATERIAL.boardTrace,
        1.6,
      );
    nameTape(pen, words(`rig:part.${part.id}`), 140, 74, 150, true, 'center');
    relay(pen, 88, 90);
    relay(pen, 134, 90);
    relay(pen, 88, 132);
    relay(pen, 134, 132);
    fillBox(pen, { x: 190, y: 120, width: 44, height: 44 }, 3, STEEL[11]);
    for (let pin = 0; pin < 5; pin += 1) {
      line(
        pen,
        [
          [186, 126 + pin * 8],
          [190, 126 + pin * 8],
        ],
        MATERIAL.steel,
        2,
      );
      line(
        pen,
        [
          [234, 126 + pin * 8],
          [238, 126 + pin * 8],
        ],
        MATERIAL.steel,
        2,
      );
    }
    disc(pen, LIGHT.x, LIGHT.y, 7, MATERIAL.lightOff);
    ring(pen, LIGHT.x, LIGHT.y, 8, STEEL[11], 1.6);
    for (const [x, y] of [
      [10, 242],
      [322, 242],
    ] as const)
      fixing(pen, x, y, 4);
    for (const spot of Object.values(SHAPE.terminals)) {
      if (spot.way === 'down') screw(pen, spot.x, spot.y, 12);
      else blade(pen, spot.x, spot.y, 12);
    }
    drawPrint(pen, part);
  },
  moving: (part) => lit(part, LIGHT.x, LIGHT.y),
  movingThrough: (part) => lit(part, LIGHT.x, LIGHT.y),
  through(pen, _part, words) {
    drawCodes(pen, words);
    // The peep glass in the door, in front of the light.
    disc(pen, LIGHT.x, LIGHT.y, 20, CREAM[6]);
    disc(pen, LIGHT.x, LIGHT.y, 15, MATERIAL.outline);
    disc(pen, LIGHT.x, LIGHT.y, 6, MATERIAL.lightOff);
  },
};
