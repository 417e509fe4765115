import { type Box, downward, fillBox, lifted, line, type Pen, strokeBox } from '../pen.ts';
import type { Cabinet, Pipe } from '../place.ts';
import { rounded } from '../routing.ts';
import { CREAM, MATERIAL, SCENE, STEEL, shade, WOOD } from '../tokens.ts';

interface Sheet {
  readonly top: string;
  readonly foot: string;
  readonly edge: string;
  readonly corner: number;
  readonly lift: number;
}

/** How a cabinet's sheet is lit, by its finish. */
const SHEETS: Readonly<Record<Cabinet['finish'], Sheet>> = {
  enamel: { top: CREAM[3], foot: MATERIAL.cabinetShade, edge: MATERIAL.cabinetLine, corner: 8, lift: 10 },
  weathered: { top: CREAM[4], foot: MATERIAL.outdoorUnitShade, edge: CREAM[7], corner: 10, lift: 12 },
  grey: { top: STEEL[4], foot: MATERIAL.panelGreyShade, edge: MATERIAL.steelDark, corner: 8, lift: 12 },
  concrete: { top: MATERIAL.slab, foot: MATERIAL.slabShade, edge: MATERIAL.slabShade, corner: 0, lift: 0 },
  plywood: { top: WOOD[0], foot: WOOD[1], edge: WOOD[4], corner: 3, lift: 6 },
};

export function drawCabinet(pen: Pen, { finish, ...box }: Cabinet): void {
  const { top, foot, edge, corner, lift } = SHEETS[finish];
  if (lift === 0) {
    fillBox(pen, box, corner, top);
    fillBox(pen, { ...box, y: box.y + box.height * 0.66, height: box.height * 0.34 }, corner, foot);
    return;
  }
  lifted(pen, lift, () => {
    fillBox(pen, box, corner, downward(pen, box, top, foot));
  });
  strokeBox(pen, box, corner, edge, 1.4);
}

/** The foot of a cabinet's sheet, for a picture of it that is too small for light and shade. */
export function cabinetColour({ finish }: Cabinet): string {
  return SHEETS[finish].foot;
}

/** Widths and colours of what is drawn one over another along a pipe, scene units. */
const PIPES: Readonly<Record<Pipe['of'], readonly (readonly [number, string])[]>> = {
  conduit: [
    [13, MATERIAL.steelShade],
    [8, MATERIAL.steel],
  ],
  whip: [
    [15, STEEL[9]],
    [9, STEEL[7]],
  ],
  riser: [[32, MATERIAL.steelShade]],
  suction: [[16, STEEL[10]]],
  liquid: [[7, MATERIAL.copperPipe]],
  gas: [
    [12, STEEL[10]],
    [6, STEEL[8]],
  ],
  water: [
    [12, MATERIAL.copperPipe],
    [4, MATERIAL.copperPipeLight],
  ],
  flue: [
    [60, STEEL[5]],
    [48, STEEL[3]],
    [16, STEEL[2]],
  ],
  duct: [
    [140, STEEL[4]],
    [130, STEEL[2]],
  ],
};

/** A pipe on the wall, its corners bent. One that ends at the scene's edge goes on to the edge of `bounds`. */
export function drawPipe(pen: Pen, { of, along }: Pipe, bounds: Box): void {
  const way = along.map(({ x, y }, index) =>
    index > 0 && index < along.length - 1
      ? { x, y }
      : {
          x: x <= 0 ? Math.min(x, bounds.x) : x >= SCENE.width ? Math.max(x, bounds.x + bounds.width) : x,
          y: y <= 0 ? Math.min(y, bounds.y) : y >= SCENE.height ? Math.max(y, bounds.y + bounds.height) : y,
        },
  );
  const path = rounded(way, of === 'whip' ? 60 : of === 'flue' || of === 'duct' ? 4 : 15).flatMap(({ x, y }) => [x, y]);
  pen.save();
  pen.lineJoin = 'round';
  pen.lineCap = of === 'conduit' || of === 'whip' ? 'round' : 'butt';
  for (const [width, colour] of PIPES[of]) line(pen, path, colour, width);
  if (of === 'duct') seams(pen, way);
  pen.restore();
}

/** Where lengths of duct are joined. */
function seams(pen: Pen, way: readonly { readonly x: number; readonly y: number }[]): void {
  way.forEach((b, index) => {
    const a = way[index - 1];
    if (a === undefined) return;
    const far = Math.hypot(b.x - a.x, b.y - a.y);
    const [dx, dy] = [(b.x - a.x) / far, (b.y - a.y) / far];
    for (let at = 80; at < far; at += 120) {
      const [x, y] = [a.x + dx * at, a.y + dy * at];
      line(pen, [x - dy * 66, y + dx * 66, x + dy * 66, y - dx * 66], shade(0.3), 2);
    }
  });
}
