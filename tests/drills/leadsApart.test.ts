/** Where to put the leads: each pair is read with either fault, in attempts begun from nothing. BELLWIRE_FULL=1 tries many. */
import { describe, expect, it } from 'vitest';
import { leadsApart } from '../../src/drills/kinds/leadsApart.ts';
import { asGoodAs, beginAt, beyondAccuracy, hypothesisOf, itemsOf, leadsIn, namedIn, readAt } from './worlds.ts';

describe('leads that tell two faults apart', () => {
  const items = itemsOf(leadsApart, 15);

  it('are asked for in most houses', () => {
    expect(items.length).toBeGreaterThan(8);
  });

  it('show two things at the right pair and one at every wrong one', { timeout: 600_000 }, () => {
    for (const { number, scene, ask, choices, right } of items) {
      const [one, other] = ['one', 'other'].map((key) => hypothesisOf(scene, namedIn(ask.values[key])));
      expect(one!.members).toHaveLength(1);
      expect(other!.members).toHaveLength(1);
      expect([one!.members[0], other!.members[0]], `${number}`).toContainEqual(scene.faults);
      choices.forEach(({ said }, index) => {
        const leads = leadsIn(said);
        const [a, b] = [one!, other!].map(({ members }) => readAt(beginAt(scene, members[0]!), leads));
        if (index === right) expect(beyondAccuracy(a!, b!), `${number}: ${a!.text} and ${b!.text}`).toBe(true);
        else expect(asGoodAs(a!, b!), `${number}: ${a!.text} and ${b!.text}`).toBe(true);
      });
    }
  });

  it('are points that a probe reaches in the scene, and the picture marks', () => {
    for (const { scene, choices, marked } of items.slice(0, 4)) {
      for (const { said } of choices) {
        const { red, black } = leadsIn(said);
        expect(marked).toEqual(expect.arrayContaining([red, black]));
        readAt(beginAt(scene, scene.faults), leadsIn(said));
      }
    }
  });
});
