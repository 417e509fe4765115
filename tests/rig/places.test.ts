import { describe, expect, test } from 'vitest';
import { isDataError } from '../../src/rig/errors.ts';
import { loadRig } from '../../src/rig/load.ts';
import { library } from '../scenario/shipped.ts';

/** The first rig with some of the looks of its second place (a mat) changed. */
function problem(change: Record<string, unknown>): unknown {
  const rig = structuredClone(library.rigs.get('furnaceAndCondenser'));
  Object.assign(rig?.places[1] ?? {}, change);
  try {
    loadRig(rig);
    return undefined;
  } catch (error) {
    return isDataError(error) ? `${error.code} ${error.path}` : error;
  }
}

describe('the looks of a place', () => {
  test('may all be left out', () => {
    expect(problem({ look: undefined, section: undefined })).toBeUndefined();
  });

  test.each([
    [{ look: 'ballroom' }, 'data.value places[1].look'],
    [{ section: { column: 1, storey: 1 } }, 'rig.cell places[1].section'],
    [{ section: 'under' }, 'data.shape places[1].section'],
    [{ cabinets: [{ x: 0, y: 0, width: 100, height: 100, finish: 'gold' }] }, 'data.value places[1].cabinets[0].finish'],
    [{ exits: [{ x: 1000, y: 0 }] }, 'data.tooBig places[1].exits[0].x'],
    [{ lean: [{ x: 0, y: 0, width: 50, height: 50 }] }, 'rig.coverless places[1].lean[0]'],
    [{ tags: [{ x: 0, y: 0 }] }, 'rig.coverless places[1].tags[0]'],
    [{ sofa: true }, 'data.unknownKey places[1]'],
  ])('%j is refused, with the place in the file', (change, said) => {
    expect(problem(change)).toBe(said);
  });
});
