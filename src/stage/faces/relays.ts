import { type Face, fixed, type Shape, spaced } from '../face.ts';
import { blades, hollow, knob, shell, soundArcs } from '../hardware.ts';
import { disc, fillBox, letter, line, type Pen, ring } from '../pen.ts';
import { COLOURS, CREAM, INK, LETTERS, MATERIAL, STEEL } from '../tokens.ts';

const COIL = { A1: { x: 20, y: 38, way: 'left' }, A2: { x: 96, y: 38, way: 'right' } } as const;
const PRINT = { dx: 0, dy: -19, size: LETTERS.small, most: 40 } as const;

function relayShape(contacts: readonly string[]): Shape {
  const step = contacts.length === 3 ? 44 : 68;
  return {
    width: 116,
    height: 126,
    body: { x: 2, y: 22, width: 112, height: 102 },
    name: { x: 58, y: 8, most: 108 },
    terminals: {
      ...COIL,
      ...spaced(contacts, { x: contacts.length === 3 ? 14 : 24, y: 109 }, { x: step, y: 0 }, 'down', { letter: PRINT }),
    },
  };
}

/** The armature behind its window: lifted off its contacts, or drawn down to them with a bar of orange. */
function armature(pen: Pen, armatureSign: string | number | undefined, y: number): void {
  hollow(pen, { x: 14, y, width: 88, height: 26 }, STEEL[11], 4);
  if (armatureSign === undefined) return;
  const isIn = armatureSign === 'in';
  line(pen, [22, y + 20, 94, y + (isIn ? 20 : 7)], STEEL[1], 4);
  disc(pen, 22, y + 20, 4, STEEL[3]);
  disc(pen, 92, y + 22, 4, MATERIAL.brass);
  if (isIn) line(pen, [30, y + 15, 88, y + 15], COLOURS.action, 3.4);
}

function base(pen: Pen, shape: Shape): void {
  shell(pen, shape.body ?? { x: 0, y: 0, width: 0, height: 0 }, 'plastic');
}

const CONTROL = relayShape(['COM', 'NO', 'NC']);

/** A plug-in relay in its clear case. */
export const controlRelay: Face = {
  shape: fixed(CONTROL),
  draw(pen, part) {
    base(pen, CONTROL);
    armature(pen, part.signs.armature, 54);
    blades(pen, CONTROL, 11);
  },
};

const LOCKOUT = relayShape(['COM', 'NC']);

/** The lockout relay: a long coil of fine wire beside its armature. */
export const lockoutRelay: Face = {
  shape: fixed(LOCKOUT),
  draw(pen, part) {
    base(pen, LOCKOUT);
    fillBox(pen, { x: 42, y: 28, width: 32, height: 20 }, 3, MATERIAL.coil);
    for (let x = 45; x < 73; x += 3) line(pen, [x, 29, x, 47], MATERIAL.coilTurn, 1);
    armature(pen, part.signs.armature, 54);
    blades(pen, LOCKOUT, 11);
  },
};

const TIMER = relayShape(['COM', 'NO']);
/** Turns of the dial's mark at its two ends, radians, for no seconds and for the most. */
const DIAL = { from: -2.4, to: 2.4, most: 600 } as const;

/** The time delay relay: a sealed block with a dial. What the dial stands at is only read by looking close. */
export const timeDelayRelay: Face = {
  shape: fixed(TIMER),
  draw(pen, part) {
    base(pen, TIMER);
    const seen = part.signs.delay;
    knob(pen, 58, 40, 15, 'ceramic', 2);
    if (seen !== undefined) {
      const turn = DIAL.from + ((DIAL.to - DIAL.from) * Math.min(Number(seen), DIAL.most)) / DIAL.most;
      line(pen, [58, 40, 58 + 13 * Math.sin(turn), 40 - 13 * Math.cos(turn)], COLOURS.action, 3);
      letter(pen, String(seen), 58, 90, { size: LETTERS.small, weight: 650, colour: CREAM[1], most: 44 });
    }
    armature(pen, part.signs.armature, 56);
    blades(pen, TIMER, 11);
  },
};

const INTERLOCK: Shape = {
  width: 116,
  height: 110,
  body: { x: 2, y: 22, width: 112, height: 86 },
  name: { x: 58, y: 8, most: 108 },
  terminals: spaced(['A1', 'A2'], { x: 24, y: 92 }, { x: 68, y: 0 }, 'down', { letter: { ...PRINT, most: 24 } }),
};

/** The exhaust fans' interlock in its little box. How many coils hang in it is only seen by looking in; that they chatter is heard. */
export const fanInterlock: Face = {
  shape: fixed(INTERLOCK),
  draw(pen, part) {
    shell(pen, { x: 2, y: 22, width: 112, height: 86 }, 'zinc');
    const coils = part.signs.coils;
    if (coils === undefined) {
      shell(pen, { x: 10, y: 28, width: 96, height: 34 }, 'painted', 2, 3);
      for (const x of [16, 100]) ring(pen, x, 45, 3, MATERIAL.steelDark, INK.edge);
    } else {
      hollow(pen, { x: 10, y: 28, width: 96, height: 34 }, STEEL[10], 3);
      for (let coil = 0; coil < Number(coils); coil += 1) {
        const x = 14 + coil * 18;
        fillBox(pen, { x, y: 33, width: 15, height: 24 }, 2, MATERIAL.coil);
        for (let y = 36; y < 56; y += 4) line(pen, [x + 1, y, x + 14, y], MATERIAL.coilTurn, 1.4);
      }
    }
    if (part.signs.chatter === 1) soundArcs(pen, 58, 46, 44, true);
    blades(pen, INTERLOCK, 11);
  },
};
