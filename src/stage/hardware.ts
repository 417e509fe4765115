import { type Box, disc, downward, fillBox, letter, lifted, line, type Pen, ring, strokeBox, traceBox } from './pen.ts';
import { FAMILIES, light, MATERIAL, shade } from './tokens.ts';

/** A slotted brass screw, head on. */
export function screw(pen: Pen, x: number, y: number, radius = 12.5): void {
  const shine = pen.createLinearGradient(x - radius, y - radius, x + radius, y + radius);
  shine.addColorStop(0, MATERIAL.brassLight);
  shine.addColorStop(0.55, MATERIAL.brass);
  lifted(pen, 2, () => {
    disc(pen, x, y, radius, shine);
  });
  ring(pen, x, y, radius, MATERIAL.brassShade, 1.2);
  line(
    pen,
    [
      [x - radius * 0.7, y + radius * 0.26],
      [x + radius * 0.7, y - radius * 0.26],
    ],
    MATERIAL.brassSlot,
    radius * 0.24,
  );
}

/** A steel screw that holds a cover: not a terminal. */
export function fixing(pen: Pen, x: number, y: number, radius = 5): void {
  disc(pen, x, y, radius, MATERIAL.steel);
  ring(pen, x, y, radius, MATERIAL.steelDark, 1);
  line(
    pen,
    [
      [x - radius * 0.6, y - radius * 0.6],
      [x + radius * 0.6, y + radius * 0.6],
    ],
    MATERIAL.steelDark,
    1.4,
  );
  line(
    pen,
    [
      [x - radius * 0.6, y + radius * 0.6],
      [x + radius * 0.6, y - radius * 0.6],
    ],
    MATERIAL.steelDark,
    1.4,
  );
}

/** A blade terminal in its dark nest. */
export function blade(pen: Pen, x: number, y: number, size = 13): void {
  fillBox(pen, { x: x - size, y: y - size, width: size * 2, height: size * 2 }, 4, MATERIAL.boardInset);
  fillBox(pen, { x: x - size * 0.46, y: y - size * 0.76, width: size * 0.92, height: size * 1.52 }, 2, MATERIAL.pin);
  fillBox(pen, { x: x - size * 0.46, y: y - size * 0.76, width: size * 0.32, height: size * 1.52 }, 2, MATERIAL.pinLight);
}

/** A box of pressed and painted steel: soft corners, light from above. */
export function shell(pen: Pen, box: Box, corner: number, top: string, foot: string, edge: string, lift = 8): void {
  lifted(pen, lift, () => {
    fillBox(pen, box, corner, downward(pen, box, top, foot));
  });
  strokeBox(pen, { x: box.x + 0.5, y: box.y + 0.5, width: box.width - 1, height: box.height - 1 }, corner, edge, 1);
}

/** The white case of what hangs on the hallway's wall. */
export function enamelCase(pen: Pen, box: Box, corner = 14): void {
  lifted(pen, 10, () => {
    fillBox(pen, box, corner, downward(pen, box, MATERIAL.enamelLight, MATERIAL.enamelShade));
  });
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

/** The name that the workshop has written under or over a part. */
export function nameTape(
  pen: Pen,
  text: string,
  x: number,
  y: number,
  most: number,
  dark = false,
  align: CanvasTextAlign = 'left',
): void {
  if (dark) {
    // A dark tape behind light letters, so that a wire underneath does not break them up.
    pen.font = `600 13.5px ${FAMILIES.display}`;
    const width = Math.min(most, pen.measureText(text).width) + 12;
    const left = align === 'center' ? x - width / 2 : x - 6;
    fillBox(pen, { x: left, y: y - 9, width, height: 18 }, 4, shade(0.78));
  }
  letter(pen, text, x, y, {
    size: 13.5,
    colour: dark ? MATERIAL.boardInk : MATERIAL.labelInk,
    weight: 600,
    family: 'display',
    align,
    most,
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

/** A two-position toggle; `on` puts the knob to the right. */
export function toggle(pen: Pen, box: Box, on: boolean, knob: string): void {
  fillBox(pen, box, box.height / 2, MATERIAL.toggleTrack);
  const radius = box.height * 0.6;
  const x = on ? box.x + box.width - radius * 1.05 : box.x + radius * 1.05;
  lifted(pen, 2, () => {
    disc(pen, x, box.y + box.height / 2, radius, knob);
  });
}

/** A paper tag that can be pressed: what a hand can do next. */
export function tag(pen: Pen, box: Box, text: string): void {
  lifted(pen, 3, () => {
    traceBox(pen, box, 6);
    pen.fillStyle = MATERIAL.label;
    pen.fill();
  });
  ring(pen, box.x + 12, box.y + box.height / 2, 3.4, MATERIAL.brassShade, 1.6);
  letter(pen, text, box.x + 22, box.y + box.height / 2, {
    size: 13.5,
    colour: MATERIAL.labelInk,
    weight: 600,
    align: 'left',
    most: box.width - 28,
  });
}
