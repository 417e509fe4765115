import { type Lag, lagAt, lagReaches } from './lag.ts';
import { has } from './modes.ts';
import type { ActiveFault, Mode } from './part.ts';

/**
 * A winding's joint that holds while it is cool and parts when it has been live for a while; parted it carries nothing, cools, and holds
 * again. Common practice, no source.
 */
export const OPENS_WARM: Mode = { id: 'opensWarm', weight: 0.3, intermittent: true };

/** Warmth at which it parts, and at which it holds again, as a share of what rated volts bring in the end; typical, no source. */
export const PARTS_AT = 0.7;
export const HOLDS_AT = 0.35;
/** Slack of a crossing's reckoning. */
const NEAR = 1e-6;

/** What a part remembers of such a joint; `turns` is when it will part or hold next, seconds, as things stand. */
export type WarmJoint = { warmth: number; heading: number; feltAt: number; parted: number; turns: number };

interface Felt {
  readonly fault: ActiveFault | undefined;
  readonly now: number;
}

/** A joint that is cold and holds. */
export function coldJoint(): WarmJoint {
  return { warmth: 0, heading: 0, feltAt: 0, parted: 0, turns: Number.POSITIVE_INFINITY };
}

/** Whether it stands open now; never in a part without this fault. */
export function partedWarm(site: Felt, joint: WarmJoint): boolean {
  return joint.parted === 1 && has(site, OPENS_WARM.id);
}

/**
 * Warms or cools it up to now and lets it part or hold.
 * @param share volts on the part, as a share of its rated ones: its warmth heads for the square of it while it carries current
 * @returns whether it has just parted, or holds again
 */
export function warmJoint(site: Felt, joint: WarmJoint, share: number, tauSeconds: number): boolean {
  if (!has(site, OPENS_WARM.id)) return false;
  joint.warmth = lagAt(lagOf(joint), site.now, tauSeconds);
  joint.feltAt = site.now;
  const was = joint.parted;
  joint.parted = (was === 1 ? joint.warmth > HOLDS_AT + NEAR : joint.warmth >= PARTS_AT - NEAR) ? 1 : 0;
  joint.heading = joint.parted === 1 ? 0 : share * share;
  joint.turns = lagReaches(lagOf(joint), joint.parted === 1 ? HOLDS_AT : PARTS_AT, tauSeconds);
  return joint.parted !== was;
}

function lagOf({ warmth, heading, feltAt }: WarmJoint): Lag {
  return { warmth, target: heading, since: feltAt };
}
