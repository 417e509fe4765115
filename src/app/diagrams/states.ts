/** How a drawing shows what can be seen and heard of a part at one moment: a lamp with its flashes, a shaft, a flame. */
import type { Sign } from '../../parts/part.ts';

export type StateMark =
  /** As many flashes as it gives before it pauses; infinitely many where it is steady. */
  { readonly is: 'lamp'; readonly flashes: number } | { readonly is: 'shaft' | 'flame' | 'glow' | 'hum'; readonly on: boolean };

/** Height of a mark, and the width of one without flashes, scene units. */
export const MARK = 18;
/** What a flash takes beside its lamp, and a lamp that does not flash; scene units. */
export const FLASH = 8;
const LEVEL = 16;
const END = 4;

/** What is drawn of a part's signs. */
export const marksOf = (signs: readonly Pick<Sign, 'key' | 'value'>[]): readonly StateMark[] =>
  signs.flatMap((sign) => markOf(sign) ?? []);

/** The mark of a sign; undefined for what is told in words alone. */
function markOf({ key, value }: Pick<Sign, 'key' | 'value'>): StateMark | undefined {
  switch (key) {
    case 'light':
      return { is: 'lamp', flashes: value === 'steady' ? Number.POSITIVE_INFINITY : value === 'off' ? 0 : Number(value) };
    case 'running':
    case 'motor':
      return value === 'hum' ? { is: 'hum', on: true } : { is: 'shaft', on: value !== 'off' && value !== 0 };
    case 'flame':
    case 'pilot':
      return { is: 'flame', on: value === 1 };
    case 'glow':
      return { is: 'glow', on: value === 1 };
    case 'chatter':
    case 'hum':
      // Silence is nothing to draw.
      return value === 1 ? { is: 'hum', on: true } : undefined;
    default:
      return undefined;
  }
}

/** Whether a mark shows something at work. */
export const isOn = (mark: StateMark): boolean => (mark.is === 'lamp' ? mark.flashes > 0 : mark.on);

/** What marks side by side take, scene units. */
export const sizeOf = (marks: readonly StateMark[]): { readonly width: number; readonly height: number } => ({
  width: marks.reduce((sum, mark) => sum + widthOf(mark), 0),
  height: MARK,
});

/** Width of a mark, scene units. */
export function widthOf(mark: StateMark): number {
  if (mark.is !== 'lamp') return MARK;
  return MARK + END + (Number.isFinite(mark.flashes) && mark.flashes > 0 ? mark.flashes * FLASH : LEVEL);
}
