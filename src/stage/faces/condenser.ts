import { type Face, fixed, type Moving, type Shape, spaced } from '../face.ts';
import { blades, knob, shell, soundArcs, turnArrow } from '../hardware.ts';
import { disc, fillBox, letter, lifted, line, type Pen, ring, strokeBox } from '../pen.ts';
import { CREAM, FINISH, LETTERS, MATERIAL, STEEL, shade } from '../tokens.ts';
import { rotor, shaftMotion, still } from './shaft.ts';

/** Blades of an axial fan. */
function propeller(pen: Pen, radius: number, vanes: number): void {
  for (let index = 0; index < vanes; index += 1) {
    pen.save();
    pen.rotate((index * Math.PI * 2) / vanes);
    pen.beginPath();
    pen.moveTo(0, -radius * 0.14);
    pen.quadraticCurveTo(radius * 0.45, -radius * 0.62, radius * 0.94, -radius * 0.28);
    pen.quadraticCurveTo(radius * 0.98, radius * 0.1, radius * 0.86, radius * 0.24);
    pen.quadraticCurveTo(radius * 0.4, radius * 0.02, 0, radius * 0.14);
    pen.closePath();
    pen.fillStyle = index % 2 === 0 ? STEEL[4] : STEEL[5];
    pen.fill();
    pen.strokeStyle = MATERIAL.steelDark;
    pen.lineWidth = 1.2;
    pen.stroke();
    pen.restore();
  }
  knob(pen, 0, 0, radius * 0.2, 'steel', 2);
  disc(pen, 0, 0, radius * 0.09, MATERIAL.steelLight);
}

const FAN: Shape = {
  width: 220,
  height: 234,
  body: { x: 24, y: 16, width: 172, height: 210 },
  name: { x: 110, y: 8, most: 200 },
  terminals: spaced(['C', 'S', 'R'], { x: 62, y: 210 }, { x: 52, y: 0 }, 'down', { letter: { dx: -22, dy: 0, most: 18 } }),
};
const MIDDLE = { x: 110, y: 100 } as const;
const FAN_BLADES = rotor('condenserFan', 72, (pen) => {
  propeller(pen, 72, 4);
});

/** What is heard of the fan, made visible round it. */
function heardOfFan(pen: Pen, running: string | number | undefined): void {
  if (running === 'hum') soundArcs(pen, MIDDLE.x, MIDDLE.y, 84, true);
  else if (shaftMotion(running, 1) !== undefined) turnArrow(pen, MIDDLE.x, MIDDLE.y, 78, 2);
}

function fanMotion(part: Parameters<NonNullable<Face['moving']>>[0]): Moving[] {
  const motion = shaftMotion(part.signs.running, 1.6);
  return motion === undefined ? [] : [{ ...FAN_BLADES, ...MIDDLE, motion }];
}

/** The condenser's fan, seen from above through its guard. */
export const condenserFan: Face = {
  shape: fixed(FAN),
  draw(pen, part) {
    lifted(pen, 5, () => {
      disc(pen, MIDDLE.x, MIDDLE.y, 85, STEEL[10]);
    });
    ring(pen, MIDDLE.x, MIDDLE.y, 84, MATERIAL.steelShade, 4);
    still(pen, FAN_BLADES, MIDDLE.x, MIDDLE.y);
    heardOfFan(pen, part.signs.running);
    shell(pen, { x: 22, y: 192, width: 168, height: 36 }, 'plastic', 3, 6);
    blades(pen, FAN);
  },
  moving: fanMotion,
  through(pen, part) {
    disc(pen, MIDDLE.x, MIDDLE.y, 92, STEEL[10]);
    still(pen, FAN_BLADES, MIDDLE.x, MIDDLE.y);
    ring(pen, MIDDLE.x, MIDDLE.y, 92, CREAM[7], 5);
    for (const radius of [70, 54, 38]) ring(pen, MIDDLE.x, MIDDLE.y, radius, shade(0.6), 1.6);
    heardOfFan(pen, part.signs.running);
  },
  movingThrough: fanMotion,
};

const COMPRESSOR: Shape = {
  width: 200,
  height: 226,
  body: { x: 20, y: 24, width: 160, height: 190 },
  name: { x: 100, y: 8, most: 180 },
  terminals: {
    C: { x: 100, y: 62, way: 'up', letter: { dx: 22, dy: 6, most: 20 } },
    S: { x: 68, y: 112, way: 'left', letter: { dx: 2, dy: 23, most: 20 } },
    R: { x: 132, y: 112, way: 'right', letter: { dx: -2, dy: 23, most: 20 } },
  },
};
const CAN: Omit<Moving, 'x' | 'y' | 'motion'> = {
  picture: 'compressorBadge',
  width: 74,
  height: 44,
  paint(pen) {
    shell(pen, { x: -33, y: -15, width: 66, height: 30 }, 'iron', 2, 4);
    for (const y of [-6, 1, 8]) line(pen, [-24, y, 24, y], STEEL[5]);
  },
};

/** The compressor's can with its three pins. */
export const compressor: Face = {
  shape: fixed(COMPRESSOR),
  draw(pen, part) {
    for (const [pipe, width] of [
      [[160, 22, 160, 60], 12],
      [[32, 190, 8, 190, 8, 40], 9],
    ] as const) {
      line(pen, pipe, MATERIAL.outline, width + 2);
      line(pen, pipe, MATERIAL.copperPipe, width);
      line(pen, pipe, MATERIAL.copperPipeLight, width * 0.25);
    }
    const can = { x: 22, y: 24, width: 156, height: 190 };
    const side = pen.createLinearGradient(22, 0, 178, 0);
    side.addColorStop(0, STEEL[9]);
    side.addColorStop(0.28, STEEL[7]);
    side.addColorStop(1, STEEL[10]);
    lifted(pen, 6, () => {
      fillBox(pen, can, 62, side);
    });
    strokeBox(pen, can, 62, STEEL[11]);
    line(pen, [24, 152, 176, 152], STEEL[11], 3);
    disc(pen, 100, 96, 56, STEEL[9]);
    ring(pen, 100, 96, 56, STEEL[11], 2);
    const heard = part.signs.running;
    if (heard !== undefined && heard !== 'off') soundArcs(pen, 100, 176, 66, heard === 'hum');
    blades(pen, COMPRESSOR);
    still(pen, CAN, 100, 180);
  },
  moving(part) {
    const heard = part.signs.running;
    if (heard === undefined || heard === 'off') return [];
    return [{ ...CAN, x: 100, y: 180, motion: { kind: 'shake', reach: heard === 'hum' ? 1.4 : 0.6 } }];
  },
};

const CAPACITOR: Shape = {
  width: 150,
  height: 168,
  body: { x: 6, y: 14, width: 138, height: 150 },
  terminals: spaced(['FAN', 'C', 'HERM'], { x: 27, y: 26 }, { x: 48, y: 0 }, 'up', {
    letter: { dx: 0, dy: 32, most: 46, size: LETTERS.small, dark: true },
  }),
};

/** The dual run capacitor. Whether its top is flat or swollen is only seen by looking close. */
export const dualCapacitor: Face = {
  shape: fixed(CAPACITOR),
  draw(pen, part, words) {
    const can = { x: 6, y: 38, width: 138, height: 126 };
    const side = pen.createLinearGradient(6, 0, 144, 0);
    side.addColorStop(0, STEEL[3]);
    side.addColorStop(0.3, STEEL[1]);
    side.addColorStop(1, STEEL[5]);
    if (part.signs.case === 'swollen') {
      pen.beginPath();
      pen.ellipse(75, 52, 72, 40, 0, Math.PI, 0);
      pen.fillStyle = STEEL[3];
      pen.fill();
      pen.strokeStyle = MATERIAL.rustShade;
      pen.lineWidth = 2.4;
      pen.stroke();
      for (const x of [38, 112]) line(pen, [x, 14, x + (x < 75 ? -10 : 10), 4], MATERIAL.rustShade, 2.4);
    }
    lifted(pen, 5, () => {
      fillBox(pen, can, 22, side);
    });
    strokeBox(pen, can, 22, FINISH.zinc.edge);
    if (part.signs.case === 'flat') line(pen, [16, 43, 134, 43], STEEL[0], 3.4);
    fillBox(pen, { x: 22, y: 78, width: 106, height: 62 }, 3, MATERIAL.label);
    strokeBox(pen, { x: 22, y: 78, width: 106, height: 62 }, 3, CREAM[5], 1);
    blades(pen, CAPACITOR);
    letter(pen, words(`rig:part.${part.id}`), 75, 96, {
      size: LETTERS.name,
      weight: 650,
      family: 'display',
      colour: MATERIAL.labelInk,
      most: 100,
    });
    for (const y of [114, 126]) line(pen, [36, y, y === 126 ? 84 : 114, y], CREAM[6], 2);
  },
};
