import { type Face, fixed, labelOf, type Moving, type Shape, spaced } from '../face.ts';
import { blade, nameTape } from '../hardware.ts';
import { disc, fillBox, letter, lifted, line, type Pen, ring, strokeBox } from '../pen.ts';
import { CREAM, MATERIAL, STEEL, shade } from '../tokens.ts';
import { rotor, shaftMotion } from './shaft.ts';

/** Blades of an axial fan. */
function propeller(pen: Pen, radius: number, blades: number): void {
  for (let index = 0; index < blades; index += 1) {
    pen.save();
    pen.rotate((index * Math.PI * 2) / blades);
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
  disc(pen, 0, 0, radius * 0.2, MATERIAL.steelDark);
  disc(pen, 0, 0, radius * 0.09, MATERIAL.steelLight);
}

const FAN: Shape = {
  width: 220,
  height: 234,
  terminals: spaced(['C', 'S', 'R'], { x: 60, y: 206 }, { x: 50, y: 0 }, 'down'),
};
const FAN_BLADES = rotor('condenserFan', 76, (pen) => {
  propeller(pen, 76, 4);
});

function terminalRow(pen: Pen, part: Parameters<Face['draw']>[1], shape: Shape): void {
  for (const [id, spot] of Object.entries(shape.terminals)) {
    blade(pen, spot.x, spot.y, 12);
    letter(pen, labelOf(part, id), spot.x - 24, spot.y, {
      size: 15,
      weight: 750,
      family: 'display',
      wide: true,
      colour: MATERIAL.boardInk,
    });
  }
}

/** The condenser's fan, seen from above through its guard. */
export const condenserFan: Face = {
  shape: fixed(FAN),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 110, 8, 220, true, 'center');
    disc(pen, 110, 102, 86, STEEL[10]);
    ring(pen, 110, 102, 86, MATERIAL.steelShade, 4);
    pen.save();
    pen.translate(110, 102);
    FAN_BLADES.paint(pen);
    pen.restore();
    fillBox(pen, { x: 26, y: 190, width: 154, height: 34 }, 6, MATERIAL.plastic);
    terminalRow(pen, part, FAN);
  },
  moving(part) {
    const motion = shaftMotion(part.signs.running, 1.6);
    return motion === undefined ? [] : [{ ...FAN_BLADES, x: 110, y: 102, motion }];
  },
  through(pen) {
    disc(pen, 110, 102, 92, STEEL[10]);
    pen.save();
    pen.translate(110, 102);
    FAN_BLADES.paint(pen);
    pen.restore();
    ring(pen, 110, 102, 92, CREAM[7], 5);
    for (const radius of [76, 60, 44, 28]) ring(pen, 110, 102, radius, shade(0.6), 1.6);
  },
  movingThrough(part) {
    const motion = shaftMotion(part.signs.running, 1.6);
    return motion === undefined ? [] : [{ ...FAN_BLADES, x: 110, y: 102, motion }];
  },
};

const COMPRESSOR: Shape = {
  width: 200,
  height: 226,
  terminals: { C: { x: 100, y: 66, way: 'up' }, S: { x: 72, y: 112, way: 'left' }, R: { x: 130, y: 112, way: 'right' } },
};
const CAN: Omit<Moving, 'x' | 'y' | 'motion'> = {
  picture: 'compressorBadge',
  width: 70,
  height: 40,
  paint(pen) {
    fillBox(pen, { x: -33, y: -15, width: 66, height: 30 }, 4, STEEL[9]);
    for (const y of [-6, 1, 8])
      line(
        pen,
        [
          [-24, y],
          [24, y],
        ],
        STEEL[5],
        1.6,
      );
  },
};

/** The compressor's can with its three pins. */
export const compressor: Face = {
  shape: fixed(COMPRESSOR),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 100, 8, 200, true, 'center');
    line(
      pen,
      [
        [150, 22],
        [150, 60],
      ],
      MATERIAL.copperPipe,
      12,
    );
    line(
      pen,
      [
        [32, 190],
        [4, 190],
        [4, 40],
      ],
      MATERIAL.copperPipe,
      9,
    );
    lifted(pen, 6, () => {
      const can = { x: 22, y: 24, width: 156, height: 190 };
      const side = pen.createLinearGradient(22, 0, 178, 0);
      side.addColorStop(0, STEEL[10]);
      side.addColorStop(0.35, MATERIAL.steelDark);
      side.addColorStop(1, STEEL[10]);
      fillBox(pen, can, 62, side);
    });
    line(
      pen,
      [
        [24, 152],
        [176, 152],
      ],
      STEEL[11],
      3,
    );
    disc(pen, 100, 96, 56, STEEL[9]);
    ring(pen, 100, 96, 56, STEEL[11], 2);
    for (const [id, spot] of Object.entries(COMPRESSOR.terminals)) {
      blade(pen, spot.x, spot.y, 12);
      const dx = id === 'C' ? 22 : id === 'S' ? -22 : 22;
      letter(pen, labelOf(part, id), spot.x + dx, spot.y + (id === 'C' ? 2 : 22), {
        size: 15,
        weight: 750,
        family: 'display',
        colour: MATERIAL.boardInk,
      });
    }
    pen.save();
    pen.translate(100, 178);
    CAN.paint(pen);
    pen.restore();
  },
  moving(part) {
    const heard = part.signs.running;
    if (heard === undefined || heard === 'off') return [];
    return [{ ...CAN, x: 100, y: 178, motion: { kind: 'shake', reach: heard === 'hum' ? 1.4 : 0.6 } }];
  },
};

const CAPACITOR: Shape = {
  width: 150,
  height: 168,
  terminals: spaced(['FAN', 'C', 'HERM'], { x: 27, y: 26 }, { x: 48, y: 0 }, 'up'),
};

/** The dual run capacitor. Whether its top is flat or swollen is only seen by looking close. */
export const dualCapacitor: Face = {
  shape: fixed(CAPACITOR),
  draw(pen, part, words) {
    const can = { x: 6, y: 38, width: 138, height: 126 };
    const side = pen.createLinearGradient(6, 0, 144, 0);
    side.addColorStop(0, STEEL[4]);
    side.addColorStop(0.3, STEEL[1]);
    side.addColorStop(1, STEEL[5]);
    lifted(pen, 5, () => {
      fillBox(pen, can, 22, side);
    });
    if (part.signs.case === 'swollen') {
      pen.beginPath();
      pen.ellipse(75, 44, 66, 22, 0, Math.PI, 0);
      pen.fillStyle = STEEL[2];
      pen.fill();
      pen.strokeStyle = MATERIAL.steelDark;
      pen.lineWidth = 1.4;
      pen.stroke();
    } else if (part.signs.case === 'flat')
      line(
        pen,
        [
          [14, 42],
          [136, 42],
        ],
        STEEL[0],
        3,
      );
    fillBox(pen, { x: 26, y: 82, width: 98, height: 58 }, 3, MATERIAL.label);
    strokeBox(pen, { x: 26, y: 82, width: 98, height: 58 }, 3, CREAM[5], 1);
    for (const [id, spot] of Object.entries(CAPACITOR.terminals)) {
      blade(pen, spot.x, spot.y, 12);
      letter(pen, labelOf(part, id), spot.x, 56, { size: 13, weight: 700, family: 'display', colour: MATERIAL.outline, most: 46 });
    }
    letter(pen, words(`rig:part.${part.id}`), 75, 98, {
      size: 13,
      weight: 650,
      family: 'display',
      colour: MATERIAL.labelInk,
      most: 92,
    });
    for (const y of [114, 126])
      line(
        pen,
        [
          [36, y],
          [y === 126 ? 84 : 114, y],
        ],
        CREAM[6],
        2,
      );
  },
};
