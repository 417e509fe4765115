import type { PartView } from '../../attempt/view.ts';
import { type Face, fixed, type Shape, spaced } from '../face.ts';
import { blades, fixing, shell } from '../hardware.ts';
import { fillBox, line } from '../pen.ts';
import { LETTERS, MATERIAL } from '../tokens.ts';
import { codeLabel, darkLight, peepGlass, statusLight } from './statusLight.ts';

const SIDE = { dx: -18, dy: 0, align: 'right', most: 58, size: LETTERS.small } as const;

const SHAPE: Shape = {
  width: 320,
  height: 232,
  name: { x: 130, y: 74, most: 130 },
  terminals: {
    ...spaced(['FS', 'B1', 'B2', 'GV', 'GVC'], { x: 36, y: 22 }, { x: 52, y: 0 }, 'up', {
      letter: { dx: 0, dy: 21, size: LETTERS.small, most: 48 },
    }),
    ...spaced(['L1', 'N'], { x: 22, y: 96 }, { x: 0, y: 50 }, 'left', { letter: { dx: 19, dy: 0, align: 'left', most: 30 } }),
    ...spaced(['C1', 'C2', 'IGN'], { x: 302, y: 76 }, { x: 0, y: 46 }, 'right', { letter: SIDE }),
    ...spaced(['R', 'C', 'T1', 'T2'], { x: 76, y: 208 }, { x: 52, y: 0 }, 'down', { screw: 12, letter: { dx: 0, dy: -23 } }),
  },
};
const LIGHT = { x: 196, y: 120 } as const;

const light = (part: PartView) => statusLight(part, LIGHT.x, LIGHT.y);

/** The boiler's control: two relays, blades for what burns above, the pump at its side, the call's screws below. */
export const boilerControl: Face = {
  shape: fixed(SHAPE),
  draw(pen) {
    shell(pen, { x: 0, y: 0, width: SHAPE.width, height: SHAPE.height }, 'board', 5, 6);
    for (const [x, end] of [
      [76, 104],
      [128, 124],
      [180, 150],
      [232, 170],
    ] as const)
      line(pen, [x, 180, x, 168, end, 156], MATERIAL.boardTrace);
    for (const x of [74, 122]) {
      shell(pen, { x, y: 100, width: 42, height: 46 }, 'plastic', 2, 3);
      fillBox(pen, { x: x + 5, y: 106, width: 32, height: 34 }, 2, MATERIAL.relayFace);
    }
    darkLight(pen, LIGHT);
    for (const x of [10, 310]) fixing(pen, x, 222, 4);
    blades(pen, SHAPE);
  },
  moving: light,
  movingThrough: light,
  through(pen, part, words) {
    codeLabel(pen, part, words, { x: -120, y: 20 });
    peepGlass(pen, LIGHT);
  },
};
