import type { Box } from '../../stage/pen.ts';
import type { Spot } from '../../stage/wires.ts';

/** A value at a point as a drawing writes it. */
export interface PointValue {
  readonly text: string;
  /** Live, or joined: drawn in full. Otherwise in outline. */
  readonly alive: boolean;
  /** Of volts: what a technician would not call different is one along a wire. */
  readonly volts?: number;
}

/** A tag nearer to its spot than this needs no line to it, CSS pixels from edge to middle. */
const NEAR = 20;

/** What of a box is nearest to a spot. */
const nearest = ({ x, y, width, height }: Box, spot: Spot): Spot => ({
  x: Math.max(x, Math.min(x + width, spot.x)),
  y: Math.max(y, Math.min(y + height, spot.y)),
});

/** A value beside its terminal: light on dark where it is alive, in outline where not. */
export function ValueTag({ value, spot, box }: { readonly value: PointValue; readonly spot: Spot; readonly box: Box }) {
  const end = nearest(box, spot);
  const isFar = Math.hypot(end.x - spot.x, end.y - spot.y) > NEAR;
  return (
    <g class="diagram-value" data-alive={String(value.alive)}>
      {isFar && <path d={`M${spot.x} ${spot.y} L${end.x} ${end.y}`} />}
      <rect {...box} rx={value.alive ? 4 : 0} />
      <text x={box.x + box.width / 2} y={box.y + box.height / 2 + 4}>
        {value.text}
      </text>
    </g>
  );
}
