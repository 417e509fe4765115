/** What each ticket and paper of an assignment counts, and that its total is made of nothing else. */
import i18next from 'i18next';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answersOf } from '../../src/classroom/answers.ts';
import { type Assignment, loadAssignment } from '../../src/classroom/assignment.ts';
import { digestOf } from '../../src/classroom/digest.ts';
import type { Entry } from '../../src/classroom/entry.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { gradebookOf } from '../../src/classroom/gradebook.ts';
import { COLUMNS, type CsvWords, csvOf, longTable, namingKey, wideTable } from '../../src/classroom/gradebookCsv.ts';
import { papersOf } from '../../src/classroom/papers.ts';
import { sharesOf, totalOf, weightsOf, withWeight } from '../../src/classroom/weights.ts';
import { gradebookText } from '../../src/cli/gradeText.ts';
import type { Library } from '../../src/scenario/library.ts';
import { speakEnglish } from '../app/english.ts';
import { randomNumbers } from '../circuit/random-network.ts';
import { library as whole } from '../scenario/shipped.ts';
import { BEGAN } from './crowd.ts';

/** The smallest system alone, so that a paper is drawn in a moment. */
const library: Library = { rigs: new Map([['trainingBoard', whole.rigs.get('trainingBoard')!]]), tickets: whole.tickets };
const ticket = library.tickets.find(({ rig }) => rig === 'trainingBoard')!.id;

/** A ticket and a set of exercises that count so much. */
function weighing(first?: unknown, second?: unknown): Assignment {
  return loadAssignment({
    format: 'bellwire-assignment',
    version: 1,
    id: 'week-11',
    title: 'Week eleven',
    mode: 'graded',
    seed: 3,
    items: [{ kind: 'shipped', ticket, ...(first === undefined ? {} : { weight: first }) }],
    papers: [{ kind: 'drills', drills: ['reading'], count: 5, ...(second === undefined ? {} : { weight: second }) }],
  });
}

const entry = (item: number, points: number): Entry => ({
  file: `${item}.json`,
  trainee: { code: 'ana', name: '' },
  item,
  attempt: 1,
  ticket: `${item}`,
  began: BEGAN,
  stamps: [],
  actions: [],
  seal: `${item}`,
  doubts: [],
  result: undefined,
  paper: { total: points, right: 0, asked: 0, passed: undefined, answers: [] },
});
const bookOf = (assignment: Assignment, ...points: number[]) =>
  gradebookOf({ assignment, entries: points.map((each, item) => entry(item, each)) });

describe('a total', () => {
  it('is the mean of the points by weight', () => {
    // By hand: (3 × 80 + 1 × 40 + 6 × 0) / (3 + 1 + 6) = 280 / 10.
    expect(totalOf([80, 40, undefined], [3, 1, 6])).toBe(28);
    // By hand: (3 × 90 + 1 × 50) / 4 = 320 / 4; what is not handed in keeps its weight: 3 × 90 / 4.
    expect(bookOf(weighing(3), 90, 50).rows[0]?.total).toBe(80);
    expect(bookOf(weighing(3), 90).rows[0]?.total).toBe(67.5);
    expect(bookOf(weighing(undefined, 3), 90, 50).rows[0]?.total).toBe(60);
  });

  it('is the plain mean where all weigh the same: to the bit where nothing is said, and within rounding at any weight', () => {
    const random = randomNumbers(8);
    for (let round = 0; round < 500; round++) {
      const points = Array.from({ length: 1 + Math.floor(random() * 30) }, () =>
        random() < 0.2 ? undefined : Math.floor(random() * 1001) / 10,
      );
      const plain = points.reduce<number>((sum, each) => sum + (each ?? 0), 0) / points.length;
      expect(
        totalOf(
          points,
          points.map(() => 1),
        ),
      ).toBe(plain);
      const weight = 2 + Math.floor(random() * 9);
      expect(
        totalOf(
          points,
          points.map(() => weight),
        ),
      ).toBeCloseTo(plain, 9);
    }
  });

  it('counts an item of a weight like so many items of none', () => {
    const random = randomNumbers(9);
    for (let round = 0; round < 200; round++) {
      const points = Array.from({ length: 5 }, () => Math.floor(random() * 101));
      const weights = points.map(() => 1 + Math.floor(random() * 10));
      const many = points.flatMap((each, place) => Array.from({ length: weights[place]! }, () => each));
      expect(totalOf(points, weights)).toBeCloseTo(
        totalOf(
          many,
          many.map(() => 1),
        ),
        9,
      );
    }
  });
});

describe('a weight', () => {
  it('is left out of files that do not say it: they and their digests are what they were', () => {
    const plain = {
      format: 'bellwire-assignment',
      version: 1,
      id: 'week-11',
      title: 'Week eleven',
      mode: 'graded',
      attempts: 1,
      seed: 3,
      items: [{ kind: 'shipped', ticket: 'darkHeatLamp' }],
      papers: [{ kind: 'drills', drills: ['reading'], count: 5 }],
    };
    expect(JSON.stringify(loadAssignment(plain))).toBe(JSON.stringify(plain));
    // As it was before there were weights.
    expect(digestOf(loadAssignment(plain))).toBe('d0a4b256fb462ac714322758e5e770ab');
    expect(weightsOf(weighing())).toEqual([1, 1]);
    const item = weighing().items[0]!;
    expect(withWeight(item, 4)).toEqual({ ...item, weight: 4 });
    expect(Object.keys(withWeight(withWeight(item, 4), 1))).toEqual(Object.keys(item));
  });

  it('has no share to tell where all are the same', () => {
    expect([weighing(), weighing(1), weighing(4, 4)].map(sharesOf)).toEqual([undefined, undefined, undefined]);
    expect(sharesOf(weighing(3))).toEqual([0.75, 0.25]);
  });

  it('is refused with its place and the way out where it is none', async () => {
    await speakEnglish();
    for (const weight of [0, 11, 1.5, '2', null, -1])
      expect(() => weighing(weight), `${weight}`).toThrow(
        expect.objectContaining({ code: 'classroom.weight', path: 'items[0].weight' }),
      );
    expect(() => weighing(1, 0)).toThrow(expect.objectContaining({ code: 'classroom.weight', path: 'papers[0].weight' }));
    expect(i18next.t('error:classroom.weight', { path: 'a.json › items[0].weight' })).toBe(
      'a.json › items[0].weight: a weight is a whole number from 1 to 10. Leave it out for 1, and take out what is not to count.',
    );
  });

  it('is part of what is sealed: answers that were given at other weights are found', () => {
    const at = (assignment: Assignment) => {
      const paper = papersOf(assignment, 'ana', library)[0]!;
      const open = paper.questions.map(() => null);
      const trainee = { code: 'ana', name: '' };
      return answersOf({ assignment, trainee, paper, attempt: 1, began: BEGAN, choices: open, stamps: open, ended: 'closed' });
    };
    const [real, heavier] = [weighing(2), weighing(9)];
    const grader = createGrader(real, library, ['ana']);
    const doubtsOf = (json: unknown) => grader.grade(json).doubts.map(({ code }) => code);
    expect(doubtsOf(at(real))).toEqual([]);
    expect(doubtsOf(at(heavier))).toContain('otherAssignment');
    // With the real digest written over it, the seal does not fit.
    expect(doubtsOf({ ...at(heavier), assignment: at(real).assignment })).toEqual(['edited']);
  });
});

const WORDS: CsvWords = {
  column: (column) => column,
  item: (item) => `item ${item + 1}`,
  weighted: (item, weight) => `${item} (weight ${weight})`,
  naming: namingKey,
  doubt: ({ code }) => code,
  yes: 'yes',
  no: 'no',
};
const readBack = (table: Parameters<typeof csvOf>[0]) => Papa.parse<string[]>(csvOf(table), { skipEmptyLines: true }).data;

describe('tables', () => {
  it('say weights where they differ, in a last column or in the headings, and make the total of them', () => {
    const book = bookOf(weighing(3), 90, 50);
    const [head, ...lines] = readBack(longTable(book, WORDS));
    expect(head).toEqual([...COLUMNS, 'weight']);
    expect(lines.map((line) => line.at(-1))).toEqual(['3', '1']);
    // The total, made again from what the table says: (3 × 90 + 1 × 50) / 4 = 80.
    const points = lines.map((line) => Number(line[COLUMNS.indexOf('points')]));
    const [, wide] = readBack(wideTable(book, WORDS));
    expect(wide).toEqual(['ana', '', '90', '50', '80', '0']);
    expect(
      totalOf(
        points,
        lines.map((line) => Number(line.at(-1))),
      ),
    ).toBe(80);
    expect(readBack(wideTable(book, WORDS))[0]?.slice(2, 4)).toEqual(['item 1 (weight 3)', 'item 2 (weight 1)']);
  });

  it('are what they were where weights are the same', () => {
    const [plain, same] = [bookOf(weighing(), 90, 50), bookOf(weighing(5, 5), 90, 50)];
    for (const table of [longTable, wideTable]) expect(csvOf(table(same, WORDS))).toBe(csvOf(table(plain, WORDS)));
    expect(longTable(plain, WORDS)[0]).toEqual([...COLUMNS]);
    expect(wideTable(plain, WORDS)[0]).toEqual(['trainee', 'name', 'item 1', 'item 2', 'total', 'doubts']);
  });

  it('are told on the command line by the same weights', async () => {
    await speakEnglish();
    const [head, ana] = gradebookText(bookOf(weighing(3), 90, 50)).split('\n');
    expect(head).toMatch(/^trainee +Ticket 1 \(weight 3\) +Exercises 2 \(weight 1\) +total$/);
    expect(ana).toMatch(/^ana +90 +50 +80\.0$/);
    expect(gradebookText(bookOf(weighing(), 90, 50)).split('\n')[0]).toMatch(/^trainee +Ticket 1 +Exercises 2 +total$/);
  });
});
