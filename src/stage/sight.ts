import type { Box } from './pen.ts';
import { SCENE } from './tokens.ts';
import type { Spot } from './wires.ts';

/** What part of the scene is on the screen: CSS pixels in a scene unit, and the scene's spot in the host's top left corner. */
export interface Sight {
  readonly unit: number;
  readonly left: number;
  readonly top: number;
}

const CLOSEST = 3;
/** A scene smaller than this on a small screen opens closer, to be panned: labels of 13 units stay legible. */
const LEGIBLE = 0.8;

/** Scale at which the whole scene is on the host, CSS pixels in a scene unit. */
export function wholeUnit(width: number, height: number): number {
  return Math.min(width / SCENE.width, height / SCENE.height);
}

/** What is painted: the scene and, where the host is wider or taller, the wall and floor around it. */
export function paintedBounds(width: number, height: number): Box {
  const unit = wholeUnit(width, height);
  const across = width / unit;
  const down = height / unit;
  return { x: (SCENE.width - across) / 2, y: (SCENE.height - down) / 2, width: across, height: down };
}

function clamped(value: number, least: number, most: number): number {
  return most < least ? (least + most) / 2 : Math.min(most, Math.max(least, value));
}

/** Keeps the sight inside what is painted and its scale between whole and close. */
export function kept(sight: Sight, width: number, height: number): Sight {
  const whole = wholeUnit(width, height);
  const unit = clamped(sight.unit, whole, Math.max(whole, CLOSEST));
  const bounds = paintedBounds(width, height);
  return {
    unit,
    left: clamped(sight.left, bounds.x, bounds.x + bounds.width - width / unit),
    top: clamped(sight.top, bounds.y, bounds.y + bounds.height - height / unit),
  };
}

/** The sight a host opens with: the whole scene, or closer on a screen too small to read it. */
export function opening(width: number, height: number, on: Spot = { x: SCENE.width / 2, y: SCENE.height / 2 }): Sight {
  const whole = wholeUnit(width, height);
  const unit = whole >= LEGIBLE ? whole : Math.max(whole, Math.min(LEGIBLE, height / SCENE.height));
  return kept({ unit, left: on.x - width / unit / 2, top: on.y - height / unit / 2 }, width, height);
}

/** Moves the sight by CSS pixels, as the hand drags the scene. */
export function panned(sight: Sight, dx: number, dy: number, width: number, height: number): Sight {
  return kept({ unit: sight.unit, left: sight.left - dx / sight.unit, top: sight.top - dy / sight.unit }, width, height);
}

/** Scales about a spot of the host (CSS pixels), which stays where it is. */
export function zoomed(sight: Sight, factor: number, about: Spot, width: number, height: number): Sight {
  const whole = wholeUnit(width, height);
  const unit = clamped(sight.unit * factor, whole, Math.max(whole, CLOSEST));
  return kept(
    { unit, left: sight.left + about.x / sight.unit - about.x / unit, top: sight.top + about.y / sight.unit - about.y / unit },
    width,
    height,
  );
}

/** The scene's spot under a spot of the host. */
export function sceneSpot(sight: Sight, host: Spot): Spot {
  return { x: sight.left + host.x / sight.unit, y: sight.top + host.y / sight.unit };
}
