/** Which reading is impossible: every fault of the house in every severity, and none, is begun from nothing and read. BELLWIRE_FULL=1 tries many. */
import { describe, expect, it } from 'vitest';
import { impossible } from '../../src/drills/kinds/impossible.ts';
import { hypothesesOf } from '../../src/suspects/hypotheses.ts';
import { asGoodAs, beginAt, beyondAccuracy, itemsOf, leadsIn, rigOfScene } from './worlds.ts';

describe('the reading that no single fault makes', () => {
  const items = itemsOf(impossible, 6);

  it('is asked for', () => {
    expect(items.length).toBeGreaterThan(2);
  });

  it('is made by none, and every other by some', { timeout: 3_600_000 }, () => {
    for (const { number, scene, ask, choices, right } of process.env.BELLWIRE_FULL === undefined ? items.slice(0, 2) : items) {
      const { fn, red, black } = leadsIn(ask.values.leads);
      const all = [[], ...hypothesesOf(rigOfScene(scene)).flatMap(({ members }) => members)];
      const shown = all.flatMap((faults) => {
        const { bench, steps } = beginAt(scene, faults);
        expect([bench.fn, bench.red, bench.black]).toEqual([fn, red, black]);
        return steps.at(-1)?.observation.reading ?? [];
      });
      expect(shown).toHaveLength(all.length);
      choices.forEach(({ said }, index) => {
        if (said.is !== 'reading') throw new Error('no reading');
        const { reading } = said;
        if (index === right)
          expect(
            shown.filter((each) => !beyondAccuracy(each, reading)),
            `${number}`,
          ).toEqual([]);
        else
          expect(
            shown.some((each) => asGoodAs(each, reading) && !beyondAccuracy(each, reading)),
            `${number}`,
          ).toBe(true);
      });
    }
  });
});
