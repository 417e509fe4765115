import { disc, type Pen } from './pen.ts';
import { light, MATERIAL, shade, WIRE } from './tokens.ts';
import { markOf } from './wireMarks.ts';
import { leadCurve, PROBE_LENGTH, restCurve, type Spot, sampled } from './wires.ts';

/** Insulation by the rig's colour name; copper when the name is not known. */
export function insulation(colour: string): string {
  return (WIRE as Readonly<Record<string, string>>)[colour] ?? WIRE.copper;
}

function trace(pen: Pen, path: readonly Spot[], dx = 0, dy = 0): void {
  pen.beginPath();
  for (const { x, y } of path) pen.lineTo(x + dx, y + dy);
}

function run(pen: Pen, colour: string, width: number): void {
  pen.strokeStyle = colour;
  pen.lineWidth = width;
  pen.stroke();
}

/** A cable or wire: its shadow, its outline, its colour and the light along it, from the upper left. */
export function strokeWire(pen: Pen, path: readonly Spot[], colour: string, width = 8, cap: CanvasLineCap = 'round'): void {
  pen.save();
  pen.lineCap = cap;
  pen.lineJoin = 'round';
  const drop = width * 0.34;
  trace(pen, path, drop, drop);
  run(pen, shade(0.34), width);
  trace(pen, path);
  run(pen, MATERIAL.outline, width + 1.8);
  run(pen, colour, width);
  trace(pen, path, -width * 0.16, -width * 0.16);
  run(pen, light(0.24), width * 0.24);
  pen.restore();
}

/** A conductor by its rig's colour name: insulation, and the pattern that tells it where colour does not. */
export function strokeConductor(pen: Pen, path: readonly Spot[], colour: string, width: number, cap?: CanvasLineCap): void {
  strokeWire(pen, path, insulation(colour), width, cap);
  const { dash, part = 1, ink } = markOf(colour);
  if (dash === undefined || ink === undefined) return;
  pen.save();
  pen.lineCap = 'butt';
  pen.lineJoin = 'round';
  if (dash[1] !== 0) pen.setLineDash([...dash]);
  trace(pen, path);
  run(pen, ink, width * part);
  pen.restore();
}

/** The bare end of a lifted conductor. `toward` is the spot that it points away from. */
export function strokeBareEnd(pen: Pen, end: Spot, toward: Spot): void {
  const far = Math.hypot(end.x - toward.x, end.y - toward.y) || 1;
  const x = end.x + ((end.x - toward.x) / far) * 15;
  const y = end.y + ((end.y - toward.y) / far) * 15;
  pen.save();
  pen.lineCap = 'round';
  pen.beginPath();
  pen.moveTo(end.x, end.y);
  pen.lineTo(x, y);
  run(pen, MATERIAL.outline, 6);
  run(pen, WIRE.copper, 4);
  run(pen, MATERIAL.copperPipeLight, 1.4);
  pen.restore();
}

export type Lead = 'red' | 'black';

const LEAD: Readonly<Record<Lead, { readonly grip: string; readonly band: string; readonly cable: string }>> = {
  red: { grip: MATERIAL.redLead, band: MATERIAL.redLeadShade, cable: MATERIAL.redLead },
  black: { grip: MATERIAL.blackLead, band: MATERIAL.iron, cable: MATERIAL.blackLeadCable },
};

/** A test probe with its tip at `tip`, lying `way`, and its cable hanging to `edge`. */
export function drawLead(pen: Pen, lead: Lead, tip: Spot, way: Spot, edge: Spot, rested = false, sway = 0): void {
  const look = LEAD[lead];
  const back = { x: tip.x + way.x * PROBE_LENGTH, y: tip.y + way.y * PROBE_LENGTH };
  const [from, down, across, to] = rested ? restCurve(back, edge) : leadCurve(back, way, edge);
  const hung = [from, { x: down.x + sway, y: down.y }, { x: across.x + sway * 0.6, y: across.y + sway * 0.3 }, to] as const;
  strokeWire(pen, sampled(hung, 32), look.cable, 9);
  pen.save();
  pen.translate(tip.x, tip.y);
  pen.rotate(Math.atan2(way.y, way.x) - Math.PI / 2);
  const grip = new Path2D('M-6.5 12 C-6.5 8 -4 6 -2.4 4.5 L2.4 4.5 C4 6 6.5 8 6.5 12 L11 66 C11 72 -11 72 -11 66 Z');
  pen.fillStyle = shade(0.3);
  pen.save();
  pen.translate(3, 3);
  pen.fill(grip);
  pen.restore();
  pen.fillStyle = MATERIAL.probeTip;
  pen.strokeStyle = MATERIAL.outline;
  pen.lineWidth = 1;
  pen.beginPath();
  pen.roundRect(-2, -4, 4, 15, 1.5);
  pen.fill();
  pen.stroke();
  pen.fillStyle = look.grip;
  pen.fill(grip);
  pen.lineWidth = 1.2;
  pen.stroke(grip);
  pen.beginPath();
  pen.moveTo(-8.2, 30);
  pen.lineTo(8.2, 30);
  pen.strokeStyle = look.band;
  pen.lineWidth = 2.6;
  pen.stroke();
  pen.restore();
}

/** A jumper's spring clip at one terminal. */
export function drawClip(pen: Pen, at: Spot): void {
  disc(pen, at.x, at.y, 8.5, MATERIAL.outline);
  disc(pen, at.x, at.y, 7, MATERIAL.caution);
  disc(pen, at.x, at.y, 3, MATERIAL.steelLight);
}

/** The jaws of the clamp closed round a conductor. */
export function drawClamp(pen: Pen, at: Spot, edge: Spot, turns: number): void {
  strokeWire(
    pen,
    sampled([{ x: at.x, y: at.y + 92 }, { x: at.x, y: at.y + 150 }, { x: edge.x - 120, y: edge.y + 30 }, edge]),
    MATERIAL.blackLeadCable,
    8,
  );
  pen.beginPath();
  pen.arc(at.x, at.y, 24, 0, Math.PI * 2);
  run(pen, MATERIAL.outline, 15);
  run(pen, MATERIAL.clamp, 12);
  pen.beginPath();
  pen.arc(at.x - 4, at.y - 4, 24, Math.PI * 0.9, Math.PI * 1.6);
  run(pen, light(0.22), 3);
  pen.beginPath();
  pen.moveTo(at.x, at.y - 32);
  pen.lineTo(at.x, at.y - 18);
  run(pen, MATERIAL.outline, 2);
  pen.beginPath();
  pen.roundRect(at.x - 14, at.y + 26, 28, 70, 8);
  pen.fillStyle = MATERIAL.clampGrip;
  pen.fill();
  pen.strokeStyle = MATERIAL.outline;
  pen.lineWidth = 1.4;
  pen.stroke();
  if (turns > 1) {
    disc(pen, at.x, at.y + 56, 11, MATERIAL.label);
    pen.font = '700 13px sans-serif';
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    pen.fillStyle = MATERIAL.labelInk;
    pen.fillText(`×${String(turns)}`, at.x, at.y + 57);
  }
}
