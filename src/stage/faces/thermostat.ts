import type { BenchView, PartView } from '../../attempt/view.ts';
import { type Face, type Shape, spaced, type TerminalSpot } from '../face.ts';
import { blades, bushing, hollow, knob, shell } from '../hardware.ts';
import { fillBox, letter, line, type Pen, ring } from '../pen.ts';
import { MATERIAL, STEEL, WIRE } from '../tokens.ts';
import { strokeConductor } from '../wireInk.ts';
import { sampled } from '../wires.ts';
import { LANDING_ORDER, subbase } from './subbase.ts';
import { drawFront, frontHandles } from './thermostatFront.ts';

const FRONT = { width: 316, height: 176 } as const;
/** Seated it covers its sub-base with a margin all round. */
const SEATED = { width: 384, height: 190 } as const;
/** The back, and where it is held beside the front. */
export const BACK = { x: 360, y: -86, width: 372, height: 190 } as const;
/** On the mat: where the case lies, and the clip that holds the pigtails' ends. */
const MAT = { x: 242, y: 96 } as const;
const MAT_ENDS = { x: -40, y: 366, step: 99 } as const;

const PIGTAIL: Readonly<Record<string, string>> = {
  R: 'red',
  W: 'white',
  Y: 'yellow',
  G: 'green',
  C: 'blue',
};

/**
 * Pins as they appear from behind: the sub-base's landing order mirrored left to right, because the body has been turned
 * about its upright axis (common practice, no source).
 */
export function mirroredPins(): Record<string, TerminalSpot> {
  const screws = subbase.shape({} as PartView).terminals;
  return Object.fromEntries(
    LANDING_ORDER.map((id) => {
      const spot = screws[id] ?? { x: 0, y: 0, way: 'down' as const };
      return [id, { x: BACK.x + BACK.width - spot.x, y: BACK.y + 126, way: 'down' as const, letter: { dx: 0, dy: 31 } }];
    }),
  );
}

function shape(part: PartView): Shape {
  switch (part.body) {
    case 'seated':
      return { ...SEATED, terminals: {} };
    case 'turned':
      return { ...FRONT, terminals: mirroredPins() };
    case 'mat':
      return {
        ...FRONT,
        terminals: spaced(LANDING_ORDER, { x: MAT_ENDS.x, y: MAT_ENDS.y }, { x: MAT_ENDS.step, y: 0 }, 'down'),
      };
    default:
      return { ...FRONT, terminals: {} };
  }
}

function spot(part: PartView, view: Pick<BenchView, 'parts'>): { readonly x: number; readonly y: number } {
  if (part.body === 'mat') return MAT;
  if (part.body !== 'seated') return part.at;
  const base = view.parts.find((other) => other.id === part.base);
  return base === undefined ? part.at : { x: base.at.x - 6, y: base.at.y - 6 };
}

/** Three relays on the board in the back. */
function drawRelays(pen: Pen): void {
  for (let relay = 0; relay < 3; relay += 1) shell(pen, { x: 34 + relay * 56, y: 30, width: 48, height: 40 }, 'plastic', 2, 3);
}

/** Three solid-state switches, flat with a tab, and the round store that they feed. */
function drawSolidState(pen: Pen): void {
  for (let chip = 0; chip < 3; chip += 1) {
    shell(pen, { x: 44 + chip * 56, y: 30, width: 28, height: 16 }, 'zinc', 2, 2);
    shell(pen, { x: 42 + chip * 56, y: 44, width: 32, height: 26 }, 'plastic', 2, 2);
  }
  knob(pen, 252, 50, 24, 'zinc');
  ring(pen, 252, 50, 17, STEEL[5], 2);
}

/** The circuit board in the thermostat's back, with its pins mirrored. */
function drawBack(pen: Pen, drawSwitches: (pen: Pen) => void): void {
  pen.save();
  pen.translate(BACK.x, BACK.y);
  shell(pen, { x: 0, y: 0, width: BACK.width, height: BACK.height }, 'painted', 10, 16);
  shell(pen, { x: 16, y: 16, width: BACK.width - 32, height: BACK.height - 32 }, 'board', 0);
  drawSwitches(pen);
  pen.restore();
  drawTraces(pen, mirroredPins());
  blades(pen, { ...BACK, terminals: mirroredPins() }, 13);
}

/** Copper that leads from the relays to the pins. Only ornament: it says no more than that there are relays. */
function drawTraces(pen: Pen, pins: Readonly<Record<string, TerminalSpot>>): void {
  const top = BACK.y + 70;
  const relay = (index: number): number => BACK.x + 34 + index * 56 + 24;
  const ends: readonly (readonly [string, number, number])[] = [
    ['C', relay(0) - 10, 22],
    ['G', relay(0), 14],
    ['Y', relay(1), 14],
    ['W', relay(2), 14],
    ['R', relay(2) + 12, 22],
  ];
  for (const [id, x, drop] of ends) {
    const pin = pins[id];
    if (pin !== undefined) line(pen, [x, top, x, top + drop, pin.x, top + drop, pin.x, pin.y - 13], MATERIAL.boardTrace, 1.6);
  }
}

/** Pigtails from the pins to the ends laid out along the mat; their tags say which pin each was pushed on. */
function drawPigtails(pen: Pen, ends: Readonly<Record<string, TerminalSpot>>): void {
  LANDING_ORDER.forEach((id, index) => {
    const end = ends[id];
    if (end === undefined) return;
    const from = { x: FRONT.width / 2 - 72 + index * 36, y: FRONT.height - 4 };
    const way = [from, { x: from.x, y: from.y + 90 }, { x: end.x, y: end.y - 100 }, { x: end.x, y: end.y - 16 }] as const;
    strokeConductor(pen, sampled(way), PIGTAIL[id] ?? 'copper', 9);
    line(pen, [end.x, end.y - 18, end.x, end.y + 12], WIRE.copper, 5);
    line(pen, [end.x - 1.4, end.y - 18, end.x - 1.4, end.y + 12], MATERIAL.copperPipeLight, 1.6);
    fillBox(pen, { x: end.x - 17, y: end.y + 20, width: 34, height: 28 }, 4, MATERIAL.label);
    letter(pen, id, end.x, end.y + 34, {
      size: 16,
      weight: 750,
      wide: true,
      family: 'display',
      colour: MATERIAL.labelInk,
    });
  });
}

/** A thermostat: seated, pulled, turned over beside its front, or on the mat with pigtails on its pins. */
const thermostatFace = (drawSwitches: (pen: Pen) => void): Face => ({
  over: true,
  shape,
  spot,
  draw(pen, part, words) {
    const size = shape(part);
    if (part.body === 'mat') {
      drawPigtails(pen, size.terminals);
      bushing(pen, FRONT.width / 2, FRONT.height - 2, 10);
    }
    drawFront(pen, part, words, size.width, size.height);
    if (part.body === 'turned') drawBack(pen, drawSwitches);
  },
  handles: (part) => {
    const size = shape(part);
    return frontHandles(part, size.width, size.height);
  },
});

export const batteryThermostat = thermostatFace(drawRelays);
export const powerStealingThermostat = thermostatFace(drawSolidState);

/** The slide on its upper edge that tells what heats. Which way it stands is only seen by looking close. */
function drawHeatSlide(pen: Pen, part: PartView, width: number): void {
  const slot = { x: width - 96, y: -11, width: 56, height: 16 };
  shell(pen, { x: slot.x - 6, y: slot.y - 6, width: slot.width + 12, height: slot.height + 11 }, 'enamel', 3, 5);
  const way = part.signs.heatSetting;
  hollow(pen, slot, MATERIAL.toggleTrack, 8);
  if (way === 'electric') knob(pen, slot.x + 46, slot.y + 6, 9, 'signal', 2);
  if (way === 'gas') knob(pen, slot.x + 10, slot.y + 6, 9, 'ceramic', 2);
}

/** The common-wire thermostat: the same case, with a slide on its edge for what heats. */
export const commonWireThermostat: Face = {
  ...batteryThermostat,
  draw(pen, part, words) {
    drawHeatSlide(pen, part, shape(part).width);
    batteryThermostat.draw(pen, part, words);
  },
};
