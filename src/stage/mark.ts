import { type Action, sameAction } from '../attempt/actions.ts';
import type { BenchView } from '../attempt/view.ts';
import { type Scene, spotOf } from './layout.ts';
import type { Box } from './pen.ts';
import { regionsOf } from './targets.ts';
import { SIZES } from './tokens.ts';
import type { Spot } from './wires.ts';

function around({ x, y }: Spot): Box {
  return { x: x - SIZES.target / 2, y: y - SIZES.target / 2, width: SIZES.target, height: SIZES.target };
}

/** Whether a region's action does what is wanted; a setting's key does when it moves the setting the right way. */
function does(view: BenchView, action: Action, wanted: Action): boolean {
  if (action.name === 'set' && wanted.name === 'set' && action.part === wanted.part && action.control === wanted.control) {
    const part = view.parts.find((each) => each.id === wanted.part);
    const now = Number(part?.controls.find((each) => each.id === wanted.control)?.value);
    return Math.sign(action.value - now) === Math.sign(wanted.value - now);
  }
  return sameAction(action, wanted);
}

/** Where in a scene an action is done by hand, in scene units; undefined when it is done elsewhere, or not from here. */
export function markOf(scene: Scene, view: BenchView, action: Action): Box | undefined {
  switch (action.name) {
    case 'probe': {
      const spot = spotOf(scene, action.at ?? undefined);
      return spot && around(spot);
    }
    case 'jumper': {
      const spot = spotOf(scene, action.from);
      return spot && around(spot);
    }
    case 'lift':
    case 'land': {
      const end = scene.ends.find((each) => each.wire === action.wire && each.end === action.end);
      return end && around(end);
    }
    case 'look': {
      const placed = scene.parts.find((each) => each.part.id === action.part);
      return placed && { x: placed.x, y: placed.y, width: placed.shape.width, height: placed.shape.height };
    }
    default:
      return regionsOf(scene, view).find((region) => does(view, region.action, action))?.box;
  }
}
