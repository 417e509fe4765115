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
/**
 * CSS pixels that can be panned to below the scene while it is not whole: the way back to the whole place lies over the host's foot,
 * and nothing that can be pressed must stay under it.
 */
const FOOT = 60;
/** A double press brings the scene this close where it is smaller: labels of 13 units are legible then. */
const LEGIBLE = 1.1;

/** Scale at which the whole scene is on the host, CSS pixels in a scene unit. */
export function wholeUnit(width: number, height: number): number {
  return Math.min(width / SCENE.width, height / SCENE.height);
}

/** The scene and, where the host is wider or taller, the wall and floor around it, while all of it is in sight. */
export function paintedBounds(width: number, height: number): Box {
  const unit = wholeUnit(width, height);
  const across = width / unit;
  const down = height / unit;
  return { x: (SCENE.width - across) / 2, y: (SCENE.height - down) / 2, width: across, height: down };
}

/** What is painted: the same, and as far below it as can be panned to. */
export function floored(width: number, height: number): Box {
  const bounds = paintedBounds(width, height);
  const foot = SCENE.height + FOOT / wholeUnit(width, height);
  return { ...bounds, height: Math.max(bounds.height, foot - bounds.y) };
}

function clamped(value: number, least: number, most: number): number {
  return most < least ? (least + most) / 2 : Math.min(most, Math.max(least, value));
}

/** Keeps the sight on the scene, in the middle where the host is larger, and its scale between whole and close. */
export function kept(sight: Sight, width: number, height: number): Sight {
  const least = wholeUnit(width, height);
  const unit = clamped(sight.unit, least, Math.max(least, CLOSEST));
  const middle = (SCENE.height - height / unit) / 2;
  const lowest = isWhole({ ...sight, unit }, width, height) ? middle * 2 : SCENE.height + (FOOT - height) / unit;
  return {
    unit,
    left: clamped(sight.left, 0, SCENE.width - width / unit),
    top: lowest < 0 ? Math.max(middle, lowest) : clamped(sight.top, 0, lowest),
  };
}

/** How a host lies: its size and its corner on the page, CSS pixels. */
export interface Place {
  readonly width: number;
  readonly height: number;
  readonly top: number;
}

/**
 * The sight after the host has changed: what was whole stays whole. Where bars came or went above or below, nothing moves on the page;
 * where the width changed too, the same spot stays in the middle.
 */
export function resized(sight: Sight, from: Place, to: Place): Sight {
  const { width, height } = to;
  if (isWhole(sight, from.width, from.height)) return whole(width, height);
  const down = from.width === width ? to.top - from.top : (from.height - height) / 2;
  const across = (from.width - width) / 2;
  return kept({ unit: sight.unit, left: sight.left + across / sight.unit, top: sight.top + down / sight.unit }, width, height);
}

/** A scene that would be smaller than this opens closer, about what matters in it, to be panned. */
const SMALL = 0.75;

/** The sight that shows the whole scene. */
export function whole(width: number, height: number): Sight {
  return kept({ unit: 0, left: 0, top: 0 }, width, height);
}

/**
 * The sight a host opens with: the whole scene; on a screen too small to read it, as high as the host and about `focus`.
 * @param textScale for whoever reads larger text, so much closer
 */
export function opening(
  width: number,
  height: number,
  focus: Spot = { x: SCENE.width / 2, y: SCENE.height / 2 },
  textScale = 1,
): Sight {
  const all = whole(width, height);
  const unit = Math.min(1, height / SCENE.height) * textScale;
  if (all.unit >= SMALL * textScale || unit <= all.unit) return all;
  return kept({ unit, left: focus.x - width / unit / 2, top: focus.y - height / unit / 2 }, width, height);
}

/** Moves the sight by CSS pixels, as the hand drags the scene. */
export function panned(sight: Sight, dx: number, dy: number, width: number, height: number): Sight {
  return kept({ unit: sight.unit, left: sight.left - dx / sight.unit, top: sight.top - dy / sight.unit }, width, height);
}

/** Scales about a spot of the host (CSS pixels), which stays where it is. */
export function zoomed(sight: Sight, factor: number, about: Spot, width: number, height: number): Sight {
  const least = wholeUnit(width, height);
  const unit = clamped(sight.unit * factor, least, Math.max(least, CLOSEST));
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

/** A box of the scene in CSS pixels of the host. */
export function hostBox(sight: Sight, { x, y, width, height }: Box): Box {
  return {
    x: (x - sight.left) * sight.unit,
    y: (y - sight.top) * sight.unit,
    width: width * sight.unit,
    height: height * sight.unit,
  };
}

/** CSS pixels that what is brought into sight keeps from the host's edge. */
const MARGIN = 28;

/** The sight that shows a box of the scene: as close as it takes to read it there, and moved no farther than needed. */
export function shown(sight: Sight, box: Box, width: number, height: number): Sight {
  const { x, y, width: across, height: down } = hostBox(sight, box);
  const closer =
    sight.unit < SMALL ? zoomed(sight, LEGIBLE / sight.unit, { x: x + across / 2, y: y + down / 2 }, width, height) : sight;
  return brought(closer, box, width, height);
}

/** Moves the sight no farther than it takes to have a box of the scene in it; one too large for the host is put in the middle. */
function brought(sight: Sight, box: Box, width: number, height: number): Sight {
  const { x, y, width: across, height: down } = hostBox(sight, box);
  const shift = (from: number, long: number, room: number): number => {
    if (long + 2 * MARGIN > room) return (room - long) / 2 - from;
    return clamped(from, MARGIN, room - MARGIN - long) - from;
  };
  const clear = isWhole(sight, width, height) ? height : height - FOOT + MARGIN;
  return panned(sight, shift(x, across, width), shift(y, down, clear), width, height);
}

/** Whether all of the scene's width and height is in sight. */
export function isWhole(sight: Sight, width: number, height: number): boolean {
  return sight.unit <= wholeUnit(width, height) * 1.001;
}

/** Smaller than this, terminals a thumb apart in the scene are less than half a thumb apart on the screen. */
const TOO_SMALL = 0.6;

/** What a press that met nothing does on a screen too small to hit: comes close to the spot. Undefined where it is large enough. */
export function nearer(sight: Sight, about: Spot, width: number, height: number): Sight | undefined {
  return sight.unit < TOO_SMALL ? zoomed(sight, LEGIBLE / sight.unit, about, width, height) : undefined;
}

/** What a double press does: close enough to read about that spot, or back to the whole scene. */
export function toggled(sight: Sight, about: Spot, width: number, height: number): Sight {
  const least = wholeUnit(width, height);
  if (sight.unit > least * 1.05) return whole(width, height);
  return zoomed(sight, Math.max(LEGIBLE, least * 1.6) / sight.unit, about, width, height);
}
