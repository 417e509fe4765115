import type { Cell } from './ladder-layout.ts';
import { SYMBOL } from './ladder-layout.ts';

/** Half a symbol's width: its leads end there. */
const HALF = SYMBOL / 2;

const terminal = (x: number) => <circle key={x} class="diagram-terminal" cx={x} cy={0} r={3} />;

/** Symbols in the general form of IEC 60617, from memory, lying level with their middle at the origin. */
export function DiagramSymbol({ kind, closed }: { readonly kind: Cell['kind'] | 'mains'; readonly closed: boolean }) {
  switch (kind) {
    case 'contact':
      return (
        <g class="diagram-symbol">
          <path d={closed ? `M${-HALF} 0 H-9 L13 -9 M9 -11 V0 H${HALF}` : `M${-HALF} 0 H-9 L10 -12 M9 0 H${HALF}`} />
          {[-HALF, HALF].map(terminal)}
        </g>
      );
    case 'fuse':
      return (
        <g class="diagram-symbol">
          <path d={`M${-HALF} 0 H${HALF} M-12 -6 H12 V6 H-12 Z`} />
        </g>
      );
    case 'capacitor':
      return (
        <g class="diagram-symbol">
          <path d={`M${-HALF} 0 H-3 M-3 -11 V11 M3 -11 V11 M3 0 H${HALF}`} />
        </g>
      );
    case 'link':
      return (
        <g class="diagram-symbol">
          <path d={`M${-HALF} 0 H${HALF}`} />
          {[-HALF + 6, HALF - 6].map(terminal)}
        </g>
      );
    case 'supply':
      return (
        <g class="diagram-symbol">
          <path d={`M${-HALF} 0 H-15 a5 5 0 0 1 10 0 a5 5 0 0 1 10 0 a5 5 0 0 1 10 0 H${HALF}`} />
        </g>
      );
    case 'mains':
      return (
        <g class="diagram-symbol">
          <path d={`M${-HALF} 0 H-12 M12 0 H${HALF} M-12 0 a12 12 0 0 1 24 0 a12 12 0 0 1 -24 0 M-7 0 q3.5 -7 7 0 q3.5 7 7 0`} />
        </g>
      );
    case 'coil':
      return (
        <g class="diagram-symbol">
          <path d={`M${-HALF} 0 H-9 M9 0 H${HALF} M-9 -13 H9 V13 H-9 Z`} />
        </g>
      );
    default:
      return (
        <g class="diagram-symbol">
          <path d={`M${-HALF} 0 H-15 M15 0 H${HALF} M-15 -6 H15 V6 H-15 Z`} />
        </g>
      );
  }
}
