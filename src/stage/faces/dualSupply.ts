import type { BenchView, PartView } from '../../attempt/view.ts';
import { type Face, fixed, type Shape, spaced, stepper, type TerminalSpot } from '../face.ts';
import { blades, bushing, shell } from '../hardware.ts';
import { fillBox, letter, line, type Pen, strokeBox } from '../pen.ts';
import { COLOURS, LETTERS, MATERIAL, WIRE } from '../tokens.ts';
import { strokeConductor } from '../wireInk.ts';
import { sampled } from '../wires.ts';
import { drawPlate } from './subbase.ts';
import { BACK } from './thermostat.ts';
import { drawFront, frontHandles } from './thermostatFront.ts';

/** Letters left to right as the wires land, the two supplies side by side; the thermostat's pins meet them. */
const ORDER = ['Rh', 'Rc', 'W', 'Y', 'G', 'C'] as const;

const PLATE: Shape = {
  width: 372,
  height: 178,
  terminals: spaced(ORDER, { x: 46, y: 76 }, { x: 56, y: 0 }, 'down', {
    screw: 12.5,
    letter: { dx: 0, dy: -25, dark: true, size: LETTERS.name },
  }),
  keep: [{ x: 34, y: 18, width: 322, height: 20 }],
  exit: { x: 186, y: 136 },
};

/** The plate on the wall, with the strap that joins Rh and Rc: in its two holes, or hung on its nail beside them. */
export const dualSubbase: Face = {
  shape: fixed(PLATE),
  sheet: true,
  draw(pen, part, words) {
    drawPlate(pen, PLATE);
    const jumper = part.signs.jumper;
    if (jumper === undefined) return;
    const isIn = jumper === 'in';
    for (const x of [46, 102]) fillBox(pen, { x: x - 5, y: 22, width: 10, height: 12 }, 3, MATERIAL.hole);
    if (isIn) shell(pen, { x: 38, y: 23, width: 72, height: 10 }, 'signal', 3, 4);
    else shell(pen, { x: 132, y: 23, width: 72, height: 10 }, 'brass', 3, 4);
    letter(pen, words(isIn ? 'stage:mark.jumperIn' : 'stage:mark.jumperOut'), 290, 28, {
      size: LETTERS.small,
      weight: 700,
      family: 'display',
      colour: isIn ? COLOURS.actionInk : COLOURS.inkSoft,
      most: 140,
    });
  },
  handles: (part) => stepper(part, 'jumper', { x: 34, y: 14, width: 172, height: 28 }),
};

const FRONT = { width: 316, height: 176 } as const;
/** Seated it covers its sub-base with a margin all round. */
const SEATED = { width: 384, height: 190 } as const;
/** On the mat: where the case lies, and the clip that holds the pigtails' ends. */
const MAT = { x: 242, y: 96 } as const;
const MAT_ENDS = { x: -60, y: 366, step: 84 } as const;

const PIGTAIL: Readonly<Record<string, string>> = { Rh: 'red', Rc: 'orange', W: 'white', Y: 'yellow', G: 'green', C: 'blue' };

/** Pins as they appear from behind: mirrored left to right (common practice, no source). */
function mirrored(): Record<string, TerminalSpot> {
  return spaced([...ORDER].reverse(), { x: BACK.x + 46, y: BACK.y + 126 }, { x: 56, y: 0 }, 'down', { letter: { dx: 0, dy: 31 } });
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

/** The circuit board in its back: one relay on the heating supply, two on the other, and a gap between them. */
function drawBack(pen: Pen): void {
  const pins = mirrored();
  shell(pen, { ...BACK }, 'painted', 10, 16);
  shell(pen, { x: BACK.x + 16, y: BACK.y + 16, width: BACK.width - 32, height: BACK.height - 32 }, 'board', 0);
  for (const x of [34, 90, 146]) shell(pen, { x: BACK.x + x, y: BACK.y + 30, width: 48, height: 40 }, 'plastic', 2, 3);
  for (const [id, from, drop] of [
    ['G', 58, 14],
    ['Y', 114, 20],
    ['W', 170, 8],
  ] as const) {
    const pin = pins[id];
    const top = BACK.y + 70;
    if (pin !== undefined)
      line(pen, [BACK.x + from, top, BACK.x + from, top + drop, pin.x, top + drop, pin.x, pin.y - 13], MATERIAL.boardTrace, 1.6);
  }
  blades(pen, { ...BACK, terminals: pins }, 13);
}

/** Pigtails from the pins to the ends laid out along the mat; their tags say which pin each was pushed on. */
function drawPigtails(pen: Pen, ends: Readonly<Record<string, TerminalSpot>>): void {
  ORDER.forEach((id, index) => {
    const end = ends[id];
    if (end === undefined) return;
    const from = { x: FRONT.width / 2 - 90 + index * 36, y: FRONT.height - 4 };
    const way = [from, { x: from.x, y: from.y + 90 }, { x: end.x, y: end.y - 100 }, { x: end.x, y: end.y - 16 }] as const;
    strokeConductor(pen, sampled(way), PIGTAIL[id] ?? 'copper', 9);
    line(pen, [end.x, end.y - 18, end.x, end.y + 12], WIRE.copper, 5);
    line(pen, [end.x - 1.4, end.y - 18, end.x - 1.4, end.y + 12], MATERIAL.copperPipeLight, 1.6);
    const tag = { x: end.x - 18, y: end.y + 20, width: 36, height: 28 };
    fillBox(pen, tag, 4, MATERIAL.label);
    strokeBox(pen, tag, 4, MATERIAL.enamelLine, 1);
    letter(pen, id, end.x, end.y + 34, { size: 15, weight: 750, family: 'display', colour: MATERIAL.labelInk, most: 32 });
  });
}

/** A thermostat for two supplies: seated, pulled, turned over beside its front, or on the mat with pigtails on its pins. */
export const dualSupplyThermostat: Face = {
  over: true,
  shape,
  spot,
  draw(pen, part, words) {
    const { width, height, terminals } = shape(part);
    if (part.body === 'mat') {
      drawPigtails(pen, terminals);
      bushing(pen, FRONT.width / 2, FRONT.height - 2, 10);
    }
    drawFront(pen, part, words, width, height);
    if (part.body === 'turned') drawBack(pen);
  },
  handles: (part) => {
    const { width, height } = shape(part);
    return frontHandles(part, width, height);
  },
};
