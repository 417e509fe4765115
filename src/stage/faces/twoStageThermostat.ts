import type { BenchView, PartView } from '../../attempt/view.ts';
import { type Face, fixed, type Shape, spaced, type TerminalSpot } from '../face.ts';
import { blades, bushing, shell } from '../hardware.ts';
import { fillBox, letter, line, type Pen, strokeBox } from '../pen.ts';
import { COLOURS, MATERIAL, WIRE } from '../tokens.ts';
import { strokeConductor } from '../wireInk.ts';
import { sampled } from '../wires.ts';
import { drawPlate } from './subbase.ts';
import { drawFront, frontHandles, frontLayout } from './thermostatFront.ts';

/** Screws left to right as the wires land; the spare one is last. Pins meet all but that. */
const ORDER = ['R', 'C', 'W1', 'W2', 'Y1', 'Y2', 'G', 'X'] as const;
const PINS = ORDER.slice(0, -1);

const BASE: Shape = {
  width: 420,
  height: 178,
  terminals: spaced(ORDER, { x: 42, y: 58 }, { x: 48, y: 0 }, 'down', {
    screw: 12.5,
    letter: { dx: 0, dy: -27, dark: true, size: 15.5 },
  }),
  exit: { x: 210, y: 136 },
};

/** The plate on the wall for a two-stage thermostat. */
export const twoStageSubbase: Face = {
  shape: fixed(BASE),
  sheet: true,
  draw: (pen) => drawPlate(pen, BASE),
};

const FRONT = { width: 340, height: 176 } as const;
const SEATED = { width: 432, height: 190 } as const;
/** The back, and where it is held beside the front. */
const BACK = { x: 364, y: -86, width: 384, height: 190 } as const;
const MAT = { x: 230, y: 96 } as const;
const MAT_ENDS = { x: -130, y: 366, step: 100 } as const;
const PIGTAIL: Readonly<Record<string, string>> = {
  R: 'red',
  C: 'blue',
  W1: 'white',
  W2: 'brown',
  Y1: 'yellow',
  Y2: 'orange',
  G: 'green',
};

/** Pins as they appear from behind: the landing order mirrored left to right (common practice, no source). */
function mirrored(): Record<string, TerminalSpot> {
  return spaced([...PINS].reverse(), { x: BACK.x + 48, y: BACK.y + 126 }, { x: 48, y: 0 }, 'down', { letter: { dx: 0, dy: 31 } });
}

function shape(part: PartView): Shape {
  switch (part.body) {
    case 'seated':
      return { ...SEATED, terminals: {} };
    case 'turned':
      return { ...FRONT, terminals: mirrored() };
    case 'mat':
      return { ...FRONT, terminals: spaced(PINS, { x: MAT_ENDS.x, y: MAT_ENDS.y }, { x: MAT_ENDS.step, y: 0 }, 'down') };
    default:
      return { ...FRONT, terminals: {} };
  }
}

function spot(part: PartView, view: BenchView): { readonly x: number; readonly y: number } {
  if (part.body === 'mat') return MAT;
  if (part.body !== 'seated') return part.at;
  const base = view.parts.find(({ id }) => id === part.base);
  return base === undefined ? part.at : { x: base.at.x - 6, y: base.at.y - 6 };
}

function drawBack(pen: Pen): void {
  shell(pen, BACK, 'painted', 10, 16);
  shell(pen, { x: BACK.x + 16, y: BACK.y + 16, width: BACK.width - 32, height: BACK.height - 32 }, 'board', 0);
  for (let relay = 0; relay < 5; relay += 1)
    shell(pen, { x: BACK.x + 34 + relay * 64, y: BACK.y + 34, width: 50, height: 40 }, 'plastic', 2, 3);
  blades(pen, { ...BACK, terminals: mirrored() }, 13);
}

function drawPigtails(pen: Pen, ends: Readonly<Record<string, TerminalSpot>>): void {
  PINS.forEach((id, index) => {
    const end = ends[id];
    if (end === undefined) return;
    const from = { x: FRONT.width / 2 - 108 + index * 36, y: FRONT.height - 4 };
    const way = [from, { x: from.x, y: from.y + 90 }, { x: end.x, y: end.y - 100 }, { x: end.x, y: end.y - 16 }] as const;
    strokeConductor(pen, sampled(way), PIGTAIL[id] ?? 'copper', 9);
    line(pen, [end.x, end.y - 18, end.x, end.y + 12], WIRE.copper, 5);
    fillBox(pen, { x: end.x - 19, y: end.y + 20, width: 38, height: 28 }, 4, MATERIAL.label);
    letter(pen, id, end.x, end.y + 34, { size: 15, weight: 750, family: 'display', colour: MATERIAL.labelInk });
  });
}

/** Two bars at the display's edge: as many are filled as stages are called. How many it is set up for is framed once looked at. */
function drawStages(pen: Pen, part: PartView, width: number, height: number): void {
  if (part.signs.display !== 'on' || (part.signs.stage ?? part.signs.stages) === undefined) return;
  const { display } = frontLayout(width, height);
  const stage = Number(part.signs.stage ?? 0);
  const setUp = part.signs.stages === undefined ? 2 : Number(part.signs.stages);
  for (let bar = 0; bar < 2; bar += 1) {
    const box = {
      x: display.x + display.width - 34 + bar * 13,
      y: display.y + display.height - 30 - bar * 6,
      width: 9,
      height: 14 + bar * 6,
    };
    if (bar < stage) fillBox(pen, box, 2, COLOURS.displayInk);
    else if (bar < setUp) strokeBox(pen, box, 2, COLOURS.displayInk, 1.4);
    else line(pen, [box.x, box.y + box.height, box.x + box.width, box.y], COLOURS.displayInk, 1.6);
  }
}

/** The two-stage thermostat: seated, pulled, turned over beside its front, or on the mat with pigtails on its pins. */
export const twoStageThermostat: Face = {
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
    drawStages(pen, part, width, height);
    if (part.body === 'turned') drawBack(pen);
  },
  handles: (part) => {
    const { width, height } = shape(part);
    return frontHandles(part, width, height);
  },
};
