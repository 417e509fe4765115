import { type Box, fillBox, line, type Pen, strokeBox } from './pen.ts';
import { COLOURS, MATERIAL, SCENE, WOOD } from './tokens.ts';

/** Where each place lies in a section through the house, in the section's own units; a place that is not here is a room upstairs. */
const ROOMS: Readonly<Record<string, Box>> = {
  mat: { x: 40, y: 70, width: 100, height: 81 },
  hallway: { x: 150, y: 70, width: 100, height: 81 },
  furnace: { x: 150, y: 161, width: 100, height: 81 },
  panel: { x: 40, y: 161, width: 100, height: 81 },
  outdoor: { x: 275, y: 161, width: 100, height: 81 },
};
const UPSTAIRS: Box = { x: 150, y: 70, width: 100, height: 81 };
const HOUSE: Box = { x: 0, y: -6, width: 400, height: 324 };

/** How long a walk is seen, milliseconds. */
export const WALK_MILLISECONDS = 600;

const WALLS: Readonly<Record<string, string>> = {
  mat: MATERIAL.benchWood,
  hallway: MATERIAL.plaster,
  furnace: MATERIAL.closetWall,
  panel: MATERIAL.closetShade,
  outdoor: MATERIAL.outdoorWall,
};

const room = (place: string): Box => ROOMS[place] ?? UPSTAIRS;
const eased = (t: number): number => t * t * (3 - 2 * t);

function between(a: Box, b: Box, t: number): Box {
  const mix = (from: number, to: number): number => from + (to - from) * t;
  return { x: mix(a.x, b.x), y: mix(a.y, b.y), width: mix(a.width, b.width), height: mix(a.height, b.height) };
}

/** What the camera sees of the section at a moment of a walk, 0…1: out of one room, over the house, into the other. */
export function walkSight(from: string, to: string, t: number): Box {
  const [a, b] = [room(from), room(to)];
  const straight = between(a, b, eased(t));
  // Half-way it stands back far enough to have both rooms in sight.
  return between(straight, HOUSE, 0.8 * Math.sin(Math.PI * Math.min(1, Math.max(0, t))) ** 2);
}

/** Paints the section as a walk sees it at a moment, 0…1, over all of `bounds`; towards the end it lets the new place through. */
export function paintWalk(pen: Pen, bounds: Box, from: string, to: string, t: number): void {
  const sight = walkSight(from, to, t);
  const scale = Math.max(bounds.width / sight.width, bounds.height / sight.height);
  pen.globalAlpha = t < 0.75 ? 1 : Math.max(0, (1 - t) / 0.25);
  pen.fillStyle = COLOURS.ground;
  pen.fillRect(bounds.x, bounds.y, bounds.width, bounds.height);
  pen.translate(bounds.x + bounds.width / 2, bounds.y + bounds.height / 2);
  pen.scale(scale, scale);
  pen.translate(-(sight.x + sight.width / 2), -(sight.y + sight.height / 2));
  pen.fillStyle = MATERIAL.grass;
  pen.fillRect(-SCENE.width, 246, SCENE.width * 3, SCENE.height);
  fillBox(pen, { x: 30, y: 60, width: 230, height: 192 }, 3, WOOD[4]);
  line(pen, [10, 66, 145, 4, 280, 66], WOOD[6], 12);
  line(pen, [10, 66, 145, 4, 280, 66], WOOD[3], 8);
  for (const [place, box] of Object.entries(ROOMS)) {
    fillBox(pen, box, 2, WALLS[place] ?? MATERIAL.plaster);
    pen.fillStyle = place === 'outdoor' ? MATERIAL.grass : MATERIAL.shelf;
    pen.fillRect(box.x, box.y + box.height * 0.92, box.width, box.height * 0.08);
    if (place === to) strokeBox(pen, box, 2, COLOURS.action, 2.4);
  }
  // What is known of each room at a glance: thermostat, mat, furnace, panel and condensing unit.
  fillBox(pen, { x: 202, y: 80, width: 44, height: 22 }, 3, MATERIAL.enamel);
  fillBox(pen, { x: 44, y: 74, width: 92, height: 68 }, 2, MATERIAL.matTop);
  fillBox(pen, { x: 173, y: 163, width: 76, height: 72 }, 2, MATERIAL.cabinetShade);
  fillBox(pen, { x: 58, y: 163, width: 64, height: 72 }, 2, MATERIAL.panelGreyShade);
  fillBox(pen, { x: 297, y: 163, width: 76, height: 72 }, 2, MATERIAL.outdoorUnitShade);
  pen.globalAlpha = 1;
}
