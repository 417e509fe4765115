import type { BenchView, PartView } from '../attempt/view.ts';
import type { Spot } from './wires.ts';

/** Words beside what they name: a heading and a line under it, by key. */
export interface Caption extends Spot {
  readonly heading: string;
  readonly line?: string;
  /** Widest that the line may run, scene units. */
  readonly most?: number;
}

/** Words about a base on the wall and the body that was pulled off it. */
function onTheWall(base: PartView, body: PartView): readonly Caption[] {
  const at = { x: Math.max(40, base.at.x - 360), y: base.at.y - 14 };
  const bare = { ...at, heading: 'stage:heading.subbase', line: 'stage:heading.subbaseLine' };
  const held = { x: body.at.x, y: body.at.y - 78 };
  switch (body.body) {
    case 'seated':
      return [{ ...at, heading: 'stage:heading.seated', line: 'stage:heading.seatedLine', most: 340 }];
    case 'pulled':
      return [bare, { ...held, heading: 'stage:heading.pulled', line: 'stage:heading.pulledLine' }];
    case 'turned':
      return [bare, { ...held, heading: 'stage:heading.turned', line: 'stage:heading.turnedLine' }];
    default:
      return [bare];
  }
}

/** What is written on the wall of a place: what has become of a body that comes off its base, and what the mat is for. */
export function captionsOf(view: BenchView, mat: boolean): readonly Caption[] {
  if (mat)
    return view.parts.some((part) => part.body === 'mat')
      ? [{ x: 60, y: 62, heading: 'stage:heading.mat', line: 'stage:heading.matLine' }]
      : [{ x: 60, y: 62, heading: 'stage:heading.matEmpty', line: 'stage:heading.matEmptyLine', most: 480 }];
  return view.parts.flatMap((body) => {
    const base = view.parts.find(({ id }) => id === body.base);
    return base === undefined || base.place !== view.place ? [] : onTheWall(base, body);
  });
}
