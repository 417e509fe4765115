import type { PartView } from '../../attempt/view.ts';
import { type Face, labelOf, type Shape, spaced } from '../face.ts';
import { nameTape, screw, shell } from '../hardware.ts';
import { letter } from '../pen.ts';
import { MATERIAL } from '../tokens.ts';

function shape(part: PartView): Shape {
  const ids = part.terminals.map((terminal) => terminal.id);
  return {
    width: Math.max(120, 40 + ids.length * 48),
    height: ids.length === 0 ? 60 : 104,
    terminals: spaced(ids, { x: 44, y: 76 }, { x: 48, y: 0 }, 'down'),
  };
}

/** A part that no face has been drawn for yet: a box with its name and a row of screws, as playable as any other. */
export const plain: Face = {
  shape,
  draw(pen, part, words) {
    const size = shape(part);
    shell(
      pen,
      { x: 0, y: 0, width: size.width, height: size.height },
      8,
      MATERIAL.steelLight,
      MATERIAL.steel,
      MATERIAL.steelShade,
      5,
    );
    nameTape(pen, words(`rig:part.${part.id}`), size.width / 2, 18, size.width - 12, false, 'center');
    for (const [id, spot] of Object.entries(size.terminals)) {
      screw(pen, spot.x, spot.y, 12);
      letter(pen, labelOf(part, id), spot.x, spot.y - 24, { size: 14, weight: 700, colour: MATERIAL.labelInk, most: 46 });
    }
  },
};
