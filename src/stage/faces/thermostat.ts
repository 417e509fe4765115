import type { PartView } from '../../attempt/view.ts';
import type { Face } from '../face.ts';
import { hollow, knob, shell } from '../hardware.ts';
import { type Pen, ring } from '../pen.ts';
import { MATERIAL, STEEL } from '../tokens.ts';
import { LANDING_ORDER, PLATE } from './subbase.ts';
import { backOf, drawTrace, type ThermostatBody, thermostatFace } from './thermostatBody.ts';

const relayMiddle = (index: number): number => 34 + index * 56 + 24;
/** From the switches to the pins: where each trace begins along the board, and how far it drops before it turns. */
const TRACES: readonly (readonly [id: string, x: number, drop: number])[] = [
  ['C', relayMiddle(0) - 10, 22],
  ['G', relayMiddle(0), 14],
  ['Y', relayMiddle(1), 14],
  ['W', relayMiddle(2), 14],
  ['R', relayMiddle(2) + 12, 22],
];

/** A body of five pins whose switches stand in a row. */
const fivePins = (drawRow: (pen: Pen) => void): ThermostatBody => ({
  plate: PLATE,
  pins: LANDING_ORDER,
  apart: 99,
  drawSwitches(pen, back, pins) {
    pen.save();
    pen.translate(back.x, back.y);
    drawRow(pen);
    pen.restore();
    const foot = back.y + 70;
    for (const [id, x, drop] of TRACES) drawTrace(pen, { x: back.x + x, y: foot }, foot + drop, pins[id]);
  },
});

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

const BATTERY = fivePins(drawRelays);
/** Its back as it is held beside its front. */
export const BACK = backOf(BATTERY);
export const batteryThermostat = thermostatFace(BATTERY);
export const powerStealingThermostat = thermostatFace(fivePins(drawSolidState));

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
    drawHeatSlide(pen, part, batteryThermostat.shape(part).width);
    batteryThermostat.draw(pen, part, words);
  },
};
