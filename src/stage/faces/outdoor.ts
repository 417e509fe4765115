import { type Face, fixed, type Moving, type Shape } from '../face.ts';
import { blades, hollow, shell } from '../hardware.ts';
import { disc, fillBox, lifted, line, type Pen, strokeBox } from '../pen.ts';
import { COLOURS, INK, MATERIAL, STEEL, WOOD } from '../tokens.ts';
import { still } from './shaft.ts';

const CONTACTOR: Shape = {
  width: 184,
  height: 214,
  body: { x: 6, y: 22, width: 172, height: 188 },
  name: { x: 92, y: 8, most: 90 },
  terminals: {
    L1: { x: 44, y: 42, way: 'up', screw: 13.5, letter: { dx: 28, dy: 0 } },
    L2: { x: 140, y: 42, way: 'up', screw: 13.5, letter: { dx: -28, dy: 0 } },
    T1: { x: 44, y: 188, way: 'down', screw: 13.5, letter: { dx: 28, dy: 0 } },
    T2: { x: 140, y: 188, way: 'down', screw: 13.5, letter: { dx: -28, dy: 0 } },
    A1: { x: 18, y: 140, way: 'left', letter: { dx: 26, dy: 0 } },
    A2: { x: 166, y: 140, way: 'right', letter: { dx: -26, dy: 0 } },
  },
};

/** Heights of the bridge and of what it meets: out, it stands clear of the fixed contacts; in, it lies on them. */
const OUT_Y = 76;
const IN_Y = 97;
const CONTACT_Y = 117;

/** The bridge that the coil pulls down onto the fixed contacts. Origin: its middle. */
function armature(pen: Pen): void {
  shell(pen, { x: -58, y: -11, width: 116, height: 20 }, 'painted', 3, 5);
  for (const x of [-40, 40]) {
    fillBox(pen, { x: x - 13, y: 7, width: 26, height: 7 }, 2, MATERIAL.brass);
    strokeBox(pen, { x: x - 13, y: 7, width: 26, height: 7 }, 2, MATERIAL.brassShade, 1);
    disc(pen, x, 15, 4, STEEL[1]);
  }
  line(pen, [-10, -1, 10, -1], WOOD[3], 2);
}

const CHATTER: Omit<Moving, 'x' | 'y'> = {
  picture: 'armature',
  width: 130,
  height: 48,
  paint: armature,
  motion: { kind: 'shake', reach: 6 },
};

/** The contactor: line above, load below, coil at the sides, and an armature that goes in, drops out or chatters. */
export const contactor: Face = {
  shape: fixed(CONTACTOR),
  draw(pen, part) {
    shell(pen, { x: 6, y: 22, width: 172, height: 188 }, 'plastic');
    hollow(pen, { x: 28, y: 62, width: 128, height: 64 }, STEEL[11], 5);
    const seen = part.signs.armature;
    if (seen === 'in' || seen === 'out') still(pen, { paint: armature }, 92, seen === 'in' ? IN_Y : OUT_Y);
    for (const x of [52, 132]) {
      fillBox(pen, { x: x - 15, y: CONTACT_Y - 2, width: 30, height: 8 }, 2, MATERIAL.brass);
      strokeBox(pen, { x: x - 15, y: CONTACT_Y - 2, width: 30, height: 8 }, 2, MATERIAL.brassShade, 1);
      disc(pen, x, CONTACT_Y - 3, 4, STEEL[1]);
      // Closed contacts are marked by the bar of orange that joins them; open ones show the gap.
      if (seen === 'in') line(pen, [x, 112, x, 120], COLOURS.action, 4);
      if (seen === 'chatter')
        for (const dx of [-22, 22]) line(pen, [x + dx, 98, x + dx * 0.7, 104, x + dx, 110], COLOURS.focus, 2.4);
    }
    if (seen === 'in') line(pen, [40, 97, 144, 97], COLOURS.action, 4);
    lifted(pen, 2, () => {
      fillBox(pen, { x: 62, y: 130, width: 60, height: 34 }, 5, MATERIAL.coil);
    });
    for (let x = 67; x < 120; x += 6) line(pen, [x, 132, x, 162], MATERIAL.coilTurn, 2);
    blades(pen, CONTACTOR);
  },
  moving: (part) => (part.signs.armature === 'chatter' ? [{ ...CHATTER, x: 92, y: (OUT_Y + IN_Y) / 2 }] : []),
};

const SPLICE: Shape = {
  width: 126,
  height: 76,
  body: { x: 14, y: 28, width: 98, height: 44 },
  name: { x: 63, y: 10, most: 114 },
  terminals: { a: { x: 24, y: 46, way: 'left' }, b: { x: 102, y: 46, way: 'right' } },
};

/** Two conductors twisted together under a nut. A probe reaches into it from either side. */
export const splice: Face = {
  shape: fixed(SPLICE),
  draw(pen) {
    for (const x of [24, 102]) {
      line(pen, [x, 46, 63, 46], MATERIAL.outline, 7);
      line(pen, [x, 46, 63, 46], MATERIAL.copperPipe, 5);
      line(pen, [x, 44.6, 63, 44.6], MATERIAL.copperPipeLight);
      disc(pen, x, 46, 10, MATERIAL.outline);
      disc(pen, x, 46, 9, MATERIAL.copperPipe);
      disc(pen, x - 2, 44, 4, MATERIAL.copperPipeLight);
    }
    const cap = (): void => {
      pen.beginPath();
      pen.moveTo(42, 30);
      pen.lineTo(84, 30);
      pen.lineTo(90, 62);
      pen.bezierCurveTo(90, 70, 36, 70, 36, 62);
      pen.closePath();
    };
    lifted(pen, 4, () => {
      cap();
      pen.fillStyle = MATERIAL.nut;
      pen.fill();
    });
    cap();
    pen.strokeStyle = MATERIAL.nutLine;
    pen.lineWidth = INK.edge;
    pen.stroke();
    for (const x of [48, 58, 68, 78]) line(pen, [x, 34, x - (63 - x) * 0.14, 64], MATERIAL.nutLine);
  },
};
