import type { Way } from './face.ts';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A cubic Bézier: start, two handles, end. */
export type Curve = readonly [Spot, Spot, Spot, Spot];

const TOWARDS: Readonly<Record<Way, Spot>> = {
  up: { x: 0, y: -1 },
  down: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
};

export function ahead(spot: Spot, way: Way, by: number): Spot {
  return { x: spot.x + TOWARDS[way].x * by, y: spot.y + TOWARDS[way].y * by };
}

/** Moves a spot sideways of the way that its wire leaves, so that several wires under one screw stay apart. */
export function beside(spot: Spot, way: Way, by: number): Spot {
  return { x: spot.x + Math.abs(TOWARDS[way].y) * by, y: spot.y + Math.abs(TOWARDS[way].x) * by };
}

function apart(a: Spot, b: Spot): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** A stiff solid conductor between two terminals: it leaves each the way it was pushed under the screw, then bends. */
export function wireCurve(from: Spot, fromWay: Way, to: Spot, toWay: Way): Curve {
  const reach = Math.min(150, Math.max(26, apart(from, to) * 0.45));
  return [from, ahead(from, fromWay, reach), ahead(to, toWay, reach), to];
}

/** A conductor from a terminal into a hole: it arrives from wherever it comes. */
export function intoHole(from: Spot, way: Way, hole: Spot): Curve {
  const far = apart(from, hole);
  const bend = ahead(from, way, Math.min(48, far * 0.55));
  return [from, bend, { x: hole.x + (from.x - hole.x) * 0.42, y: hole.y + (from.y - hole.y) * 0.14 }, hole];
}

/** The hanging part of a test lead from the back of its probe to where it leaves the scene. */
export function leadCurve(from: Spot, way: Spot, edge: Spot): Curve {
  const fall = Math.max(60, Math.min(190, (edge.y - from.y) * 0.9 + 60));
  const across = Math.max(40, (edge.x - from.x) * 0.55);
  return [from, { x: from.x + way.x * fall, y: from.y + way.y * fall }, { x: edge.x - across, y: edge.y + 42 }, edge];
}

/** The lead of a probe that lies at rest: along the foot of the scene to its edge. */
export function restCurve(from: Spot, edge: Spot): Curve {
  const third = (edge.x - from.x) / 3;
  return [from, { x: from.x + third, y: from.y + 8 }, { x: edge.x - third, y: edge.y + 10 }, edge];
}

/** A jumper wire: two clips and a sagging bow between them. */
export function jumperCurve(from: Spot, to: Spot): Curve {
  const sag = 34 + apart(from, to) * 0.35;
  return [from, { x: from.x, y: from.y + sag }, { x: to.x, y: to.y + sag }, to];
}

export function pointOn(curve: Curve, t: number): Spot {
  const u = 1 - t;
  const [a, b, c, d] = curve;
  const weights = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t] as const;
  return {
    x: a.x * weights[0] + b.x * weights[1] + c.x * weights[2] + d.x * weights[3],
    y: a.y * weights[0] + b.y * weights[1] + c.y * weights[2] + d.y * weights[3],
  };
}

/** A curve as spots along it. */
export function sampled(curve: Curve, steps = 48): Spot[] {
  return Array.from({ length: steps + 1 }, (_, step) => pointOn(curve, step / steps));
}

/** Distance from a spot to a course, in scene units, good to about two units. */
export function distanceTo(path: readonly Spot[], spot: Spot): number {
  return path.reduce((nearest, each) => Math.min(nearest, apart(each, spot)), Infinity);
}

/** How long a probe is from its tip to where the cable leaves it, scene units. */
export const PROBE_LENGTH = 70;

/** Which way a probe's handle lies from its tip: down, or to the right where the scene's foot is near. Unit vector. */
export function probeWay(tip: Spot, foot: number): Spot {
  const room = foot - tip.y;
  const degrees = room > 150 ? 90 : room > 80 ? 60 : room > 30 ? 25 : -35;
  return { x: Math.cos((degrees * Math.PI) / 180), y: Math.sin((degrees * Math.PI) / 180) };
}
