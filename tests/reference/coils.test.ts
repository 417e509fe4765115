import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../src/parts/catalogue.ts';
import { ARMATURE } from '../../src/parts/coil.ts';
import { setAt, smallWorld, stateAt } from '../parts/smallRig.ts';

const RATED_VOLTS = 24;
/** Every kind whose state has an armature: contactors and relays with a coil that a meter can reach. */
const KINDS = [...CATALOGUE.values()]
  .filter((kind) => 'armature' in kind.initial(kind.parameters.parse({}), undefined))
  .map(({ kind }) => kind);

/** The kind's coil straight across a supply. */
function onSupply(kind: string) {
  const world = smallWorld(
    [
      { id: 'supply', kind: 'testSupply', params: { volts: 0 } },
      { id: 'coil', kind },
    ],
    [
      ['supply.a', 'coil.A1'],
      ['supply.b', 'coil.A2'],
    ],
  );
  const at = (percent: number) => {
    setAt(world, 'supply', 'volts', (RATED_VOLTS * percent) / 100);
    return stateAt(world, 'coil').armature;
  };
  return { world, at };
}

// Source: IEC 60947-4-1 and NEMA ICS 2 (from memory): AC contactors close at 85 to 110 % of rated volts and drop out between 20 and 75 %.
describe.each(KINDS)('the coil of a %s', (kind) => {
  it('closes at any volts from 85 to 110 % of rated', () => {
    for (let percent = 85; percent <= 110; percent++) expect(onSupply(kind).at(percent), `${percent} %`).toBe(ARMATURE.in);
  });

  it('once closed, holds above 75 % and has dropped out at 20 %', () => {
    const { at } = onSupply(kind);
    expect(at(100)).toBe(ARMATURE.in);
    let droppedOutAt = Number.NaN;
    for (let percent = 100; percent >= 0 && Number.isNaN(droppedOutAt); percent--)
      if (at(percent) !== ARMATURE.in) droppedOutAt = percent;
    expect(droppedOutAt).toBeLessThan(75);
    expect(droppedOutAt).toBeGreaterThanOrEqual(20);
  });

  it('pulls in above where it drops out', () => {
    const { at } = onSupply(kind);
    let pulledInAt = Number.NaN;
    for (let percent = 0; percent <= 110 && Number.isNaN(pulledInAt); percent++)
      if (at(percent) === ARMATURE.in) pulledInAt = percent;
    expect(at(pulledInAt - 5)).toBe(ARMATURE.in);
  });
});

describe('the catalogue', () => {
  it('has a contactor among its coils', () => {
    expect(KINDS).toContain('contactor');
  });
});
