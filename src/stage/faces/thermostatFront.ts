import type { PartView } from '../../attempt/view.ts';
import { type Handle, nudged, type Words } from '../face.ts';
import { hollow, knob, shell, toggle } from '../hardware.ts';
import { type Box, letter, line, type Pen, traceBox } from '../pen.ts';
import { COLOURS, CREAM, light, MATERIAL, WOOD } from '../tokens.ts';

/** Where the front's display, keys and switches sit in a case of this width and height. */
export function frontLayout(
  width: number,
  height: number,
  third = false,
): {
  readonly display: Box;
  readonly keys: Readonly<Record<'up' | 'down', Box>>;
  readonly modes: Readonly<Record<'off' | 'heat' | 'cool', Box>>;
  readonly fans: Readonly<Record<'auto' | 'on', Box>>;
  readonly emergency: Readonly<Record<'off' | 'on', Box>>;
} {
  const column = 144;
  const right = width - column - 12;
  const displayWidth = right - 30;
  const keyWidth = (displayWidth - 10) / 2;
  const keyY = height - 50;
  const stop = column / 3;
  const half = column / 2;
  // A third slide lets all of them move closer together.
  const [modeY, fanY, row] = third ? [8, height / 2 - 26, 52] : [18, height - 86, 62];
  return {
    display: { x: 16, y: 16, width: displayWidth, height: height - 76 },
    keys: {
      up: { x: 16, y: keyY, width: keyWidth, height: 34 },
      down: { x: 26 + keyWidth, y: keyY, width: keyWidth, height: 34 },
    },
    modes: {
      off: { x: right, y: modeY, width: stop, height: row },
      heat: { x: right + stop, y: modeY, width: stop, height: row },
      cool: { x: right + stop * 2, y: modeY, width: stop, height: row },
    },
    fans: {
      auto: { x: right, y: fanY, width: half, height: row },
      on: { x: right + half, y: fanY, width: half, height: row },
    },
    emergency: {
      off: { x: right, y: height - 60, width: half, height: row },
      on: { x: right + half, y: height - 60, width: half, height: row },
    },
  };
}

/** The setting that the keys move: the one of the mode that it stands in; heat's while it is off. */
export function settingFor(mode: string | number | undefined): 'setHeat' | 'setCool' {
  return mode === 'cool' ? 'setCool' : 'setHeat';
}

/** What keys and switches of the front do. */
export function frontHandles(part: PartView, width: number, height: number, third = false): Handle[] {
  const layout = frontLayout(width, height, third);
  const handles: Handle[] = [];
  const setting = settingFor(part.controls.find((control) => control.id === 'mode')?.value);
  for (const [key, steps] of [
    ['up', 1],
    ['down', -1],
  ] as const) {
    const action = nudged(part, setting, steps);
    if (action !== undefined) handles.push({ box: layout.keys[key], name: key, action });
  }
  for (const [control, stops] of [
    ['mode', layout.modes],
    ['fan', layout.fans],
    ['emergency', layout.emergency],
  ] as const) {
    const found = part.controls.find((each) => each.id === control);
    for (const [position, box] of Object.entries(stops)) {
      if (found?.positions?.includes(position) === true) {
        handles.push({ box, name: `${control}.${position}`, action: { name: 'operate', part: part.id, control, position } });
      }
    }
  }
  return handles;
}

/** The front of the thermostat: display, two keys, a slide for the mode and one for the fan; a heat pump's has a third one. */
export function drawFront(pen: Pen, part: PartView, words: Words, width: number, height: number, third = false): void {
  const layout = frontLayout(width, height, third);
  shell(pen, { x: 0, y: 0, width, height }, 'enamel', 10, 16);
  drawDisplay(pen, part, words, layout.display);
  for (const key of ['up', 'down'] as const) {
    const box = layout.keys[key];
    shell(pen, box, 'enamel', 2);
    const x = box.x + box.width / 2;
    const y = box.y + box.height / 2;
    const tip = key === 'up' ? -5 : 5;
    pen.beginPath();
    pen.moveTo(x - 8, y - tip);
    pen.lineTo(x, y + tip);
    pen.lineTo(x + 8, y - tip);
    pen.closePath();
    pen.fillStyle = WOOD[6];
    pen.fill();
  }
  drawModes(pen, part, words, layout.modes);
  drawToggle(pen, words, layout.fans, 'fan', standsAt(part, 'fan'));
  if (third) drawToggle(pen, words, layout.emergency, 'emergency', part.signs.emergency);
}

function drawDisplay(pen: Pen, part: PartView, words: Words, box: Box): void {
  const isOn = part.signs.display === 'on';
  hollow(pen, box, isOn ? MATERIAL.displayIdle : MATERIAL.displayOff, 9);
  if (!isOn) {
    // A dead display: grey, with nothing on it but the lamp's reflection.
    pen.save();
    traceBox(pen, box, 9);
    pen.clip();
    const { x, y, height } = box;
    line(pen, [x + 10, y + height + 10, x + 70, y - 10], light(0.16), 22);
    line(pen, [x + 46, y + height + 10, x + 106, y - 10], light(0.1), 8);
    pen.restore();
    return;
  }
  const { room, set, call, guard } = part.signs;
  const ink = COLOURS.displayInk;
  const left = box.x + 14;
  const small = { size: 13, colour: ink, weight: 500, align: 'right' as const, most: box.width - 82 };
  const degrees = room === undefined ? '' : words('stage:thermostat.degrees', { value: Number(room) });
  // Half degrees leave no room beside them in the narrow case: what they are stands beneath.
  const stacked = degrees.length > 3 && box.width < 160;
  if (room !== undefined) {
    letter(pen, degrees, left, box.y + (stacked ? 30 : 36), {
      size: box.width > 160 ? 38 : 31,
      weight: 700,
      family: 'mono',
      align: 'left',
      colour: ink,
    });
    if (stacked) letter(pen, words('stage:thermostat.room'), left, box.y + 60, { ...small, align: 'left', most: 36 });
    else letter(pen, words('stage:thermostat.room'), box.x + box.width - 10, box.y + 24, small);
  }
  if (set !== undefined) {
    letter(pen, words('stage:thermostat.set', { value: Number(set) }), box.x + box.width - 10, box.y + (stacked ? 60 : 46), {
      ...small,
      most: box.width - (stacked ? 66 : degrees.length > 3 ? 140 : 82),
    });
  }
  const waits = Math.ceil(Number(guard ?? 0));
  const status =
    waits > 0
      ? words('stage:thermostat.guard', { minutes: Math.floor(waits / 60), seconds: String(waits % 60).padStart(2, '0') })
      : call === undefined
        ? ''
        : words(`stage:thermostat.call.${String(call)}`);
  letter(pen, status, left, box.y + box.height - 20, { size: 15, weight: 600, align: 'left', colour: ink, most: box.width - 24 });
}

/** Where a slide stands: a display that is dead does not tell, and the slide stays where a hand left it. */
const standsAt = (part: PartView, name: 'mode' | 'fan'): string | number | undefined =>
  part.signs[name] ?? part.controls.find(({ id }) => id === name)?.value;

export function drawModes(pen: Pen, part: PartView, words: Words, stops: Readonly<Record<'off' | 'heat' | 'cool', Box>>): void {
  const mode = standsAt(part, 'mode');
  const track = { x: stops.off.x + 8, y: stops.off.y + 4, width: stops.off.width * 3 - 16, height: 26 };
  hollow(pen, track, MATERIAL.toggleTrack, 13);
  for (const position of ['off', 'heat', 'cool'] as const) {
    const x = stops[position].x + stops[position].width / 2;
    const here = mode === position;
    if (here) {
      knob(pen, x, track.y + 13, 15, position === 'off' ? 'ceramic' : 'signal', 2);
    } else {
      line(pen, [x, track.y + 8, x, track.y + 18], CREAM[6], 2);
    }
    letter(pen, words(`stage:thermostat.mode.${position}`), x, track.y + 43, {
      size: 13,
      weight: here ? 750 : 550,
      family: 'display',
      colour: here ? WOOD[7] : WOOD[5],
      most: stops[position].width,
    });
  }
}

/** A slide of two positions, the second of them `on`. */
export function drawToggle(
  pen: Pen,
  words: Words,
  stops: Readonly<Record<string, Box>>,
  name: 'fan' | 'emergency',
  stands: string | number | undefined,
): void {
  const first = Object.values(stops)[0];
  if (first === undefined) return;
  const width = 66;
  const track = { x: first.x + first.width - width / 2, y: first.y + 4, width, height: 26 };
  // The slide for emergency heat is behind a flap that only who looks lifts.
  if (stands === undefined && name === 'emergency')
    shell(pen, { x: track.x - 8, y: track.y - 1, width: width + 16, height: 28 }, 'enamel', 2, 5);
  else if (stands === undefined) hollow(pen, track, MATERIAL.toggleTrack, 13);
  else toggle(pen, track, stands === 'on');
  for (const [position, box] of Object.entries(stops)) {
    const here = stands === position;
    letter(pen, words(`stage:thermostat.${name}.${position}`), box.x + box.width / 2, track.y + 43, {
      size: 13,
      weight: here ? 750 : 550,
      family: 'display',
      colour: here ? WOOD[7] : WOOD[5],
      most: box.width - 4,
    });
  }
}
