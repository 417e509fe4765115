import { type Face, fixed, labelOf, type Shape, spaced } from '../face.ts';
import { blade, nameTape } from '../hardware.ts';
import { disc, downward, fillBox, letter, lifted, line, type Pen, ring } from '../pen.ts';
import { CREAM, MATERIAL, STEEL, WOOD } from '../tokens.ts';
import { rotor, shaftMotion } from './shaft.ts';

/** Vanes of a wheel that throws air outwards. */
function wheel(pen: Pen, radius: number, vanes: number): void {
  ring(pen, 0, 0, radius * 0.94, MATERIAL.steelShade, 2.5);
  for (let index = 0; index < vanes; index += 1) {
    pen.save();
    pen.rotate((index * Math.PI * 2) / vanes);
    line(
      pen,
      [
        [radius * 0.4, 0],
        [radius * 0.9, radius * 0.16],
      ],
      STEEL[3],
      radius * 0.07,
    );
    pen.restore();
  }
  disc(pen, 0, 0, radius * 0.34, MATERIAL.steelDark);
  disc(pen, 0, radius * -0.2, radius * 0.07, MATERIAL.steelLight);
}

const INDUCER: Shape = {
  width: 126,
  height: 128,
  terminals: { a: { x: 38, y: 106, way: 'down' }, b: { x: 88, y: 106, way: 'down' } },
};
const INDUCER_WHEEL = rotor('inducerWheel', 25, (pen) => {
  wheel(pen, 25, 12);
});

/** The inducer that draws the flue: a snail housing with its wheel. */
export const inducer: Face = {
  shape: fixed(INDUCER),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 63, 8, 130, true, 'center');
    lifted(pen, 4, () => {
      fillBox(pen, { x: 70, y: 20, width: 50, height: 26 }, 4, STEEL[5]);
      disc(pen, 60, 56, 37, downward(pen, { x: 23, y: 19, width: 74, height: 74 }, STEEL[3], STEEL[6]));
    });
    ring(pen, 60, 56, 37, MATERIAL.steelDark, 1.2);
    disc(pen, 60, 56, 28, MATERIAL.hole);
    pen.save();
    pen.translate(60, 56);
    INDUCER_WHEEL.paint(pen);
    pen.restore();
    fillBox(pen, { x: 18, y: 92, width: 90, height: 30 }, 5, MATERIAL.plastic);
    for (const spot of Object.values(INDUCER.terminals)) blade(pen, spot.x, spot.y, 11);
  },
  moving(part) {
    const motion = shaftMotion(part.signs.running, 3.2);
    return motion === undefined ? [] : [{ ...INDUCER_WHEEL, x: 60, y: 56, motion }];
  },
};

const BLOWER: Shape = {
  width: 140,
  height: 206,
  terminals: spaced(['HEAT', 'COOL', 'N'], { x: 24, y: 54 }, { x: 0, y: 46 }, 'left'),
};
const BLOWER_WHEEL = rotor('blowerWheel', 36, (pen) => {
  wheel(pen, 36, 18);
});

/** The blower: its wheel in the housing, its speeds on the left. */
export const blower: Face = {
  shape: fixed(BLOWER),
  draw(pen, part, words) {
    nameTape(pen, words(`rig:part.${part.id}`), 70, 8, 150, true, 'center');
    lifted(pen, 5, () => {
      fillBox(
        pen,
        { x: 6, y: 22, width: 130, height: 180 },
        26,
        downward(pen, { x: 6, y: 22, width: 130, height: 180 }, STEEL[4], STEEL[6]),
      );
    });
    disc(pen, 92, 154, 41, MATERIAL.hole);
    ring(pen, 92, 154, 41, MATERIAL.steelDark, 2);
    pen.save();
    pen.translate(92, 154);
    BLOWER_WHEEL.paint(pen);
    pen.restore();
    for (const [id, spot] of Object.entries(BLOWER.terminals)) {
      blade(pen, spot.x, spot.y, 12);
      letter(pen, labelOf(part, id), spot.x + 17, spot.y - (id === 'N' ? 12 : 0), {
        size: 13.5,
        weight: 700,
        colour: STEEL[11],
        align: 'left',
        most: 60,
      });
    }
  },
  moving(part) {
    const motion = shaftMotion(part.signs.running, part.signs.running === 'heat' ? 2.2 : 3);
    return motion === undefined ? [] : [{ ...BLOWER_WHEEL, x: 92, y: 154, motion }];
  },
};

const FILTER: Shape = { width: 140, height: 60, terminals: {} };

/** The air filter in its rack, end on; what it has caught is only seen by sliding it out to look. */
export const filter: Face = {
  shape: fixed(FILTER),
  draw(pen, part, words) {
    const dirt = part.signs.dirt;
    lifted(pen, 3, () => {
      fillBox(pen, { x: 2, y: 4, width: 136, height: 34 }, 3, WOOD[0]);
    });
    fillBox(pen, { x: 8, y: 10, width: 124, height: 22 }, 2, dirt === 'dirty' ? WOOD[5] : dirt === 'clean' ? CREAM[1] : CREAM[5]);
    if (dirt !== undefined) {
      for (let x = 12; x < 130; x += 8)
        line(
          pen,
          [
            [x, 32],
            [x + 4, 10],
            [x + 8, 32],
          ],
          dirt === 'dirty' ? STEEL[9] : CREAM[4],
          1.4,
        );
    }
    nameTape(pen, words(`rig:part.${part.id}`), 70, 50, 140, true, 'center');
  },
};
