import { type Face, fixed, type Shape, spaced, stepper, type TerminalSpot } from '../face.ts';
import { blades, hollow, plate, shell, soundArcs } from '../hardware.ts';
import { fillBox, letter, line, type Pen } from '../pen.ts';
import { COLOURS, CREAM, INK, LETTERS, MATERIAL, STEEL, shade, WOOD } from '../tokens.ts';

/** A word on something that is switched. */
function mark(pen: Pen, text: string, x: number, y: number, colour: string, most: number): void {
  letter(pen, text, x, y, { size: LETTERS.small, weight: 750, family: 'display', colour, most });
}

/** The steel nests that screws sit in. */
function nests(pen: Pen, shape: Shape, half: number, fill: string): void {
  for (const spot of Object.values(shape.terminals))
    hollow(pen, { x: spot.x - half, y: spot.y - half, width: half * 2, height: half * 2 }, fill, INK.smallCorner);
}

const SERVICE: Shape = {
  width: 300,
  height: 118,
  body: { x: 0, y: 24, width: 300, height: 94 },
  name: { x: 150, y: 10, most: 280 },
  terminals: spaced(['L1', 'L2', 'N'], { x: 60, y: 84 }, { x: 90, y: 0 }, 'down', { screw: 14, letter: { dx: 0, dy: -38 } }),
};

/** The main lugs that the house is fed by. */
export const service: Face = {
  shape: fixed(SERVICE),
  draw(pen) {
    shell(pen, { x: 0, y: 24, width: 300, height: 94 }, 'iron');
    nests(pen, SERVICE, 23, MATERIAL.steel);
  },
};

const LUG: Shape = { width: 96, height: 28, terminals: { E: { x: 26, y: 14, way: 'up', screw: 10 } } };

/** Earth's bar: a bare screw in a brass rail, with the earth mark drawn: no letter face carries it for certain. */
export const earthBar: Face = {
  shape: fixed(LUG),
  draw(pen) {
    shell(pen, { x: 0, y: 1, width: 96, height: 26 }, 'brass', 3, INK.smallCorner);
    line(pen, [66, 5, 66, 13], MATERIAL.cautionInk, 2);
    for (const [half, drop] of [
      [9, 0],
      [6, 4],
      [3, 8],
    ] as const)
      line(pen, [66 - half, 14 + drop, 66 + half, 14 + drop], MATERIAL.cautionInk, 2);
  },
};

/** A breaker's lever in its slot: up with a light line for on, down with an orange one for off, between them when tripped. */
function lever(pen: Pen, x: number, y: number, width: number, position: string, words: (key: string) => string): void {
  hollow(pen, { x, y, width, height: 64 }, STEEL[11], 5);
  const on = position === 'on';
  const tripped = position !== 'on' && position !== 'off';
  const top = on ? 3 : tripped ? 16 : 29;
  shell(pen, { x: x + 3, y: y + top, width: width - 6, height: 32 }, 'steel', 3, INK.smallCorner);
  const bar = on ? y + 9 : y + top + 26;
  line(pen, [x + 7, bar, x + width - 7, bar], on ? CREAM[0] : COLOURS.action, 4);
  mark(
    pen,
    words(on ? 'stage:mark.on' : tripped ? 'stage:mark.tripped' : 'stage:mark.off'),
    x + width / 2,
    on ? y + 51 : tripped ? y + 57 : y + 14,
    CREAM[2],
    width - 4,
  );
}

function breaker(poles: 1 | 2): Face {
  const width = poles === 1 ? 116 : 172;
  const xs = poles === 1 ? [width / 2] : [50, width - 50];
  const terminals: Record<string, TerminalSpot> = Object.fromEntries(
    xs.flatMap((x, index) => [
      [`line${String(index + 1)}`, { x, y: 40, way: 'up' as const, screw: 12 }],
      [`load${String(index + 1)}`, { x, y: 184, way: 'down' as const, screw: 12 }],
    ]),
  );
  const slot = { x: width / 2 - 24 * poles, width: 48 * poles } as const;
  const shape: Shape = { width, height: 210, body: { x: 8, y: 20, width: width - 16, height: 186 }, terminals };
  const drawLever: NonNullable<Face['through']> = (pen, part, words) => {
    if (part.signs.lever !== undefined) lever(pen, slot.x, 80, slot.width, String(part.signs.lever), words);
  };
  return {
    shape: fixed(shape),
    draw(pen, part, words) {
      shell(pen, { x: 8, y: 20, width: width - 16, height: 186 }, 'plastic');
      hollow(pen, { x: slot.x - 6, y: 74, width: slot.width + 12, height: 76 }, MATERIAL.outline);
      drawLever(pen, part, words);
      letter(pen, words(`rig:part.${part.id}`), width / 2, 160, {
        size: LETTERS.small,
        weight: 600,
        family: 'display',
        colour: MATERIAL.boardInk,
        most: width - 22,
      });
    },
    through(pen, part, words) {
      hollow(pen, { x: slot.x - 10, y: 70, width: slot.width + 20, height: 84 });
      drawLever(pen, part, words);
      plate(pen, { x: -14, y: 162, width: width + 28, height: 24 }, words(`rig:part.${part.id}`));
    },
    handles: (part) => stepper(part, 'lever', { x: slot.x - 4, y: 74, width: slot.width + 8, height: 76 }),
  };
}

export const breakerSinglePole = breaker(1);
export const breakerTwoPole = breaker(2);

const SWITCH: Shape = {
  width: 140,
  height: 158,
  body: { x: 8, y: 22, width: 124, height: 132 },
  name: { x: 70, y: 8, most: 136, paper: true },
  terminals: { line: { x: 34, y: 136, way: 'down', screw: 11 }, load: { x: 106, y: 136, way: 'down', screw: 11 } },
};

/** The switch on the closet's wall that cuts the furnace's line. */
export const serviceSwitch: Face = {
  shape: fixed(SWITCH),
  draw(pen, part, words) {
    shell(pen, { x: 20, y: 22, width: 100, height: 96 }, 'zinc');
    shell(pen, { x: 46, y: 30, width: 48, height: 80 }, 'ceramic', 2, 5);
    const on = part.signs.lever === 'on';
    if (part.signs.lever !== undefined) {
      hollow(pen, { x: 54, y: 40, width: 32, height: 60 }, on ? CREAM[5] : COLOURS.action, INK.smallCorner);
      shell(pen, { x: 56, y: on ? 42 : 68, width: 28, height: 30 }, 'ceramic', 3, INK.smallCorner);
      mark(pen, words(on ? 'stage:mark.on' : 'stage:mark.off'), 70, on ? 86 : 55, on ? WOOD[7] : COLOURS.onAction, 30);
    }
    shell(pen, { x: 8, y: 118, width: 124, height: 36 }, 'iron', 3, 6);
  },
  handles: (part) => stepper(part, 'lever', { x: 42, y: 28, width: 56, height: 84 }),
};

const DISCONNECT: Shape = {
  width: 150,
  height: 236,
  terminals: {
    line1: { x: 42, y: 42, way: 'up', screw: 13, letter: { dx: 0, dy: 31, size: LETTERS.name } },
    line2: { x: 108, y: 42, way: 'up', screw: 13, letter: { dx: 0, dy: 31, size: LETTERS.name } },
    load1: { x: 42, y: 192, way: 'down', screw: 13, letter: { dx: 0, dy: -31, size: LETTERS.name } },
    load2: { x: 108, y: 192, way: 'down', screw: 13, letter: { dx: 0, dy: -31, size: LETTERS.name } },
  },
};

/** The pull-out block: pushed in, or out and hung beside its slot. */
function block(pen: Pen, isIn: boolean, words: (key: string) => string): void {
  const box = isIn ? { x: 37, y: 90, width: 76, height: 54 } : { x: 62, y: 100, width: 82, height: 54 };
  if (!isIn) {
    hollow(pen, { x: 37, y: 90, width: 76, height: 54 }, MATERIAL.hole, INK.smallCorner);
    for (const x of [44, 54]) fillBox(pen, { x, y: 98, width: 7, height: 40 }, 2, MATERIAL.brass);
  }
  shell(pen, box, 'plastic', isIn ? 3 : 10, 6);
  hollow(pen, { x: box.x + 14, y: box.y + 9, width: box.width - 28, height: 18 }, isIn ? STEEL[11] : COLOURS.action, 9);
  mark(pen, words(isIn ? 'stage:mark.in' : 'stage:mark.out'), box.x + box.width / 2, box.y + 40, CREAM[1], box.width - 8);
}

/** The outdoor disconnect: a grey box with a pull-out between line and load. */
export const disconnect: Face = {
  shape: fixed(DISCONNECT),
  draw(pen, part, words) {
    shell(pen, { x: 0, y: 0, width: 150, height: 236 }, 'steel', 7);
    hollow(pen, { x: 10, y: 10, width: 130, height: 216 }, MATERIAL.steelDark, 5);
    nests(pen, DISCONNECT, 21, MATERIAL.iron);
    if (part.signs.position !== undefined) block(pen, part.signs.position === 'in', words);
  },
  through(pen, part, words) {
    if (part.signs.position !== undefined) block(pen, part.signs.position === 'in', words);
  },
  handles: (part) => stepper(part, 'position', { x: 32, y: 88, width: 106, height: 64 }),
};

const TRANSFORMER: Shape = {
  width: 116,
  height: 150,
  body: { x: 4, y: 30, width: 108, height: 108 },
  name: { x: 58, y: 8, most: 106 },
  terminals: {
    ...spaced(['H1', 'H2'], { x: 32, y: 46 }, { x: 52, y: 0 }, 'up', { letter: { dx: 0, dy: 22, dark: true } }),
    ...spaced(['X1', 'X2'], { x: 32, y: 122 }, { x: 52, y: 0 }, 'down', { letter: { dx: 0, dy: -22, dark: true } }),
  },
};

/** The control transformer: laminations with a winding between its line and its 24 V side. */
export const transformer: Face = {
  shape: fixed(TRANSFORMER),
  draw(pen, part) {
    shell(pen, { x: 4, y: 62, width: 108, height: 44 }, 'steel', 4, 3);
    for (let x = 10; x < 110; x += 6) line(pen, [x, 63, x, 105], shade(0.35), 1);
    const burnt = part.signs.body === 'burnt';
    fillBox(pen, { x: 22, y: 58, width: 72, height: 52 }, 5, burnt ? WOOD[6] : MATERIAL.winding);
    for (let y = 63; y < 108; y += 5) line(pen, [24, y, 92, y], burnt ? STEEL[11] : MATERIAL.windingShade, INK.edge);
    if (part.signs.body === 'sound') line(pen, [24, 60, 92, 60], CREAM[0], 2.4);
    if (burnt) {
      for (const [x, y, size] of [
        [44, 80, 18],
        [66, 90, 14],
        [82, 72, 10],
      ] as const)
        fillBox(pen, { x: x - size, y: y - size * 0.6, width: size * 2, height: size * 1.2 }, size * 0.6, shade(0.7));
    }
    // The nameplates of the taps, over the winding.
    for (const y of [60, 92]) for (const x of [32, 84]) fillBox(pen, { x: x - 14, y, width: 28, height: 16 }, 3, MATERIAL.label);
    if (part.signs.hum === 1) soundArcs(pen, 58, 84, 46, false);
    blades(pen, TRANSFORMER);
  },
};
