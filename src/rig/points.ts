/** Where a removable body (the thermostat) is. */
export const BODY_POSITIONS = ['seated', 'pulled', 'turned', 'mat'] as const;
export type BodyPosition = (typeof BODY_POSITIONS)[number];

export const WIRE_ENDS = ['from', 'to'] as const;
export type WireEnd = (typeof WIRE_ENDS)[number];

/** A place that a probe can be put: `part.terminal`, or a lifted wire's bare end, `wire@from` / `wire@to`. */
export type Point = string;

export function terminalPoint(part: string, terminal: string): Point {
  return `${part}.${terminal}`;
}

export function endPoint(wire: string, end: WireEnd): Point {
  return `${wire}@${end}`;
}

/** The bench mat, where a body that was pulled off can be laid: a rig that has one calls the place so. */
export const MAT_PLACE = 'mat';
