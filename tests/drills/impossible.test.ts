/** Where something cannot be read: every fault of the house in every severity, and none, is begun from nothing and read. BELLWIRE_FULL=1 tries many. */
import { describe, expect, it } from 'vitest';
import { createBank } from '../../src/drills/draw.ts';
import { impossible } from '../../src/drills/kinds/impossible.ts';
import { hypothesesOf } from '../../src/suspects/hypotheses.ts';
import { library } from '../scenario/shipped.ts';
import { asGoodAs, beginAt, beyondAccuracy, itemsOf, leadsIn, readAt, rigOfScene, toldIn } from './worlds.ts';

const FULL = process.env.BELLWIRE_FULL !== undefined;
/** Of a house whose limit opens and shuts by itself within the minutes of a question. */
const CYCLES = 1959;

describe('the place where something can no longer be read', () => {
  const items = itemsOf(impossible, 6);

  it('is asked for', () => {
    expect(items.length).toBeGreaterThan(2);
  });

  it('shows it with no fault that leaves the reading taken, and every other place with some', { timeout: 7_200_000 }, () => {
    const cycles = createBank([...library.rigs.values()]).item(impossible, CYCLES);
    if (!cycles) throw new Error('nothing is asked of the house that cycles');
    for (const { number, scene, ask, given, choices, right } of [...(FULL ? items : items.slice(0, 2)), cycles]) {
      const [told] = toldIn(given);
      const asked = ask.values.shown;
      if (!told || asked?.is !== 'reading') throw new Error('nothing told');
      const rows = [[], ...hypothesesOf(rigOfScene(scene)).flatMap(({ members }) => members)].map((faults) => {
        const attempt = beginAt(scene, faults);
        const { fn, red, black } = attempt.bench;
        expect([fn, red, black]).toEqual([told.leads.fn, told.leads.red, told.leads.black]);
        return {
          first: attempt.steps.at(-1)!.observation.reading!,
          later: choices.map(({ said }) => readAt(attempt, leadsIn(said))),
        };
      });
      // Who leaves the reading at all, by more than the meter may be wrong; and who makes it for sure.
      const left = rows.filter(({ first }) => !beyondAccuracy(first, told.reading));
      const sure = rows.filter(({ first }) => asGoodAs(first, told.reading));
      expect(sure.length, `${number}`).toBeGreaterThan(0);
      choices.forEach((_, index) => {
        if (index === right) {
          expect(
            left.filter(({ later }) => !beyondAccuracy(later[index]!, asked.reading)),
            `${number}`,
          ).toEqual([]);
          // As long as nobody had read anything, it could have been shown there.
          expect(
            rows.some(({ later }) => asGoodAs(later[index]!, asked.reading)),
            `${number}`,
          ).toBe(true);
        } else
          expect(
            sure.some(({ later }) => asGoodAs(later[index]!, asked.reading)),
            `${number}`,
          ).toBe(true);
      });
    }
  });
});
