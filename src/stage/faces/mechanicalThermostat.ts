import type { PartView } from '../../attempt/view.ts';
import { type Face, fixed, type Handle, nudged, type Shape, spaced, stepper, type Words } from '../face.ts';
import { hollow, knob, shell } from '../hardware.ts';
import { type Box, disc, fillBox, letter, line, type Pen, ring, strokeBox } from '../pen.ts';
import { COLOURS, CREAM, LETTERS, MATERIAL, STEEL, WIRE, WOOD } from '../tokens.ts';
import { drawModes, drawToggle, settingFor } from './thermostatFront.ts';

const SCREWS = ['R', 'W', 'Y', 'G'] as const;
const SHAPE: Shape = {
  width: 276,
  height: 304,
  keep: [
    { x: 8, y: 8, width: 260, height: 84 },
    { x: 8, y: 98, width: 260, height: 62 },
    { x: 136, y: 166, width: 132, height: 46 },
    { x: 106, y: 218, width: 64, height: 18 },
  ],
  terminals: spaced(SCREWS, { x: 48, y: 274 }, { x: 60, y: 0 }, 'down', {
    screw: 12.5,
    letter: { dx: 0, dy: -27, dark: true, size: 16 },
  }),
};

const SCALE: Box = { x: 14, y: 14, width: 248, height: 44 };
const MODES = {
  off: { x: 8, y: 100, width: 44, height: 58 },
  heat: { x: 52, y: 100, width: 44, height: 58 },
  cool: { x: 96, y: 100, width: 44, height: 58 },
} as const;
const FANS = { auto: { x: 148, y: 100, width: 62, height: 58 }, on: { x: 210, y: 100, width: 60, height: 58 } } as const;
const ANTICIPATOR: Box = { x: 138, y: 168, width: 128, height: 42 };
/** Marks on the anticipator's scale. */
const MARKS = 8;

/** Where a temperature stands along the scale, 45 to 95 °F. */
function along(fahrenheit: number): number {
  return SCALE.x + 10 + ((fahrenheit - 45) / 50) * (SCALE.width - 20);
}

/** A set lever: a pointer that hangs into the scale. */
function setLever(pen: Pen, fahrenheit: number, colour: string, here: boolean): void {
  const x = along(fahrenheit);
  pen.beginPath();
  pen.moveTo(x, SCALE.y + 16);
  pen.lineTo(x - 8, SCALE.y + 36);
  pen.lineTo(x + 8, SCALE.y + 36);
  pen.closePath();
  pen.fillStyle = here ? colour : CREAM[5];
  pen.fill();
  pen.strokeStyle = MATERIAL.outline;
  pen.lineWidth = 1.4;
  pen.stroke();
}

/** Scale, levers, thermometer and switches: what the cover leaves free. */
function drawFront(pen: Pen, part: PartView, words: Words): void {
  const { set, room, mode } = part.signs;
  hollow(pen, SCALE, CREAM[0], 6);
  for (let degrees = 45; degrees <= 95; degrees += 5) {
    const x = along(degrees);
    line(pen, [x, SCALE.y + 4, x, SCALE.y + (degrees % 10 === 0 ? 14 : 10)], WOOD[6], degrees % 10 === 0 ? 2 : 1.2);
  }
  const setting = settingFor(mode);
  const other = setting === 'setHeat' ? 'setCool' : 'setHeat';
  const colours = { setHeat: COLOURS.action, setCool: WIRE.blue } as const;
  const spare = part.controls.find((control) => control.id === other)?.value;
  if (spare !== undefined) setLever(pen, Number(spare), colours[other], false);
  if (set !== undefined) setLever(pen, Number(set), colours[setting], true);
  const how = { size: 15, weight: 650, family: 'display', colour: WOOD[7] } as const;
  if (set !== undefined)
    letter(pen, words('stage:thermostat.set', { value: Number(set) }), 18, 78, { ...how, align: 'left', most: 110 });
  if (room !== undefined) {
    const text = `${words('stage:thermostat.room')} ${words('stage:thermostat.degrees', { value: Number(room) })}`;
    letter(pen, text, 258, 78, { ...how, align: 'right', most: 116 });
  }
  if (mode !== undefined) drawModes(pen, part, words, MODES);
  if (part.signs.fan !== undefined) drawToggle(pen, words, FANS, 'fan', part.signs.fan);
}

/** The bimetal's coil with the arm of its contact: closed it lies on the fixed one, and a bar of orange joins them. */
function drawContact(pen: Pen, call: string | number | undefined): void {
  hollow(pen, { x: 10, y: 166, width: 118, height: 50 }, STEEL[10], 5);
  ring(pen, 40, 191, 17, MATERIAL.brass, 4);
  ring(pen, 40, 191, 9, MATERIAL.brassLight, 3);
  const [heat, cool] = [call === 'heat', call === 'cool'];
  const y = heat ? 179 : cool ? 203 : 191;
  line(pen, [56, 191, 106, y], MATERIAL.brassLight, 4);
  for (const [contact, closed] of [
    [175, heat],
    [207, cool],
  ] as const) {
    fillBox(pen, { x: 96, y: contact - 4, width: 24, height: 8 }, 2, MATERIAL.steelLight);
    if (closed) line(pen, [98, contact, 118, contact], COLOURS.action, 4);
  }
  if (call === 'fan') disc(pen, 76, 207, 5, COLOURS.action);
}

/** The anticipator: a fine heater with a pointer over its scale. Where the pointer stands is only seen by looking close. */
function drawAnticipator(pen: Pen, part: PartView, words: Words): void {
  shell(pen, ANTICIPATOR, 'board', 2, 4);
  const mark = (index: number) => ANTICIPATOR.x + 14 + (index * (ANTICIPATOR.width - 28)) / (MARKS - 1);
  for (let index = 0; index < MARKS; index += 1) line(pen, [mark(index), 174, mark(index), 181], MATERIAL.boardInk, 2);
  const set = part.signs.anticipator;
  if (set === undefined) return;
  const positions = part.controls.find((control) => control.id === 'anticipator')?.positions ?? [];
  const index = positions.indexOf(String(set));
  if (index >= 0) line(pen, [mark(index), 170, mark(index), 188], COLOURS.focus, 4);
  letter(pen, words(`parts:position.${String(set)}`), ANTICIPATOR.x + ANTICIPATOR.width / 2, 199, {
    size: LETTERS.small,
    weight: 700,
    colour: MATERIAL.boardInk,
    most: ANTICIPATOR.width - 20,
  });
}

/** A spirit level let into the base: its bubble is only seen by looking close. */
function drawLevel(pen: Pen, level: string | number | undefined): void {
  const vial = { x: 110, y: 221, width: 56, height: 13 };
  fillBox(pen, vial, 6, level === undefined ? MATERIAL.floatCup : MATERIAL.displayIdle);
  strokeBox(pen, vial, 6, STEEL[8], 1);
  if (level === undefined) return;
  for (const x of [128, 148]) line(pen, [x, 222, x, 233], STEEL[9], 1.4);
  knob(pen, level === 'level' ? 138 : 157, 227.5, 5, 'ceramic', 0);
}

function handles(part: PartView): readonly Handle[] {
  const setting = settingFor(part.controls.find((control) => control.id === 'mode')?.value);
  const half = { ...SCALE, width: SCALE.width / 2 };
  const [down, up] = [nudged(part, setting, -1), nudged(part, setting, 1)];
  const stops = [['mode', MODES] as const, ['fan', FANS] as const].flatMap(([control, boxes]) =>
    Object.entries(boxes).flatMap(([position, box]): Handle[] =>
      part.controls.some((each) => each.id === control && each.positions?.includes(position) === true)
        ? [{ box, name: `${control}.${position}`, action: { name: 'operate', part: part.id, control, position } }]
        : [],
    ),
  );
  return [
    ...(down === undefined ? [] : [{ box: half, name: 'down', action: down }]),
    ...(up === undefined ? [] : [{ box: { ...half, x: half.x + half.width }, name: 'up', action: up }]),
    ...stops,
    ...stepper(part, 'anticipator', ANTICIPATOR),
  ];
}

/** The mechanical thermostat: levers over a scale, two switches; with its cover off the bimetal, the anticipator and the screws. */
export const mechanicalThermostat: Face = {
  shape: fixed(SHAPE),
  draw(pen, part, words) {
    shell(pen, { x: 0, y: 0, width: SHAPE.width, height: SHAPE.height }, 'enamel', 8, 14);
    drawFront(pen, part, words);
    drawContact(pen, part.signs.call);
    drawAnticipator(pen, part, words);
    drawLevel(pen, part.signs.level);
  },
  through: drawFront,
  handles,
};
