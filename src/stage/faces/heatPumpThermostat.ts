import type { BenchView, PartView } from '../../attempt/view.ts';
import { type Face, fixed, type Shape, spaced, type TerminalSpot } from '../face.ts';
import { blades, bushing, shell } from '../hardware.ts';
import { fillBox, letter, line, type Pen } from '../pen.ts';
import { MATERIAL, WIRE } from '../tokens.ts';
import { strokeConductor } from '../wireInk.ts';
import { sampled } from '../wires.ts';
import { drawPlate } from './subbase.ts';
import { drawFront, frontHandles } from './thermostatFront.ts';

/** Letters left to right as the wires land; the thermostat's pins meet them. */
const ORDER = ['R', 'C', 'Y', 'G', 'O', 'W2', 'E'] as const;

const PLATE: Shape = {
  width: 372,
  height: 178,
  terminals: spaced(ORDER, { x: 39, y: 58 }, { x: 49, y: 0 }, 'down', {
    screw: 12.5,
    letter: { dx: 0, dy: -27, dark: true, size: 15.5, most: 46 },
  }),
  exit: { x: 186, y: 136 },
};

/** The plate on the wall behind a heat pump's thermostat: seven screws and the hole that the cable comes out of. */
export const heatPumpSubbase: Face = {
  shape: fixed(PLATE),
  sheet: true,
  draw: (pen) => drawPlate(pen, PLATE),
};

const FRONT = { width: 316, height: 176 } as const;
/** Seated it covers its sub-base with a margin all round. */
const SEATED = { width: 384, height: 190 } as const;
/** The back, and where it is held beside the front. */
const BACK = { x: 360, y: -86, width: 372, height: 190 } as const;
/** On the mat: where the case lies, and the clip that holds the pigtails' ends. */
const MAT = { x: 242, y: 96 } as const;
const MAT_ENDS = { x: -40, y: 366, step: 66 } as const;

const PIGTAIL: Readonly<Record<string, string>> = {
  R: 'red',
  C: 'blue',
  Y: 'yellow',
  G: 'green',
  O: 'orange',
  W2: 'white',
  E: 'brown',
};

/** Pins as they appear from behind: mirrored left to right (common practice, no source). */
function mirrored(): Record<string, TerminalSpot> {
  return Object.fromEntries(
    ORDER.map((id) => {
      const x = BACK.x + BACK.width - (PLATE.terminals[id]?.x ?? 0);
      return [id, { x, y: BACK.y + 126, way: 'down' as const, letter: { dx: 0, dy: 31 } }];
    }),
  );
}

function shape(part: PartView): Shape {
  if (part.body === 'seated') return { ...SEATED, terminals: {} };
  if (part.body === 'turned') return { ...FRONT, terminals: mirrored() };
  if (part.body === 'mat')
    return { ...FRONT, terminals: spaced(ORDER, { x: MAT_ENDS.x, y: MAT_ENDS.y }, { x: MAT_ENDS.step, y: 0 }, 'down') };
  return { ...FRONT, terminals: {} };
}

function spot(part: PartView, view: BenchView): { readonly x: number; readonly y: number } {
  if (part.body === 'mat') return MAT;
  if (part.body !== 'seated') return part.at;
  const base = view.parts.find((other) => other.id === part.base);
  return base === undefined ? part.at : { x: base.at.x - 6, y: base.at.y - 6 };
}

/** The circuit board in its back: five relays in a row above the pins, which are mirrored. */
function drawBack(pen: Pen): void {
  const pins = mirrored();
  shell(pen, { ...BACK }, 'painted', 10, 16);
  shell(pen, { x: BACK.x + 16, y: BACK.y + 16, width: BACK.width - 32, height: BACK.height - 32 }, 'board', 0);
  (['Y', 'G', 'O', 'W2', 'E'] as const).forEach((id, index) => {
    const x = BACK.x + BACK.width - 72 - index * 60;
    shell(pen, { x: x - 22, y: BACK.y + 30, width: 44, height: 36 }, 'plastic', 2, 3);
    const pin = pins[id];
    const turn = BACK.y + 78 + index * 5;
    if (pin !== undefined) line(pen, [x, BACK.y + 66, x, turn, pin.x, turn, pin.x, pin.y - 13], MATERIAL.boardTrace, 1.6);
  });
  blades(pen, { ...BACK, terminals: pins }, 13);
}

/** Pigtails from the pins to the ends laid out along the mat; their tags say which pin each was pushed on. */
function drawPigtails(pen: Pen, ends: Readonly<Record<string, TerminalSpot>>): void {
  ORDER.forEach((id, index) => {
    const end = ends[id];
    if (end === undefined) return;
    const from = { x: FRONT.width / 2 - 90 + index * 30, y: FRONT.height - 4 };
    const way = [from, { x: from.x, y: from.y + 90 }, { x: end.x, y: end.y - 100 }, { x: end.x, y: end.y - 16 }] as const;
    strokeConductor(pen, sampled(way), PIGTAIL[id] ?? 'copper', 9);
    line(pen, [end.x, end.y - 18, end.x, end.y + 12], WIRE.copper, 5);
    line(pen, [end.x - 1.4, end.y - 18, end.x - 1.4, end.y + 12], MATERIAL.copperPipeLight, 1.6);
    fillBox(pen, { x: end.x - 17, y: end.y + 20, width: 34, height: 28 }, 4, MATERIAL.label);
    letter(pen, id === 'O' ? 'O/B' : id, end.x, end.y + 34, {
      size: 14,
      weight: 750,
      family: 'display',
      colour: MATERIAL.labelInk,
      most: 32,
    });
  });
}

/** What its set-up menu says, once somebody has looked: a slip of display under its keys. */
function drawSetUp(pen: Pen, part: PartView, height: number): void {
  const { reversing, auxiliary } = part.signs;
  if (reversing === undefined && auxiliary === undefined) return;
  const box = { x: 18, y: height - 15, width: 120, height: 24 };
  fillBox(pen, box, 4, MATERIAL.displayIdle);
  const stages = auxiliary === 'none' ? '1' : '1 + W2';
  const middle = box.x + box.width / 2;
  const ink = { size: 14, weight: 650, colour: MATERIAL.labelInk, most: 112 };
  letter(pen, `${String(reversing ?? '')} · ${stages}`, middle, box.y + 12, ink);
}

/** The heat pump's thermostat: seated, pulled, turned over beside its front, or on the mat with pigtails on its pins. */
export const heatPumpThermostat: Face = {
  over: true,
  shape,
  spot,
  draw(pen, part, words) {
    const size = shape(part);
    if (part.body === 'mat') {
      drawPigtails(pen, size.terminals);
      bushing(pen, FRONT.width / 2, FRONT.height - 2, 10);
    }
    drawFront(pen, part, words, size.width, size.height, true);
    if (part.body !== 'mat') drawSetUp(pen, part, size.height);
    if (part.body === 'turned') drawBack(pen);
  },
  handles: (part) => {
    const size = shape(part);
    return frontHandles(part, size.width, size.height, true);
  },
};
