import { type Face, fixed, type Shape, stepper, type TerminalSpot } from '../face.ts';
import { blades, hollow, knob, shell } from '../hardware.ts';
import { disc, fillBox, lifted, line, type Pen, ring } from '../pen.ts';
import { CREAM, FINISH, INK, MATERIAL, STEEL } from '../tokens.ts';

function pair(x: number, y: number, step: number, way: TerminalSpot['way']): Record<string, TerminalSpot> {
  return { a: { x, y, way }, b: { x: x + step, y, way } };
}

const DOOR_SWITCH: Shape = {
  width: 116,
  height: 104,
  body: { x: 8, y: 34, width: 100, height: 66 },
  name: { x: 58, y: 8, most: 104 },
  terminals: pair(34, 84, 50, 'down'),
};

/** The plunger that the blower door leans on: in by the door, out, or held in by a strip of tape. */
export const doorSwitch: Face = {
  shape: fixed(DOOR_SWITCH),
  draw(pen, part) {
    const plunger = part.signs.plunger;
    if (plunger !== undefined) {
      const top = plunger === 'out' ? 18 : 29;
      shell(pen, { x: 46, y: top, width: 24, height: 44 - top }, 'signal', 1, 4);
    }
    shell(pen, { x: 8, y: 34, width: 100, height: 66 }, 'painted');
    if (plunger === 'held') {
      lifted(pen, 3, () => {
        fillBox(pen, { x: 40, y: 20, width: 36, height: 42 }, 2, MATERIAL.caution);
      });
      for (const y of [34, 44, 54]) line(pen, [44, y, 72, y - 6], MATERIAL.cautionInk, INK.edge);
    }
    blades(pen, DOOR_SWITCH);
  },
  handles: (part) => stepper(part, 'plunger', { x: 30, y: 12, width: 56, height: 52 }),
};

const FLOAT: Shape = {
  width: 150,
  height: 124,
  body: { x: 20, y: 22, width: 110, height: 96 },
  name: { x: 75, y: 8, most: 138, paper: true },
  terminals: { a: { x: 112, y: 42, way: 'right' }, b: { x: 38, y: 42, way: 'left' } },
};

/** The float in its cup at the edge of the drain pan. Whether it is up is only seen by looking close. */
export const floatSwitch: Face = {
  shape: fixed(FLOAT),
  draw(pen, part) {
    shell(pen, { x: 20, y: 22, width: 110, height: 38 }, 'painted');
    shell(pen, { x: 48, y: 58, width: 54, height: 60 }, 'steel', 3);
    const float = part.signs.float;
    const cup = { x: 52, y: 62, width: 46, height: 52 };
    hollow(pen, cup, float === undefined ? MATERIAL.floatCup : MATERIAL.floatGlass, 4);
    if (float === undefined) {
      for (let y = 70; y < 112; y += 9) line(pen, [57, y, 93, y], STEEL[5], 2);
    } else {
      const y = float === 'up' ? 65 : 90;
      if (float === 'up') {
        fillBox(pen, { x: 53, y: 79, width: 44, height: 34 }, 3, MATERIAL.water);
        line(pen, [54, 80, 96, 80], MATERIAL.white);
      }
      line(pen, [75, 60, 75, y], MATERIAL.steelDark, 3);
      shell(pen, { x: 58, y, width: 34, height: 21 }, 'signal', 2);
    }
    blades(pen, FLOAT);
  },
};

const PAN: Shape = {
  width: 156,
  height: 64,
  body: { x: 2, y: 2, width: 152, height: 40 },
  name: { x: 78, y: 54, most: 144, paper: true },
  terminals: {},
};

/** The pan under the indoor coil. Its water is only seen by looking in. */
export const drainPan: Face = {
  shape: fixed(PAN),
  draw(pen, part) {
    const pan = (): void => {
      pen.beginPath();
      pen.moveTo(2, 4);
      pen.lineTo(154, 4);
      pen.lineTo(144, 42);
      pen.lineTo(12, 42);
      pen.closePath();
    };
    lifted(pen, 5, () => {
      pan();
      pen.fillStyle = FINISH.steel.foot;
      pen.fill();
    });
    pan();
    pen.strokeStyle = FINISH.steel.edge;
    pen.lineWidth = INK.edge;
    pen.stroke();
    shell(pen, { x: 2, y: 1, width: 152, height: 7 }, 'zinc', 1, 3);
    const water = part.signs.water;
    if (water === undefined) return;
    hollow(pen, { x: 16, y: 11, width: 124, height: 25 }, STEEL[9], 4);
    if (water !== 'full') return;
    fillBox(pen, { x: 17, y: 13, width: 122, height: 22 }, 3, MATERIAL.water);
    for (const [x, y] of [
      [26, 18],
      [66, 24],
      [96, 17],
    ] as const)
      line(pen, [x, y, x + 8, y - 2, x + 16, y, x + 24, y - 2], MATERIAL.white);
    // Water that runs over the rim.
    for (const x of [8, 148]) line(pen, [x, 8, x, 34], MATERIAL.water, 5);
  },
};

const LIMIT: Shape = {
  width: 116,
  height: 112,
  body: { x: 10, y: 22, width: 96, height: 84 },
  name: { x: 58, y: 8, most: 104 },
  terminals: pair(34, 90, 48, 'down'),
};

/** The high limit: a snap disc with its blades, its face towards the heat. */
export const highLimit: Face = {
  shape: fixed(LIMIT),
  draw(pen) {
    shell(pen, { x: 10, y: 22, width: 96, height: 84 }, 'iron');
    knob(pen, 58, 50, 24, 'zinc');
    ring(pen, 58, 50, 15, MATERIAL.steel, 2);
    blades(pen, LIMIT);
  },
};

/** The roll-out switch with the button that puts it back. Whether it is out is only seen by looking close. */
export const rollout: Face = {
  shape: fixed(LIMIT),
  draw(pen, part) {
    shell(pen, { x: 10, y: 22, width: 96, height: 84 }, 'iron');
    knob(pen, 58, 49, 23, 'plastic');
    const button = part.signs.button;
    if (button === 'out') {
      // A stem lifts the button out of its ring.
      line(pen, [58, 55, 62, 44], MATERIAL.rustShade, 12);
      knob(pen, 64, 40, 13, 'signal', 7);
    } else {
      disc(pen, 58, 49, 11, MATERIAL.rust);
      ring(pen, 58, 49, 11, button === 'in' ? CREAM[1] : MATERIAL.rustShade, button === 'in' ? 3 : INK.edge);
    }
    blades(pen, LIMIT);
  },
  handles: (part) => stepper(part, 'button', { x: 34, y: 26, width: 48, height: 46 }),
};

const PRESSURE: Shape = {
  width: 116,
  height: 118,
  body: { x: 18, y: 21, width: 80, height: 91 },
  name: { x: 58, y: 8, most: 104 },
  terminals: pair(34, 96, 48, 'down'),
};

function hose(pen: Pen, isOff: boolean): void {
  pen.lineCap = 'round';
  for (const [colour, width] of [
    [STEEL[11], 11],
    [MATERIAL.steelDark, 7],
    [STEEL[5], 1.6],
  ] as const) {
    pen.beginPath();
    if (isOff) {
      pen.moveTo(6, 26);
      pen.bezierCurveTo(10, 60, 0, 76, 12, 108);
    } else {
      pen.moveTo(0, 30);
      pen.bezierCurveTo(8, 18, 24, 20, 40, 44);
    }
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.stroke();
  }
  pen.lineCap = 'butt';
}

/** The pressure switch: a diaphragm that feels the inducer's draft through a hose. */
export const pressureSwitch: Face = {
  shape: fixed(PRESSURE),
  draw(pen, part) {
    const seen = part.signs.hose;
    if (seen !== 'off') hose(pen, false);
    knob(pen, 58, 54, 33, 'zinc');
    ring(pen, 58, 54, 22, STEEL[5], 2);
    if (seen === 'off') {
      knob(pen, 34, 42, 8, 'brass', 2);
      disc(pen, 34, 42, 4, MATERIAL.hole);
      hose(pen, true);
      disc(pen, 6, 26, 3.4, MATERIAL.hole);
    }
    // A clip round the hose on its nipple, once somebody has looked.
    if (seen === 'on') line(pen, [24, 36, 36, 28], MATERIAL.brass, 4);
    shell(pen, { x: 18, y: 82, width: 80, height: 30 }, 'plastic', 3, 5);
    blades(pen, PRESSURE);
  },
};

const HIGH_PRESSURE: Shape = {
  width: 126,
  height: 104,
  body: { x: 0, y: 24, width: 126, height: 74 },
  name: { x: 63, y: 8, most: 116 },
  terminals: pair(36, 82, 54, 'down'),
};

/** The high-pressure switch, brazed into the discharge line. */
export const highPressureSwitch: Face = {
  shape: fixed(HIGH_PRESSURE),
  draw(pen) {
    line(pen, [0, 44, 126, 44], MATERIAL.outline, 14);
    line(pen, [0, 44, 126, 44], MATERIAL.copperPipe, 12);
    line(pen, [0, 41, 126, 41], MATERIAL.copperPipeLight, 3);
    shell(pen, { x: 38, y: 24, width: 50, height: 44 }, 'brass', 4, 6);
    for (const x of [46, 55, 63, 71, 80]) line(pen, [x, 26, x, 66], MATERIAL.brassShade, INK.edge);
    shell(pen, { x: 16, y: 66, width: 94, height: 32 }, 'plastic', 3, 5);
    blades(pen, HIGH_PRESSURE);
  },
};

const LATCH: Shape = { width: 190, height: 40, name: { x: 95, y: 18, most: 160, paper: true }, terminals: {} };

/** The latch of a door that a switch leans on: it sits on the closed door. A door ajar is only seen by looking close. */
export const panelDoor: Face = {
  shape: fixed(LATCH),
  onCover: true,
  draw(pen, part) {
    const seat = part.signs.seat;
    if (seat === 'ajar') fillBox(pen, { x: -8, y: 30, width: 206, height: 12 }, 4, MATERIAL.hole);
    pen.save();
    if (seat === 'ajar') pen.rotate(0.04);
    shell(pen, { x: 0, y: 2, width: 190, height: 32 }, 'painted', seat === 'ajar' ? 9 : 3, 16);
    if (seat !== undefined) knob(pen, 178, 18, 6, seat === 'ajar' ? 'signal' : 'zinc', 1);
    pen.restore();
  },
};
