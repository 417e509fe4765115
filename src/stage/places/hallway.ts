import type { BenchView } from '../../attempt/view.ts';
import type { Caption, PlaceLook } from '../place.ts';
import { MATERIAL, shade } from '../tokens.ts';
import { courses, ledge, wall } from './walls.ts';

function thermostatCaptions(view: BenchView): readonly Caption[] {
  const body = view.parts.find((part) => part.body !== undefined)?.body;
  const base = { x: 40, y: 46, heading: 'stage:heading.subbase', line: 'stage:heading.subbaseLine' };
  switch (body) {
    case 'seated':
      return [{ x: 40, y: 46, heading: 'stage:heading.seated', line: 'stage:heading.seatedLine', most: 340 }];
    case 'pulled':
      return [base, { x: 40, y: 294, heading: 'stage:heading.pulled', line: 'stage:heading.pulledLine' }];
    case 'turned':
      return [base, { x: 40, y: 294, heading: 'stage:heading.turned', line: 'stage:heading.turnedLine' }];
    default:
      return [base];
  }
}

/** The wall that the thermostat hangs on. */
export const hallway: PlaceLook = {
  coverLook: 'enamel',
  harness: false,
  wireWidth: 9,
  exits: [],
  joins: [],
  backdrop(pen, bounds) {
    wall(pen, bounds, MATERIAL.plasterLight, MATERIAL.plaster, MATERIAL.plasterShade);
    courses(pen, bounds, 60, shade(0.08));
    ledge(pen, bounds, MATERIAL.shelfEdge, MATERIAL.shelf);
  },
  captions: thermostatCaptions,
};
