import { type Face, fixed, labelOf, type Shape, stepper, type TerminalSpot } from '../face.ts';
import { blade, nameTape, plate, screw, shell } from '../hardware.ts';
import { downward, fillBox, letter, lifted, line, type Pen, strokeBox } from '../pen.ts';
import { COLOURS, CREAM, MATERIAL, STEEL, shade, WOOD } from '../tokens.ts';

const SERVICE: Shape = {
  width: 300,
  height: 118,
  terminals: {
    L1: { x: 60, y: 84, way: 'down', screw: 14 },
    L2: { x: 150, y: 84, way: 'down', screw: 14 },
    N: { x: 240, y: 84, way: 'down', screw: 14 },
  },
};

/** The main lugs that the house is fed by. */
export const service: Face = {
  shape: fixed(SERVICE),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), SERVICE.width / 2, 10, SERVICE.width, true, 'center');
    shell(pen, { x: 0, y: 24, width: SERVICE.width, height: 94 }, 8, MATERIAL.steelDark, STEEL[9], MATERIAL.iron, 4);
    for (const [id, spot] of Object.entries(SERVICE.terminals)) {
      fillBox(pen, { x: spot.x - 24, y: 62, width: 48, height: 44 }, 4, MATERIAL.steel);
      screw(pen, spot.x, spot.y, 14);
      letter(pen, labelOf(part, id), spot.x, 44, {
        size: 15,
        weight: 750,
        wide: true,
        family: 'display',
        colour: MATERIAL.boardInk,
      });
    }
  },
};

const LUG = { width: 96, height: 28 } as const;

/** The earth mark, drawn: no letter face carries it for certain. */
function earthMark(pen: Pen, x: number, y: number): void {
  line(
    pen,
    [
      [x, y - 9],
      [x, y - 1],
    ],
    MATERIAL.cautionInk,
    2,
  );
  for (const [half, drop] of [
    [9, 0],
    [6, 4],
    [3, 8],
  ] as const)
    line(
      pen,
      [
        [x - half, y + drop],
        [x + half, y + drop],
      ],
      MATERIAL.cautionInk,
      2,
    );
}

/** Earth's bar: a bare screw in a brass rail. */
export const earthBar: Face = {
  shape: fixed({ ...LUG, terminals: { E: { x: 26, y: 14, way: 'up', screw: 10 } } }),
  draw(pen) {
    fillBox(pen, { x: 0, y: 1, width: 96, height: 26 }, 4, MATERIAL.brass);
    strokeBox(pen, { x: 0, y: 1, width: 96, height: 26 }, 4, MATERIAL.brassShade, 1);
    screw(pen, 26, 14, 10);
    earthMark(pen, 66, 14);
  },
};

/** A breaker's lever in its slot, thrown up for on. */
function lever(pen: Pen, x: number, y: number, width: number, on: boolean, words: (key: string) => string): void {
  fillBox(pen, { x, y, width, height: 64 }, 5, STEEL[11]);
  lifted(pen, 3, () => {
    fillBox(pen, { x: x + 3, y: on ? y + 3 : y + 29, width: width - 6, height: 32 }, 4, STEEL[8]);
  });
  line(
    pen,
    [
      [x + 7, on ? y + 9 : y + 55],
      [x + width - 7, on ? y + 9 : y + 55],
    ],
    on ? MATERIAL.boardInk : COLOURS.action,
    3,
  );
  letter(pen, words(on ? 'stage:mark.on' : 'stage:mark.off'), x + width / 2, on ? y + 51 : y + 14, {
    size: 13,
    weight: 750,
    family: 'display',
    colour: CREAM[2],
    most: width - 4,
  });
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
  const shape: Shape = { width, height: 210, terminals };
  const drawLever: NonNullable<Face['through']> = (pen, part, words) => {
    const on = part.signs.lever === 'on';
    if (part.signs.lever !== undefined) lever(pen, slot.x, 80, slot.width, on, words);
  };
  return {
    shape: fixed(shape),
    draw(pen, part, words) {
      shell(pen, { x: 8, y: 20, width: width - 16, height: 186 }, 6, STEEL[9], MATERIAL.breaker, STEEL[11], 5);
      for (const spot of Object.values(terminals)) screw(pen, spot.x, spot.y, 12);
      fillBox(pen, { x: slot.x - 6, y: 74, width: slot.width + 12, height: 76 }, 6, MATERIAL.outline);
      drawLever(pen, part, words);
      letter(pen, words(`rig:part.${part.id}`), width / 2, 160, {
        size: 13,
        weight: 600,
        family: 'display',
        colour: MATERIAL.boardInk,
        most: width - 20,
      });
    },
    through(pen, part, words) {
      fillBox(pen, { x: slot.x - 10, y: 70, width: slot.width + 20, height: 84 }, 6, STEEL[10]);
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
  terminals: { line: { x: 34, y: 136, way: 'down', screw: 11 }, load: { x: 106, y: 136, way: 'down', screw: 11 } },
};

/** The switch on the closet's wall that cuts the furnace's line. */
export const serviceSwitch: Face = {
  shape: fixed(SWITCH),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 70, 8, 140, false, 'center');
    shell(pen, { x: 20, y: 22, width: 100, height: 96 }, 8, MATERIAL.steelLight, MATERIAL.steel, MATERIAL.steelShade, 5);
    fillBox(pen, { x: 46, y: 32, width: 48, height: 76 }, 5, CREAM[2]);
    const on = part.signs.lever === 'on';
    if (part.signs.lever !== undefined) {
      fillBox(pen, { x: 57, y: 42, width: 26, height: 56 }, 4, CREAM[5]);
      lifted(pen, 3, () => {
        fillBox(pen, { x: 58, y: on ? 43 : 68, width: 24, height: 29 }, 4, MATERIAL.enamelLight);
      });
      letter(pen, words(on ? 'stage:mark.on' : 'stage:mark.off'), 70, on ? 84 : 55, {
        size: 13,
        weight: 750,
        family: 'display',
        colour: WOOD[7],
        most: 26,
      });
    }
    fillBox(pen, { x: 8, y: 118, width: 124, height: 36 }, 6, STEEL[7]);
    for (const spot of Object.values(SWITCH.terminals)) screw(pen, spot.x, spot.y, 11);
  },
  handles: (part) => stepper(part, 'lever', { x: 42, y: 28, width: 56, height: 84 }),
};

const DISCONNECT: Shape = {
  width: 150,
  height: 236,
  terminals: {
    line1: { x: 42, y: 42, way: 'up', screw: 13 },
    line2: { x: 108, y: 42, way: 'up', screw: 13 },
    load1: { x: 42, y: 192, way: 'down', screw: 13 },
    load2: { x: 108, y: 192, way: 'down', screw: 13 },
  },
};

/** The pull-out block: pushed in, or out and hung beside its slot. */
function block(pen: Pen, isIn: boolean, words: (key: string) => string): void {
  const box = isIn ? { x: 37, y: 92, width: 76, height: 56 } : { x: 56, y: 98, width: 82, height: 56 };
  if (!isIn) {
    fillBox(pen, { x: 37, y: 92, width: 76, height: 56 }, 4, MATERIAL.hole);
    for (const x of [52, 88]) fillBox(pen, { x, y: 98, width: 10, height: 44 }, 2, MATERIAL.brassShade);
  }
  lifted(pen, isIn ? 3 : 9, () => {
    fillBox(pen, box, 6, downward(pen, box, STEEL[9], MATERIAL.breaker));
  });
  fillBox(pen, { x: box.x + 14, y: box.y + 10, width: box.width - 28, height: 18 }, 9, STEEL[11]);
  letter(pen, words(isIn ? 'stage:mark.in' : 'stage:mark.out'), box.x + box.width / 2, box.y + 40, {
    size: 14,
    weight: 750,
    family: 'display',
    colour: CREAM[1],
    most: box.width - 8,
  });
}

/** The outdoor disconnect: a grey box with a pull-out between line and load. */
export const disconnect: Face = {
  shape: fixed(DISCONNECT),
  draw(pen, part, words) {
    shell(pen, { x: 0, y: 0, width: 150, height: 236 }, 8, STEEL[5], STEEL[6], MATERIAL.steelDark, 7);
    fillBox(pen, { x: 10, y: 10, width: 130, height: 216 }, 5, MATERIAL.steelDark);
    for (const [id, spot] of Object.entries(DISCONNECT.terminals)) {
      fillBox(pen, { x: spot.x - 22, y: spot.y - 20, width: 44, height: 40 }, 4, MATERIAL.iron);
      screw(pen, spot.x, spot.y, 13);
      letter(pen, labelOf(part, id), spot.x, spot.y + (id.startsWith('line') ? 29 : -29), {
        size: 13.5,
        weight: 600,
        colour: MATERIAL.boardInk,
      });
    }
    if (part.signs.position !== undefined) block(pen, part.signs.position === 'in', words);
  },
  through(pen, part, words) {
    if (part.signs.position === undefined) return;
    block(pen, part.signs.position === 'in', words);
  },
  handles: (part) => stepper(part, 'position', { x: 32, y: 88, width: 106, height: 64 }),
};

const TRANSFORMER: Shape = {
  width: 116,
  height: 150,
  terminals: {
    H1: { x: 32, y: 46, way: 'up' },
    H2: { x: 84, y: 46, way: 'up' },
    X1: { x: 32, y: 122, way: 'down' },
    X2: { x: 84, y: 122, way: 'down' },
  },
};

/** The control transformer: laminations with a winding between its line and its 24 V side. */
export const transformer: Face = {
  shape: fixed(TRANSFORMER),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 58, 8, 130, true, 'center');
    const core = { x: 4, y: 62, width: 108, height: 44 };
    lifted(pen, 4, () => {
      fillBox(pen, core, 3, downward(pen, core, MATERIAL.steel, MATERIAL.steelShade));
    });
    for (let x = 10; x < 110; x += 6)
      line(
        pen,
        [
          [x, 63],
          [x, 105],
        ],
        shade(0.35),
        1,
      );
    const burnt = part.signs.body === 'burnt';
    fillBox(pen, { x: 26, y: 58, width: 64, height: 52 }, 5, burnt ? MATERIAL.hole : MATERIAL.winding);
    for (let y = 63; y < 108; y += 5)
      line(
        pen,
        [
          [28, y],
          [88, y],
        ],
        burnt ? STEEL[11] : MATERIAL.windingShade,
        1.2,
      );
    if (burnt) fillBox(pen, { x: 20, y: 52, width: 40, height: 26 }, 13, shade(0.55));
    for (const [id, spot] of Object.entries(TRANSFORMER.terminals)) {
      blade(pen, spot.x, spot.y, 12);
      plate(pen, { x: spot.x - 13, y: id.startsWith('H') ? 60 : 93, width: 26, height: 15 }, labelOf(part, id), 13);
    }
  },
};
