import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { DoubtCode } from '../../src/classroom/doubts.ts';
import { doubt } from '../../src/classroom/doubts.ts';
import type { Entry } from '../../src/classroom/entry.ts';
import { entryOf } from '../../src/classroom/entry.ts';
import { createGrader, type Result } from '../../src/classroom/grade.ts';
import { gradebookOf } from '../../src/classroom/gradebook.ts';
import { COLUMNS, type CsvWords, csvOf, longTable, namingKey, wideTable } from '../../src/classroom/gradebookCsv.ts';
import { loadGradebookFile } from '../../src/classroom/gradebookFile.ts';
import { analysesOf, pointBiserial } from '../../src/classroom/itemAnalysis.ts';
import { loadOverrules, type Overrule } from '../../src/classroom/overrules.ts';
import { sameLogs } from '../../src/classroom/sameLog.ts';
import { randomNumbers } from '../circuit/random-network.ts';
import { library } from '../scenario/shipped.ts';
import { classAssignment, codes, diceOf, honest } from './crowd.ts';

const assignment = classAssignment(2);
const truth = { section: 'supply', target: 'fuse', mode: 'open' } as const;

function resultWith(changes: Partial<Result> = {}): Result {
  const items = { isolation: 50, economy: 20, safety: 15, proof: 10 };
  const rest = { minutes: 10, parMinutes: 8, steps: 12, wastedSteps: 0, wasted: [], measured: [], skills: [], asked: [] };
  return { total: 95, items, rightNaming: true, truth, named: truth, ...rest, ...changes };
}

function entryWith(code: string, item: number, changes: Partial<Entry> = {}): Entry {
  return {
    file: `${code}-${item}.json`,
    trainee: { code, name: '' },
    item,
    attempt: 1,
    ticket: `ticket${item}`,
    began: '2026-03-02T13:00:00Z',
    stamps: [],
    actions: [],
    seal: `${code} ${item} ${changes.attempt ?? 1}`,
    doubts: [],
    result: resultWith(),
    ...changes,
  };
}

describe('point-biserial correlation', () => {
  it('is what the SciPy reference prints for its example of scipy.stats.pointbiserialr', () => {
    const right = [false, false, false, true, true, true, true];
    expect(pointBiserial(right, [0, 1, 2, 3, 4, 5, 6])).toBeCloseTo(0.8660254037844386, 12);
  });

  it('is the difference of the two means in standard deviations, times √(pq), for any class', () => {
    const random = randomNumbers(4);
    for (let round = 0; round < 200; round++) {
      const values = Array.from({ length: 3 + Math.floor(random() * 30) }, () => Math.floor(random() * 101));
      const right = values.map((value) => random() * 100 < value);
      const found = pointBiserial(right, values);
      const all = values.length;
      const ones = values.filter((_, index) => right[index]);
      const zeros = values.filter((_, index) => !right[index]);
      const average = (some: readonly number[]) => some.reduce((sum, each) => sum + each, 0) / some.length;
      const deviation = Math.sqrt(average(values.map((value) => (value - average(values)) ** 2)));
      if (ones.length === 0 || zeros.length === 0 || deviation === 0) expect(found).toBeUndefined();
      else
        expect(found).toBeCloseTo(
          ((average(ones) - average(zeros)) / deviation) * Math.sqrt((ones.length * zeros.length) / all ** 2),
          10,
        );
    }
  });

  it('says nothing of two, of all right, or of a class that got the same on all else', () => {
    expect(pointBiserial([true, false], [1, 2])).toBeUndefined();
    expect(pointBiserial([true, true, true], [1, 2, 3])).toBeUndefined();
    expect(pointBiserial([true, false, true], [7, 7, 7])).toBeUndefined();
  });
});

describe('an item, analysed', () => {
  const look = { name: 'look', part: 'fuse' } as const;
  const wrong = { section: 'cable', target: 'r', mode: 'open' } as const;
  const taken = [
    { trainee: 'a', right: true, total: 100, rest: 90, measured: ['voltsAc f.1 f.2', 'ohms f.1 f.2'] },
    { trainee: 'b', right: true, total: 80, rest: 80, measured: ['voltsAc f.1 f.2'] },
    { trainee: 'c', right: false, total: 30, rest: 40, measured: ['voltsAc f.1 f.2'] },
    { trainee: 'd', right: false, total: 30, rest: 30, measured: [] },
  ].map(({ trainee, right, total, rest, measured }) => ({
    trainee,
    ticket: 'one',
    rest,
    result: resultWith({
      total,
      measured,
      rightNaming: right,
      named: right ? truth : wrong,
      wasted: right ? [] : [1, 2].map((step) => ({ step, action: look, seconds: 5 })),
    }),
  }));
  const [all] = analysesOf(0, taken);

  it('is as hard as the mean share of its points, and its commonest mistakes are counted by trainee', () => {
    expect(all).toMatchObject({ item: 0, ticket: undefined, count: 4, rightCount: 2, difficulty: 0.6 });
    expect(all?.wastedStep).toEqual({ action: look, trainees: 2, ticket: 'one' });
    expect(all?.wrongNaming).toEqual({ naming: wrong, trainees: 2, ticket: 'one' });
    // Means 85 and 35, of 90 80 40 30: deviation √650, half of them right.
    expect(all?.discrimination).toBeCloseTo((50 / Math.sqrt(650)) * 0.5, 12);
  });

  it('tells what the right ones measured by the difference of shares', () => {
    expect(all?.toldApart).toEqual([
      { measured: 'ohms f.1 f.2', ticket: 'one', right: 0.5, wrong: 0 },
      { measured: 'voltsAc f.1 f.2', ticket: 'one', right: 1, wrong: 0.5 },
    ]);
  });

  it('is looked at ticket by ticket where it was drawn', () => {
    const drawn = taken.map((each, index) => ({ ...each, ticket: index < 3 ? 'one' : 'two' }));
    expect(analysesOf(0, drawn).map(({ ticket, count }) => [ticket, count])).toEqual([
      [undefined, 4],
      ['one', 3],
      ['two', 1],
    ]);
    expect(analysesOf(0, []).map(({ difficulty }) => difficulty)).toEqual([undefined]);
  });
});

describe('a gradebook', () => {
  it('counts the best attempt without a doubt, or the last, by its own word for it', () => {
    const entries = [
      entryWith('ana', 0, { attempt: 1, result: resultWith({ total: 80 }) }),
      entryWith('ana', 0, { attempt: 2, result: resultWith({ total: 60 }) }),
      entryWith('ana', 0, { attempt: 3, result: resultWith({ total: 99 }), doubts: [doubt('edited')] }),
    ];
    const best = gradebookOf({ assignment, entries });
    expect(best.counts).toBe('best');
    expect(best.rows[0]?.cells[0]).toMatchObject({ points: 80, attempts: 3, open: true });
    expect(gradebookOf({ assignment, entries, counts: 'last' }).rows[0]?.cells[0]?.points).toBe(99);
  });

  it('counts what was not handed in as nothing, and an overrule before all else, which settles the doubts there', () => {
    const entries = [
      entryWith('bo', 0, { result: resultWith({ total: 90 }) }),
      entryWith('bo', 1, { doubts: [doubt('truncated', 5)], result: undefined }),
    ];
    const before = gradebookOf({ assignment, entries });
    expect(before.rows[0]?.total).toBe(30);
    expect(before.openDoubts).toBe(1);
    const overrule: Overrule = {
      trainee: 'bo',
      item: 1,
      points: 60,
      reason: 'shown at the bench',
      by: 'Kim',
      at: '2026-03-03T08:00:00Z',
    };
    const after = gradebookOf({ assignment, entries, overrules: [{ ...overrule, points: 1 }, overrule] });
    expect(after.rows[0]?.cells[1]).toMatchObject({ points: 60, open: false, overrule });
    expect(after.rows[0]?.total).toBe(50);
    expect(after.openDoubts).toBe(0);
  });

  it('takes the same file twice for one, and doubts two that say they are the same attempt', () => {
    const entry = entryWith('cy', 0);
    expect(gradebookOf({ assignment, entries: [entry, { ...entry, file: 'copy.json' }] }).openDoubts).toBe(0);
    const twice = gradebookOf({ assignment, entries: [entry, { ...entry, file: 'other.json', seal: 'another' }] });
    expect(twice.rows[0]?.cells[0]?.doubts.map((each) => each.doubt.code)).toEqual<DoubtCode[]>(['handedInTwice', 'handedInTwice']);
  });

  it('maps skills over those that were asked for', () => {
    const entries = [
      entryWith('ana', 0, { result: resultWith({ asked: ['hopscotch', 'supplyFirst'], skills: ['hopscotch'] }) }),
      entryWith('bo', 0, { result: resultWith({ asked: ['hopscotch'], skills: ['hopscotch', 'flameCurrent'] }) }),
    ];
    expect(gradebookOf({ assignment, entries }).skills).toEqual([
      {
        skill: 'supplyFirst',
        trainees: [
          { shown: 0, asked: 1 },
          { shown: 0, asked: 0 },
        ],
        shown: 0,
        asked: 1,
      },
      {
        skill: 'hopscotch',
        trainees: [
          { shown: 1, asked: 1 },
          { shown: 1, asked: 1 },
        ],
        shown: 2,
        asked: 2,
      },
    ]);
  });
});

describe('two trainees’ logs', () => {
  const way = Array.from({ length: 40 }, (_, index) => `step${index}`);
  const paceOf = (seed: number) => {
    const random = randomNumbers(seed);
    let now = 0;
    return way.map(() => {
      now += 2 + random() * 20;
      return Math.round(now * 1000) / 1000;
    });
  };
  const wasted = (steps: readonly number[]) =>
    resultWith({ wasted: steps.map((step) => ({ step, action: { name: 'probe', lead: 'red', at: `x.${step}` }, seconds: 5 })) });
  const at = (code: string, changes: Partial<Entry>) =>
    entryWith(code, 0, { actions: way, stamps: paceOf(code.length), ...changes });

  it('that are the same short way, however long, accuse nobody', () => {
    expect(sameLogs([at('a', {}), at('bb', {}), at('ccc', {})])).toEqual([]);
  });

  it('accuse nobody where whole seconds agree here and there, or both only looked round', () => {
    const whole = (seed: number) => paceOf(seed).map(Math.round);
    expect(sameLogs([at('a', { stamps: whole(1) }), at('bb', { stamps: whole(2) })])).toEqual([]);
    const looks = resultWith({
      wasted: [1, 2, 3, 4, 5, 6, 7, 8].map((step) => ({ step, action: { name: 'look', part: `p${step}` }, seconds: 5 })),
    });
    expect(sameLogs([at('a', { result: looks }), at('bb', { result: looks })])).toEqual([]);
  });

  it('at the same pace are doubted, and also where one began later', () => {
    const later = paceOf(1).map((stamp) => stamp + 100.5);
    expect(sameLogs([at('a', {}), at('bb', { stamps: later })])).toMatchObject([{ why: 'pace', steps: 40 }]);
  });

  it('with the same needless steps in a row are doubted, and only where few others took them', () => {
    const odd = wasted([5, 9, 13, 14, 20, 22, 27, 31, 33, 36, 38]);
    const pair = [at('a', { result: odd }), at('bb', { result: odd })];
    expect(sameLogs(pair)).toMatchObject([{ why: 'waste', steps: 40 }]);
    const everybody = Array.from({ length: 12 }, (_, index) => at('c'.repeat(index + 3), { result: odd }));
    expect(sameLogs([...pair, ...everybody])).toEqual([]);
  });

  it('stand in the gradebook as a doubt about both, each naming the other', () => {
    const { rows, openDoubts } = gradebookOf({
      assignment,
      entries: [at('a', {}), at('bb', {}), at('dddd', { stamps: paceOf(1) })],
    });
    const told = rows.map(({ trainee, cells }) => [trainee.code, cells[0]?.doubts.map(({ doubt }) => doubt.code)]);
    expect(told).toEqual([
      ['a', ['sameLog']],
      ['bb', []],
      ['dddd', ['sameLog']],
    ]);
    expect(JSON.stringify(rows[0]?.cells[0]?.doubts[0]?.doubt.values)).toContain('dddd');
    expect(openDoubts).toBe(2);
  });

  it('of one trainee are never held against each other', () => {
    expect(sameLogs([at('a', {}), at('a', { attempt: 2 })])).toEqual([]);
  });
});

const WORDS: CsvWords = {
  column: (column) => column,
  item: (item) => `item ${item + 1}`,
  weighted: (item, weight) => `${item} ×${weight}`,
  naming: namingKey,
  doubt: ({ code }) => code,
  yes: 'yes',
  no: 'no',
};

describe('CSV', () => {
  it('comes back from a reader as it was, quotes, commas, line ends and accents with it', () => {
    const odd = 'Zoë "Z", née\r\nDupont';
    const gradebook = gradebookOf({ assignment, entries: [entryWith('ana', 0, { trainee: { code: 'ana', name: odd } })] });
    for (const table of [longTable(gradebook, WORDS), wideTable(gradebook, WORDS)]) {
      const text = csvOf(table);
      expect(text.endsWith('\r\n')).toBe(true);
      const read = Papa.parse<string[]>(text, { skipEmptyLines: true });
      expect(read.errors).toEqual([]);
      expect(read.data).toEqual(table.map((line) => line.map(String)));
    }
    expect(longTable(gradebook, WORDS)[0]).toEqual([...COLUMNS]);
  });

  it('holds no text that a spreadsheet would run', () => {
    for (const name of ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1']) {
      const text = csvOf([[name, 5, -3]]);
      const [line] = Papa.parse<string[]>(text, { newline: '\r\n' }).data;
      expect(line).toEqual([`'${name}`, '5', '-3']);
    }
  });
});

describe('files', () => {
  const overrule = { trainee: 'ana', item: 0, points: 70, reason: 'why', by: 'Kim', at: '2026-03-03T08:00:00Z' };

  it('of overrules and gradebooks are taken as they are, and refused with the path where they are not', () => {
    const overrules = { format: 'bellwire-overrules', version: 1, assignment: assignment.id, overrules: [overrule] };
    expect(loadOverrules(overrules)).toEqual(overrules);
    const without = { ...overrules, overrules: [{ ...overrule, reason: ' ' }] };
    expect(() => loadOverrules(without)).toThrow(expect.objectContaining({ path: 'overrules[0].reason' }));
    expect(() => loadOverrules({ ...overrules, version: 2 })).toThrow(expect.objectContaining({ code: 'classroom.newer' }));
    const file = { format: 'bellwire-gradebook', version: 1, assignment, submissions: [], overrules: [overrule] };
    expect(loadGradebookFile(file)).toMatchObject({ counts: 'best', overrules: [overrule] });
    expect(() => loadGradebookFile({ ...file, counts: 'worst' })).toThrow(expect.objectContaining({ path: 'counts' }));
  });
});

describe('a class of honest hands', { timeout: 120_000 }, () => {
  it('is graded without a doubt, and nobody is held against anybody', () => {
    const dice = diceOf(3);
    const grader = createGrader(assignment, library);
    const entries = codes(3).flatMap((code) =>
      assignment.items.map((_, item) => entryOf(`${code}-${item}`, grader.grade(honest(assignment, code, item, dice)))),
    );
    const gradebook = gradebookOf({ assignment, entries });
    expect(gradebook.openDoubts).toBe(0);
    expect(gradebook.rows).toHaveLength(3);
    expect(gradebook.skills.length).toBeGreaterThan(0);
    for (const { cells, total } of gradebook.rows)
      expect(total).toBeCloseTo(cells.reduce((sum, { points }) => sum + (points ?? 0), 0) / 3, 10);
  });
});
