import { type Face, fixed, type Shape, spaced } from '../face.ts';
import { blades, hollow, knob, shell, turnArrow } from '../hardware.ts';
import { disc, fillBox, line, type Pen, ring } from '../pen.ts';
import { INK, MATERIAL, STEEL, shade } from '../tokens.ts';

const CIRCUIT: Shape = {
  width: 126,
  height: 96,
  body: { x: 0, y: 24, width: 126, height: 68 },
  name: { x: 63, y: 8, most: 116 },
  terminals: {},
};

function pipe(pen: Pen, points: readonly number[]): void {
  line(pen, points, MATERIAL.outline, 12);
  line(pen, points, MATERIAL.copperPipe, 10);
  line(pen, points, MATERIAL.copperPipeLight, 2.6);
}

/** The circuit's brazed joints at the coil. Oil that a leak leaves there is only seen by looking close. */
export const refrigerantCircuit: Face = {
  shape: fixed(CIRCUIT),
  draw(pen, part) {
    const joints = part.signs.joints;
    if (joints === 'oily') {
      pen.beginPath();
      pen.ellipse(64, 80, 30, 12, 0, 0, Math.PI * 2);
      pen.fillStyle = shade(0.6);
      pen.fill();
    }
    pipe(pen, [2, 36, 124, 36]);
    pipe(pen, [2, 66, 124, 66]);
    for (const y of [36, 66]) {
      fillBox(pen, { x: 52, y: y - 9, width: 24, height: 18 }, 4, MATERIAL.copperPipe);
      for (const x of [54, 74]) line(pen, [x, y - 9, x, y + 9], joints === 'dry' ? MATERIAL.brassLight : MATERIAL.brassShade, 3);
    }
    if (joints !== 'oily') return;
    for (const [x, y] of [
      [58, 78],
      [68, 84],
      [76, 79],
    ] as const) {
      line(pen, [x, 72, x, y], STEEL[11], 4);
      disc(pen, x, y + 2, 4, STEEL[11]);
    }
  },
};

const LOW_PRESSURE: Shape = {
  width: 126,
  height: 104,
  body: { x: 0, y: 24, width: 126, height: 74 },
  name: { x: 63, y: 8, most: 116 },
  terminals: spaced(['a', 'b'], { x: 36, y: 82 }, { x: 54, y: 0 }, 'down'),
};

/** The low-pressure switch on the thick suction line in its foam. */
export const lowPressureSwitch: Face = {
  shape: fixed(LOW_PRESSURE),
  draw(pen) {
    line(pen, [0, 44, 126, 44], STEEL[11], 26);
    line(pen, [0, 44, 126, 44], STEEL[9], 22);
    for (let x = 6; x < 126; x += 12) line(pen, [x, 35, x + 6, 53], STEEL[10], INK.edge);
    knob(pen, 63, 44, 20, 'zinc');
    ring(pen, 63, 44, 12, MATERIAL.steel, 2);
    shell(pen, { x: 16, y: 66, width: 94, height: 32 }, 'plastic', 3, 5);
    blades(pen, LOW_PRESSURE);
  },
};

const PUMP: Shape = {
  width: 160,
  height: 186,
  body: { x: 4, y: 22, width: 152, height: 162 },
  name: { x: 80, y: 8, most: 148, paper: true },
  terminals: {
    L: { x: 138, y: 36, way: 'right', letter: { dx: -24, dy: 0 } },
    N: { x: 138, y: 80, way: 'right', letter: { dx: -24, dy: 0 } },
    a: { x: 138, y: 124, way: 'right' },
    b: { x: 138, y: 168, way: 'right' },
  },
};
/** Top of the water in the tank by what was seen of it. */
const WATER_TOP: Readonly<Record<string, number>> = { low: 160, high: 136, full: 120 };

/** The condensate pump: a tank with its pump on top and its terminals at the side. The water is only seen by looking in. */
export const condensatePump: Face = {
  shape: fixed(PUMP),
  draw(pen, part) {
    shell(pen, { x: 4, y: 104, width: 100, height: 80 }, 'steel', 5);
    const water = part.signs.water;
    hollow(pen, { x: 10, y: 112, width: 88, height: 64 }, water === undefined ? STEEL[8] : MATERIAL.floatGlass, 4);
    if (water !== undefined) {
      const top = WATER_TOP[String(water)] ?? 160;
      fillBox(pen, { x: 11, y: top, width: 86, height: 175 - top }, 3, MATERIAL.water);
      line(pen, [12, top + 1, 96, top + 1], MATERIAL.white);
      line(pen, [72, 104, 72, top - 4], MATERIAL.steelDark, 3);
      shell(pen, { x: 58, y: top - 8, width: 28, height: 16 }, 'signal', 2);
    }
    shell(pen, { x: 10, y: 26, width: 82, height: 80 }, 'painted');
    shell(pen, { x: 98, y: 22, width: 58, height: 162 }, 'plastic', 3, 5);
    knob(pen, 51, 66, 22, 'steel', 2);
    if (part.signs.running === 1) turnArrow(pen, 51, 66, 18, 1);
    blades(pen, PUMP, 11);
  },
};

const STRIP: Shape = {
  width: 384,
  height: 80,
  body: { x: 0, y: 18, width: 384, height: 60 },
  name: { x: 192, y: 8, most: 220 },
  terminals: spaced(['R', 'C', 'W1', 'W2', 'Y1', 'Y2', 'G', 'X'], { x: 31, y: 58 }, { x: 46, y: 0 }, 'down', {
    screw: 12,
    letter: { dx: 0, dy: -25 },
  }),
};

/** The unit's low-voltage terminal strip. */
export const unitStrip: Face = {
  shape: fixed(STRIP),
  draw(pen) {
    shell(pen, { x: 0, y: 18, width: 384, height: 60 }, 'plastic', 4, 5);
    for (let place = 1; place < 8; place += 1) line(pen, [8 + place * 46, 42, 8 + place * 46, 74], STEEL[7], 3);
  },
};
