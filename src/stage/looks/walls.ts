import { type Box, line, type Pen } from '../pen.ts';
import { SCENE } from '../tokens.ts';

/** Where a wall meets its shelf or floor, scene units. */
export const FOOT = 596;

/** The right edge of what is painted. */
export function right(bounds: Box): number {
  return bounds.x + bounds.width;
}

/** Lamp light on a wall: brightest at the middle, falling off to the corners. */
function lamp(pen: Pen, _bounds: Box, light: string, middle: string, shade: string): CanvasGradient {
  const glow = pen.createRadialGradient(SCENE.width * 0.42, SCENE.height * 0.2, 40, SCENE.width * 0.45, SCENE.height * 0.34, 760);
  glow.addColorStop(0, light);
  glow.addColorStop(0.45, middle);
  glow.addColorStop(1, shade);
  return glow;
}

/** A wall by lamp light, over all that is painted. */
export function wall(pen: Pen, bounds: Box, light: string, middle: string, shade: string): void {
  pen.fillStyle = lamp(pen, bounds, light, middle, shade);
  pen.fillRect(bounds.x, bounds.y, bounds.width, bounds.height);
}

/** Level lines across a wall. */
export function courses(pen: Pen, bounds: Box, step: number, colour: string): void {
  for (let y = 40 - step * Math.ceil((40 - bounds.y) / step); y < FOOT; y += step) {
    line(pen, [bounds.x, y, right(bounds), y], colour, 2);
  }
}

/** Shelf or floor below a wall. */
export function ledge(pen: Pen, bounds: Box, edge: string, top: string): void {
  pen.fillStyle = top;
  pen.fillRect(bounds.x, FOOT, bounds.width, bounds.y + bounds.height - FOOT);
  pen.fillStyle = edge;
  pen.fillRect(bounds.x, FOOT, bounds.width, 7);
}
