import { type Face, fixed, type Shape, spaced } from '../face.ts';
import { blades, hollow, knob, shell, soundArcs, turnArrow } from '../hardware.ts';
import { disc, fillBox, lifted, line, type Pen, ring } from '../pen.ts';
import { CREAM, MATERIAL, STEEL, WOOD } from '../tokens.ts';
import { rotor, shaftMotion, still } from './shaft.ts';

/** Vanes of a wheel that throws air outwards. */
function wheel(pen: Pen, radius: number, vanes: number): void {
  ring(pen, 0, 0, radius * 0.94, MATERIAL.steelShade, 2.5);
  for (let index = 0; index < vanes; index += 1) {
    pen.save();
    pen.rotate((index * Math.PI * 2) / vanes);
    line(pen, [radius * 0.4, 0, radius * 0.9, radius * 0.16], STEEL[3], radius * 0.07);
    pen.restore();
  }
  knob(pen, 0, 0, radius * 0.34, 'steel', 0);
  disc(pen, 0, radius * -0.2, radius * 0.07, MATERIAL.steelLight);
}

const INDUCER: Shape = {
  width: 126,
  height: 128,
  body: { x: 18, y: 19, width: 102, height: 104 },
  name: { x: 63, y: 8, most: 118 },
  terminals: { a: { x: 38, y: 106, way: 'down' }, b: { x: 88, y: 106, way: 'down' } },
};
const INDUCER_WHEEL = rotor('inducerWheel', 25, (pen) => {
  wheel(pen, 25, 12);
});

/** The inducer that draws the flue: a snail housing with its wheel. */
export const inducer: Face = {
  shape: fixed(INDUCER),
  draw(pen, part) {
    shell(pen, { x: 70, y: 20, width: 50, height: 26 }, 'steel', 4, 4);
    knob(pen, 60, 56, 37, 'steel');
    disc(pen, 60, 56, 28, MATERIAL.hole);
    still(pen, INDUCER_WHEEL, 60, 56);
    if (shaftMotion(part.signs.running, 1) !== undefined) turnArrow(pen, 60, 56, 32, 1);
    shell(pen, { x: 18, y: 92, width: 90, height: 30 }, 'plastic', 3, 5);
    blades(pen, INDUCER, 11);
  },
  moving(part) {
    const motion = shaftMotion(part.signs.running, 3.2);
    return motion === undefined ? [] : [{ ...INDUCER_WHEEL, x: 60, y: 56, motion }];
  },
};

const BLOWER: Shape = {
  width: 140,
  height: 206,
  body: { x: 6, y: 22, width: 130, height: 180 },
  name: { x: 70, y: 8, most: 126 },
  terminals: spaced(['HEAT', 'COOL', 'N'], { x: 24, y: 52 }, { x: 0, y: 46 }, 'left', {
    letter: { dx: 19, dy: 0, align: 'left', most: 60, dark: true },
  }),
};
const BLOWER_WHEEL = rotor('blowerWheel', 31, (pen) => {
  wheel(pen, 31, 18);
});

/** The blower: its wheel in the housing, its speeds on the left. */
export const blower: Face = {
  shape: fixed(BLOWER),
  draw(pen, part) {
    shell(pen, { x: 6, y: 22, width: 130, height: 180 }, 'steel', 5, 26);
    disc(pen, 97, 156, 38, MATERIAL.hole);
    ring(pen, 97, 156, 38, MATERIAL.steelDark, 2);
    still(pen, BLOWER_WHEEL, 97, 156);
    const heard = part.signs.running;
    if (heard === 'hum') soundArcs(pen, 97, 156, 40, true);
    else if (shaftMotion(heard, 1) !== undefined) turnArrow(pen, 97, 156, 35.5, heard === 'heat' ? 1 : 2);
    blades(pen, BLOWER);
  },
  moving(part) {
    const motion = shaftMotion(part.signs.running, part.signs.running === 'heat' ? 2.2 : 3);
    return motion === undefined ? [] : [{ ...BLOWER_WHEEL, x: 97, y: 156, motion }];
  },
};

const FILTER: Shape = {
  width: 140,
  height: 60,
  body: { x: 2, y: 4, width: 136, height: 34 },
  name: { x: 70, y: 50, most: 126 },
  terminals: {},
};

/** The air filter in its rack, end on; what it has caught is only seen by sliding it out to look. */
export const filter: Face = {
  shape: fixed(FILTER),
  draw(pen, part) {
    const dirt = part.signs.dirt;
    shell(pen, { x: 2, y: 4, width: 136, height: 34 }, 'painted', 3, 4);
    hollow(pen, { x: 8, y: 10, width: 124, height: 22 }, dirt === 'dirty' ? WOOD[5] : dirt === 'clean' ? CREAM[1] : CREAM[5], 3);
    if (dirt === undefined) return;
    for (let x = 12; x < 124; x += 8)
      line(pen, [x, 31, x + 4, 11, x + 8, 31], dirt === 'dirty' ? STEEL[10] : CREAM[4], dirt === 'dirty' ? 2 : 1.4);
    if (dirt !== 'dirty') return;
    lifted(pen, 2, () => {
      for (let x = 22; x < 124; x += 19) disc(pen, x, 21 + ((x * 7) % 9) - 4, 5 + (x % 3), WOOD[7]);
    });
    fillBox(pen, { x: 9, y: 25, width: 122, height: 6 }, 3, WOOD[7]);
  },
};
