/** Which fault fits: every choice is begun from nothing, taken through the scene's steps, and its readings compared. BELLWIRE_FULL=1 tries many. */
import { describe, expect, it } from 'vitest';
import { whichFault } from '../../src/drills/kinds/whichFault.ts';
import { asGoodAs, beyondAccuracy, hypothesisOf, itemsOf, namedIn, seriesIn, toldIn } from './worlds.ts';

describe('which fault fits all readings', () => {
  const items = itemsOf(whichFault, 15);

  it('is asked in many houses', () => {
    expect(items.length).toBeGreaterThan(4);
  });

  it('is the one that makes them all; every other makes some of them, and not all', { timeout: 600_000 }, () => {
    for (const { number, scene, given, choices, right } of items) {
      const told = toldIn(given);
      expect(told.length).toBeGreaterThanOrEqual(2);
      expect(told.length).toBeLessThanOrEqual(4);
      choices.forEach(({ said }, index) => {
        const { members } = hypothesisOf(scene, namedIn(said));
        expect(members).toHaveLength(1);
        const shown = seriesIn(scene, members[0]!, told);
        const fits = told.map(({ reading }, at) => asGoodAs(reading, shown[at]!));
        if (index === right) {
          expect(members[0]).toEqual(scene.faults);
          expect(shown.map(({ kind, text }) => [kind, text])).toEqual(told.map(({ reading: { kind, text } }) => [kind, text]));
        } else {
          expect(fits, `${number}`).toContain(true);
          expect(
            told.some(({ reading }, at) => beyondAccuracy(reading, shown[at]!)),
            `${number}`,
          ).toBe(true);
        }
      });
    }
  });
});
