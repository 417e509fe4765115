import type { Shape } from './face.ts';
import { type Box, disc, downward, fillBox, letter, lifted, line, type Pen, ring, strokeBox, traceBox, wrapped } from './pen.ts';
import { COLOURS, FINISH, type Finish, INK, LETTERS, light, MATERIAL, STEEL, shade } from './tokens.ts';

/** A slotted brass screw, head on. */
export function screw(pen: Pen, x: number, y: number, radius = 12.5): void {
  const shine = pen.createLinearGradient(x - radius, y - radius, x + radius, y + radius);
  shine.addColorStop(0, MATERIAL.brassLight);
  shine.addColorStop(0.55, MATERIAL.brass);
  lifted(pen, 2, () => {
    disc(pen, x, y, radius, shine);
  });
  ring(pen, x, y, radius, MATERIAL.brassShade, 1.2);
  line(pen, [x - radius * 0.7, y + radius * 0.26, x + radius * 0.7, y - radius * 0.26], MATERIAL.brassSlot, radius * 0.24);
}

/** A steel screw that holds a cover: not a terminal. */
export function fixing(pen: Pen, x: number, y: number, radius = 5): void {
  disc(pen, x, y, radius, MATERIAL.steel);
  ring(pen, x, y, radius, MATERIAL.steelDark, 1);
  line(pen, [x - radius * 0.6, y - radius * 0.6, x + radius * 0.6, y + radius * 0.6], MATERIAL.steelDark, 1.4);
  line(pen, [x - radius * 0.6, y + radius * 0.6, x + radius * 0.6, y - radius * 0.6], MATERIAL.steelDark, 1.4);
}

/** A blade terminal in its dark nest. */
export function blade(pen: Pen, x: number, y: number, size = 13): void {
  fillBox(pen, { x: x - size, y: y - size, width: size * 2, height: size * 2 }, 4, MATERIAL.boardInset);
  fillBox(pen, { x: x - size * 0.46, y: y - size * 0.76, width: size * 0.92, height: size * 1.52 }, 2, MATERIAL.pin);
  fillBox(pen, { x: x - size * 0.46, y: y - size * 0.76, width: size * 0.32, height: size * 1.52 }, 2, MATERIAL.pinLight);
}

/** A solid thing of a finish: shadow below it, shaded from the upper left, a fine light along its lit edges. */
export function shell(pen: Pen, box: Box, finish: Finish, lift = 5, corner: number = INK.corner): void {
  const { top, foot, edge } = FINISH[finish];
  lifted(pen, lift, () => {
    fillBox(pen, box, corner, downward(pen, box, top, foot));
  });
  strokeBox(pen, { x: box.x + 0.5, y: box.y + 0.5, width: box.width - 1, height: box.height - 1 }, corner, edge, INK.edge);
  const [left, upper] = [box.x + 2, box.y + 2];
  pen.beginPath();
  pen.moveTo(left, box.y + box.height - corner - 2);
  pen.lineTo(left, upper + corner);
  pen.quadraticCurveTo(left, upper, left + corner, upper);
  pen.lineTo(box.x + box.width - corner - 2, upper);
  pen.strokeStyle = light(LIGHT_EDGE[finish] ?? 0.5);
  pen.lineWidth = INK.edge;
  pen.stroke();
}

/** How bright the light along a lit edge is, where it is not half. */
const LIGHT_EDGE: Partial<Record<Finish, number>> = { iron: 0.16, plastic: 0.16, board: 0.2, steel: 0.28, enamel: 0.8 };

/** A round thing of a finish, lit and shaded like `shell`. */
export function knob(pen: Pen, x: number, y: number, radius: number, finish: Finish, lift = 4): void {
  const { top, foot, edge } = FINISH[finish];
  const box = { x: x - radius, y: y - radius, width: radius * 2, height: radius * 2 };
  lifted(pen, lift, () => {
    disc(pen, x, y, radius, downward(pen, box, top, foot));
  });
  ring(pen, x, y, radius - 0.5, edge, INK.edge);
  pen.beginPath();
  pen.arc(x, y, radius - 2, Math.PI * 0.95, Math.PI * 1.6);
  pen.strokeStyle = light(LIGHT_EDGE[finish] ?? 0.5);
  pen.lineWidth = INK.edge;
  pen.stroke();
}

/** A hollow that things sit in: dark, with the shadow of its upper left edge. */
export function hollow(pen: Pen, box: Box, fill: string = STEEL[10], corner: number = INK.corner): void {
  fillBox(pen, box, corner, fill);
  pen.save();
  traceBox(pen, box, corner);
  pen.clip();
  pen.fillStyle = shade(0.35);
  pen.fillRect(box.x, box.y, box.width, 4);
  pen.fillRect(box.x, box.y, 3, box.height);
  pen.restore();
  strokeBox(pen, box, corner, STEEL[11], 1);
}

/** The blades of a face in their dark block: every push-on terminal that no screw holds. */
export function blades(pen: Pen, shape: Shape, size = 12): void {
  for (const spot of Object.values(shape.terminals)) if (spot.screw === undefined) blade(pen, spot.x, spot.y, size);
}

/** Sound that can be seen: arcs that come off something that hums or turns. `strained`: it hums and does not turn. */
export function soundArcs(pen: Pen, x: number, y: number, radius: number, strained: boolean): void {
  pen.save();
  pen.strokeStyle = strained ? COLOURS.action : light(0.75);
  pen.lineWidth = 2.4;
  pen.lineCap = 'round';
  for (const side of [0, Math.PI]) {
    for (const [step, wide] of [
      [0, 0.32],
      [7, 0.42],
    ] as const) {
      pen.beginPath();
      if (strained) {
        for (let turn = -3; turn <= 3; turn += 1) {
          const angle = side + (turn / 3) * wide;
          const far = radius + step + (turn % 2 === 0 ? 0 : 4);
          pen.lineTo(x + Math.cos(angle) * far, y + Math.sin(angle) * far);
        }
      } else pen.arc(x, y, radius + step, side - wide, side + wide);
      pen.stroke();
    }
  }
  pen.restore();
}

/** Arrows round a shaft that turns, two when it turns fast: seen where nothing may move, too. */
export function turnArrow(pen: Pen, x: number, y: number, radius: number, arrows: 1 | 2): void {
  pen.save();
  pen.strokeStyle = COLOURS.focus;
  pen.fillStyle = COLOURS.focus;
  pen.lineWidth = 3;
  pen.lineCap = 'round';
  for (const start of arrows === 1 ? [-2.5] : [-2.5, 0.64]) {
    const end = start + 1.7;
    pen.beginPath();
    pen.arc(x, y, radius, start, end);
    pen.stroke();
    pen.save();
    pen.translate(x + Math.cos(end) * radius, y + Math.sin(end) * radius);
    pen.rotate(end + Math.PI / 2);
    pen.beginPath();
    pen.moveTo(8, 0);
    pen.lineTo(-3, -6);
    pen.lineTo(-3, 6);
    pen.closePath();
    pen.fill();
    pen.restore();
  }
  pen.restore();
}

/** A slit pressed into sheet steel. */
export function louvre(pen: Pen, x: number, y: number, width: number, dark: string, light: string): void {
  fillBox(pen, { x, y, width, height: 6 }, 3, dark);
  fillBox(pen, { x: x + 2, y: y + 5, width: width - 4, height: 2 }, 1, light);
}

/** A paper label stuck on metal with a line of print. */
export function plate(pen: Pen, box: Box, text: string, size = 13): void {
  fillBox(pen, box, 3, MATERIAL.label);
  strokeBox(pen, box, 3, MATERIAL.enamelLine, 1);
  letter(pen, text, box.x + box.width / 2, box.y + box.height / 2, {
    size,
    colour: MATERIAL.labelInk,
    weight: 600,
    most: box.width - Math.min(8, box.width * 0.1),
  });
}

/** The crimped sleeve by which a wire is pushed on a blade. */
export function sleeve(pen: Pen, x: number, y: number, colour: string): void {
  fillBox(pen, { x: x - 5.5, y: y - 8, width: 11, height: 16 }, 4, MATERIAL.outline);
  fillBox(pen, { x: x - 4.5, y: y - 7, width: 9, height: 14 }, 3, colour);
  fillBox(pen, { x: x - 3.5, y: y - 6, width: 2.5, height: 12 }, 1.2, light(0.28));
}

/** A grommet or conduit's end that wires come out of. */
export function bushing(pen: Pen, x: number, y: number, radius = 14): void {
  disc(pen, x, y, radius, MATERIAL.iron);
  disc(pen, x, y, radius * 0.66, MATERIAL.hole);
  ring(pen, x, y, radius, MATERIAL.steelDark, 1);
}

/** A two-position toggle; `on` puts the knob to the right and makes it orange. */
export function toggle(pen: Pen, box: Box, on: boolean): void {
  hollow(pen, box, MATERIAL.toggleTrack, box.height / 2);
  const radius = box.height * 0.6;
  const x = on ? box.x + box.width - radius * 1.05 : box.x + radius * 1.05;
  knob(pen, x, box.y + box.height / 2, radius, on ? 'signal' : 'ceramic', 2);
}

/** A paper tag that can be pressed: what a hand can do next. */
export function tag(pen: Pen, box: Box, text: string): void {
  lifted(pen, 3, () => {
    traceBox(pen, box, 6);
    pen.fillStyle = MATERIAL.label;
    pen.fill();
  });
  ring(pen, box.x + 12, box.y + box.height / 2, 3.4, MATERIAL.brassShade, 1.6);
  const most = box.width - 28;
  const how = { size: LETTERS.name, colour: MATERIAL.labelInk, weight: 600, align: 'left', most } as const;
  // Sets the face that the rows are measured in.
  letter(pen, ' ', box.x, box.y, how);
  const rows = pen.measureText(text).width <= most * 1.12 ? [text] : wrapped(pen, text, most);
  rows.forEach((row, index) => {
    letter(pen, row, box.x + 22, box.y + box.height / 2 + (index - (rows.length - 1) / 2) * 14, how);
  });
}
