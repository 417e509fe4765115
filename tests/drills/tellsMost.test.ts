/** Which reading tells most: each is taken in each suspect's world, begun from nothing, and its gain worked out from the shares told. BELLWIRE_FULL=1 tries many. */
import { describe, expect, it } from 'vitest';
import { tellsMost } from '../../src/drills/kinds/tellsMost.ts';
import type { Reading } from '../../src/meter/read.ts';
import { asGoodAs, beginAt, hypothesisOf, itemsOf, leadsIn, namedIn, readAt } from './worlds.ts';

/** H(X), bits. */
const entropy = (weights: readonly number[]) => {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.reduce((sum, weight) => (weight > 0 ? sum - (weight / total) * Math.log2(weight / total) : sum), 0);
};

/** Each suspect shows one thing for sure: what is learnt is the entropy of what will be shown. */
const gain = (shown: readonly Reading[], shares: readonly number[]) => {
  const parts: { readonly reading: Reading; share: number }[] = [];
  shown.forEach((reading, index) => {
    const part = parts.find((each) => asGoodAs(each.reading, reading));
    if (part) part.share += shares[index]!;
    else parts.push({ reading, share: shares[index]! });
  });
  return entropy(parts.map(({ share }) => share));
};

describe('the reading that tells most', () => {
  const items = itemsOf(tellsMost, 15);

  it('is asked for in many houses', () => {
    expect(items.length).toBeGreaterThan(4);
  });

  it('is worth more by a clear margin, by the shares as they are told', { timeout: 600_000 }, () => {
    for (const { number, scene, given, choices, right } of items) {
      const suspects = given.filter(({ key }) => key === 'suspect');
      const shares = suspects.map(({ values: { share } }) => (share?.is === 'number' ? share.value : 0));
      expect(
        shares.reduce((sum, share) => sum + share, 0),
        `${number}`,
      ).toBe(100);
      expect(Math.min(...shares), `${number}`).toBeGreaterThan(0);
      const worlds = suspects.map(({ values: { fault } }) => hypothesisOf(scene, namedIn(fault)).members);
      expect(worlds.every((members) => members.length === 1)).toBe(true);
      const gains = choices.map(({ said }) =>
        gain(
          worlds.map(([faults]) => readAt(beginAt(scene, faults!), leadsIn(said))),
          shares,
        ),
      );
      choices.forEach(({ misconception }, index) => {
        if (index !== right) expect(gains[right]! - gains[index]!, `${number}`).toBeGreaterThan(0.2);
        if (misconception === 'knownBefore') expect(gains[index]).toBe(0);
        if (misconception === 'tellsLess') expect(gains[index]).toBeGreaterThan(0);
      });
    }
  });
});
