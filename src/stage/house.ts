import type { BenchView } from '../attempt/view.ts';
import { cabinetColour } from './looks/cabinets.ts';
import { GROUNDS } from './looks/grounds.ts';
import { type Box, fillBox, line, type Pen, strokeBox } from './pen.ts';
import { type Section, sectionOf } from './section.ts';
import { COLOURS, MATERIAL, SCENE, WOOD } from './tokens.ts';

/** How long a walk is seen, milliseconds. */
export const WALK_MILLISECONDS = 600;

const eased = (t: number): number => t * t * (3 - 2 * t);

function between(a: Box, b: Box, t: number): Box {
  const mix = (from: number, to: number): number => from + (to - from) * t;
  return { x: mix(a.x, b.x), y: mix(a.y, b.y), width: mix(a.width, b.width), height: mix(a.height, b.height) };
}

/** What the camera sees of the section at a moment of a walk, 0…1: out of one room, over the house, into the other. */
function walkSight({ rooms, width, height }: Section, from: string, to: string, t: number): Box {
  const house = { x: 0, y: 0, width, height };
  const [a, b] = [rooms.get(from) ?? house, rooms.get(to) ?? house];
  const straight = between(a, b, eased(t));
  // Half-way it stands back far enough to have both rooms in sight.
  return between(straight, house, 0.8 * Math.sin(Math.PI * Math.min(1, Math.max(0, t))) ** 2);
}

/** What is known of a place at a glance: its cabinets and covers, or the bodies on its wall. */
function paintRoom(pen: Pen, view: BenchView, place: string, box: Box): void {
  const look = view.looks[place];
  const ground = GROUNDS[look?.look ?? 'hall'];
  fillBox(pen, box, 2, ground.colour);
  const floor = box.height * 0.08;
  fillBox(
    pen,
    { ...box, y: box.y + box.height - floor, height: floor },
    0,
    look?.look === 'yard' ? MATERIAL.grass : MATERIAL.shelf,
  );
  const small = (at: Box): Box => ({
    x: box.x + (at.x / SCENE.width) * box.width,
    y: box.y + (at.y / SCENE.height) * box.height,
    width: (at.width / SCENE.width) * box.width,
    height: (at.height / SCENE.height) * box.height,
  });
  if (ground.dark === true) fillBox(pen, small({ x: 28, y: 24, width: 744, height: 560 }), 2, MATERIAL.matTop);
  for (const cabinet of look?.cabinets ?? []) fillBox(pen, small(cabinet), 1, cabinetColour(cabinet));
  for (const cover of view.covers) if (cover.place === place) strokeBox(pen, small(cover.at), 1, MATERIAL.cabinetLine, 0.6);
  for (const { base } of view.parts) {
    const wall = view.parts.find(({ id }) => id === base);
    if (wall?.place === place) fillBox(pen, small({ ...wall.at, width: 372, height: 178 }), 2, MATERIAL.enamel);
  }
}

/** Paints the section as a walk sees it at a moment, 0…1, over all of `bounds`; towards the end it lets the new place through. */
export function paintWalk(pen: Pen, bounds: Box, view: BenchView, from: string, t: number): void {
  const to = view.place;
  const section = sectionOf(view);
  const sight = walkSight(section, from, to, t);
  const scale = Math.max(bounds.width / sight.width, bounds.height / sight.height);
  pen.globalAlpha = t < 0.75 ? 1 : Math.max(0, (1 - t) / 0.25);
  pen.fillStyle = COLOURS.ground;
  pen.fillRect(bounds.x, bounds.y, bounds.width, bounds.height);
  pen.translate(bounds.x + bounds.width / 2, bounds.y + bounds.height / 2);
  pen.scale(scale, scale);
  pen.translate(-(sight.x + sight.width / 2), -(sight.y + sight.height / 2));
  pen.fillStyle = MATERIAL.grass;
  pen.fillRect(-SCENE.width, section.ground, SCENE.width * 3, SCENE.height);
  fillBox(pen, section.walls, 2, WOOD[4]);
  line(pen, section.roof, WOOD[6], 9);
  line(pen, section.roof, WOOD[3], 6);
  for (const [place, box] of section.rooms) {
    paintRoom(pen, view, place, box);
    if (place === to) strokeBox(pen, box, 2, COLOURS.action, 1.8);
  }
  pen.globalAlpha = 1;
}
