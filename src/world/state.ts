import type { PartState } from '../parts/part.ts';
import type { Point } from '../rig/points.ts';

/** Where a removable body is, as a number in a snapshot. */
export const BODY = { seated: 0, pulled: 1, turned: 2, mat: 3 } as const;

/** All that changes in a world: small, flat, and cloned by copying. */
export interface WorldState {
  /** Simulated seconds. */
  time: number;
  /** °F by room. */
  readonly rooms: number[];
  /** When the network last settled, seconds, and the rooms then, °F. */
  settledAt: number;
  readonly settledRooms: number[];
  /** When a room will have crossed a temperature that a part watches, seconds; Infinity: never, as things stand. */
  crossing: number;
  /** By part. */
  readonly parts: PartState[];
  /** By part; 0 for a part that stays where it is. */
  readonly bodies: number[];
  /** By cover: 1 is open. */
  readonly covers: number[];
  /** By wire and end: 2·wire is its `from`, 2·wire + 1 its `to`; 1 is lifted. */
  readonly lifted: number[];
  /** By wire: until when a stir holds an intermittent conductor together, seconds. */
  readonly stirredUntil: number[];
  /** Faults that were put right, by their place in the world's list. */
  readonly repaired: number[];
  jumpers: { readonly from: Point; readonly to: Point }[];
  /** A meter wired in series. */
  series: { readonly red: Point; readonly black: Point } | undefined;
  /** 1 while the parts could not agree on a state (chatter). */
  unsettled: number;
}

export function cloneState(state: WorldState): WorldState {
  return {
    ...state,
    rooms: [...state.rooms],
    settledRooms: [...state.settledRooms],
    parts: state.parts.map((part) => ({ ...part })),
    bodies: [...state.bodies],
    covers: [...state.covers],
    lifted: [...state.lifted],
    stirredUntil: [...state.stirredUntil],
    repaired: [...state.repaired],
    jumpers: [...state.jumpers],
  };
}
