import type { PartView } from '../../attempt/view.ts';
import type { Moving, Words } from '../face.ts';
import { disc, fillBox, letter, type Pen, strokeBox } from '../pen.ts';
import { CREAM, MATERIAL, STEEL } from '../tokens.ts';

/** The light as the view shows it: a still picture when steady, else one that flashes its code and pauses. */
export function lightMotion(light: string | number | undefined): Moving['motion'] | undefined {
  if (light === undefined || light === 'off') return undefined;
  if (light === 'steady') return { kind: 'flash', count: 0 };
  const count = Number(light);
  return Number.isInteger(count) && count > 0 ? { kind: 'flash', count } : undefined;
}

/** A status light, its middle there, as it flashes now. */
export function statusLight(part: PartView, x: number, y: number): Moving[] {
  const motion = lightMotion(part.signs.light);
  if (motion === undefined) return [];
  return [
    {
      picture: 'statusLight',
      x,
      y,
      width: 44,
      height: 44,
      paint(pen) {
        const halo = pen.createRadialGradient(0, 0, 3, 0, 0, 21);
        halo.addColorStop(0, MATERIAL.lightHalo);
        halo.addColorStop(1, MATERIAL.lightGone);
        disc(pen, 0, 0, 21, halo);
        disc(pen, 0, 0, 7, MATERIAL.lightOn);
        disc(pen, -2, -2, 2.6, MATERIAL.spark);
      },
      motion,
    },
  ];
}

/** The light while it is dark, on its board. */
export function darkLight(pen: Pen, { x, y }: { readonly x: number; readonly y: number }): void {
  disc(pen, x, y, 9, STEEL[11]);
  disc(pen, x, y, 7, MATERIAL.lightOff);
}

/** The peep glass in a cover, in front of the light. */
export function peepGlass(pen: Pen, { x, y }: { readonly x: number; readonly y: number }): void {
  disc(pen, x, y, 20, CREAM[6]);
  disc(pen, x, y, 15, MATERIAL.outline);
  disc(pen, x, y, 6, MATERIAL.lightOff);
}

const ROW = 20;

/** The label on a door that tells what the flashes mean, as this rig's maker prints it; its top left corner there. */
export function codeLabel(pen: Pen, part: PartView, words: Words, at: { readonly x: number; readonly y: number }): void {
  const codes = Object.entries(part.codes).sort(([, a], [, b]) => a - b);
  const box = { ...at, width: 276, height: 62 + ROW * codes.length };
  fillBox(pen, box, 3, MATERIAL.label);
  strokeBox(pen, box, 3, CREAM[5], 1);
  const ink = { colour: MATERIAL.labelInk, align: 'left' } as const;
  letter(pen, words('stage:codes.title'), box.x + 14, box.y + 18, { ...ink, size: 14, weight: 700, family: 'display' });
  const row = (index: number, mark: string, meaning: string): void => {
    const y = box.y + 42 + index * ROW;
    letter(pen, mark, box.x + 14, y, { ...ink, size: 13, weight: 700 });
    letter(pen, meaning, box.x + 70, y, { ...ink, size: 13, most: 198 });
  };
  row(0, words('stage:codes.steadyMark'), words('stage:codes.steady'));
  codes.forEach(([code, count], index) => {
    row(index + 1, count === 1 ? words('stage:codes.once') : String(count), words(`stage:codes.${code}`));
  });
}
