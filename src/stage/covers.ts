import type { CoverView } from '../attempt/view.ts';
import { bushing, louvre } from './hardware.ts';
import { type Box, disc, downward, fillBox, lifted, line, type Pen, strokeBox } from './pen.ts';
import type { CoverLook, PlaceLook } from './place.ts';
import { CREAM, MATERIAL, STEEL, shade } from './tokens.ts';

/** The opening behind a cover. */
export function drawCavity(pen: Pen, box: Box): void {
  fillBox(pen, box, 5, downward(pen, box, MATERIAL.cavity, MATERIAL.cavityLow));
  pen.save();
  pen.beginPath();
  pen.rect(box.x, box.y, box.width, box.height);
  pen.clip();
  pen.fillStyle = shade(0.22);
  pen.fillRect(box.x, box.y, box.width, 7);
  pen.fillRect(box.x, box.y, 5, box.height);
  pen.restore();
  strokeBox(pen, box, 5, STEEL[10], 1.5);
}

/** A cover in its place. */
export function drawLid(pen: Pen, box: Box, look: CoverLook): void {
  const colours = {
    enamel: [CREAM[2], CREAM[4], CREAM[6]],
    louvred: [CREAM[4], CREAM[5], CREAM[7]],
    grey: [MATERIAL.steel, STEEL[6], MATERIAL.steelDark],
  } as const;
  const [top, foot, edge] = colours[look];
  lifted(pen, 4, () => {
    fillBox(pen, box, 6, downward(pen, box, top, foot));
  });
  strokeBox(pen, box, 6, edge, 1.4);
  strokeBox(pen, { x: box.x + 9, y: box.y + 9, width: box.width - 18, height: box.height - 18 }, 4, shade(0.25), 1.2);
  if (look === 'louvred' && box.width > 300) {
    for (let y = box.y + 40; y < box.y + box.height - 60; y += 24) louvre(pen, box.x + 30, y, box.width * 0.52, STEEL[7], CREAM[2]);
  }
  if (look === 'enamel' && box.width > 300) {
    for (let row = 0; row < 5; row += 1)
      louvre(pen, box.x + box.width - 150, box.y + box.height - 110 + row * 16, 120, CREAM[6], CREAM[1]);
  }
  for (const [x, y] of [
    [box.x + 16, box.y + 16],
    [box.x + box.width - 16, box.y + 16],
    [box.x + 16, box.y + box.height - 16],
    [box.x + box.width - 16, box.y + box.height - 16],
  ] as const) {
    disc(pen, x, y, 5, MATERIAL.steel);
    line(pen, [x - 3, y - 3, x + 3, y + 3], MATERIAL.steelDark, 1.4);
  }
}

/** Where a cover that has been taken off leans, scene units; the place says where there is room. */
export function leaningBox(cover: CoverView, index: number, look: PlaceLook): Box {
  const { x, y, width, height } = cover.at;
  return look.lean[index] ?? { x: x - 20, y: y + height * 0.6, width: width * 0.25, height: height * 0.4 };
}

/** Grommets and conduit ends of a place, where wires come and go. */
export function drawHoles(pen: Pen, look: PlaceLook): void {
  for (const exit of look.exits) bushing(pen, exit.x, exit.y, 13);
  for (const join of look.joins) {
    bushing(pen, join.from.x, join.from.y, 12);
    if (join.from !== join.to && (join.from.x !== join.to.x || join.from.y !== join.to.y)) bushing(pen, join.to.x, join.to.y, 12);
  }
}
