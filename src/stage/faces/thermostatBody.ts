import type { BenchView, PartView } from '../../attempt/view.ts';
import { type Face, type Shape, spaced, type TerminalSpot } from '../face.ts';
import { blades, bushing, shell } from '../hardware.ts';
import { type Box, fillBox, letter, line, type Pen } from '../pen.ts';
import { MATERIAL, WIRE } from '../tokens.ts';
import { strokeConductor } from '../wireInk.ts';
import { sampled } from '../wires.ts';
import { drawFront, frontHandles } from './thermostatFront.ts';

type Pins = Readonly<Record<string, TerminalSpot>>;

/** What tells one electronic thermostat from another. */
export interface ThermostatBody {
  /** The plate that it sits on. Its pins meet the plate's screws. */
  readonly plate: Shape;
  /** The pins, left to right as the wires land. */
  readonly pins: readonly string[];
  /** Colours of its pigtails where they are not those of `PIGTAILS`, and what stands on a tag instead of the pin's own id. */
  readonly pigtails?: Readonly<Record<string, string>>;
  readonly tags?: Readonly<Record<string, string>>;
  /** From one pigtail's end on the mat to the next. */
  readonly apart: number;
  readonly frontWidth?: number;
  /** A third slide on its front, for emergency heat. */
  readonly third?: boolean;
  /** What switches, on the board in its back, and the copper from there to the pins. */
  drawSwitches(pen: Pen, back: Box, pins: Pins): void;
  /** What its front shows beside display, keys and slides. */
  drawMore?(pen: Pen, part: PartView, size: { readonly width: number; readonly height: number }): void;
}

const FRONT = { width: 316, height: 176 } as const;
/** Seated it covers its plate with a margin all round. */
const MARGIN = 6;
/** The middle of the mat, the case's top edge on it, and where the clip holds the pigtails' ends. */
const MAT = { middle: 400, top: 96, ends: 366 } as const;
const PIGTAIL_STEP = 36;

/** Common practice, no source. */
const PIGTAILS: Readonly<Record<string, string>> = {
  R: 'red',
  Rh: 'red',
  Rc: 'orange',
  C: 'blue',
  W: 'white',
  W1: 'white',
  W2: 'brown',
  Y: 'yellow',
  Y1: 'yellow',
  Y2: 'orange',
  G: 'green',
  O: 'orange',
  E: 'brown',
};

/** The back as it is held beside the front. */
export function backOf({ plate, frontWidth = FRONT.width }: ThermostatBody): Box {
  return { x: Math.max(360, frontWidth + 24), y: -86, width: plate.width, height: plate.height + MARGIN * 2 };
}

/** Pins as they appear from behind: mirrored left to right, because the body has been turned about its upright axis (common practice, no source). */
function mirroredPins(body: ThermostatBody): Record<string, TerminalSpot> {
  const back = backOf(body);
  const at = (id: string): number => back.x + back.width - (body.plate.terminals[id]?.x ?? 0);
  return Object.fromEntries(body.pins.map((id) => [id, { x: at(id), y: back.y + 126, way: 'down', letter: { dx: 0, dy: 31 } }]));
}

/** Pigtails from the pins to the ends laid out along the mat; their tags say which pin each was pushed on. */
function drawPigtails(pen: Pen, body: ThermostatBody, { width, height, terminals }: Shape): void {
  const first = (width - (body.pins.length - 1) * PIGTAIL_STEP) / 2;
  body.pins.forEach((id, index) => {
    const end = terminals[id];
    if (end === undefined) return;
    const from = { x: first + index * PIGTAIL_STEP, y: height - 4 };
    const way = [from, { x: from.x, y: from.y + 90 }, { x: end.x, y: end.y - 100 }, { x: end.x, y: end.y - 16 }] as const;
    strokeConductor(pen, sampled(way), body.pigtails?.[id] ?? PIGTAILS[id] ?? 'copper', 9);
    line(pen, [end.x, end.y - 18, end.x, end.y + 12], WIRE.copper, 5);
    line(pen, [end.x - 1.4, end.y - 18, end.x - 1.4, end.y + 12], MATERIAL.copperPipeLight, 1.6);
    fillBox(pen, { x: end.x - 18, y: end.y + 20, width: 36, height: 28 }, 4, MATERIAL.label);
    const ink = { size: 15, weight: 750, family: 'display', colour: MATERIAL.labelInk, most: 32 } as const;
    letter(pen, body.tags?.[id] ?? id, end.x, end.y + 34, ink);
  });
  bushing(pen, width / 2, height - 2, 10);
}

/** An electronic thermostat: seated, pulled, turned over beside its front, or on the mat with pigtails on its pins. */
export function thermostatFace(body: ThermostatBody): Face {
  const { plate, pins, apart, third = false } = body;
  const front = { ...FRONT, width: body.frontWidth ?? FRONT.width };
  const mat = { x: MAT.middle - front.width / 2, y: MAT.top };
  const ends = { x: front.width / 2 - ((pins.length - 1) * apart) / 2, y: MAT.ends };
  const shape = (part: PartView): Shape => {
    switch (part.body) {
      case 'seated':
        return { width: plate.width + MARGIN * 2, height: plate.height + MARGIN * 2, terminals: {} };
      case 'turned':
        return { ...front, terminals: mirroredPins(body), back: backOf(body) };
      case 'mat':
        return { ...front, terminals: spaced(pins, ends, { x: apart, y: 0 }, 'down') };
      default:
        return { ...front, terminals: {} };
    }
  };
  const spot = (part: PartView, view: Pick<BenchView, 'parts'>): { readonly x: number; readonly y: number } => {
    if (part.body === 'mat') return mat;
    if (part.body !== 'seated') return part.at;
    const base = view.parts.find(({ id }) => id === part.base);
    return base === undefined ? part.at : { x: base.at.x - MARGIN, y: base.at.y - MARGIN };
  };
  return {
    over: true,
    shape,
    spot,
    draw(pen, part, words) {
      const size = shape(part);
      if (part.body === 'mat') drawPigtails(pen, body, size);
      drawFront(pen, part, words, size.width, size.height, third);
      body.drawMore?.(pen, part, size);
      if (part.body === 'turned') drawBack(pen, body);
    },
    handles: (part) => {
      const { width, height } = shape(part);
      return frontHandles(part, width, height, third);
    },
  };
}

/** The circuit board in the thermostat's back, with its pins mirrored. */
function drawBack(pen: Pen, body: ThermostatBody): void {
  const back = backOf(body);
  const pins = mirroredPins(body);
  shell(pen, back, 'painted', 10, 16);
  shell(pen, { x: back.x + 16, y: back.y + 16, width: back.width - 32, height: back.height - 32 }, 'board', 0);
  body.drawSwitches(pen, back, pins);
  blades(pen, { ...back, terminals: pins }, 13);
}

/** A trace of copper from a relay's foot by way of a height to a pin. Only ornament: it says no more than that there are relays. */
export function drawTrace(
  pen: Pen,
  from: { readonly x: number; readonly y: number },
  turn: number,
  pin: TerminalSpot | undefined,
): void {
  if (pin !== undefined) line(pen, [from.x, from.y, from.x, turn, pin.x, turn, pin.x, pin.y - 13], MATERIAL.boardTrace, 1.6);
}
