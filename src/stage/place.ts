import type { COVER_LOOKS, RigPlace } from '../rig/places.ts';
import type { Box, Pen } from './pen.ts';
import type { Spot } from './wires.ts';

/** Two ends of a conduit or grommet that wires between enclosures go through. */
export interface Join {
  readonly from: Spot;
  readonly to: Spot;
  /** The covers that it leads between, empty for the bare wall; any two where it does not say. */
  readonly between?: readonly [string, string];
}

export type CoverLook = (typeof COVER_LOOKS)[number];
export type Cabinet = NonNullable<RigPlace['cabinets']>[number];
export type Pipe = NonNullable<RigPlace['pipes']>[number];

/** Wall and floor of a kind of place, and what is usual there. */
export interface Ground {
  /** Paints wall and floor over all of `bounds`, which may reach beyond the scene. */
  paint(pen: Pen, bounds: Box): void;
  /** What it is made of in the section through the house. */
  readonly colour: string;
  readonly dark?: boolean;
  readonly coverLook: CoverLook;
  readonly cabinet: Cabinet['finish'];
  readonly harness: boolean;
  readonly wireWidth: number;
}

/** What stands around the parts of a place: what the rig says, with what it leaves out worked out. Only looks. */
export interface PlaceLook {
  readonly ground: Ground;
  readonly cabinets: readonly Cabinet[];
  readonly pipes: readonly Pipe[];
  readonly coverLook: CoverLook;
  /** Wires run behind the faces here; only their ends lie in front. */
  readonly harness: boolean;
  readonly wireWidth: number;
  /** Where wires leave for other places. */
  readonly exits: readonly Spot[];
  readonly joins: readonly Join[];
  /** Where covers that are off lean, and where the tags stand that put them back, in the order of the place's covers. */
  readonly lean: readonly Box[];
  readonly tags: readonly Spot[];
}
