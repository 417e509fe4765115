/** How a kind of question goes with the rest of its paper: by hand, and against mathjs over many classes. */
import { corr } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { FEWEST_SHEETS, restCorrelation } from '../../src/classroom/restCorrelation.ts';
import { randomNumbers } from '../circuit/random-network.ts';

interface Answer {
  readonly kind: string;
  readonly right: boolean;
}

const answers = (kind: string, right: number, asked: number): Answer[] =>
  Array.from({ length: asked }, (_, index) => ({ kind, right: index < right }));
/** Two questions of one kind, four of others: how many of each are right. */
const sheet = ([own, rest]: readonly [number, number]) => [...answers('one', own, 2), ...answers('other', rest, 4)];

describe('a kind beside the rest of its paper', () => {
  // Shares ½ of 0 0 ½ ½ 1 1 and ¼ of 0 2 2 2 2 4: deviations −½ −½ 0 0 ½ ½ and −½ 0 0 0 0 ½. Products ¼ + ¼, squares 1 and ½: r = ½ / √½ = √½.
  const worked = [
    [0, 0],
    [0, 2],
    [1, 2],
    [1, 2],
    [2, 2],
    [2, 4],
  ] as const;

  it('is as an example worked by hand has it, and does not count the kind itself among the rest', () => {
    expect(restCorrelation('one', worked.map(sheet))).toEqual({ sheets: 6, discrimination: expect.closeTo(Math.SQRT1_2, 12) });
    // With the kind in the total it would be 0.89.
    const whole = corr(
      worked.map(([own]) => own),
      worked.map(([own, rest]) => own + rest),
    );
    expect(Number(whole)).toBeCloseTo(0.894, 3);
  });

  it('is turned round where those who know the rest miss it', () => {
    const turned = worked.map(([own, rest]) => sheet([2 - own, rest]));
    expect(restCorrelation('one', turned).discrimination).toBeCloseTo(-Math.SQRT1_2, 12);
  });

  // Source: mathjs (npm), corr: Pearson's correlation.
  it('is what mathjs works out for any class', () => {
    const random = randomNumbers(9);
    for (let round = 0; round < 200; round += 1) {
      const sheets = Array.from({ length: FEWEST_SHEETS + Math.floor(random() * 30) }, () => {
        const able = random();
        const asked = 1 + Math.floor(random() * 4);
        const of = (kind: string, count: number) => Array.from({ length: count }, () => ({ kind, right: random() < able }));
        return [...of('one', asked), ...of('two', 6), ...of('three', 5)];
      });
      const share = (all: readonly Answer[]) => all.filter(({ right }) => right).length / all.length;
      const own = sheets.map((all) => share(all.filter(({ kind }) => kind === 'one')));
      const rest = sheets.map((all) => share(all.filter(({ kind }) => kind !== 'one')));
      if (new Set(own).size < 2) continue;
      expect(restCorrelation('one', sheets).discrimination).toBeCloseTo(Number(corr(own, rest)), 10);
    }
  });

  it('says nothing of too few sheets, of sheets that ask nothing else, and where everybody got the same', () => {
    expect(restCorrelation('one', worked.slice(1).map(sheet))).toEqual({ sheets: 5, discrimination: undefined });
    const alone = worked.map(([own]) => answers('one', own, 2));
    expect(restCorrelation('one', [...alone, ...worked.map(sheet)]).sheets).toBe(6);
    expect(restCorrelation('one', alone)).toEqual({ sheets: 0, discrimination: undefined });
    expect(
      restCorrelation(
        'one',
        worked.map(([, rest]) => sheet([1, rest])),
      ).discrimination,
    ).toBeUndefined();
    expect(
      restCorrelation(
        'one',
        worked.map(([own]) => sheet([own, 3])),
      ).discrimination,
    ).toBeUndefined();
  });
});
