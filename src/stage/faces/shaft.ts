import type { Motion, Moving } from '../face.ts';
import type { Pen } from '../pen.ts';

/** How a shaft moves for what is heard of it. A hum is a motor that cannot start: it shakes and does not turn. */
export function shaftMotion(running: string | number | undefined, turnsPerSecond: number): Motion | undefined {
  if (running === undefined || running === 'off' || running === 0) return undefined;
  if (running === 'hum') return { kind: 'shake', reach: 1 };
  return { kind: 'spin', turnsPerSecond };
}

type Rotor = Omit<Moving, 'x' | 'y' | 'motion'>;

/** The turning part as it stands still in the picture, or as something that moves over it. */
export function rotor(picture: string, radius: number, paint: (pen: Pen) => void): Rotor {
  return { picture, width: radius * 2 + 4, height: radius * 2 + 4, paint };
}

/** Paints a moving part where it stands still. */
export function still(pen: Pen, moving: Pick<Moving, 'paint'>, x: number, y: number): void {
  pen.save();
  pen.translate(x, y);
  moving.paint(pen);
  pen.restore();
}
