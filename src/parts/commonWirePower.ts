import { has } from './modes.ts';
import type { Site } from './part.ts';

/** Volts from R to C from which a thermostat that lives on them wakes, and below which it runs on its reservoir alone; typical, no source. */
const WAKES_AT_VOLTS = 18;
const SLEEPS_BELOW_VOLTS = 14;
/**
 * How long its reservoir carries it, seconds; typical, no source. A short that its own relay makes is over only when the relay lets go: long
 * enough for a fuse.
 */
const RESERVOIR_SECONDS = 0.5;

/** `powerDue`: when it falls asleep or has started up, seconds; Infinity when neither is under way, 0 in a house that is found under power. */
export type CommonWirePower = { alive: number; powerDue: number };

/** Whether it is awake now, R and C being its power; sets `powerDue`. @param startSeconds from power to relays that answer */
export function livesOnCommon(site: Site, state: CommonWirePower, startSeconds: number): boolean {
  const awake = state.alive === 1;
  const powered = site.volts('R', 'C') >= (awake ? SLEEPS_BELOW_VOLTS : WAKES_AT_VOLTS);
  if (has(site, 'dead') || powered === awake) {
    state.powerDue = Number.POSITIVE_INFINITY;
    return awake && !has(site, 'dead');
  }
  if (state.powerDue === Number.POSITIVE_INFINITY) state.powerDue = site.now + (powered ? startSeconds : RESERVOIR_SECONDS);
  if (site.now < state.powerDue) return awake;
  state.powerDue = Number.POSITIVE_INFINITY;
  return powered;
}
