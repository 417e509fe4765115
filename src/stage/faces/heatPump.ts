import type { PartView } from '../../attempt/view.ts';
import { type Face, fixed, nudged, type Shape, spaced, stepper } from '../face.ts';
import { blades, fixing, hollow, knob, louvre, plate, shell } from '../hardware.ts';
import { disc, fillBox, line, type Pen, ring, strokeBox } from '../pen.ts';
import { COLOURS, CREAM, INK, LETTERS, light, MATERIAL, STEEL } from '../tokens.ts';
import { codeLabel, darkLight, peepGlass, statusLight } from './statusLight.ts';

function pipe(pen: Pen, spots: readonly number[], width: number): void {
  line(pen, spots, MATERIAL.outline, width + 2);
  line(pen, spots, MATERIAL.copperPipe, width);
  line(pen, spots, MATERIAL.copperPipeLight, width * 0.25);
}

const VALVE: Shape = {
  width: 150,
  height: 132,
  body: { x: 6, y: 20, width: 138, height: 110 },
  name: { x: 75, y: 7, most: 146 },
  terminals: spaced(['a', 'b'], { x: 46, y: 40 }, { x: 52, y: 0 }, 'up'),
};

/** The reversing valve: one pipe above, three below, and its pilot's coil on top. A screwdriver tells whether the coil pulls. */
export const reversingValve: Face = {
  shape: fixed(VALVE),
  draw(pen, part) {
    pipe(pen, [75, 60, 75, 90], 10);
    for (const x of [38, 75, 112]) pipe(pen, [x, 94, x, 130], 10);
    shell(pen, { x: 10, y: 78, width: 130, height: 28 }, 'brass', 4, 13);
    for (const x of [22, 128]) line(pen, [x, 82, x, 102], MATERIAL.brassShade, 2);
    shell(pen, { x: 14, y: 20, width: 116, height: 42 }, 'plastic', 3, 5);
    blades(pen, VALVE);
    const pull = part.signs.pull;
    if (pull === undefined) return;
    // Held by the nut, or hanging off it.
    pen.save();
    pen.translate(126, 58);
    pen.rotate(pull === 1 ? -0.5 : 1.3);
    line(pen, [0, 0, 14, 0], STEEL[2], 4);
    fillBox(pen, { x: 14, y: -6, width: 28, height: 12 }, 5, COLOURS.action);
    pen.restore();
    if (pull === 1) for (const radius of [9, 15]) ring(pen, 126, 58, radius, COLOURS.focus, INK.fine);
  },
};

const COIL: Shape = {
  width: 150,
  height: 116,
  body: { x: 2, y: 18, width: 146, height: 96 },
  name: { x: 75, y: 6, most: 146 },
  terminals: {},
};

function drawFrost(pen: Pen, frost: string | number | undefined): void {
  if (frost === 'frosted' || frost === 'iced') {
    for (let x = 6; x < 116; x += 16) {
      const height = frost === 'iced' ? 90 : 36 + ((x * 7) % 24);
      fillBox(pen, { x, y: 112 - height, width: 15, height }, 6, light(frost === 'iced' ? 0.92 : 0.55));
    }
    if (frost === 'iced') for (let x = 14; x < 116; x += 24) line(pen, [x, 100, x + 3, 114, x + 6, 100], STEEL[4], 3);
  }
  if (frost === 'melting') {
    for (let x = 10; x < 116; x += 22) fillBox(pen, { x, y: 74, width: 13, height: 36 }, 6, light(0.5));
    for (let x = 20; x < 116; x += 28) {
      pen.beginPath();
      pen.moveTo(x, 66);
      pen.bezierCurveTo(x - 10, 54, x + 10, 44, x, 28);
      pen.strokeStyle = light(0.9);
      pen.lineWidth = 3;
      pen.stroke();
    }
  }
}

function drawCoil(pen: Pen, part: PartView): void {
  shell(pen, { x: 2, y: 18, width: 120, height: 96 }, 'steel', 4, 4);
  for (let x = 8; x < 120; x += 6) line(pen, [x, 22, x, 110], STEEL[4], 1.4);
  for (const y of [34, 54, 74, 94]) line(pen, [4, y, 120, y], MATERIAL.copperPipe, 3);
  pipe(pen, [122, 32, 138, 32, 138, 114], 9);
  drawFrost(pen, part.signs.frost);
  const felt = part.signs.line;
  if (felt === undefined) return;
  // A thermometer strapped to the pipe.
  const level = felt === 'hot' ? 46 : felt === 'cold' ? 92 : 70;
  const ink = felt === 'cold' ? MATERIAL.water : MATERIAL.rust;
  fillBox(pen, { x: 129, y: 38, width: 18, height: 70 }, 8, CREAM[0]);
  strokeBox(pen, { x: 129, y: 38, width: 18, height: 70 }, 8, MATERIAL.outline, 1);
  line(pen, [138, 98, 138, level], ink, 5);
  disc(pen, 138, 98, 6, ink);
}

/** The outdoor coil with its frost, and the vapour line to the house, whose warmth is only felt by a hand. */
export const outdoorCoil: Face = {
  shape: fixed(COIL),
  draw: drawCoil,
  through: drawCoil,
};

const BOARD: Shape = {
  width: 256,
  height: 178,
  name: { x: 92, y: 66, most: 120 },
  terminals: {
    ...spaced(['YOUT', 'RV'], { x: 34, y: 22 }, { x: 58, y: 0 }, 'up', {
      letter: { dx: 0, dy: 21, size: LETTERS.small, most: 54 },
    }),
    ...spaced(['FANIN', 'FANOUT'], { x: 238, y: 30 }, { x: 0, y: 50 }, 'right', {
      letter: { dx: -18, dy: 0, align: 'right', most: 60, size: LETTERS.small },
    }),
    ...spaced(['R', 'C', 'Y', 'O', 'W2'], { x: 32, y: 154 }, { x: 48, y: 0 }, 'down', { screw: 12, letter: { dx: 0, dy: -23 } }),
  },
};
const LIGHT = { x: 172, y: 98 } as const;
const TEST = { x: 108, y: 80, width: 40, height: 36 } as const;

/** The defrost control: screws for the house's cable below, the valve's and the contactor's blades above, the fan's relay at the side. */
export const defrostControl: Face = {
  shape: fixed(BOARD),
  draw(pen, part) {
    shell(pen, { x: 0, y: 0, width: BOARD.width, height: BOARD.height }, 'board', 5, 6);
    for (const [x, end] of [
      [32, 30],
      [80, 44],
      [128, 80],
      [176, 130],
    ] as const)
      line(pen, [x, 122, x, 116, end, 112, end, 100], MATERIAL.boardTrace);
    for (const x of [14, 60]) {
      shell(pen, { x, y: 80, width: 38, height: 32 }, 'plastic', 2, 3);
      fillBox(pen, { x: x + 5, y: 85, width: 28, height: 22 }, 2, MATERIAL.relayFace);
    }
    shell(pen, { x: 200, y: 98, width: 44, height: 30 }, 'plastic', 2, 3);
    // The test button.
    shell(pen, { x: TEST.x, y: TEST.y, width: 30, height: 28 }, 'steel', 2, 3);
    knob(pen, TEST.x + 15, TEST.y + 14, 8, 'signal', 2);
    darkLight(pen, LIGHT);
    for (const x of [9, 247]) fixing(pen, x, 168, 4);
    blades(pen, BOARD);
    // The relays are heard going over.
    if (part.signs.relay === 1)
      for (const x of [33, 79]) line(pen, [x - 10, 92, x, 86, x + 10, 92, x, 98, x - 10, 92], COLOURS.focus, 2.4);
  },
  moving: (part) => statusLight(part, LIGHT.x, LIGHT.y),
  movingThrough: (part) => statusLight(part, LIGHT.x, LIGHT.y),
  through(pen, part, words) {
    codeLabel(pen, part, words, { x: -2, y: 128 });
    peepGlass(pen, LIGHT);
  },
  handles: (part) => stepper(part, 'test', TEST),
};

const DIAL: Shape = {
  width: 132,
  height: 150,
  body: { x: 8, y: 20, width: 116, height: 126 },
  name: { x: 66, y: 8, most: 128 },
  terminals: spaced(['a', 'b'], { x: 42, y: 126 }, { x: 48, y: 0 }, 'down'),
};
/** The dial's ends, °F, and the angles at which they stand. */
const SCALE = { from: -10, to: 60, first: Math.PI * 0.75, last: Math.PI * 2.25 } as const;

/** The outdoor thermostat: a dial on a box, its bulb out in the weather. Where the dial stands is only read from near. */
export const outdoorThermostat: Face = {
  shape: fixed(DIAL),
  draw(pen, part) {
    shell(pen, { x: 8, y: 20, width: 116, height: 126 }, 'painted', 5, 8);
    for (let mark = 0; mark <= 7; mark += 1) {
      const angle = SCALE.first + (mark / 7) * (SCALE.last - SCALE.first);
      line(
        pen,
        [66 + Math.cos(angle) * 31, 66 + Math.sin(angle) * 31, 66 + Math.cos(angle) * 38, 66 + Math.sin(angle) * 38],
        CREAM[7],
        2,
      );
    }
    knob(pen, 66, 66, 26, 'plastic', 3);
    const set = part.signs.dial;
    if (set !== undefined) {
      const angle = SCALE.first + ((Number(set) - SCALE.from) / (SCALE.to - SCALE.from)) * (SCALE.last - SCALE.first);
      line(pen, [66, 66, 66 + Math.cos(angle) * 24, 66 + Math.sin(angle) * 24], COLOURS.focus, 4);
    }
    blades(pen, DIAL);
  },
  handles(part) {
    return (['up', 'down'] as const).flatMap((name) => {
      const action = nudged(part, 'dial', name === 'up' ? 1 : -1);
      return action === undefined ? [] : [{ box: { x: name === 'up' ? 68 : 12, y: 30, width: 52, height: 74 }, name, action }];
    });
  },
};

const REGISTER: Shape = {
  width: 190,
  height: 112,
  body: { x: 2, y: 20, width: 186, height: 88 },
  name: { x: 95, y: 8, most: 180, paper: true },
  terminals: {},
};
/** How many streams of air are drawn, and how they bend. */
const STREAMS: Readonly<Record<string, { readonly count: number; readonly bend: number; readonly colour: string }>> = {
  room: { count: 2, bend: 0, colour: CREAM[7] },
  cold: { count: 3, bend: 0, colour: MATERIAL.water },
  warm: { count: 3, bend: 7, colour: MATERIAL.rust },
  hot: { count: 5, bend: 9, colour: MATERIAL.rust },
};

/** A supply register: how its air feels, and what a thermometer held in it says once somebody has held one. */
export const register: Face = {
  shape: fixed(REGISTER),
  draw(pen, part, words) {
    shell(pen, { x: 2, y: 20, width: 186, height: 60 }, 'enamel', 4, 5);
    hollow(pen, { x: 12, y: 28, width: 166, height: 44 }, STEEL[9], 3);
    for (let y = 31; y < 70; y += 9) louvre(pen, 16, y, 158, CREAM[4], CREAM[1]);
    const air = STREAMS[String(part.signs.air)];
    if (air !== undefined) {
      for (let index = 0; index < air.count; index += 1) {
        const x = 95 + (index - (air.count - 1) / 2) * 30;
        pen.beginPath();
        pen.moveTo(x, 62);
        pen.bezierCurveTo(x - air.bend, 76, x + air.bend, 88, x, 102);
        pen.strokeStyle = air.colour;
        pen.lineWidth = 3.4;
        pen.stroke();
        // Cold air carries a star, other air an arrow's head.
        if (part.signs.air === 'cold') for (const turn of [0, 1, 2]) star(pen, x, 102, turn);
        else line(pen, [x - 5, 97, x, 105, x + 5, 97], air.colour, 2.4);
      }
    }
    const supply = part.signs.supply;
    if (supply !== undefined)
      plate(pen, { x: 132, y: 44, width: 50, height: 24 }, words('stage:thermostat.degrees', { value: Number(supply) }));
  },
};

function star(pen: Pen, x: number, y: number, turn: number): void {
  const angle = (turn * Math.PI) / 3;
  const [dx, dy] = [Math.cos(angle) * 6, Math.sin(angle) * 6];
  line(pen, [x - dx, y - dy, x + dx, y + dy], MATERIAL.water, 2);
}

const SCREWS: Shape = {
  width: 396,
  height: 74,
  terminals: spaced(['R', 'C', 'Y', 'G', 'O', 'W2', 'E', 'W'], { x: 30, y: 46 }, { x: 48, y: 0 }, 'down', {
    screw: 12,
    letter: { dx: 0, dy: -26, most: 44 },
  }),
};

/** The air handler's row of low-voltage screws. */
export const airHandlerStrip: Face = {
  shape: fixed(SCREWS),
  draw(pen) {
    shell(pen, { x: 0, y: 6, width: SCREWS.width, height: 64 }, 'plastic', 4, 5);
    for (let x = 54; x < 380; x += 48) line(pen, [x, 34, x, 66], STEEL[11], 2);
  },
};
