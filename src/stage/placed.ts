import type { PartView } from '../attempt/view.ts';
import type { Point, WireEnd } from '../rig/points.ts';
import type { Face, Shape } from './face.ts';
import type { Spot } from './wires.ts';

/** A part with its face, standing in the scene. */
export interface PlacedPart {
  readonly part: PartView;
  readonly face: Face;
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
}

/** One end of a wire as it can be taken hold of: under its screw, or lifted and bare. */
export interface PlacedEnd extends Spot {
  readonly wire: string;
  readonly end: WireEnd;
  readonly lifted: boolean;
  readonly point: Point;
  /** Where the insulation ends. */
  readonly root: Spot;
}

/** A visible run of a wire. */
export interface Run {
  readonly wire: string;
  readonly cable: string | undefined;
  readonly colour: string;
  /** Its course, as spots a few scene units apart. */
  readonly path: readonly Spot[];
  /** Which ends of the course are at a terminal: only these lie in front of the faces where wires run behind. */
  readonly landed: readonly [boolean, boolean];
  /** Whether a screw holds it there. */
  readonly screwed: readonly [boolean, boolean];
}
