import type { BenchView } from '../attempt/view.ts';
import type { Box, Pen } from './pen.ts';
import type { Spot } from './wires.ts';

/** Words beside what they name: a heading and a line under it, by key. */
export interface Caption extends Spot {
  readonly heading: string;
  readonly line?: string;
  /** Widest that the line may run, scene units. */
  readonly most?: number;
}

/** Two ends of a conduit or grommet that wires between enclosures go through. */
export interface Join {
  readonly from: Spot;
  readonly to: Spot;
}

export type CoverLook = 'enamel' | 'louvred' | 'grey';

/** What stands around the parts of a place. Only looks: a place without a look of its own is a bare wall. */
export interface PlaceLook {
  /** Paints wall, floor and cabinets over all of `bounds`, which may reach beyond the scene. */
  backdrop(pen: Pen, bounds: Box): void;
  readonly coverLook: CoverLook;
  /** Wires run behind the faces here; only their ends lie in front. */
  readonly harness: boolean;
  readonly wireWidth: number;
  /** Where wires leave for other places. */
  readonly exits: readonly Spot[];
  readonly joins: readonly Join[];
  /** Where the tags stand that put opened covers back, in the order of the place's covers. */
  readonly tags?: readonly Spot[];
  /** Where covers that are off lean, in the order of the place's covers. */
  readonly lean?: readonly Box[];
  captions?(view: BenchView): readonly Caption[];
}
