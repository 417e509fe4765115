import { type Face, fixed, type Shape, spaced } from '../face.ts';
import { blades, fixing, shell } from '../hardware.ts';
import { fillBox, line, type Pen } from '../pen.ts';
import { LETTERS, MATERIAL } from '../tokens.ts';
import { codeLabel, darkLight, peepGlass, statusLight } from './statusLight.ts';

/** What is printed beside the blades on the right. */
const SIDE = { dx: -18, dy: 0, align: 'right', most: 62, size: LETTERS.small } as const;

const SHAPE: Shape = {
  width: 332,
  height: 252,
  name: { x: 128, y: 72, most: 128 },
  terminals: {
    ...spaced(['FS', 'PSOUT', 'PSIN', 'LIMOUT', 'LIMIN', 'GV', 'GVC'], { x: 28, y: 22 }, { x: 46, y: 0 }, 'up', {
      letter: { dx: 0, dy: 21, size: LETTERS.small, most: 42 },
    }),
    ...spaced(['L1', 'N'], { x: 22, y: 82 }, { x: 0, y: 50 }, 'left', { letter: { dx: 19, dy: 0, align: 'left', most: 30 } }),
    ...spaced(['IND', 'IGN', 'HEAT'], { x: 316, y: 66 }, { x: 0, y: 44 }, 'right', { letter: SIDE }),
    // Its print stands higher, clear of the G screw's letter.
    COOL: { x: 316, y: 198, way: 'right', letter: { ...SIDE, dy: -11 } },
    ...spaced(['R', 'C', 'W', 'Y', 'G'], { x: 106, y: 228 }, { x: 44, y: 0 }, 'down', { screw: 12, letter: { dx: 0, dy: -23 } }),
  },
};

/** Where the status light sits. */
const LIGHT = { x: 196, y: 98 } as const;

function relay(pen: Pen, x: number, y: number): void {
  shell(pen, { x, y, width: 40, height: 34 }, 'plastic', 2, 3);
  fillBox(pen, { x: x + 5, y: y + 5, width: 30, height: 24 }, 2, MATERIAL.relayFace);
}

/** The furnace's control board: blades for the safeties above, line voltage at the sides, five screws for the thermostat below. */
export const furnaceBoard: Face = {
  shape: fixed(SHAPE),
  draw(pen) {
    shell(pen, { x: 0, y: 0, width: SHAPE.width, height: SHAPE.height }, 'board', 5, 6);
    for (const [x, turn, end] of [
      [106, 174, 144],
      [150, 170, 164],
      [194, 172, 200],
      [238, 160, 236],
    ] as const)
      line(pen, [x, 196, x, turn, end, turn], MATERIAL.boardTrace);
    for (const y of [66, 110, 154, 198]) line(pen, [250, y, 232, y, 226, y - 10], MATERIAL.boardTrace);
    for (const x of [78, 124]) for (const y of [92, 134]) relay(pen, x, y);
    shell(pen, { x: 178, y: 124, width: 40, height: 40 }, 'plastic', 2, 3);
    for (let pin = 0; pin < 5; pin += 1)
      for (const x of [174, 218]) line(pen, [x, 130 + pin * 7, x + 4, 130 + pin * 7], MATERIAL.steel, 2);
    darkLight(pen, LIGHT);
    for (const x of [10, 322]) fixing(pen, x, 242, 4);
    blades(pen, SHAPE);
  },
  moving: (part) => statusLight(part, LIGHT.x, LIGHT.y),
  movingThrough: (part) => statusLight(part, LIGHT.x, LIGHT.y),
  through(pen, part, words) {
    codeLabel(pen, part, words, { x: -104, y: 40 });
    peepGlass(pen, LIGHT);
  },
};
