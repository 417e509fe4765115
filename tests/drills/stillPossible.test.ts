/** What is still possible: every suspect is begun from nothing and its readings compared. BELLWIRE_FULL=1 tries many. */
import { describe, expect, it } from 'vitest';
import { stillPossible } from '../../src/drills/kinds/stillPossible.ts';
import type { Said } from '../../src/drills/said.ts';
import type { Naming } from '../../src/suspects/hypotheses.ts';
import { asGoodAs, beyondAccuracy, hypothesisOf, itemsOf, namedIn, seriesIn, toldIn } from './worlds.ts';

const namesOf = (said: Said | undefined) => {
  if (said?.is !== 'faults') throw new Error('no set');
  return said.namings.map(nameOf).sort();
};
const nameOf = ({ target, mode }: Naming) => `${target}:${mode}`;

describe('what the readings leave', () => {
  const items = itemsOf(stillPossible, 15);

  it('is asked in most houses', () => {
    expect(items.length).toBeGreaterThan(6);
  });

  it('is every suspect that makes them all, and no other set is', { timeout: 600_000 }, () => {
    for (const { number, scene, given, choices, right } of items) {
      const suspects = given.filter(({ key }) => key === 'suspect').map(({ values: { fault } }) => namedIn(fault));
      expect(suspects).toHaveLength(4);
      const told = toldIn(given);
      const left = suspects.filter((naming) => {
        const { members } = hypothesisOf(scene, naming);
        expect(members).toHaveLength(1);
        const shown = seriesIn(scene, members[0]!, told);
        const fits = told.every(({ reading }, at) => asGoodAs(reading, shown[at]!));
        // Who does not fit is out by more than the meter may be wrong.
        if (!fits)
          expect(
            told.some(({ reading }, at) => beyondAccuracy(reading, shown[at]!)),
            `${number}`,
          ).toBe(true);
        return fits;
      });
      expect(namesOf(choices[right]?.said), `${number}`).toEqual(left.map(nameOf).sort());
      const sets = choices.map(({ said }) => namesOf(said).join());
      expect(new Set(sets).size).toBe(choices.length);
      expect(sets).not.toContain('');
    }
  });
});
