/** Seconds on the job that each action takes, where the rig or the part does not tell; common practice, no source. */
export const COST_SECONDS = {
  operate: 5,
  set: 10,
  pull: 20,
  turn: 5,
  mat: 60,
  seat: 30,
  meter: 3,
  probe: 8,
  clamp: 15,
  jumper: 25,
  lift: 40,
  land: 40,
  tug: 10,
  unplug: 10,
  plug: 10,
  look: 15,
  /** Running a conductor anew or making up its joint again. */
  replaceWire: 1800,
  repairJoint: 600,
} as const;

/** A change is waited for no longer than this, seconds. */
export const LONGEST_WATCH_SECONDS = 1800;
