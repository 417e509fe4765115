import { type Face, fixed, type Handle, type Shape, spaced, stepper } from '../face.ts';
import { hollow, knob, shell } from '../hardware.ts';
import { disc, fillBox, letter, line, type Pen, ring } from '../pen.ts';
import { COLOURS, CREAM, INK, LETTERS, MATERIAL, STEEL, WOOD } from '../tokens.ts';

const SUPPLY: Shape = {
  width: 136,
  height: 176,
  body: { x: 8, y: 22, width: 120, height: 150 },
  name: { x: 68, y: 8, most: 126 },
  terminals: spaced(['X1', 'X2'], { x: 40, y: 152 }, { x: 56, y: 0 }, 'down', { screw: 12, letter: { dx: 0, dy: -26 } }),
};

/** The supply's body with its two blades, in the outlet or out of it. */
function plugBody(pen: Pen, warmth: string | number | undefined): void {
  shell(pen, { x: -44, y: -30, width: 88, height: 64 }, 'plastic', 6, 9);
  for (const y of [-16, -8, 0]) line(pen, [-30, y, 30, y], STEEL[11], 2);
  if (warmth === 'warm')
    for (const x of [-20, 0, 20]) {
      pen.beginPath();
      pen.moveTo(x, 26);
      pen.bezierCurveTo(x - 8, 20, x + 8, 14, x, 6);
      pen.strokeStyle = COLOURS.focus;
      pen.lineWidth = 3;
      pen.stroke();
    }
  if (warmth === 'cold') line(pen, [-22, 17, 22, 17], MATERIAL.floatGlass, 4);
}

/** The plug-in supply: in its outlet, or pulled out of it. Whether it is warm is only felt by looking close. */
export const plugInSupply: Face = {
  shape: fixed(SUPPLY),
  draw(pen, part, words) {
    shell(pen, { x: 16, y: 22, width: 104, height: 92 }, 'enamel', 3);
    for (const x of [56, 76]) hollow(pen, { x, y: 54, width: 7, height: 24 }, MATERIAL.hole, 2);
    const out = part.pulledOut === true;
    pen.save();
    pen.translate(out ? 94 : 68, out ? 86 : 66);
    if (out) pen.rotate(0.24);
    plugBody(pen, part.signs.warmth);
    pen.restore();
    if (out)
      letter(pen, words('stage:mark.pulled'), 60, 38, { size: LETTERS.small, weight: 650, colour: MATERIAL.labelInk, most: 84 });
    line(pen, [68, 98, 68, 124], STEEL[11], 7);
    shell(pen, { x: 8, y: 112, width: 120, height: 60 }, 'iron', 3, 6);
  },
  handles(part): readonly Handle[] {
    if (part.pulledOut === undefined) return [];
    const name = part.pulledOut ? 'plug' : 'unplug';
    return [{ box: { x: 20, y: 26, width: 96, height: 80 }, name, action: { name, part: part.id } }];
  },
};

const LAMP: Shape = {
  width: 108,
  height: 140,
  body: { x: 6, y: 38, width: 96, height: 98 },
  name: { x: 54, y: 10, most: 98 },
  terminals: spaced(['a', 'b'], { x: 28, y: 118 }, { x: 52, y: 0 }, 'down', { screw: 11 }),
};

/** A lamp in its bezel: dark, glowing, or bright with its rays. */
export const pilotLamp: Face = {
  shape: fixed(LAMP),
  draw(pen, part) {
    shell(pen, { x: 6, y: 38, width: 96, height: 98 }, 'painted', 3);
    const { lamp } = part.signs;
    if (lamp === 'bright')
      for (let ray = 0; ray < 8; ray += 1) {
        const [x, y] = [Math.cos((ray * Math.PI) / 4), Math.sin((ray * Math.PI) / 4)];
        line(pen, [54 + x * 27, 72 + y * 27, 54 + x * 33, 72 + y * 33], MATERIAL.glow, 3);
      }
    knob(pen, 54, 72, 24, 'steel', 2);
    disc(pen, 54, 72, 18, lamp === 'bright' ? MATERIAL.glowCore : lamp === 'dim' ? MATERIAL.rust : MATERIAL.lightOff);
    if (lamp === 'dim') disc(pen, 54, 72, 7, MATERIAL.glow);
    if (lamp !== 'bright') line(pen, [44, 64, 50, 59], CREAM[1], 2.4);
    ring(pen, 54, 72, 18, STEEL[9], 1.4);
  },
};

const TOGGLE: Shape = {
  width: 108,
  height: 140,
  body: { x: 6, y: 38, width: 96, height: 98 },
  name: { x: 54, y: 10, most: 98 },
  terminals: spaced(['a', 'b'], { x: 28, y: 118 }, { x: 52, y: 0 }, 'down', { screw: 11 }),
};

/** A small toggle: its bat up for on, down and orange for off. */
export const toggleSwitch: Face = {
  shape: fixed(TOGGLE),
  draw(pen, part, words) {
    shell(pen, { x: 6, y: 38, width: 96, height: 98 }, 'zinc', 3);
    knob(pen, 54, 70, 17, 'steel', 1);
    const { lever } = part.signs;
    if (lever === undefined) return;
    const on = lever === 'on';
    line(pen, [54, 70, 54, on ? 50 : 92], STEEL[10], 9);
    knob(pen, 54, on ? 50 : 92, 8, on ? 'ceramic' : 'signal', 2);
    letter(pen, words(on ? 'stage:mark.on' : 'stage:mark.off'), 84, on ? 52 : 92, {
      size: LETTERS.small,
      weight: 750,
      family: 'display',
      colour: STEEL[11],
      most: 34,
    });
  },
  handles: (part) => stepper(part, 'lever', { x: 30, y: 42, width: 48, height: 60 }),
};

const STRIP_SCREWS = ['R', 'W', 'Y', 'G', 'C'] as const;
const STRIP: Shape = {
  width: 300,
  height: 100,
  body: { x: 0, y: 22, width: 300, height: 78 },
  name: { x: 150, y: 8, most: 280 },
  terminals: spaced(STRIP_SCREWS, { x: 34, y: 76 }, { x: 58, y: 0 }, 'down', { screw: 12.5, letter: { dx: 0, dy: -27 } }),
};

/** A row of screws on a dark block, with its letters above. */
export const terminalStrip: Face = {
  shape: fixed(STRIP),
  draw(pen) {
    shell(pen, { x: 0, y: 22, width: 300, height: 78 }, 'iron', 3);
    for (let index = 0; index < STRIP_SCREWS.length; index += 1) {
      hollow(pen, { x: 14 + index * 58, y: 58, width: 40, height: 36 }, STEEL[11], INK.smallCorner);
      if (index > 0) fillBox(pen, { x: 3 + index * 58, y: 56, width: 4, height: 40 }, 2, WOOD[6]);
    }
  },
};
