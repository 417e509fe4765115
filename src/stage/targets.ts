import type { Action } from '../attempt/actions.ts';
import type { BenchView, PartView } from '../attempt/view.ts';
import type { Handle } from './face.ts';
import { type Scene, spotOf } from './layout.ts';
import type { Box } from './pen.ts';
import type { PlacedPart } from './placed.ts';
import { SCENE, SIZES } from './tokens.ts';
import { distanceTo, PROBE_LENGTH, probeWay, type Spot } from './wires.ts';

export const STAGE_TOOLS = ['hand', 'probe', 'lift', 'jumper', 'clamp', 'look', 'tug'] as const;
export type StageTool = (typeof STAGE_TOOLS)[number];
export type Lead = 'red' | 'black';

/** A region that the hand can work, in scene units, with its words' key. */
export interface Region {
  readonly box: Box;
  readonly name: string;
  readonly values: Readonly<Record<string, string>>;
  readonly action: Action;
  /** Drawn as a paper tag. */
  readonly tag: boolean;
}

/** Where each lead's tip lies while it is on nothing. */
export const REST: Readonly<Record<Lead, Spot>> = {
  red: { x: 660, y: 619 },
  black: { x: 520, y: 631 },
};

/** Where a lead's tip is drawn and how its handle lies; `rested` when it is on nothing that is in sight. */
export function leadAt(
  scene: Scene,
  view: BenchView,
  lead: Lead,
): { readonly tip: Spot; readonly way: Spot; readonly rested: boolean } {
  const tip = spotOf(scene, view.meter[lead]);
  if (tip === undefined) return { tip: REST[lead], way: { x: 1, y: 0.02 }, rested: true };
  return { tip: { x: tip.x, y: tip.y + 3 }, way: probeWay(tip, SCENE.height - 20), rested: false };
}

const TAG = { width: 156, height: 34, gap: 12 } as const;

function handleRegion({ part, x, y }: PlacedPart, handle: Handle): Region {
  return {
    box: { x: x + handle.box.x, y: y + handle.box.y, width: handle.box.width, height: handle.box.height },
    name: `stage:handle.${handle.name}`,
    values: { part: part.id },
    action: handle.action,
    tag: false,
  };
}

/** What a hand can do with the body of a thermostat from each position; the action's own rules stand elsewhere. */
const BODY_ACTIONS = {
  seated: ['pull'],
  pulled: ['turn', 'mat', 'seat'],
  turned: ['turn', 'mat', 'seat'],
  mat: ['seat'],
} as const;

function bodyRegions(view: BenchView): Region[] {
  return view.parts.filter((part) => part.place === view.place).flatMap((part) => bodyTags(part, view));
}

function bodyTags(part: PartView, view: BenchView): Region[] {
  if (part.body === undefined) return [];
  const base = view.parts.find((each) => each.id === part.base)?.at ?? part.at;
  const from =
    part.body === 'mat'
      ? { x: 578, y: 52 }
      : part.body === 'seated'
        ? { x: base.x - 6, y: base.y + 202 }
        : { x: part.at.x, y: part.at.y + 184 };
  const width = part.body === 'pulled' || part.body === 'turned' ? 112 : TAG.width;
  return BODY_ACTIONS[part.body].map((name, index) => ({
    box: { x: from.x + index * (width + 8), y: from.y, width, height: TAG.height },
    name: name === 'turn' && part.body === 'turned' ? 'stage:handle.turnBack' : `stage:handle.${name}`,
    values: { part: part.id },
    action: { name, part: part.id },
    tag: true,
  }));
}

/** Where a closed cover carries its name. */
export function plateBox({ x, y, width, height }: Box): Box {
  const half = Math.min(110, width / 2 - 10);
  return { x: x + width / 2 - half, y: y + height - 50, width: half * 2, height: 30 };
}

function coverRegions(scene: Scene): Region[] {
  return scene.covers.flatMap((cover, index) => {
    const { x, y, width, height } = cover.at;
    const spot = scene.look.tags[index] ?? { x: x + width - TAG.width - 6, y: y + height - TAG.height / 2 };
    const tag = { ...spot, width: TAG.width, height: TAG.height };
    const region = (box: Box, isTag: boolean): Region => ({
      box,
      name: cover.open ? 'stage:handle.close' : 'stage:handle.open',
      values: { cover: cover.id },
      action: { name: 'cover', cover: cover.id, open: !cover.open },
      tag: isTag,
    });
    // A closed cover is taken hold of anywhere, its plate first: what works through the cover lies over the rest of it.
    return cover.open ? [region(tag, true)] : [region(plateBox(cover.at), false), region({ x, y, width, height }, false)];
  });
}

/** Everything that the hand can work in a scene, what lies on top first. */
export function regionsOf(scene: Scene, view: BenchView): Region[] {
  const handles = [...scene.parts, ...scene.behind].flatMap((placed) =>
    (placed.face.handles?.(placed.part) ?? []).map((handle) => handleRegion(placed, handle)),
  );
  return [...bodyRegions(view), ...handles, ...coverRegions(scene)];
}

/** A box made large enough for a finger. `unit` is CSS pixels in a scene unit. */
export function grown(box: Box, unit: number): Box {
  const least = SIZES.target / unit;
  const dx = Math.max(0, least - box.width) / 2;
  const dy = Math.max(0, least - box.height) / 2;
  return { x: box.x - dx, y: box.y - dy, width: box.width + dx * 2, height: box.height + dy * 2 };
}

function within(box: Box, spot: Spot): boolean {
  return spot.x >= box.x && spot.x <= box.x + box.width && spot.y >= box.y && spot.y <= box.y + box.height;
}

/** The nearest of several spots that a finger of `SIZES.target` still touches. */
export function nearestSpot<T extends Spot>(spots: Iterable<T>, at: Spot, unit: number): T | undefined {
  const reach = Math.max(24, SIZES.target / 2 / unit);
  let best: T | undefined;
  let least = reach;
  for (const spot of spots) {
    const far = Math.hypot(spot.x - at.x, spot.y - at.y);
    if (far <= least) {
      best = spot;
      least = far;
    }
  }
  return best;
}

/** The terminal or bare end under a spot. */
export function pointAt(scene: Scene, at: Spot, unit: number): ({ readonly point: string } & Spot) | undefined {
  return nearestSpot([...scene.terminals.values(), ...scene.ends.filter((end) => end.lifted)], at, unit);
}

/** The lead whose handle or tip is under a spot. */
export function leadUnder(scene: Scene, view: BenchView, at: Spot, unit: number): Lead | undefined {
  const reach = Math.max(15, SIZES.target / 2 / unit);
  for (const lead of ['red', 'black'] as const) {
    const { tip, way } = leadAt(scene, view, lead);
    for (let along = 0.15; along <= 1; along += 0.17) {
      const spot = { x: tip.x + way.x * PROBE_LENGTH * along, y: tip.y + way.y * PROBE_LENGTH * along };
      if (Math.hypot(spot.x - at.x, spot.y - at.y) <= reach) return lead;
    }
  }
  return undefined;
}

export function regionAt(regions: readonly Region[], at: Spot, unit: number): Region | undefined {
  return regions.find((region) => within(region.box, at)) ?? regions.find((region) => within(grown(region.box, unit), at));
}

/** The wire under a spot, by its drawn course. */
export function wireAt(scene: Scene, at: Spot, unit: number): string | undefined {
  let best: string | undefined;
  let least = Math.max(12, SIZES.target / 2 / unit);
  for (const run of scene.runs) {
    const far = distanceTo(run.path, at);
    if (far < least) {
      best = run.wire;
      least = far;
    }
  }
  return best;
}

/** The smallest face under a spot. */
export function partAt(scene: Scene, at: Spot): string | undefined {
  return scene.parts
    .filter(({ x, y, shape }) => within({ x, y, width: shape.width, height: shape.height }, at))
    .sort((a, b) => a.shape.width * a.shape.height - b.shape.width * b.shape.height)[0]?.part.id;
}
