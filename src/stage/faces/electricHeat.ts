import { type Face, fixed, type Moving, type Shape, spaced } from '../face.ts';
import { blades, hollow, knob, shell } from '../hardware.ts';
import { disc, fillBox, line, type Pen, ring, strokeBox } from '../pen.ts';
import { COLOURS, CREAM, INK, MATERIAL, STEEL } from '../tokens.ts';
import { still } from './shaft.ts';

const SEQUENCER: Shape = {
  width: 148,
  height: 184,
  body: { x: 6, y: 22, width: 136, height: 158 },
  name: { x: 74, y: 8, most: 138 },
  terminals: {
    M1: { x: 42, y: 42, way: 'up', letter: { dx: 0, dy: 23 } },
    M3: { x: 106, y: 42, way: 'up', letter: { dx: 0, dy: 23 } },
    H1: { x: 22, y: 101, way: 'left', letter: { dx: 25, dy: 0 } },
    H2: { x: 126, y: 101, way: 'right', letter: { dx: -25, dy: 0 } },
    M2: { x: 42, y: 160, way: 'down', letter: { dx: 0, dy: -23 } },
    M4: { x: 106, y: 160, way: 'down', letter: { dx: 0, dy: -23 } },
  },
};

/** A heat sequencer: a heater between two discs, each of which snaps a contact shut. What has snapped is heard. */
export const heatSequencer: Face = {
  shape: fixed(SEQUENCER),
  draw(pen, part) {
    shell(pen, { x: 6, y: 22, width: 136, height: 158 }, 'plastic', 5, 10);
    hollow(pen, { x: 62, y: 76, width: 24, height: 50 }, STEEL[11], 5);
    const snapped = Number(part.signs.discs ?? -1);
    // Snapped, a disc is bowed over and stands out in colour; at rest it lies flat.
    for (const [which, y] of [
      [1, 90],
      [2, 112],
    ] as const) {
      const over = snapped >= which;
      pen.beginPath();
      pen.moveTo(65, y);
      pen.quadraticCurveTo(74, over ? y - 13 : y, 83, y);
      pen.strokeStyle = over ? COLOURS.action : snapped < 0 ? STEEL[7] : STEEL[3];
      pen.lineWidth = 4;
      pen.stroke();
    }
    blades(pen, SEQUENCER);
  },
};

const STRIP: Shape = {
  width: 208,
  height: 124,
  body: { x: 4, y: 22, width: 200, height: 98 },
  name: { x: 104, y: 8, most: 190 },
  terminals: spaced(['L1', 'TL', 'FL', 'L2'], { x: 32, y: 100 }, { x: 48, y: 0 }, 'down', {
    letter: { dx: 0, dy: -23, dark: true },
  }),
};

/** A heating strip on its plate: limit, fusible link and element in a row, a blade at each joint. */
export const heatStrip: Face = {
  shape: fixed(STRIP),
  draw(pen) {
    shell(pen, { x: 4, y: 22, width: 200, height: 98 }, 'zinc', 5, 5);
    line(pen, [32, 48, 176, 48], MATERIAL.brassShade, 3);
    knob(pen, 56, 48, 17, 'painted', 3);
    ring(pen, 56, 48, 10, MATERIAL.steel, 2);
    shell(pen, { x: 88, y: 40, width: 32, height: 16 }, 'brass', 2, 8);
    shell(pen, { x: 122, y: 30, width: 12, height: 36 }, 'ceramic', 2, 3);
    shell(pen, { x: 184, y: 30, width: 12, height: 36 }, 'ceramic', 2, 3);
    pen.lineJoin = 'round';
    const coil: number[] = [];
    for (let x = 134; x <= 184; x += 5) coil.push(x, x % 10 === 4 ? 36 : 60);
    line(pen, coil, MATERIAL.outline, 4.4);
    line(pen, coil, STEEL[2], 2.4);
    pen.lineJoin = 'miter';
    blades(pen, STRIP);
  },
};

const RELAY: Shape = {
  width: 186,
  height: 164,
  body: { x: 6, y: 22, width: 174, height: 138 },
  name: { x: 93, y: 8, most: 170 },
  terminals: {
    ...spaced(['A1', 'A2'], { x: 24, y: 66 }, { x: 0, y: 50 }, 'left', { letter: { dx: 20, dy: 0, align: 'left' } }),
    ...spaced(['NO', 'COM', 'NC'], { x: 162, y: 46 }, { x: 0, y: 46 }, 'right', { letter: { dx: -20, dy: 0, align: 'right' } }),
  },
};

/** The tongue that swings between the two fixed contacts. Origin: its pivot. */
function tongue(pen: Pen, swing: number): void {
  pen.save();
  pen.rotate(swing);
  fillBox(pen, { x: -2, y: -4, width: 30, height: 8 }, 3, MATERIAL.brassLight);
  strokeBox(pen, { x: -2, y: -4, width: 30, height: 8 }, 3, MATERIAL.brassShade, 1);
  pen.restore();
}

const BUZZ: Omit<Moving, 'x' | 'y'> = {
  picture: 'relayTongue',
  width: 64,
  height: 64,
  paint: (pen) => tongue(pen, 0),
  motion: { kind: 'shake', reach: 5 },
};

/** The blower's relay: a coil that swings a tongue from the contact at rest, below, to the one above. */
export const fanRelay: Face = {
  shape: fixed(RELAY),
  draw(pen, part) {
    shell(pen, { x: 6, y: 22, width: 174, height: 138 }, 'plastic', 5, 8);
    hollow(pen, { x: 66, y: 52, width: 40, height: 80 }, STEEL[11], 5);
    const seen = part.signs.armature;
    for (const [y, made] of [
      [64, seen === 'in'],
      [120, seen === 'out'],
    ] as const) {
      disc(pen, 97, y, 5, made ? COLOURS.action : CREAM[4]);
      ring(pen, 97, y, 5, MATERIAL.outline, INK.edge);
    }
    disc(pen, 74, 92, 5, MATERIAL.brassShade);
    if (seen === 'in' || seen === 'out') still(pen, { paint: (inner) => tongue(inner, seen === 'in' ? -0.78 : 0.78) }, 74, 92);
    if (seen === 'chatter') for (const dy of [-14, 14]) line(pen, [82, 92 + dy, 90, 88 + dy, 98, 92 + dy], COLOURS.focus, 2.4);
    blades(pen, RELAY);
  },
  moving: (part) => (part.signs.armature === 'chatter' ? [{ ...BUZZ, x: 74, y: 92 }] : []),
};
