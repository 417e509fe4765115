import type { Assembly } from '../../rig/assemble.ts';
import type { Point } from '../../rig/points.ts';
import type { RigWire } from '../../rig/schema.ts';
import { markOf } from '../../stage/wireMarks.ts';

/** What the rig prints at a terminal; empty for one without letters and for nodes inside a part. */
export function labelAt(assembly: Assembly, point: Point): string {
  const { partById, rig } = assembly;
  const [id = '', terminal = ''] = point.split('.');
  const part = partById.get(id);
  const printed = part?.data.labels[terminal] ?? part?.kind.terminals.find((each) => each.id === terminal)?.label;
  if (part === undefined || (printed !== undefined && printed !== '')) return printed ?? '';
  // A pin is called by the screw that it meets.
  const screw = rig.wires.find(({ pin, to }) => pin && to === point)?.from;
  if (screw !== undefined) return labelAt(assembly, screw);
  // The end of a transformer's winding inside it: what leads to it is printed.
  if (part.kind.transformers?.flat(2).includes(terminal) !== true) return '';
  const beside = part.kind.branches.find((branch) => branch.includes(terminal))?.find((each) => each !== terminal);
  return part.kind.terminals.find((each) => each.id === beside)?.label ?? '';
}

/** Letters of the colours of wires one after another (IEC 60757); one that goes on in its own colour is said once. */
export function codesOf(wires: readonly RigWire[]): string {
  return wires
    .map(({ colour }) => markOf(colour).code)
    .filter((code, index, all) => code !== all[index - 1])
    .join(' ');
}

/** A name in lines of no more than about so many letters; a long word keeps a line of its own. */
export function inLines(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** A drawing may shrink to the first share of itself, its smallest letters are then 9 CSS pixels high, and grow to the second. */
const LEAST = 0.88;
const MOST = 1.2;

/** Between which widths a drawing is easy to read, for the style sheet of who lets it follow its column. @param width its own, CSS pixels */
export const rangeOf = (width: number) => ({
  '--least': `${Math.round(width * LEAST)}px`,
  '--most': `${Math.round(width * MOST)}px`,
});
