import type { PartView } from '../../attempt/view.ts';
import { type Face, type Shape, spaced } from '../face.ts';
import { shell } from '../hardware.ts';

function shape(part: PartView): Shape {
  const ids = part.terminals.map((terminal) => terminal.id);
  const width = Math.max(120, 40 + ids.length * 48);
  return {
    width,
    height: ids.length === 0 ? 60 : 104,
    name: { x: width / 2, y: 18, most: width - 24, paper: true },
    terminals: spaced(ids, { x: 44, y: 76 }, { x: 48, y: 0 }, 'down', { screw: 12, letter: { dx: 0, dy: -24, dark: true } }),
  };
}

/** A part that no face has been drawn for yet: a box with its name and a row of screws, as playable as any other. */
export const plain: Face = {
  shape,
  draw(pen, part) {
    const { width, height } = shape(part);
    shell(pen, { x: 0, y: 0, width, height }, 'zinc');
  },
};
