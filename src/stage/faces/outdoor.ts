import { type Face, fixed, labelOf, type Moving, type Shape } from '../face.ts';
import { blade, nameTape, screw } from '../hardware.ts';
import { disc, downward, fillBox, letter, lifted, line, type Pen, strokeBox } from '../pen.ts';
import { CREAM, MATERIAL, STEEL, WOOD } from '../tokens.ts';

const CONTACTOR: Shape = {
  width: 184,
  height: 214,
  terminals: {
    L1: { x: 52, y: 40, way: 'up', screw: 13.5 },
    L2: { x: 132, y: 40, way: 'up', screw: 13.5 },
    T1: { x: 52, y: 190, way: 'down', screw: 13.5 },
    T2: { x: 132, y: 190, way: 'down', screw: 13.5 },
    A1: { x: 16, y: 136, way: 'left' },
    A2: { x: 168, y: 136, way: 'right' },
  },
};

/** The bridge that the coil pulls down onto the fixed contacts. Origin: its middle when it is out. */
function armature(pen: Pen): void {
  lifted(pen, 3, () => {
    fillBox(
      pen,
      { x: -58, y: -12, width: 116, height: 24 },
      5,
      downward(pen, { x: -58, y: -12, width: 116, height: 24 }, CREAM[2], CREAM[5]),
    );
  });
  strokeBox(pen, { x: -58, y: -12, width: 116, height: 24 }, 5, WOOD[3], 1.2);
  for (const x of [-40, 40]) {
    fillBox(pen, { x: x - 13, y: 7, width: 26, height: 8 }, 2, MATERIAL.brass);
    disc(pen, x, 16, 4, STEEL[1]);
  }
  line(
    pen,
    [
      [-10, 0],
      [10, 0],
    ],
    WOOD[3],
    2,
  );
}

const OUT_Y = 92;
const IN_Y = 101;

const CHATTER: Omit<Moving, 'x' | 'y'> = {
  picture: 'armature',
  width: 130,
  height: 48,
  paint: armature,
  motion: { kind: 'shake', reach: 4.5 },
};

/** The contactor: line above, load below, coil at the sides, and an armature that goes in, drops out or chatters. */
export const contactor: Face = {
  shape: fixed(CONTACTOR),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 92, 8, 190, true, 'center');
    const box = { x: 6, y: 22, width: 172, height: 188 };
    lifted(pen, 5, () => {
      fillBox(pen, box, 7, downward(pen, box, STEEL[8], MATERIAL.plastic));
    });
    strokeBox(pen, box, 7, STEEL[10], 1.2);
    fillBox(pen, { x: 26, y: 66, width: 132, height: 62 }, 5, STEEL[11]);
    for (const x of [52, 132]) {
      fillBox(pen, { x: x - 13, y: 114, width: 26, height: 8 }, 2, MATERIAL.brass);
      disc(pen, x, 114, 4, STEEL[1]);
    }
    const seen = part.signs.armature;
    if (seen === 'in' || seen === 'out') {
      pen.save();
      pen.translate(92, seen === 'in' ? IN_Y - 5 : OUT_Y - 10);
      armature(pen);
      pen.restore();
    }
    fillBox(pen, { x: 48, y: 134, width: 88, height: 34 }, 5, MATERIAL.coil);
    for (let x = 54; x < 132; x += 6)
      line(
        pen,
        [
          [x, 136],
          [x, 166],
        ],
        MATERIAL.coilTurn,
        2,
      );
    for (const [id, spot] of Object.entries(CONTACTOR.terminals)) {
      const coil = id.startsWith('A');
      if (coil) blade(pen, spot.x, spot.y, 12);
      else screw(pen, spot.x, spot.y, 13.5);
      const x = coil ? spot.x + (id === 'A1' ? 3 : -3) : 92 + (spot.x < 92 ? -12 : 12);
      letter(pen, labelOf(part, id), x, coil ? spot.y + 24 : spot.y, {
        size: 14.5,
        weight: 750,
        family: 'display',
        colour: MATERIAL.boardInk,
      });
    }
  },
  moving: (part) => (part.signs.armature === 'chatter' ? [{ ...CHATTER, x: 92, y: OUT_Y - 3 }] : []),
};

const SPLICE: Shape = {
  width: 126,
  height: 76,
  terminals: { a: { x: 24, y: 46, way: 'left' }, b: { x: 102, y: 46, way: 'right' } },
};

/** Two conductors twisted together under a nut. A probe reaches into it from either side. */
export const splice: Face = {
  shape: fixed(SPLICE),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 63, 10, 140, true, 'center');
    for (const x of [24, 102]) {
      line(
        pen,
        [
          [x, 46],
          [63, 46],
        ],
        MATERIAL.copperPipe,
        5,
      );
      line(
        pen,
        [
          [x, 44.6],
          [63, 44.6],
        ],
        MATERIAL.copperPipeLight,
        1.6,
      );
      disc(pen, x, 46, 9, MATERIAL.copperPipe);
      disc(pen, x - 2, 44, 4, MATERIAL.copperPipeLight);
    }
    lifted(pen, 4, () => {
      const nut = new Path2D('M42 30 L84 30 L90 62 C90 70 36 70 36 62 Z');
      pen.fillStyle = downward(pen, { x: 36, y: 30, width: 54, height: 40 }, MATERIAL.nut, MATERIAL.nutShade);
      pen.fill(nut);
    });
    for (const x of [48, 58, 68, 78])
      line(
        pen,
        [
          [x, 34],
          [x - (63 - x) * 0.14, 64],
        ],
        MATERIAL.nutLine,
        1.6,
      );
  },
};
