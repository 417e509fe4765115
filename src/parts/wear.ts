/**
 * Damage that builds up at a rate given by the present current: 0 is new, 1 is gone. Shared by whatever melts or cooks.
 * `damage` holds what had built up by `since`; `rate` is per second from then on.
 */
export interface Wear {
  due: number;
  damage: number;
  rate: number;
  since: number;
}

/** Carries the damage to `now`, takes up the new rate, and sets `due` to the moment when it would be complete. True when it is. */
export function wearOn(state: Wear, now: number, rate: number): boolean {
  state.damage = Math.min(1, state.damage + state.rate * (now - state.since));
  state.since = now;
  state.rate = rate;
  if (state.damage >= 1 - 1e-9) {
    state.due = Number.POSITIVE_INFINITY;
    return true;
  }
  state.due = rate > 0 ? now + (1 - state.damage) / rate : Number.POSITIVE_INFINITY;
  return false;
}
