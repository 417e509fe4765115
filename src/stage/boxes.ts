import type { Box } from './pen.ts';
import type { PlacedPart } from './placed.ts';
import type { Spot } from './wires.ts';

/** Whether a spot lies in a box that is `margin` larger on every side. */
export function holds(box: Box, { x, y }: Spot, margin: number): boolean {
  return x > box.x - margin && x < box.x + box.width + margin && y > box.y - margin && y < box.y + box.height + margin;
}

/** Whether two boxes come nearer to each other than `margin`. */
export function overlaps(a: Box, b: Box, margin: number): boolean {
  return (
    a.x < b.x + b.width + margin && b.x < a.x + a.width + margin && a.y < b.y + b.height + margin && b.y < a.y + a.height + margin
  );
}

/** What of a part in the scene is solid. */
export function solidBox({ x, y, shape }: PlacedPart): Box {
  const { body } = shape;
  return body === undefined ? { x, y, width: shape.width, height: shape.height } : { ...body, x: x + body.x, y: y + body.y };
}

/** Where terminals stand in the scene. */
export function terminalSpots(parts: readonly PlacedPart[]): Spot[] {
  return parts.flatMap(({ shape, x, y }) => Object.values(shape.terminals).map((spot) => ({ x: x + spot.x, y: y + spot.y })));
}
