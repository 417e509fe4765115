import type { Control } from '../parts/part.ts';
import type { AssembledPart, AssembledWire, Assembly } from '../rig/assemble.ts';
import { BODY_POSITIONS, type BodyPosition, endPoint, MAT_PLACE, type Point, terminalPoint, type WireEnd } from '../rig/points.ts';
import { BODY } from '../world/state.ts';
import { landedElsewhere } from '../world/wiring.ts';
import { activeFaults, voltsBetween } from '../world/world.ts';
import type { Bench } from './bench.ts';

/** Above this a hand keeps off: NFPA 70E's 50 V (from memory). */
export const TOUCH_VOLTS = 50;

export function bodyOf(bench: Bench, part: AssembledPart): BodyPosition | undefined {
  return part.kind.removable ? BODY_POSITIONS[bench.world.state.bodies[part.index] ?? 0] : undefined;
}

function carrierOf(bench: Bench, part: AssembledPart): AssembledPart | undefined {
  return part.data.rides === undefined ? undefined : bench.world.assembly.partById.get(part.data.rides);
}

/** Where a part is now: a body on the mat is there, and takes along what it carries. */
export function placeOf(bench: Bench, part: AssembledPart): string {
  const body = carrierOf(bench, part) ?? part;
  return bench.world.state.bodies[body.index] === BODY.mat ? MAT_PLACE : part.data.place;
}

function turnedUp(bench: Bench, body: AssembledPart): boolean {
  const position = bench.world.state.bodies[body.index];
  return position === BODY.turned || position === BODY.mat;
}

/** The removable body that sits on this base, if it is one. */
function bodyOn(assembly: Assembly, base: AssembledPart): AssembledPart | undefined {
  const pin = assembly.wires.find((wire) => wire.data.pin && wire.fromPart === base.index);
  return pin && assembly.parts[pin.toPart];
}

/** The part that the pins of a removable body go into. */
export function baseOf(assembly: Assembly, body: AssembledPart): string | undefined {
  if (!body.kind.removable) return undefined;
  const pin = assembly.wires.find((wire) => wire.data.pin && wire.toPart === body.index);
  return pin && assembly.parts[pin.fromPart]?.id;
}

function underABody(bench: Bench, part: AssembledPart): boolean {
  const body = bodyOn(bench.world.assembly, part);
  return body !== undefined && bench.world.state.bodies[body.index] === BODY.seated;
}

export function coverOpen(bench: Bench, cover: string): boolean {
  return bench.world.state.covers[bench.world.assembly.coverIndex.get(cover) ?? -1] === 1;
}

export function isHere(bench: Bench, part: AssembledPart): boolean {
  return placeOf(bench, part) === bench.place;
}

/** In the trainee's place, uncovered, and not hidden by a body that sits on it or carries it. */
export function isVisible(bench: Bench, part: AssembledPart): boolean {
  if (!isHere(bench, part)) return false;
  if (part.data.cover !== undefined && !coverOpen(bench, part.data.cover)) return false;
  const carrier = carrierOf(bench, part);
  return carrier ? turnedUp(bench, carrier) : !underABody(bench, part);
}

export function terminalsReachable(bench: Bench, part: AssembledPart): boolean {
  return isVisible(bench, part) && (!part.kind.removable || turnedUp(bench, part));
}

export function controlReachable(bench: Bench, part: AssembledPart, control: Control): boolean {
  return isVisible(bench, part) || (control.through === true && isHere(bench, part));
}

export interface WireEndNow {
  readonly wire: AssembledWire;
  readonly end: WireEnd;
  readonly lifted: boolean;
  /** Terminal on which it is landed, or would be when lifted. */
  readonly terminal: Point;
  readonly part: AssembledPart;
}

/** A wire's end as it is, swaps included. */
export function wireEnd(bench: Bench, wire: AssembledWire, end: WireEnd, moved = movedEnds(bench)): WireEndNow {
  const terminal = moved.get(endPoint(wire.id, end)) ?? wire.data[end];
  const part = bench.world.assembly.partById.get(terminal.split('.')[0] ?? '') as AssembledPart;
  return { wire, end, lifted: bench.world.state.lifted[2 * wire.index + (end === 'to' ? 1 : 0)] === 1, terminal, part };
}

export function movedEnds(bench: Bench): ReadonlyMap<Point, Point> {
  return landedElsewhere(bench.world.assembly, activeFaults(bench.world));
}

export function canLift(wire: AssembledWire): boolean {
  return !wire.data.fixed && !wire.data.pin;
}

/** A point that a probe or a jumper reaches from where the trainee stands. */
export function isReachable(bench: Bench, point: Point): boolean {
  const { assembly } = bench.world;
  if (point.includes('@')) {
    const [id = '', end] = point.split('@');
    const wire = assembly.wireById.get(id);
    if (!wire || (end !== 'from' && end !== 'to') || !canLift(wire)) return false;
    const now = wireEnd(bench, wire, end);
    return now.lifted && isVisible(bench, now.part);
  }
  const [id = '', terminal = ''] = point.split('.');
  const part = assembly.partById.get(id);
  return part?.kind.terminals.some((candidate) => candidate.id === terminal) === true && terminalsReachable(bench, part);
}

/** Where a hand takes off what was put there before: a bare end counts although its wire has been landed since. */
export function isAtHand(bench: Bench, point: Point): boolean {
  const [id = '', end] = point.split('@');
  const wire = bench.world.assembly.wireById.get(id);
  if (!wire || (end !== 'from' && end !== 'to')) return isReachable(bench, point);
  return isVisible(bench, wireEnd(bench, wire, end).part);
}

/** Every point that a probe reaches now. */
export function reachablePoints(bench: Bench): Point[] {
  const { assembly } = bench.world;
  const points = assembly.parts
    .filter((part) => terminalsReachable(bench, part))
    .flatMap((part) => part.kind.terminals.map((terminal) => terminalPoint(part.id, terminal.id)));
  const moved = movedEnds(bench);
  for (const wire of assembly.wires) {
    if (!canLift(wire)) continue;
    for (const end of ['from', 'to'] as const) {
      const now = wireEnd(bench, wire, end, moved);
      if (now.lifted && isVisible(bench, now.part)) points.push(endPoint(wire.id, end));
    }
  }
  return points;
}

export function nodeAt(bench: Bench, point: Point): number {
  return bench.world.wiring.nodeOf.get(point) ?? 0;
}

/** RMS volts of a point to earth. */
export function voltsToEarth(bench: Bench, point: Point): number {
  return voltsBetween(bench.world, nodeAt(bench, point), 0);
}
