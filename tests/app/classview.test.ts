/** A class as a whole: what its figures say, and that everything measured has words. */
import i18next from 'i18next';
import { beforeAll, describe, expect, it, test } from 'vitest';
import { binsOf, placedOf, spreadsOf, wholeTicks } from '../../src/app/gradebook/views/chart-data.ts';
import { byChance, VERDICTS, verdictOn } from '../../src/app/gradebook/views/discrimination.ts';
import { namingView, ticketAt, ticketsAt } from '../../src/app/gradebook/views/item-tickets.ts';
import { measuredText } from '../../src/app/gradebook/views/measured-words.ts';
import { nameWires } from '../../src/app/wire-names.ts';
import { entryOf } from '../../src/classroom/entry.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { type Gradebook, gradebookOf } from '../../src/classroom/gradebook.ts';
import { type Analysis, pointBiserial } from '../../src/classroom/itemAnalysis.ts';
import type { Submission } from '../../src/classroom/submission.ts';
import { wordsOf } from '../../src/cli/files.ts';
import { classAssignment, codes, diceOf, honest } from '../classroom/crowd.ts';
import { library } from '../scenario/shipped.ts';
import { wordKeys } from '../tools/locale-keys.ts';
import { speakEnglish } from './english.ts';

const assignment = classAssignment(2);
const trainees = codes(4);
const dice = diceOf(8);
let submissions: readonly Submission[];
let gradebook: Gradebook;

beforeAll(async () => {
  await speakEnglish();
  for (const language of ['es', 'fr']) {
    for (const [namespace, words] of Object.entries(wordsOf(language))) i18next.addResourceBundle(language, namespace, words);
    await i18next.changeLanguage(language);
    nameWires(library.rigs.values());
  }
  await i18next.changeLanguage('en');
  submissions = trainees.flatMap((code) => assignment.items.map((_, item) => honest(assignment, code, item, dice)));
  const grader = createGrader(assignment, library, trainees);
  gradebook = gradebookOf({ assignment, entries: submissions.map((each, index) => entryOf(`${index}`, grader.grade(each))) });
});

describe('a discrimination', () => {
  const analysis = (changes: Partial<Analysis>): Analysis => ({
    item: 0,
    ticket: undefined,
    count: 30,
    rightCount: 15,
    difficulty: 0.5,
    discrimination: 0,
    wastedStep: undefined,
    wrongNaming: undefined,
    toldApart: [],
    ...changes,
  });

  it('is beyond chance when it is two standard deviations of all ways to deal the same numbers out', () => {
    const right = [true, true, true, false, false, false, false];
    const values = [90, 71, 64, 60, 35, 12, 12];
    const deals = permutations(values);
    expect(deals).toHaveLength(5040);
    const squares = deals.map((each) => (pointBiserial(right, each) ?? Number.NaN) ** 2);
    const deviation = Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / deals.length);
    expect(byChance(values.length)).toBeCloseTo(2 * deviation, 10);
    expect(byChance(2)).toBe(1);
  });

  it('says why it says nothing, or what it says', () => {
    const said = (changes: Partial<Analysis>, items = 3) => verdictOn(analysis(changes), items);
    const none = { discrimination: undefined };
    expect([
      said({ ...none, count: 2, rightCount: 1 }),
      said({}, 1),
      said({ ...none, rightCount: 30 }),
      said({ ...none, rightCount: 0 }),
      said(none),
      said({ discrimination: -0.37 }),
      said({ discrimination: 0.38 }),
      said({ discrimination: -0.38 }),
    ]).toEqual(VERDICTS);
  });
});

function permutations(values: readonly number[]): number[][] {
  if (values.length === 0) return [[]];
  return values.flatMap((each, index) =>
    permutations([...values.slice(0, index), ...values.slice(index + 1)]).map((rest) => [each, ...rest]),
  );
}

describe('the charts', () => {
  it('put every total in one bin, 100 in the last', () => {
    const totals = [0, 9.9, 10, 55, 99.9, 100];
    expect(binsOf(totals).map(({ trainees }) => trainees)).toEqual([2, 1, 0, 0, 0, 1, 0, 0, 0, 2]);
    expect(binsOf(totals).at(-1)).toMatchObject({ from: 90, to: 100 });
  });

  it('spread each item’s points from the lowest to the highest, with half of them in the box', () => {
    const spreads = spreadsOf(gradebook);
    expect(spreads.map(({ item }) => item)).toEqual([1, 2, 3]);
    for (const { item, trainees, lowest, lower, median, upper, highest } of spreads) {
      const points = gradebook.rows.flatMap(({ cells }) => cells[item - 1]?.points ?? []);
      expect(trainees).toBe(points.length);
      expect([lowest, highest]).toEqual([Math.min(...points), Math.max(...points)]);
      expect([lowest, lower, median, upper, highest]).toEqual([lowest, lower, median, upper, highest].sort((a, b) => a - b));
      expect(points.filter((each) => each >= lower && each <= upper).length).toBeGreaterThanOrEqual(points.length / 2);
    }
  });

  it('place the items that have both figures', () => {
    const whole = gradebook.analyses.filter(({ ticket }) => ticket === undefined);
    const both = whole.filter(({ discrimination }) => discrimination !== undefined);
    expect(placedOf(gradebook).map(({ item }) => item - 1)).toEqual(both.map(({ item }) => item));
  });

  it('count by whole numbers', () => {
    expect(wholeTicks(1)).toEqual([0, 1]);
    expect(wholeTicks(9)).toEqual([0, 2, 4, 6, 8]);
    expect(wholeTicks(200)).toEqual([0, 50, 100, 150, 200]);
  });
});

test('everything that a graded log measured has words in every language, and none of an id', async () => {
  let count = 0;
  for (const language of ['en', 'es', 'fr']) {
    await i18next.changeLanguage(language);
    for (const { cells } of gradebook.rows)
      for (const { item, entry, result } of cells) {
        const ticket = ticketAt(assignment, item, entry?.ticket ?? '', library)!;
        const view = namingView(assignment, item, ticket, library);
        for (const measured of result?.measured ?? []) {
          const words = measuredText(view, measured);
          expect(words, measured).not.toMatch(/\b(app|meter|rig|parts|classview):|undefined|\{\{|@/);
          for (const point of measured.split(' ').slice(1)) expect(words, measured).not.toContain(point);
          count += 1;
        }
      }
  }
  await i18next.changeLanguage('en');
  expect(count).toBeGreaterThan(100);
});

test('an item’s tickets are those that it has', () => {
  expect(assignment.items.map((_, index) => ticketsAt(assignment, index, library).length)).toEqual([2, 1, 2]);
  expect(ticketAt(assignment, 0, 'nowhere', library)).toBeUndefined();
});

test('every verdict and every mark has words', () => {
  const keys = wordKeys('.', 'en');
  for (const verdict of VERDICTS) expect(keys).toContain(`classview:items.discrimination.${verdict}`);
});
