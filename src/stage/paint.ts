import type { BenchView, PartView } from '../attempt/view.ts';
import { type Caption, captionsOf } from './captions.ts';
import { drawCavity, drawHoles, drawLid, leaningBox } from './covers.ts';
import type { Words } from './face.ts';
import { faceOf } from './faces.ts';
import { plate, screw, sleeve, tag } from './hardware.ts';
import { regionValues } from './hints.ts';
import { drawLabels } from './labels.ts';
import { type Scene, spotOf } from './layout.ts';
import { drawCabinet, drawPipe } from './looks/cabinets.ts';
import type { Seating } from './motion.ts';
import { type Box, fillBox, letter, type Pen, ring, wrapped } from './pen.ts';
import type { PlacedPart, Run } from './placed.ts';
import { type Lead, leadAt, plateBox, REST, regionsOf } from './targets.ts';
import { COLOURS, MATERIAL, STEEL, shade, WIRE, WOOD } from './tokens.ts';
import { drawClamp, drawClip, drawLead, insulation, strokeBareEnd, strokeConductor, strokeWire } from './wireInk.ts';
import { drawFlag, flagsOf } from './wireMarks.ts';
import { jumperCurve, probeWay, type Spot, sampled } from './wires.ts';

function at(pen: Pen, part: PlacedPart, paint: () => void): void {
  pen.save();
  pen.translate(part.x, part.y);
  paint();
  pen.restore();
}

/** The first `units` of a course. */
function stub(path: readonly Spot[], units: number): readonly Spot[] {
  let length = 0;
  const end = path.findIndex((spot, index) => {
    const last = path[index - 1] ?? spot;
    length += Math.hypot(spot.x - last.x, spot.y - last.y);
    return length > units;
  });
  return end < 0 ? path : path.slice(0, end + 1);
}

function drawRuns(pen: Pen, runs: readonly Run[], width: number): void {
  for (const run of runs) strokeConductor(pen, run.path, run.colour, width);
}

/** The ends of wires that run behind faces, in front of them. */
function drawStubs(pen: Pen, scene: Scene, width: number): void {
  for (const run of scene.runs) {
    if (run.landed[0]) strokeConductor(pen, stub(run.path, 24), run.colour, width, 'butt');
    if (run.landed[1]) strokeConductor(pen, stub([...run.path].reverse(), 24), run.colour, width, 'butt');
  }
}

/** Screw heads over the wires that they hold; sleeves where a wire is pushed on a blade. */
function drawFasteners(pen: Pen, scene: Scene): void {
  for (const { part, shape, face, x, y } of scene.parts) {
    if (face.over === true) continue;
    for (const terminal of part.terminals) {
      const spot = shape.terminals[terminal.id];
      if (spot?.screw !== undefined) screw(pen, x + spot.x, y + spot.y, spot.screw);
    }
  }
  for (const run of scene.runs) {
    run.landed.forEach((landed, index) => {
      const end = run.path.at(index === 0 ? 0 : -1);
      if (landed && !run.screwed[index] && end !== undefined) sleeve(pen, end.x, end.y, insulation(run.colour));
    });
  }
}

function drawCaption(pen: Pen, caption: Caption, words: Words, dark: boolean): void {
  letter(pen, words(caption.heading), caption.x, caption.y, {
    size: 18,
    weight: 750,
    family: 'display',
    align: 'left',
    colour: dark ? MATERIAL.enamel : WOOD[7],
  });
  if (caption.line === undefined) return;
  const how = { size: 14.5, align: 'left', colour: dark ? STEEL[1] : WOOD[5] } as const;
  letter(pen, ' ', caption.x, caption.y, how);
  wrapped(pen, words(caption.line), caption.most ?? 250).forEach((row, index) => {
    letter(pen, row, caption.x, caption.y + 24 + index * 19, how);
  });
}

/** Paints one part by itself at the pen's origin, as the bench would, with what moves on it; `through`: what a closed cover shows. */
export function paintFace(pen: Pen, part: PartView, words: Words, through: boolean): void {
  const face = faceOf(part.kind);
  const placed = { part, face, shape: face.shape(part), x: 0, y: 0 };
  if (through) face.through?.(pen, part, words);
  else face.draw(pen, part, words);
  for (const moving of (through ? face.movingThrough : face.moving)?.(part) ?? []) {
    pen.save();
    pen.translate(moving.x, moving.y);
    moving.paint(pen);
    pen.restore();
  }
  if (through) return;
  for (const spot of Object.values(placed.shape.terminals))
    if (spot.screw !== undefined && face.over !== true) screw(pen, spot.x, spot.y, spot.screw);
  drawLabels(pen, placed, words);
}

/** Paints everything that stands still between two views: the place, its parts and wires, closed covers, tags. */
export function paintStill(pen: Pen, scene: Scene, view: BenchView, words: Words, bounds: Box): void {
  const { look } = scene;
  look.ground.paint(pen, bounds);
  for (const pipe of look.pipes) drawPipe(pen, pipe, bounds);
  for (const cabinet of look.cabinets) drawCabinet(pen, cabinet);
  for (const cover of scene.covers) drawCavity(pen, cover.at);
  drawHoles(pen, look);
  scene.covers.forEach((cover, index) => {
    if (cover.open) drawLid(pen, leaningBox(cover, index, look), look.coverLook);
  });
  const over = scene.parts.filter((part) => part.face.over === true);
  const on = scene.parts.filter((part) => part.face.onCover === true);
  const plainParts = scene.parts.filter((part) => !over.includes(part) && !on.includes(part));
  if (look.harness) drawRuns(pen, scene.runs, look.wireWidth);
  for (const part of plainParts) at(pen, part, () => part.face.draw(pen, part.part, words));
  if (look.harness) drawStubs(pen, scene, look.wireWidth);
  else drawRuns(pen, scene.runs, look.wireWidth);
  drawFasteners(pen, scene);
  for (const end of scene.ends) if (end.lifted) strokeBareEnd(pen, end.root, pastRoot(end.root, end));
  for (const part of plainParts) drawLabels(pen, part, words);
  for (const flag of flagsOf(scene.runs, scene.parts, look.wireWidth)) drawFlag(pen, flag);
  for (const part of over) {
    at(pen, part, () => part.face.draw(pen, part.part, words));
    drawLabels(pen, part, words);
  }
  for (const cover of scene.covers) {
    if (cover.open) continue;
    drawLid(pen, cover.at, look.coverLook);
    plate(pen, plateBox(cover.at), words(`rig:cover.${cover.id}`), 14);
  }
  for (const part of on) {
    at(pen, part, () => part.face.draw(pen, part.part, words));
    drawLabels(pen, part, words);
  }
  for (const part of scene.behind) at(pen, part, () => part.face.through?.(pen, part.part, words));
  for (const region of regionsOf(scene, view))
    if (region.tag) tag(pen, region.box, words(region.name, regionValues(region, words)));
  const dark = look.ground.dark === true;
  for (const caption of captionsOf(view, dark)) drawCaption(pen, caption, words, dark);
}

/** A spot on the insulated side of a bare end, so that the copper points away from it. */
function pastRoot(root: Spot, grip: Spot): Spot {
  return { x: root.x * 2 - grip.x, y: root.y * 2 - grip.y };
}

/** Where a lead or the clamp leaves the scene for the meter. */
export function edgeOf(bounds: Box, which: Lead | 'clamp'): Spot {
  const y = which === 'red' ? 566 : which === 'black' ? 610 : 540;
  return { x: bounds.x + bounds.width + 6, y };
}

/** Paints what is laid over the scene by hand: jumpers, clamp and leads; the held lead only where the pointer is. */
export function paintHand(
  pen: Pen,
  scene: Scene,
  view: BenchView,
  bounds: Box,
  held: Lead | undefined,
  pointer: Spot | undefined,
  clip: string | undefined,
  seating: (lead: Lead) => Seating | undefined = () => undefined,
): void {
  for (const jumper of view.jumpers) {
    const from = spotOf(scene, jumper.from);
    const to = spotOf(scene, jumper.to);
    if (from !== undefined && to !== undefined) strokeWire(pen, sampled(jumperCurve(from, to)), MATERIAL.caution, 6);
    if (from !== undefined) drawClip(pen, from);
    if (to !== undefined) drawClip(pen, to);
  }
  const start = spotOf(scene, clip);
  if (start !== undefined) {
    drawClip(pen, start);
    if (pointer !== undefined) strokeWire(pen, sampled(jumperCurve(start, pointer)), MATERIAL.caution, 6);
  }
  const clamped = scene.runs.find(
    (run) => run.wire === view.meter.clamp || (run.cable !== undefined && run.cable === view.meter.clamp),
  );
  if (clamped !== undefined)
    drawClamp(pen, clamped.path[Math.floor(clamped.path.length * 0.45)] ?? REST.red, edgeOf(bounds, 'clamp'), view.meter.turns);
  for (const lead of ['black', 'red'] as const) {
    const here = leadAt(scene, view, lead);
    if (lead === held) {
      const tip = pointer ?? { x: here.tip.x, y: here.tip.y - 14 };
      drawLead(pen, lead, tip, pointer === undefined ? here.way : probeWay(tip, 628), edgeOf(bounds, lead));
    } else {
      const { lift = 0, sway = 0 } = seating(lead) ?? {};
      const tip = { x: here.tip.x + here.way.x * lift, y: here.tip.y + here.way.y * lift };
      const edge = here.rested ? { x: edgeOf(bounds, lead).x, y: tip.y + 2 } : edgeOf(bounds, lead);
      drawLead(pen, lead, tip, here.way, edge, here.rested, sway);
    }
  }
}

/** The name of what the pointer would meet, and a ring round it where it is small. */
export function paintHint(pen: Pen, spot: Spot, ringed: boolean, text: string, bounds: Box): void {
  if (ringed) {
    ring(pen, spot.x, spot.y, 19, MATERIAL.white, 4);
    ring(pen, spot.x, spot.y, 19, WIRE.orange, 2.2);
  }
  if (text === '') return;
  pen.font = `600 14px 'Atkinson Hyperlegible Next', sans-serif`;
  const width = pen.measureText(text).width + 20;
  const x = Math.min(bounds.x + bounds.width - width - 6, Math.max(bounds.x + 6, spot.x - width / 2));
  const y = Math.max(bounds.y + 2, spot.y - 68);
  fillBox(pen, { x, y, width, height: 26 }, 6, shade(0.92));
  letter(pen, text, x + width / 2, y + 13, { size: 14, weight: 600, colour: COLOURS.onDark, most: width - 12 });
}
