import type { Element } from './elements.ts';
import type { Point } from './points.ts';
import type { RigData, RigWire } from './schema.ts';

/** Points that wires join, as the rig was wired at the factory. */
export interface Nets {
  /** A point's net, as one of its points. */
  of(point: Point): Point;
  /** The wires from one point to another of the same net, the fewest that do. Pins between a body and its base are none. */
  way(from: Point, to: Point): readonly RigWire[];
}

/** @param joints links inside parts that are no more than copper */
export function netsOf(rig: RigData, joints: readonly Element[]): Nets {
  const beside = new Map<Point, { readonly to: Point; readonly wire: RigWire | undefined }[]>();
  const join = (from: Point, to: Point, wire: RigWire | undefined): void => {
    beside.set(from, [...(beside.get(from) ?? []), { to, wire }]);
    beside.set(to, [...(beside.get(to) ?? []), { to: from, wire }]);
  };
  for (const wire of rig.wires) join(wire.from, wire.to, wire.pin ? undefined : wire);
  for (const { from, to } of joints) join(from, to, undefined);

  const net = new Map<Point, Point>();
  const of = (point: Point): Point => {
    const known = net.get(point);
    if (known !== undefined) return known;
    const reached = [point];
    for (const each of reached) {
      if (net.has(each)) continue;
      net.set(each, point);
      for (const { to } of beside.get(each) ?? []) if (!net.has(to)) reached.push(to);
    }
    return point;
  };
  const way = (from: Point, to: Point): readonly RigWire[] => {
    const came = new Map<Point, readonly RigWire[]>([[from, []]]);
    const queue = [from];
    for (const each of queue) {
      const wires = came.get(each) ?? [];
      if (each === to) return wires;
      for (const { to: next, wire } of beside.get(each) ?? []) {
        if (came.has(next)) continue;
        came.set(next, wire === undefined ? wires : [...wires, wire]);
        queue.push(next);
      }
    }
    return [];
  };
  return { of, way };
}
