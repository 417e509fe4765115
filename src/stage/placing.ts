import type { BenchView, PartView } from '../attempt/view.ts';
import { faceOf } from './faces.ts';
import type { PlacedPart } from './placed.ts';

function placed(part: PartView, view: Pick<BenchView, 'place' | 'parts'>): PlacedPart {
  const face = faceOf(part.kind);
  const spot = face.spot?.(part, view) ?? part.at;
  return { part, face, shape: face.shape(part), x: spot.x, y: spot.y };
}

/** Every part of the place that the trainee stands in, uncovered or not, where its face stands. */
export function partsHere(view: Pick<BenchView, 'place' | 'parts'>): PlacedPart[] {
  return view.parts.filter((part) => part.place === view.place).map((part) => placed(part, view));
}
