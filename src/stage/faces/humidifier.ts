import type { PartView } from '../../attempt/view.ts';
import { type Face, fixed, type Handle, type Shape, stepper, type Words } from '../face.ts';
import { blades, hollow, knob, shell } from '../hardware.ts';
import { disc, fillBox, letter, line, type Pen, ring } from '../pen.ts';
import { COLOURS, CREAM, INK, MATERIAL, STEEL } from '../tokens.ts';

const PLENUM: Shape = {
  width: 156,
  height: 96,
  body: { x: 2, y: 2, width: 152, height: 74 },
  name: { x: 78, y: 87, most: 144, paper: true },
  terminals: {},
};

/** A thermometer's dial; without a reading its glass is blind. */
function thermometer(pen: Pen, x: number, value: string | number | undefined, words: Words): void {
  knob(pen, x, 34, 28, 'zinc', 3);
  disc(pen, x, 34, 23, value === undefined ? CREAM[5] : CREAM[0]);
  ring(pen, x, 34, 23, STEEL[7], INK.edge);
  if (value === undefined) return;
  for (let mark = 0; mark <= 6; mark += 1) {
    const angle = Math.PI * (0.8 + (mark * 1.4) / 6);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    line(pen, [x + cos * 18, 34 + sin * 18, x + cos * 22, 34 + sin * 22], STEEL[8], 2);
  }
  letter(pen, words('stage:thermostat.degrees', { value: Number(value) }), x, 36, {
    size: 13.5,
    weight: 700,
    family: 'mono',
    colour: MATERIAL.labelInk,
    most: 40,
  });
}

/** The ducts at the furnace: return to the left, supply to the right, a thermometer in each. What they say is only seen by looking close. */
export const supplyPlenum: Face = {
  shape: fixed(PLENUM),
  draw(pen, part, words) {
    shell(pen, { x: 2, y: 2, width: 74, height: 72 }, 'steel', 4, 3);
    shell(pen, { x: 80, y: 2, width: 74, height: 72 }, 'steel', 4, 3);
    // Air goes into the return and comes out of the supply.
    for (const [x, tip] of [
      [39, 1],
      [117, -1],
    ] as const)
      for (const side of [-22, 0, 22])
        line(pen, [x + side - 5, 67 - tip * 3, x + side, 67 + tip * 3, x + side + 5, 67 - tip * 3], COLOURS.focus, 2.2);
    thermometer(pen, 39, part.signs.returnAir, words);
    thermometer(pen, 117, part.signs.supplyAir, words);
  },
};

const HUMIDISTAT: Shape = {
  width: 120,
  height: 124,
  body: { x: 4, y: 20, width: 112, height: 98 },
  name: { x: 60, y: 8, most: 112, paper: true },
  terminals: { a: { x: 36, y: 102, way: 'down' }, b: { x: 84, y: 102, way: 'down' } },
};
const DIAL_ANGLES: Readonly<Record<string, number>> = { off: 0.75, '25': 1.25, '35': 1.6, '45': 1.95 };

/** The humidistat: a dial with its per cent. */
export const humidistat: Face = {
  shape: fixed(HUMIDISTAT),
  draw(pen, part, words) {
    shell(pen, { x: 4, y: 20, width: 112, height: 68 }, 'enamel', 4);
    shell(pen, { x: 16, y: 86, width: 88, height: 32 }, 'plastic', 3, 5);
    const at = String(part.signs.percent ?? '35');
    for (const [position, turn] of Object.entries(DIAL_ANGLES)) {
      const angle = Math.PI * turn;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      line(pen, [38 + cos * 25, 54 + sin * 25, 38 + cos * 30, 54 + sin * 30], STEEL[8], position === at ? 4 : 1.6);
    }
    knob(pen, 38, 54, 22, 'ceramic');
    const angle = Math.PI * (DIAL_ANGLES[at] ?? 0);
    line(pen, [38, 54, 38 + Math.cos(angle) * 19, 54 + Math.sin(angle) * 19], COLOURS.action, 4);
    hollow(pen, { x: 72, y: 42, width: 38, height: 24 }, MATERIAL.displayIdle, 4);
    letter(pen, words(`parts:position.${at}`), 91, 54, { size: 13, weight: 700, colour: MATERIAL.labelInk, most: 35 });
    blades(pen, HUMIDISTAT);
  },
  handles: (part) => stepper(part, 'percent', { x: 8, y: 26, width: 60, height: 58 }),
};

const VALVE: Shape = {
  width: 150,
  height: 136,
  body: { x: 4, y: 22, width: 142, height: 108 },
  name: { x: 75, y: 8, most: 138, paper: true },
  terminals: { a: { x: 28, y: 40, way: 'left' }, b: { x: 28, y: 88, way: 'left' } },
};

/** The humidifier: its solenoid at the left, the tap above the pad, and water on the pad while it runs. */
export const humidifierValve: Face = {
  shape: fixed(VALVE),
  draw(pen, part) {
    line(pen, [146, 36, 60, 36], MATERIAL.outline, 12);
    line(pen, [146, 36, 60, 36], MATERIAL.copperPipe, 10);
    line(pen, [146, 33, 60, 33], MATERIAL.copperPipeLight, 2.4);
    shell(pen, { x: 10, y: 22, width: 48, height: 82 }, 'plastic', 4, 5);
    const pad = { x: 70, y: 56, width: 72, height: 70 };
    shell(pen, { x: 64, y: 50, width: 84, height: 80 }, 'painted', 4, 6);
    hollow(pen, pad, STEEL[6], 3);
    for (let y = 62; y < 124; y += 8) line(pen, [72, y, 140, y], STEEL[4], 1.6);
    if (part.signs.drip === 'runs') {
      for (let x = 78; x < 140; x += 12) line(pen, [x, 58, x + 3, 80, x - 2, 102, x + 2, 124], MATERIAL.water, 5);
      fillBox(pen, { x: 71, y: 118, width: 70, height: 8 }, 3, MATERIAL.water);
    }
    knob(pen, 108, 36, 12, 'brass', 3);
    // A tap's handle lies along its pipe while it is open.
    const open = part.signs.tap !== 'off';
    line(pen, open ? [90, 36, 126, 36] : [108, 20, 108, 54], COLOURS.action, 7);
    blades(pen, VALVE);
  },
  handles: (part: PartView): readonly Handle[] => stepper(part, 'tap', { x: 86, y: 20, width: 46, height: 34 }),
};
