import { type Face, fixed, type Moving, type Shape, stepper } from '../face.ts';
import { blades, hollow, knob, shell, soundArcs } from '../hardware.ts';
import { disc, fillBox, letter, lifted, line, type Pen, ring } from '../pen.ts';
import { COLOURS, CREAM, LETTERS, MATERIAL, STEEL } from '../tokens.ts';

const IGNITER: Shape = {
  width: 96,
  height: 124,
  body: { x: 10, y: 18, width: 76, height: 98 },
  name: { x: 48, y: 8, most: 92 },
  terminals: { a: { x: 24, y: 102, way: 'down' }, b: { x: 72, y: 102, way: 'down' } },
};

function element(pen: Pen, colour: string, width: number): void {
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  line(pen, [-12, 22, -12, -20, 0, -20, 0, 14, 12, 14, 12, -20, 12, 22], colour, width);
  pen.lineCap = 'butt';
  pen.lineJoin = 'miter';
}

const GLOW: Omit<Moving, 'x' | 'y'> = {
  picture: 'igniterGlow',
  width: 92,
  height: 96,
  paint(pen) {
    const halo = pen.createRadialGradient(0, 0, 4, 0, 0, 45);
    halo.addColorStop(0, MATERIAL.glowHalo);
    halo.addColorStop(1, MATERIAL.glowGone);
    disc(pen, 0, 0, 45, halo);
    element(pen, MATERIAL.glow, 8);
    element(pen, MATERIAL.glowCore, 4);
  },
  motion: { kind: 'breathe' },
};

/** The hot surface igniter: a brittle element in a ceramic foot. */
export const igniter: Face = {
  shape: fixed(IGNITER),
  draw(pen) {
    hollow(pen, { x: 22, y: 18, width: 52, height: 52 }, STEEL[10], 6);
    pen.save();
    pen.translate(48, 44);
    element(pen, MATERIAL.outline, 8);
    element(pen, STEEL[5], 4);
    pen.restore();
    shell(pen, { x: 26, y: 66, width: 44, height: 22 }, 'ceramic', 3, 4);
    blades(pen, IGNITER);
  },
  through: (pen) => peepGlass(pen, 48, 60, 26),
  moving: (part) => (part.signs.glow === 1 ? [{ ...GLOW, x: 48, y: 44 }] : []),
  movingThrough: (part) => (part.signs.glow === 1 ? [{ ...PEEP_GLOW, x: 48, y: 60 }] : []),
};

/** A dark glass in the door, in front of what may glow behind it. */
function peepGlass(pen: Pen, x: number, y: number, half: number): void {
  shell(pen, { x: x - half, y: y - 19, width: half * 2, height: 38 }, 'painted', 2, 19);
  hollow(pen, { x: x - half + 5, y: y - 14, width: half * 2 - 10, height: 28 }, MATERIAL.outline, 14);
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
  body: { x: 0, y: 24, width: 126, height: 98 },
  name: { x: 63, y: 8, most: 118 },
  keep: [{ x: 80, y: 30, width: 30, height: 12 }],
  terminals: { a: { x: 38, y: 106, way: 'down' }, b: { x: 88, y: 106, way: 'down' } },
};

/** The gas valve between its pipes, with its hand lever: across the pipe and orange when off. */
export const gasValve: Face = {
  shape: fixed(GAS_VALVE),
  draw(pen, part, words) {
    for (const x of [-4, 106]) shell(pen, { x, y: 44, width: 24, height: 26 }, 'iron', 3, 3);
    shell(pen, { x: 14, y: 24, width: 98, height: 66 }, 'zinc');
    const lever = part.signs.lever;
    knob(pen, 54, 57, 26, 'steel', 2);
    if (lever !== undefined) {
      const on = lever === 'on';
      pen.save();
      pen.translate(54, 57);
      pen.rotate(on ? 0 : Math.PI / 2);
      shell(pen, { x: -25, y: -8, width: 50, height: 16 }, on ? 'ceramic' : 'signal', 3, 8);
      pen.restore();
      letter(pen, words(on ? 'stage:mark.on' : 'stage:mark.off'), 95, 36, {
        size: LETTERS.small,
        weight: 750,
        family: 'display',
        colour: STEEL[11],
        most: 30,
      });
    }
    // The click of its coil, as long as it is pulled in.
    if (part.signs.click === 1) soundArcs(pen, 63, 72, 48, false);
    knob(pen, 95, 70, 10, part.signs.click === 1 ? 'signal' : 'steel', 1);
    shell(pen, { x: 18, y: 92, width: 90, height: 30 }, 'plastic', 3, 5);
    blades(pen, GAS_VALVE);
  },
  handles: (part) => stepper(part, 'lever', { x: 28, y: 29, width: 54, height: 56 }),
};

const BURNER: Shape = {
  width: 216,
  height: 124,
  body: { x: 4, y: 22, width: 208, height: 82 },
  name: { x: 108, y: 8, most: 190 },
  terminals: {},
};
const TUBES = [40, 108, 176] as const;

const FLAME: Omit<Moving, 'x' | 'y'> = {
  picture: 'flame',
  width: 60,
  height: 58,
  paint(pen) {
    const tongue = (scale: number, colour: string): void => {
      pen.save();
      pen.scale(scale, scale);
      pen.beginPath();
      pen.moveTo(-18, 27);
      pen.bezierCurveTo(-26, 6, -10, 0, -8, -14);
      pen.bezierCurveTo(0, -8, 2, -26, 6, -28);
      pen.bezierCurveTo(8, -14, 26, -2, 18, 27);
      pen.bezierCurveTo(8, 30, -8, 30, -18, 27);
      pen.closePath();
      pen.fillStyle = colour;
      pen.fill();
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
  shape: fixed(BURNER),
  draw(pen) {
    for (const x of TUBES) {
      lifted(pen, 3, () => {
        disc(pen, x, 50, 28, MATERIAL.outline);
      });
      ring(pen, x, 50, 28, MATERIAL.steelShade, 3);
    }
    shell(pen, { x: 4, y: 84, width: 208, height: 20 }, 'steel', 4, 10);
    for (const x of TUBES) {
      shell(pen, { x: x - 13, y: 72, width: 26, height: 16 }, 'zinc', 2, 3);
      knob(pen, x, 94, 5, 'brass', 1);
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

const SENSOR: Shape = {
  width: 96,
  height: 124,
  body: { x: 20, y: 20, width: 56, height: 96 },
  name: { x: 48, y: 8, most: 92 },
  terminals: { rod: { x: 48, y: 102, way: 'down' } },
};

/** A stretch of rod with its outline and the light along it. */
function rod(pen: Pen, colour: string, width: number): void {
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  for (const [ink, wide] of [
    [MATERIAL.outline, width + 2],
    [colour, width],
  ] as const)
    line(pen, [48, 62, 48, 36, 30, 22], ink, wide);
  pen.lineCap = 'butt';
  pen.lineJoin = 'miter';
}

/** The flame rod in its porcelain. A coat on it is only seen by looking close. */
export const flameSensor: Face = {
  shape: fixed(SENSOR),
  draw(pen, part) {
    const seen = part.signs.rod;
    rod(pen, seen === 'coated' ? CREAM[3] : MATERIAL.steelLight, seen === 'coated' ? 11 : 5);
    if (seen === 'clean') line(pen, [46.5, 60, 46.5, 37, 30, 24], MATERIAL.white, 2);
    if (seen === 'coated')
      for (const [x, y] of [
        [47, 54],
        [49, 45],
        [44, 33],
        [36, 27],
      ] as const)
        disc(pen, x, y, 2.2, COLOURS.inkSoft);
    shell(pen, { x: 38, y: 54, width: 20, height: 30 }, 'ceramic', 2, 5);
    shell(pen, { x: 34, y: 66, width: 28, height: 10 }, 'ceramic', 1, 4);
    shell(pen, { x: 20, y: 79, width: 56, height: 9 }, 'steel', 2, 3);
    blades(pen, SENSOR);
  },
};
