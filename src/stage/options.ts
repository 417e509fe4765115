import type { Action } from '../attempt/actions.ts';
import type { Words } from './face.ts';
import type { Box } from './pen.ts';
import type { Lead } from './targets.ts';

/** What the drawn bench is given by the page that it stands in. */
export interface StageOptions {
  readonly t: Words;
  /** Whether things shall keep still now. */
  readonly still: () => boolean;
  /** How much larger than usual the reader has text: 1 and up. The scene opens that much closer. */
  readonly textScale: () => number;
  /** Something was done by hand: whoever gets it decides what comes of it and shows the next view. */
  onAction(action: Action): void;
  /** A sentence for the screen reader and the status line: why a press did nothing. */
  announce?(words: string): void;
  /** Whether the whole place is in sight now. */
  onSight?(whole: boolean): void;
  /** A lead was picked up or put down here. */
  onHold?(lead: Lead | undefined): void;
  /** Where what `point` was given is done, in CSS pixels of the host, whenever that changes; undefined when not in this scene. */
  onMark?(box: Box | undefined): void;
}
