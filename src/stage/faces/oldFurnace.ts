import { type Face, fixed, type Shape, stepper } from '../face.ts';
import { blades, hollow, knob, shell, soundArcs } from '../hardware.ts';
import { fillBox, letter, line, type Pen } from '../pen.ts';
import { COLOURS, CREAM, LETTERS, MATERIAL, STEEL } from '../tokens.ts';

const VALVE: Shape = {
  width: 170,
  height: 208,
  body: { x: 0, y: 24, width: 170, height: 180 },
  name: { x: 85, y: 8, most: 160 },
  keep: [{ x: 10, y: 92, width: 70, height: 18 }],
  terminals: {
    TH: { x: 30, y: 186, way: 'down', letter: { dx: 0, dy: -23 } },
    TR: { x: 85, y: 186, way: 'down', letter: { dx: 0, dy: -23 } },
    TC: { x: 140, y: 186, way: 'down', letter: { dx: 0, dy: -23 } },
    CASE: { x: 148, y: 130, way: 'right', screw: 10 },
  },
};
/** How far the knob is turned for each position, quarter turns. */
const TURNS: Readonly<Record<string, number>> = { off: 1, pilot: 0.5, on: 0 };

/** A small flame at the pilot's tip. */
function pilotFlame(pen: Pen, x: number, y: number): void {
  for (const [scale, colour] of [
    [1, MATERIAL.flame],
    [0.55, MATERIAL.flameCore],
  ] as const) {
    pen.beginPath();
    pen.moveTo(x, y - 26 * scale);
    pen.bezierCurveTo(x + 16 * scale, y - 8 * scale, x + 9 * scale, y, x, y);
    pen.bezierCurveTo(x - 9 * scale, y, x - 16 * scale, y - 8 * scale, x, y - 26 * scale);
    pen.fillStyle = colour;
    pen.fill();
  }
}

/** A gas valve with its knob and, beside it, the pilot with the thermocouple in its flame. */
export const standingPilotValve: Face = {
  shape: fixed(VALVE),
  draw(pen, part, words) {
    for (const x of [-4, 150]) shell(pen, { x, y: 46, width: 24, height: 26 }, 'iron', 3, 3);
    shell(pen, { x: 10, y: 26, width: 150, height: 130 }, 'zinc');
    const turned = part.signs.knob;
    knob(pen, 46, 60, 28, 'plastic', 3);
    if (turned !== undefined) {
      pen.save();
      pen.translate(46, 60);
      pen.rotate((TURNS[String(turned)] ?? 0) * Math.PI * 0.5);
      shell(pen, { x: -24, y: -7, width: 48, height: 14 }, turned === 'on' ? 'ceramic' : 'signal', 2, 7);
      pen.restore();
      letter(pen, words(`stage:knob.${String(turned)}`), 46, 101, {
        size: LETTERS.small,
        weight: 750,
        family: 'display',
        colour: STEEL[11],
        most: 68,
      });
    }
    hollow(pen, { x: 92, y: 36, width: 62, height: 72 }, STEEL[10], 6);
    line(pen, [112, 106, 112, 82], MATERIAL.brass, 7);
    // The thermocouple's tip, in the flame when there is one.
    const { pilot, click, couple } = part.signs;
    line(pen, couple === 'burnt' ? [146, 104, 134, 89] : [146, 104, 124, 76], MATERIAL.copperPipe, 5);
    if (couple === 'whole') line(pen, [130, 84, 124, 76], MATERIAL.copperPipeLight, 6);
    if (couple === 'burnt') line(pen, [134, 89, 126, 79], STEEL[7], 2);
    if (pilot === 1) pilotFlame(pen, 114, 82);
    if (pilot === 0) line(pen, [108, 78, 116, 78], CREAM[5], 2);
    if (click === 1) soundArcs(pen, 60, 132, 34, false);
    knob(pen, 60, 132, 10, click === 1 ? 'signal' : 'steel', 1);
    shell(pen, { x: 6, y: 150, width: 158, height: 54 }, 'plastic', 3, 5);
    blades(pen, VALVE);
  },
  handles: (part) => [
    ...stepper(part, 'knob', { x: 16, y: 30, width: 60, height: 62 }),
    ...stepper(part, 'pilot', { x: 92, y: 36, width: 62, height: 72 }),
  ],
};

const FAN_LIMIT: Shape = {
  width: 196,
  height: 190,
  body: { x: 2, y: 24, width: 192, height: 162 },
  name: { x: 98, y: 8, most: 186 },
  terminals: {
    F1: { x: 28, y: 168, way: 'down', letter: { dx: 0, dy: -23 } },
    F2: { x: 75, y: 168, way: 'down', letter: { dx: 0, dy: -23 } },
    L1: { x: 122, y: 168, way: 'down', letter: { dx: 0, dy: -23 } },
    L2: { x: 169, y: 168, way: 'down', letter: { dx: 0, dy: -23 } },
  },
};

/** The fan and limit control: a dial that the plenum's heat turns past its pointers. */
export const fanLimitControl: Face = {
  shape: fixed(FAN_LIMIT),
  draw(pen, part) {
    shell(pen, { x: 2, y: 24, width: 192, height: 104 }, 'zinc');
    knob(pen, 98, 76, 46, 'ceramic', 2);
    const { click, fanPointer } = part.signs;
    const at = (turn: number, from: number, to: number, colour: string, width: number) => {
      const [x, y] = [Math.cos(turn), Math.sin(turn)];
      line(pen, [98 + x * from, 76 + y * from, 98 + x * to, 76 + y * to], colour, width);
    };
    for (let tick = 0; tick < 12; tick += 1) at((tick * Math.PI) / 6, 36, 43, STEEL[7], 1.6);
    // The pointer at which the fan starts is only read by looking close; the limit's is beyond it.
    at(-0.4, 30, 44, MATERIAL.rust, 5);
    if (fanPointer !== undefined) at(fanPointer === 'usual' ? -2.2 : -0.9, 30, 44, COLOURS.focus, 6);
    // What the heat turns: past the fan's pointer when that has clicked.
    if (click !== undefined) at(click === 1 ? -1.6 : -2.8, 0, 28, STEEL[10], 4);
    knob(pen, 98, 76, 8, 'brass', 1);
    if (click === 1) soundArcs(pen, 98, 76, 52, false);
    fillBox(pen, { x: 84, y: 112, width: 28, height: 8 }, 2, MATERIAL.label);
    shell(pen, { x: 2, y: 130, width: 192, height: 56 }, 'plastic', 3, 5);
    blades(pen, FAN_LIMIT, 11);
  },
};
