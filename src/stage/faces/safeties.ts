import { type Face, fixed, type Shape, stepper, type TerminalSpot } from '../face.ts';
import { blade, nameTape, shell } from '../hardware.ts';
import { disc, downward, fillBox, lifted, line, type Pen, ring, strokeBox } from '../pen.ts';
import { COLOURS, CREAM, MATERIAL, STEEL } from '../tokens.ts';

function pair(x: number, y: number, step: number, way: TerminalSpot['way']): Record<string, TerminalSpot> {
  return { a: { x, y, way }, b: { x: x + step, y, way } };
}

function blades(pen: Pen, shape: Shape): void {
  for (const spot of Object.values(shape.terminals)) blade(pen, spot.x, spot.y, 11);
}

const DOOR_SWITCH: Shape = { width: 116, height: 104, terminals: pair(34, 84, 50, 'down') };

/** The plunger that the blower door leans on. */
export const doorSwitch: Face = {
  shape: fixed(DOOR_SWITCH),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 58, 8, 130, true, 'center');
    shell(pen, { x: 8, y: 34, width: 100, height: 66 }, 6, CREAM[2], CREAM[4], CREAM[6], 4);
    const plunger = part.signs.plunger;
    if (plunger !== undefined) {
      const out = plunger === 'out';
      const top = out ? 18 : 27;
      fillBox(pen, { x: 47, y: top, width: 22, height: 40 - top }, 4, out ? COLOURS.action : MATERIAL.rust);
      if (plunger === 'held') {
        lifted(pen, 3, () => {
          fillBox(pen, { x: 34, y: 17, width: 48, height: 13 }, 4, CREAM[3]);
        });
        line(
          pen,
          [
            [40, 23],
            [76, 23],
          ],
          CREAM[6],
          1.4,
        );
      }
    }
    blades(pen, DOOR_SWITCH);
  },
  handles: (part) => stepper(part, 'plunger', { x: 30, y: 12, width: 56, height: 52 }),
};

const FLOAT: Shape = {
  width: 150,
  height: 124,
  terminals: { a: { x: 112, y: 42, way: 'right' }, b: { x: 38, y: 42, way: 'left' } },
};

/** The float in its cup at the edge of the drain pan. Whether it is up is only seen by looking close. */
export const floatSwitch: Face = {
  shape: fixed(FLOAT),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 75, 8, 150, false, 'center');
    lifted(pen, 4, () => {
      fillBox(pen, { x: 20, y: 22, width: 110, height: 38 }, 6, CREAM[3]);
    });
    fillBox(pen, { x: 48, y: 60, width: 54, height: 58 }, 6, MATERIAL.floatCup);
    strokeBox(pen, { x: 48, y: 60, width: 54, height: 58 }, 6, MATERIAL.floatCupLine, 1.4);
    const float = part.signs.float;
    if (float !== undefined) {
      fillBox(pen, { x: 51, y: 63, width: 48, height: 52 }, 4, MATERIAL.floatGlass);
      const y = float === 'up' ? 66 : 88;
      if (float === 'up') fillBox(pen, { x: 51, y: 80, width: 48, height: 35 }, 3, MATERIAL.water);
      fillBox(pen, { x: 58, y, width: 34, height: 22 }, 7, COLOURS.action);
      line(
        pen,
        [
          [75, 60],
          [75, y],
        ],
        MATERIAL.steelDark,
        3,
      );
    } else {
      for (let y = 70; y < 112; y += 9)
        line(
          pen,
          [
            [56, y],
            [94, y],
          ],
          STEEL[5],
          2,
        );
    }
    blades(pen, FLOAT);
  },
};

const PAN = { width: 156, height: 64 } as const;

/** The pan under the indoor coil. Its water is only seen by looking in. */
export const drainPan: Face = {
  shape: fixed({ ...PAN, terminals: {} }),
  draw(pen, part, words) {
    lifted(pen, 5, () => {
      pen.beginPath();
      pen.moveTo(2, 4);
      pen.lineTo(154, 4);
      pen.lineTo(144, 40);
      pen.lineTo(12, 40);
      pen.closePath();
      pen.fillStyle = MATERIAL.steelShade;
      pen.fill();
    });
    fillBox(pen, { x: 2, y: 2, width: 152, height: 6 }, 3, MATERIAL.steelLight);
    const water = part.signs.water;
    if (water !== undefined) {
      fillBox(pen, { x: 16, y: 11, width: 124, height: 24 }, 3, STEEL[9]);
      if (water === 'full') fillBox(pen, { x: 16, y: 14, width: 124, height: 21 }, 3, MATERIAL.water);
    }
    nameTape(pen, words(`rig:part.${part.id}`), 78, 54, 156, false, 'center');
  },
};

const LIMIT: Shape = { width: 116, height: 112, terminals: pair(34, 90, 48, 'down') };

/** The high limit: a snap disc with its blades, its face towards the heat. */
export const highLimit: Face = {
  shape: fixed(LIMIT),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 58, 8, 130, true, 'center');
    fillBox(pen, { x: 10, y: 22, width: 96, height: 84 }, 6, STEEL[7]);
    disc(pen, 58, 50, 24, MATERIAL.steelLight);
    ring(pen, 58, 50, 24, MATERIAL.steelDark, 1.4);
    ring(pen, 58, 50, 15, MATERIAL.steel, 2);
    blades(pen, LIMIT);
  },
};

const ROLLOUT: Shape = { width: 116, height: 112, terminals: pair(34, 90, 48, 'down') };

/** The roll-out switch with the button that puts it back. Whether it is out is only seen by looking close. */
export const rollout: Face = {
  shape: fixed(ROLLOUT),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 58, 8, 130, true, 'center');
    fillBox(pen, { x: 10, y: 22, width: 96, height: 84 }, 6, STEEL[7]);
    disc(pen, 58, 49, 23, STEEL[10]);
    ring(pen, 58, 49, 23, STEEL[11], 1.4);
    const button = part.signs.button;
    if (button === 'out') {
      lifted(pen, 6, () => {
        disc(pen, 60, 44, 12, COLOURS.action);
      });
      line(
        pen,
        [
          [52, 56],
          [56, 50],
        ],
        MATERIAL.rustShade,
        6,
      );
    } else {
      disc(pen, 58, 49, 11, MATERIAL.rust);
      ring(pen, 58, 49, 11, button === 'in' ? MATERIAL.boardInk : MATERIAL.rustShade, button === 'in' ? 2 : 1.4);
    }
    blades(pen, ROLLOUT);
  },
  handles: (part) => stepper(part, 'button', { x: 34, y: 26, width: 48, height: 46 }),
};

const PRESSURE: Shape = { width: 116, height: 118, terminals: pair(34, 96, 48, 'down') };

/** The pressure switch: a diaphragm that feels the inducer's draft through a hose. */
export const pressureSwitch: Face = {
  shape: fixed(PRESSURE),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 58, 8, 130, true, 'center');
    const hose = part.signs.hose;
    pen.lineCap = 'round';
    pen.beginPath();
    if (hose === 'off') {
      pen.moveTo(6, 24);
      pen.bezierCurveTo(10, 60, 2, 76, 16, 104);
    } else {
      pen.moveTo(0, 30);
      pen.bezierCurveTo(8, 18, 24, 20, 40, 44);
    }
    pen.strokeStyle = MATERIAL.outline;
    pen.lineWidth = 8;
    pen.stroke();
    pen.lineCap = 'butt';
    lifted(pen, 4, () => {
      disc(pen, 58, 54, 33, downward(pen, { x: 25, y: 21, width: 66, height: 66 }, MATERIAL.steelLight, STEEL[4]));
    });
    ring(pen, 58, 54, 33, MATERIAL.steelDark, 1.4);
    ring(pen, 58, 54, 22, STEEL[5], 2);
    if (hose === 'off') {
      disc(pen, 36, 42, 6, MATERIAL.brass);
      disc(pen, 36, 42, 3, MATERIAL.hole);
    }
    fillBox(pen, { x: 18, y: 82, width: 80, height: 30 }, 5, MATERIAL.plastic);
    blades(pen, PRESSURE);
  },
};

const HIGH_PRESSURE: Shape = { width: 126, height: 104, terminals: pair(36, 82, 54, 'down') };

/** The high-pressure switch, brazed into the discharge line. */
export const highPressureSwitch: Face = {
  shape: fixed(HIGH_PRESSURE),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 63, 8, 140, true, 'center');
    line(
      pen,
      [
        [0, 44],
        [126, 44],
      ],
      MATERIAL.copperPipe,
      12,
    );
    line(
      pen,
      [
        [0, 41],
        [126, 41],
      ],
      MATERIAL.copperPipeLight,
      3,
    );
    lifted(pen, 3, () => {
      fillBox(pen, { x: 38, y: 24, width: 50, height: 44 }, 6, MATERIAL.brass);
    });
    for (const x of [46, 55, 63, 71, 80])
      line(
        pen,
        [
          [x, 26],
          [x, 66],
        ],
        MATERIAL.brassShade,
        1.2,
      );
    fillBox(pen, { x: 16, y: 66, width: 94, height: 32 }, 5, MATERIAL.plastic);
    blades(pen, HIGH_PRESSURE);
  },
};

/** The latch of a door that a switch leans on: it sits on the closed door. A door ajar is only seen by looking close. */
export const panelDoor: Face = {
  shape: fixed({ width: 190, height: 40, terminals: {} }),
  onCover: true,
  draw(pen, part, words) {
    const ajar = part.signs.seat === 'ajar';
    if (ajar) fillBox(pen, { x: -6, y: 32, width: 202, height: 9 }, 4, MATERIAL.hole);
    pen.save();
    if (ajar) pen.rotate(0.03);
    fillBox(pen, { x: 0, y: 2, width: 190, height: 32 }, 16, CREAM[5]);
    fillBox(pen, { x: 6, y: 6, width: 178, height: 24 }, 12, CREAM[4]);
    nameTape(pen, words(`rig:part.${part.id}`), 95, 18, 160, false, 'center');
    pen.restore();
  },
};
