import type { BenchView } from '../attempt/view.ts';
import type { Words } from './face.ts';
import type { Grip } from './hand.ts';
import type { Scene } from './layout.ts';
import type { Box } from './pen.ts';
import { leadUnder, nearestSpot, partAt, pointAt, type Region, regionAt, regionsOf, wireAt } from './targets.ts';
import type { Spot } from './wires.ts';

/** What the pointer would meet: a cursor, and where something small is, a ring with its name. */
export interface Hint {
  readonly cursor: string;
  /** What is met. */
  readonly spot?: Spot;
  /** Whether it is small enough to need a ring round it. */
  readonly ring?: boolean;
  readonly words: string;
}

/** The name of a terminal or bare end: its letter and its part's name, or its wire's. */
export function pointWords(scene: Scene, point: string, words: Words): string {
  const terminal = scene.terminals.get(point);
  if (terminal !== undefined) {
    const part = words(`rig:part.${terminal.part}`);
    return terminal.label === '' ? part : words('stage:hint.terminal', { label: terminal.label, part });
  }
  const [wire = ''] = point.split('@');
  return words('stage:hint.bareEnd', { wire: words(`rig:wire.${wire}`) });
}

/** Names to fill a region's words with. */
export function regionValues(region: Region, words: Words): Record<string, string> {
  const { part, cover } = region.values;
  return {
    ...(part === undefined ? {} : { part: words(`rig:part.${part}`) }),
    ...(cover === undefined ? {} : { cover: words(`rig:cover.${cover}`) }),
  };
}

/** A spot from which a name stands just over a box, or inside a tall one. */
function overBox({ x, y, width, height }: Box): Spot {
  return { x: x + width / 2, y: height > 120 ? y + height / 2 : y + 36 };
}

/** What lies under the pointer for what is in hand. */
export function hintAt(grip: Grip, scene: Scene, view: BenchView, at: Spot, unit: number, words: Words): Hint | undefined {
  const point = pointAt(scene, at, unit);
  if (grip.lead !== undefined) {
    return point === undefined
      ? undefined
      : { cursor: 'crosshair', spot: { x: point.x, y: point.y }, words: pointWords(scene, point.point, words) };
  }
  switch (grip.tool) {
    case 'lift': {
      const end = nearestSpot(scene.ends, at, unit);
      return end === undefined ? undefined : { cursor: 'grab', spot: { x: end.x, y: end.y }, words: words(`rig:wire.${end.wire}`) };
    }
    case 'jumper':
      return point === undefined
        ? undefined
        : { cursor: 'crosshair', spot: { x: point.x, y: point.y }, words: pointWords(scene, point.point, words) };
    case 'clamp':
    case 'tug': {
      const wire = wireAt(scene, at, unit);
      return wire === undefined ? undefined : { cursor: 'grab', spot: at, words: words(`rig:wire.${wire}`) };
    }
    case 'look': {
      const part = partAt(scene, at);
      return part === undefined ? undefined : { cursor: 'zoom-in', words: '' };
    }
    default: {
      if (leadUnder(scene, view, at, unit) !== undefined) return { cursor: 'grab', words: '' };
      const near = point !== undefined && Math.hypot(point.x - at.x, point.y - at.y) <= 16;
      if (near) return { cursor: 'default', spot: { x: point.x, y: point.y }, words: pointWords(scene, point.point, words) };
      const region = regionAt(regionsOf(scene, view), at, unit);
      if (region === undefined) return undefined;
      if (region.tag) return { cursor: 'pointer', words: '' };
      return { cursor: 'pointer', spot: overBox(region.box), ring: false, words: words(region.name, regionValues(region, words)) };
    }
  }
}
