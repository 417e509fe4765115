import type { PartView } from '../../attempt/view.ts';
import { type Face, fixed, type Handle, nudged, type Shape, spaced, stepper } from '../face.ts';
import { blades, fixing, hollow, knob, shell, soundArcs, turnArrow } from '../hardware.ts';
import { disc, fillBox, letter, lifted, line, type Pen, ring } from '../pen.ts';
import { COLOURS, CREAM, LETTERS, MATERIAL, STEEL } from '../tokens.ts';
import { rotor, shaftMotion, still } from './shaft.ts';

/** A copper pipe that lies across. */
function pipe(pen: Pen, x: number, y: number, width: number): void {
  fillBox(pen, { x, y, width, height: 26 }, 3, MATERIAL.copperPipe);
  fillBox(pen, { x, y: y + 4, width, height: 5 }, 2, MATERIAL.copperPipeLight);
}

const VALVE: Shape = {
  width: 212,
  height: 232,
  body: { x: 0, y: 24, width: 212, height: 186 },
  name: { x: 106, y: 222, most: 204, paper: true },
  keep: [{ x: 108, y: 98, width: 84, height: 64 }],
  terminals: spaced(['M1', 'M2', 'E1', 'E2'], { x: 38, y: 46 }, { x: 45, y: 0 }, 'up', {
    letter: { dx: 0, dy: 24, size: LETTERS.small, most: 40 },
  }),
};

/** How the pointer of a valve's head lies: across the pipe when shut, along it when open, aslant on the way. */
const POINTER: Readonly<Record<string, number>> = { shut: Math.PI / 2, opening: Math.PI / 4, open: 0, closing: -Math.PI / 4 };

/** The zone valve: a motor's head with a pointer and a hand lever, on a brass body in the pipe. */
export const zoneValve: Face = {
  shape: fixed(VALVE),
  draw(pen, part, words) {
    pipe(pen, 0, 172, 212);
    shell(pen, { x: 66, y: 158, width: 80, height: 52 }, 'brass', 4, 8);
    shell(pen, { x: 12, y: 24, width: 188, height: 142 }, 'iron', 5, 8);
    blades(pen, VALVE);
    hollow(pen, { x: 30, y: 90, width: 60, height: 60 }, STEEL[10], 30);
    const travel = part.signs.travel;
    if (travel !== undefined) {
      pen.save();
      pen.translate(60, 120);
      pen.rotate(POINTER[String(travel)] ?? 0);
      shell(pen, { x: -24, y: -6, width: 48, height: 12 }, travel === 'open' ? 'signal' : 'ceramic', 2, 6);
      pen.restore();
      if (travel === 'opening' || travel === 'closing') turnArrow(pen, 60, 120, 27, 1);
    }
    if (part.signs.motor === 1) soundArcs(pen, 60, 120, 34, false);
    // The lever: home, or pushed over and hooked.
    hollow(pen, { x: 112, y: 112, width: 76, height: 22 }, STEEL[11], 11);
    const lever = part.signs.lever;
    if (lever !== undefined) {
      const byHand = lever === 'open';
      shell(pen, { x: byHand ? 156 : 112, y: 106, width: 32, height: 34 }, byHand ? 'signal' : 'ceramic', 3, 6);
      letter(pen, words(byHand ? 'stage:mark.byHand' : 'stage:mark.auto'), 150, 152, {
        size: LETTERS.small,
        weight: 700,
        family: 'display',
        colour: CREAM[1],
        most: 84,
      });
    }
  },
  handles: (part) => stepper(part, 'lever', { x: 108, y: 98, width: 84, height: 50 }),
};

const PUMP: Shape = {
  width: 150,
  height: 168,
  body: { x: 4, y: 24, width: 142, height: 140 },
  name: { x: 75, y: 8, most: 142, paper: true },
  terminals: { a: { x: 50, y: 146, way: 'down' }, b: { x: 100, y: 146, way: 'down' } },
};
const IMPELLER = rotor('circulatorImpeller', 24, (pen) => {
  for (let vane = 0; vane < 5; vane += 1) {
    pen.save();
    pen.rotate((vane * Math.PI * 2) / 5);
    line(pen, [4, 0, 14, 5, 22, 2], STEEL[3], 4);
    pen.restore();
  }
  knob(pen, 0, 0, 7, 'steel', 0);
});

/** The circulator in its flanges, with the glass over its shaft's end. */
export const circulator: Face = {
  shape: fixed(PUMP),
  draw(pen, part) {
    pipe(pen, 4, 70, 142);
    shell(pen, { x: 8, y: 56, width: 16, height: 54 }, 'iron', 3, 3);
    shell(pen, { x: 126, y: 56, width: 16, height: 54 }, 'iron', 3, 3);
    knob(pen, 75, 80, 50, 'iron', 5);
    disc(pen, 75, 80, 30, MATERIAL.hole);
    still(pen, IMPELLER, 75, 80);
    const heard = part.signs.running;
    if (heard === 'hum') soundArcs(pen, 75, 80, 54, true);
    else if (heard === 'run' || heard === 'gurgle') turnArrow(pen, 75, 80, 40, 1);
    if (heard === 'gurgle') {
      // Bubbles that are heard.
      for (const [x, y, size] of [
        [20, 44, 6],
        [34, 34, 4],
        [124, 40, 7],
        [138, 30, 4],
      ] as const)
        ring(pen, x, y, size, COLOURS.focus, 2.4);
    }
    shell(pen, { x: 26, y: 130, width: 98, height: 32 }, 'plastic', 3, 5);
    blades(pen, PUMP, 11);
  },
  moving(part) {
    const motion = shaftMotion(part.signs.running, 3.4);
    return motion === undefined ? [] : [{ ...IMPELLER, x: 75, y: 80, motion }];
  },
};

const AQUASTAT: Shape = {
  width: 130,
  height: 152,
  body: { x: 4, y: 24, width: 122, height: 122 },
  name: { x: 65, y: 8, most: 124, paper: true },
  keep: [{ x: 38, y: 56, width: 54, height: 20 }],
  terminals: { a: { x: 40, y: 128, way: 'down' }, b: { x: 90, y: 128, way: 'down' } },
};
const DIAL = { from: 100, to: 240, least: -2.3, most: 2.3 } as const;

/** Two keys of the aquastat's dial, lower and higher. */
function dialHandles(part: PartView): Handle[] {
  return (
    [
      ['dialDown', -1, 4],
      ['dialUp', 1, 86],
    ] as const
  ).flatMap(([name, presses, x]) => {
    const action = nudged(part, 'limit', presses);
    return action === undefined ? [] : [{ box: { x, y: 30, width: 40, height: 74 }, name, action }];
  });
}

/** The aquastat: a dial of degrees in its box, and two blades. What it is set to takes a close look. */
export const aquastat: Face = {
  shape: fixed(AQUASTAT),
  draw(pen, part, words) {
    shell(pen, { x: 4, y: 24, width: 122, height: 122 }, 'zinc');
    knob(pen, 65, 66, 36, 'ceramic', 3);
    for (let mark = 0; mark <= 7; mark += 1) {
      const angle = DIAL.least + ((DIAL.most - DIAL.least) * mark) / 7 - Math.PI / 2;
      line(
        pen,
        [65 + Math.cos(angle) * 28, 66 + Math.sin(angle) * 28, 65 + Math.cos(angle) * 34, 66 + Math.sin(angle) * 34],
        STEEL[9],
        1.6,
      );
    }
    const dial = part.signs.dial;
    if (dial !== undefined) {
      const turn = DIAL.least + ((DIAL.most - DIAL.least) * (Number(dial) - DIAL.from)) / (DIAL.to - DIAL.from);
      const angle = turn - Math.PI / 2;
      line(
        pen,
        [65 + Math.cos(angle) * 22, 66 + Math.sin(angle) * 22, 65 + Math.cos(angle) * 36, 66 + Math.sin(angle) * 36],
        COLOURS.action,
        5,
      );
      letter(pen, words('stage:water', { value: Number(dial) }), 65, 67, { size: 15, weight: 750, colour: STEEL[11], most: 44 });
    }
    shell(pen, { x: 18, y: 110, width: 94, height: 34 }, 'plastic', 3, 5);
    blades(pen, AQUASTAT, 11);
  },
  handles: dialHandles,
};

const VESSEL: Shape = {
  width: 160,
  height: 172,
  body: { x: 2, y: 24, width: 156, height: 146 },
  name: { x: 80, y: 8, most: 152, paper: true },
  keep: [{ x: 46, y: 112, width: 68, height: 24 }],
  terminals: {},
};
const GAUGE = { x: 80, y: 96, radius: 46, from: 40, to: 260, least: -2.2, most: 2.2 } as const;

/** The gauge in the boiler's jacket. */
function gauge(pen: Pen, part: PartView, words: (key: string, values?: Record<string, unknown>) => string): void {
  knob(pen, GAUGE.x, GAUGE.y, GAUGE.radius + 6, 'steel', 3);
  disc(pen, GAUGE.x, GAUGE.y, GAUGE.radius, CREAM[0]);
  const spoke = (value: number): number =>
    GAUGE.least + ((GAUGE.most - GAUGE.least) * (value - GAUGE.from)) / (GAUGE.to - GAUGE.from) - Math.PI / 2;
  for (let value = 40; value <= 260; value += 20) {
    const angle = spoke(value);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const inner = value % 40 === 20 ? 36 : 39;
    line(pen, [GAUGE.x + cos * inner, GAUGE.y + sin * inner, GAUGE.x + cos * 44, GAUGE.y + sin * 44], STEEL[10], 2);
  }
  const now = part.signs.gauge;
  if (now === undefined) return;
  const angle = spoke(Number(now));
  line(pen, [GAUGE.x, GAUGE.y, GAUGE.x + Math.cos(angle) * 36, GAUGE.y + Math.sin(angle) * 36], COLOURS.action, 4);
  knob(pen, GAUGE.x, GAUGE.y, 6, 'iron', 1);
  fillBox(pen, { x: 52, y: 112, width: 56, height: 24 }, 3, CREAM[0]);
  letter(pen, words('stage:water', { value: Number(now) }), 80, 124, { size: 17, weight: 750, colour: STEEL[11], most: 52 });
}

/** The boiler's jacket with its gauge. */
export const boilerVessel: Face = {
  shape: fixed(VESSEL),
  draw(pen, part, words) {
    shell(pen, { x: 2, y: 24, width: 156, height: 146 }, 'painted', 6, 8);
    for (const x of [14, 146]) for (const y of [36, 158]) fixing(pen, x, y, 4);
    gauge(pen, part, words);
  },
};

const RADIATOR: Shape = {
  width: 330,
  height: 112,
  body: { x: 2, y: 24, width: 326, height: 86 },
  name: { x: 165, y: 8, most: 320, paper: true },
  terminals: {},
};

/** A baseboard along the wall. Whether it is warm takes a hand on its pipe. */
export const baseboard: Face = {
  shape: fixed(RADIATOR),
  draw(pen, part) {
    shell(pen, { x: 2, y: 40, width: 326, height: 70 }, 'enamel', 5, 4);
    hollow(pen, { x: 10, y: 48, width: 310, height: 28 }, MATERIAL.cavityLow, 3);
    for (let x = 16; x < 316; x += 7) line(pen, [x, 50, x, 74], STEEL[5], 2);
    fillBox(pen, { x: 10, y: 58, width: 310, height: 9 }, 3, MATERIAL.copperPipe);
    fillBox(pen, { x: 10, y: 59, width: 310, height: 2 }, 1, MATERIAL.copperPipeLight);
    const felt = part.signs.pipe;
    if (felt === undefined) return;
    if (felt === 'hot') {
      // Air that rises from it.
      for (let x = 50; x <= 290; x += 60) {
        pen.beginPath();
        pen.moveTo(x, 44);
        pen.bezierCurveTo(x - 12, 36, x + 12, 30, x, 20);
        pen.strokeStyle = COLOURS.action;
        pen.lineWidth = 3.4;
        pen.stroke();
      }
      return;
    }
    // Frost's mark: cold to the hand.
    lifted(pen, 2, () => {
      disc(pen, 296, 92, 13, CREAM[1]);
    });
    for (let arm = 0; arm < 3; arm += 1) {
      const angle = (arm * Math.PI) / 3;
      const [dx, dy] = [Math.cos(angle) * 9, Math.sin(angle) * 9];
      line(pen, [296 - dx, 92 - dy, 296 + dx, 92 + dy], MATERIAL.water, 2.4);
    }
  },
};

const STRIP: Shape = {
  width: 344,
  height: 92,
  name: { x: 172, y: 10, most: 300 },
  body: { x: 0, y: 22, width: 344, height: 70 },
  terminals: spaced(['1', '2', '3', '4', '5', '6'], { x: 42, y: 66 }, { x: 52, y: 0 }, 'down', {
    screw: 12,
    letter: { dx: 0, dy: -26, size: LETTERS.name, most: 44 },
  }),
};

/** A strip of screws where cables meet. */
export const junctionStrip: Face = {
  shape: fixed(STRIP),
  draw(pen) {
    shell(pen, { x: 0, y: 22, width: 344, height: 70 }, 'plastic', 4, 5);
    for (let screwAt = 0; screwAt < 5; screwAt += 1) line(pen, [68 + screwAt * 52, 48, 68 + screwAt * 52, 88], STEEL[9], 3);
  },
};
