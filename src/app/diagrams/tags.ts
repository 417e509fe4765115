import { overlaps } from '../../stage/boxes.ts';
import type { Box } from '../../stage/pen.ts';
import type { Spot } from '../../stage/wires.ts';

/** A few letters that belong to a spot of a drawing, or something of another size, before their place is known. */
export type Tag = { readonly spot: Spot } & ({ readonly text: string } | { readonly size: Size });

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Height of a tag, and the room that a letter and both ends take: the display face at 11.5 px, bold. */
const HEIGHT = 17;
const LETTER = 7;
const ENDS = 9;
/** How near a tag may come to what is there, and how far it may be from its spot. */
const CLEAR = 1.5;
const FARTHEST = 150;
const STEP = 6;
const ANGLES = 24;
/** What a spot of a wire under a tag counts, beside pixels of distance. */
const OVER_WIRE = 2.5;

/** How large a tag is, CSS pixels. */
export const tagSize = (text: string): Size => ({
  width: Math.max(HEIGHT, text.length * LETTER + ENDS),
  height: HEIGHT,
});

interface Ground {
  /** Tags stay inside. */
  readonly frame: Box;
  /** Tags keep off: words, terminals, other tags. */
  readonly taken: readonly Box[];
  /** Tags rather keep off: spots along wires. */
  readonly wires: readonly Spot[];
}

/**
 * Puts each tag beside its spot, as near as there is room, in the order given: off whatever is written already and off each other.
 * @returns boxes in the order of the tags; undefined for one that has no room
 */
export function placeTags(tags: readonly Tag[], { frame, taken, wires }: Ground): readonly (Box | undefined)[] {
  const full = [...taken];
  return tags.map((tag) => {
    const { spot } = tag;
    const { width, height } = 'size' in tag ? tag.size : tagSize(tag.text);
    let best: { readonly box: Box; readonly cost: number } | undefined;
    for (let away = 12; away <= FARTHEST; away += STEP) {
      if (best !== undefined && away > best.cost) break;
      for (let turn = 0; turn < ANGLES; turn += 1) {
        const angle = (turn / ANGLES) * 2 * Math.PI;
        const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
        // From the spot to the nearest edge of the tag it is as far on every side.
        const box = {
          x: spot.x + dx * (away + width / 2) - width / 2,
          y: spot.y + dy * (away + height / 2) - height / 2,
          width,
          height,
        };
        if (!inside(box, frame) || full.some((each) => overlaps(box, each, CLEAR))) continue;
        const under = wires.filter(({ x, y }) => x > box.x && x < box.x + width && y > box.y && y < box.y + height).length;
        const cost = away + OVER_WIRE * under;
        if (best === undefined || cost < best.cost) best = { box, cost };
      }
    }
    if (best !== undefined) full.push(best.box);
    return best?.box;
  });
}

const inside = (box: Box, frame: Box): boolean =>
  box.x >= frame.x + 2 &&
  box.y >= frame.y + 2 &&
  box.x + box.width <= frame.x + frame.width - 2 &&
  box.y + box.height <= frame.y + frame.height - 2;
