import { type Face, fixed, type Moving, type Shape, stepper } from '../face.ts';
import { blade, nameTape, shell } from '../hardware.ts';
import { disc, downward, fillBox, letter, lifted, line, type Pen, ring, strokeBox } from '../pen.ts';
import { COLOURS, CREAM, MATERIAL, STEEL } from '../tokens.ts';

const IGNITER: Shape = {
  width: 96,
  height: 124,
  terminals: { a: { x: 24, y: 102, way: 'down' }, b: { x: 72, y: 102, way: 'down' } },
};

function element(pen: Pen, colour: string, width: number): void {
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  line(
    pen,
    [
      [-12, 22],
      [-12, -20],
      [0, -20],
      [0, 14],
      [12, 14],
      [12, -20],
      [12, 22],
    ],
    colour,
    width,
  );
  pen.lineCap = 'butt';
  pen.lineJoin = 'miter';
}

const GLOW: Omit<Moving, 'x' | 'y'> = {
  picture: 'igniterGlow',
  width: 84,
  height: 96,
  paint(pen) {
    const halo = pen.createRadialGradient(0, 0, 4, 0, 0, 42);
    halo.addColorStop(0, MATERIAL.glowHalo);
    halo.addColorStop(1, MATERIAL.glowGone);
    disc(pen, 0, 0, 42, halo);
    element(pen, MATERIAL.glow, 7);
    element(pen, MATERIAL.glowCore, 3);
  },
  motion: { kind: 'breathe' },
};

/** The hot surface igniter: a brittle element in a ceramic foot. */
export const igniter: Face = {
  shape: fixed(IGNITER),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 48, 8, 104, true, 'center');
    pen.save();
    pen.translate(48, 44);
    element(pen, STEEL[8], 7);
    element(pen, STEEL[6], 2.4);
    pen.restore();
    fillBox(pen, { x: 26, y: 64, width: 44, height: 24 }, 4, CREAM[3]);
    strokeBox(pen, { x: 26, y: 64, width: 44, height: 24 }, 4, CREAM[6], 1);
    for (const spot of Object.values(IGNITER.terminals)) blade(pen, spot.x, spot.y, 11);
  },
  through: (pen) => peepGlass(pen, 48, 60, 26),
  moving: (part) => (part.signs.glow === 1 ? [{ ...GLOW, x: 48, y: 44 }] : []),
  movingThrough: (part) => (part.signs.glow === 1 ? [{ ...PEEP_GLOW, x: 48, y: 60 }] : []),
};

/** A dark glass in the door, in front of what may glow behind it. */
function peepGlass(pen: Pen, x: number, y: number, half: number): void {
  fillBox(pen, { x: x - half, y: y - 19, width: half * 2, height: 38 }, 19, CREAM[6]);
  fillBox(pen, { x: x - half + 5, y: y - 14, width: half * 2 - 10, height: 28 }, 14, MATERIAL.outline);
}

const PEEP_GLOW: Omit<Moving, 'x' | 'y'> = {
  picture: 'peepGlow',
  width: 40,
  height: 28,
  paint(pen) {
    fillBox(pen, { x: -17, y: -11, width: 34, height: 22 }, 11, MATERIAL.glow);
    fillBox(pen, { x: -9, y: -5, width: 18, height: 10 }, 5, MATERIAL.glowCore);
  },
  motion: { kind: 'breathe' },
};

const GAS_VALVE: Shape = {
  width: 126,
  height: 128,
  terminals: { a: { x: 38, y: 106, way: 'down' }, b: { x: 88, y: 106, way: 'down' } },
};

/** The gas valve between its pipes, with its hand lever. */
export const gasValve: Face = {
  shape: fixed(GAS_VALVE),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 63, 8, 130, true, 'center');
    fillBox(pen, { x: -6, y: 44, width: 24, height: 26 }, 3, STEEL[10]);
    fillBox(pen, { x: 108, y: 44, width: 24, height: 26 }, 3, STEEL[10]);
    shell(pen, { x: 14, y: 24, width: 98, height: 66 }, 8, MATERIAL.steelLight, STEEL[4], MATERIAL.steelDark, 5);
    const lever = part.signs.lever;
    disc(pen, 63, 56, 26, STEEL[5]);
    ring(pen, 63, 56, 26, MATERIAL.steelDark, 1.2);
    if (lever !== undefined) {
      const on = lever === 'on';
      pen.save();
      pen.translate(63, 56);
      pen.rotate(on ? 0 : Math.PI / 2);
      lifted(pen, 3, () => {
        fillBox(pen, { x: -24, y: -7, width: 48, height: 14 }, 7, on ? MATERIAL.enamelLight : COLOURS.action);
      });
      pen.restore();
      letter(pen, words(on ? 'stage:mark.on' : 'stage:mark.off'), 96, 36, {
        size: 13,
        weight: 750,
        family: 'display',
        colour: STEEL[10],
      });
    }
    fillBox(pen, { x: 18, y: 92, width: 90, height: 30 }, 5, MATERIAL.plastic);
    for (const spot of Object.values(GAS_VALVE.terminals)) blade(pen, spot.x, spot.y, 11);
  },
  handles: (part) => stepper(part, 'lever', { x: 34, y: 28, width: 58, height: 56 }),
};

const BURNER = { width: 216, height: 124 } as const;
const TUBES = [40, 108, 176] as const;

const FLAME: Omit<Moving, 'x' | 'y'> = {
  picture: 'flame',
  width: 60,
  height: 58,
  paint(pen) {
    const tongue = (scale: number, colour: string): void => {
      pen.save();
      pen.scale(scale, scale);
      pen.fillStyle = colour;
      pen.fill(new Path2D('M-18 27 C-26 6 -10 0 -8 -14 C0 -8 2 -26 6 -28 C8 -14 26 -2 18 27 C8 30 -8 30 -18 27 Z'));
      pen.restore();
    };
    tongue(1, MATERIAL.flameVeil);
    pen.translate(0, 8);
    tongue(0.62, MATERIAL.flameCore);
    pen.translate(0, 8);
    tongue(0.3, MATERIAL.white);
  },
  motion: { kind: 'flicker' },
};

/** The in-shot burners in front of the heat exchanger's cells. */
export const burner: Face = {
  shape: fixed({ ...BURNER, terminals: {} }),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 108, 8, 200, true, 'center');
    for (const x of TUBES) {
      disc(pen, x, 50, 28, MATERIAL.outline);
      ring(pen, x, 50, 28, MATERIAL.steelShade, 3);
    }
    fillBox(
      pen,
      { x: 4, y: 84, width: 208, height: 20 },
      10,
      downward(pen, { x: 4, y: 84, width: 208, height: 20 }, MATERIAL.steel, STEEL[6]),
    );
    for (const x of TUBES) {
      fillBox(pen, { x: x - 13, y: 72, width: 26, height: 16 }, 3, MATERIAL.steel);
      disc(pen, x, 94, 5, MATERIAL.brass);
    }
  },
  through: (pen) => peepGlass(pen, 108, 60, 46),
  moving: (part) => (part.signs.flame === 1 ? TUBES.map((x) => ({ ...FLAME, x, y: 46 })) : []),
  movingThrough: (part) => (part.signs.flame === 1 ? [{ ...PEEP_FLAME, x: 108, y: 60 }] : []),
};

const PEEP_FLAME: Omit<Moving, 'x' | 'y'> = {
  picture: 'peepFlame',
  width: 76,
  height: 28,
  paint(pen) {
    fillBox(pen, { x: -34, y: -11, width: 68, height: 22 }, 11, MATERIAL.flame);
    fillBox(pen, { x: -24, y: -5, width: 48, height: 10 }, 5, MATERIAL.flameCore);
  },
  motion: { kind: 'flicker' },
};

const SENSOR: Shape = { width: 96, height: 124, terminals: { rod: { x: 48, y: 102, way: 'down' } } };

/** The flame rod in its porcelain. A coat on it is only seen by looking close. */
export const flameSensor: Face = {
  shape: fixed(SENSOR),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 48, 8, 104, true, 'center');
    pen.lineCap = 'round';
    line(
      pen,
      [
        [48, 62],
        [48, 34],
        [30, 20],
      ],
      part.signs.rod === 'coated' ? CREAM[2] : MATERIAL.steelLight,
      part.signs.rod === 'coated' ? 8 : 4.5,
    );
    if (part.signs.rod === 'clean')
      line(
        pen,
        [
          [46.5, 58],
          [46.5, 36],
          [31, 22],
        ],
        MATERIAL.white,
        1.4,
      );
    pen.lineCap = 'butt';
    fillBox(pen, { x: 38, y: 54, width: 20, height: 30 }, 5, CREAM[1]);
    fillBox(pen, { x: 34, y: 66, width: 28, height: 10 }, 4, MATERIAL.enamelShade);
    fillBox(pen, { x: 20, y: 78, width: 56, height: 8 }, 3, MATERIAL.steelShade);
    blade(pen, 48, 102, 11);
  },
};
