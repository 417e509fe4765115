/** A class as a whole: what its figures say, and that everything measured has words. */
import i18next from 'i18next';
import { beforeAll, describe, expect, it, test } from 'vitest';
import { binsOf, placedOf, spreadsOf, wholeTicks } from '../../src/app/gradebook/views/chart-data.ts';
import { ownDoubtText } from '../../src/app/gradebook/views/decided.tsx';
import { byChance, REST_VERDICTS, rated, restVerdict, VERDICTS, verdictOn } from '../../src/app/gradebook/views/discrimination.ts';
import { namingView, ticketAt, ticketsAt } from '../../src/app/gradebook/views/item-tickets.ts';
import { measuredText } from '../../src/app/gradebook/views/measured-words.ts';
import { answersBySkill, questionSkills } from '../../src/app/gradebook/views/paper-figures.ts';
import { lossesOf } from '../../src/app/gradebook/views/points-lost.ts';
import { csvWords, itemName, itemTitle } from '../../src/app/gradebook/words.ts';
import { nameWires } from '../../src/app/wire-names.ts';
import type { Action } from '../../src/attempt/actions.ts';
import { begin, optionsOf, perform } from '../../src/attempt/attempt.ts';
import type { Assignment } from '../../src/classroom/assignment.ts';
import { DOUBTS, doubt } from '../../src/classroom/doubts.ts';
import { workOf } from '../../src/classroom/draw.ts';
import { type Entry, entryOf } from '../../src/classroom/entry.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import type { AnswerResult } from '../../src/classroom/gradeAnswers.ts';
import { type Gradebook, gradebookOf } from '../../src/classroom/gradebook.ts';
import { csvOf, wideTable } from '../../src/classroom/gradebookCsv.ts';
import { type Analysis, pointBiserial } from '../../src/classroom/itemAnalysis.ts';
import { FEWEST_SHEETS } from '../../src/classroom/restCorrelation.ts';
import { type Submission, submissionOf } from '../../src/classroom/submission.ts';
import { wordsOf } from '../../src/cli/files.ts';
import { gradebookText } from '../../src/cli/gradeText.ts';
import type { DrillSkill } from '../../src/drills/item.ts';
import { type Debrief, SCORE_ITEMS } from '../../src/score/debrief.ts';
import { DEFAULT_RUBRIC } from '../../src/score/rubric.ts';
import { BEGAN, classAssignment, codes, diceOf, honest, SMALL_EXAM } from '../classroom/crowd.ts';
import { library } from '../scenario/shipped.ts';
import { wordKeys } from '../tools/locale-keys.ts';
import { speakEnglish } from './english.ts';

const assignment = classAssignment(2);
const trainees = codes(3);
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
}, 120_000);

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

test('of a kind of question it is shown from as many sheets on as chance alone does not reach, the lowest first', () => {
  expect(byChance(FEWEST_SHEETS - 1)).toBe(1);
  expect(byChance(FEWEST_SHEETS)).toBeLessThan(1);
  const kinds = [0.38, undefined, -0.38, 0.37].map((discrimination) => ({ sheets: 30, discrimination }));
  expect(rated(kinds).map((each) => [each.discrimination, restVerdict(each)])).toEqual([
    [-0.38, 'against'],
    [0.37, 'unsure'],
    [0.38, 'tells'],
  ]);
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

  it('spread each item’s points from the lowest to the highest, by quartiles', () => {
    const spreads = spreadsOf(gradebook);
    expect(spreads.map(({ item }) => item)).toEqual([1, 2, 3]);
    for (const { item, trainees, lowest, lower, median, upper, highest } of spreads) {
      const points = gradebook.rows.flatMap(({ cells }) => cells[item - 1]?.points ?? []).sort((a, b) => a - b);
      expect(trainees).toBe(points.length);
      // Between two of them in proportion (Hyndman and Fan 1996, definition 7).
      const at = (share: number) => {
        const place = (points.length - 1) * share;
        const [below = 0, above = below] = points.slice(Math.floor(place));
        return below + (place % 1) * (above - below);
      };
      expect([lowest, lower, median, upper, highest]).toEqual([0, 0.25, 0.5, 0.75, 1].map((share) => expect.closeTo(at(share), 9)));
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
  expect(count).toBeGreaterThan(90);
});

test('whatever can be measured on any rig has words in every language', async () => {
  for (const language of ['en', 'es', 'fr']) {
    await i18next.changeLanguage(language);
    for (const rig of library.rigs.keys()) {
      const ticket = library.tickets.find((each) => each.rig === rig)!;
      const one: Assignment = { ...assignment, items: [{ kind: 'shipped', ticket: ticket.id }] };
      const view = namingView(one, 0, ticket, library);
      const points = view.parts.flatMap(({ terminals }) => terminals.map(({ point }) => point));
      const clamped = view.wires.flatMap(({ id, cable }) => (cable === undefined ? [id] : [id, cable]));
      const keys = [
        ...points.map((point, index) => `voltsAc ${point} ${points[(index + 7) % points.length]}`),
        ...view.wires.map(({ ends: { from, to } }) => `ohms ${from.point} ${to.point}`),
        ...clamped.map((id) => `ampsAc ${id}`),
      ];
      for (const key of keys) {
        const words = measuredText(view, key);
        expect(words, `${rig} ${key}`).not.toMatch(/\b(app|meter|rig|parts|classview):|undefined|\{\{|@/);
        const [, ...things] = key.split(' ');
        for (const thing of things) {
          const name = ['wire', 'cable'].map((kind) => `rig:${kind}.${thing}`).find((each) => i18next.exists(each));
          // A wire goes by its name; no point by its id.
          if (name !== undefined) expect(words.endsWith(i18next.t(name)), `${rig} ${key}: ${words}`).toBe(true);
          else expect(words, `${rig} ${key}`).not.toContain(thing);
        }
      }
    }
  }
  await i18next.changeLanguage('en');
});

test('what a clamp reads is of its wire, wherever the leads were left', () => {
  const code = 'clamped';
  const work = workOf(assignment, code, library)[1]!;
  const attempt = begin(work.ticket, work.rig);
  const take = (is: (action: Action) => boolean) => expect(perform(attempt, optionsOf(attempt).find(is)!).ok).toBe(true);
  const at = (lead: string) => (action: Action) => action.name === 'probe' && action.lead === lead && action.at !== null;
  take(({ name }) => name === 'walk');
  take(at('red'));
  take((action) => at('black')(action) && action.name === 'probe' && action.at !== attempt.bench.red);
  take((action) => action.name === 'meter' && action.fn === 'ampsAc');
  take((action) => action.name === 'clamp' && action.around !== null);
  take(({ name }) => name === 'tug');
  take((action) => at('red')(action) && action.name === 'probe' && action.at !== attempt.bench.red);
  const stamps = attempt.steps.map((_, index) => 5 * index);
  const trainee = { code, name: '' };
  const submission = submissionOf({ assignment, trainee, work, number: 1, attempt, began: BEGAN, stamps });
  expect(createGrader(assignment, library).grade(submission).result?.measured).toEqual([`ampsAc ${attempt.bench.clamp}`]);
});

describe('exercises and exams', () => {
  const set: Assignment = {
    ...assignment,
    papers: [SMALL_EXAM, { kind: 'drills', drills: ['reading', 'vaSum'], count: 3 }],
  };
  const answer = (kind: string, skill: DrillSkill, right: boolean): AnswerResult => ({
    kind,
    skill,
    right,
    choice: right ? 0 : 1,
    misconception: right ? undefined : 'peak',
  });
  const sheet = (code: string, item: number, answers: readonly AnswerResult[], doubts: Entry['doubts'] = []): Entry => {
    const right = answers.filter((each) => each.right).length;
    const paper = { total: (100 * right) / answers.length, right, asked: answers.length, passed: undefined, answers };
    const trainee = { code, name: '' };
    const kept = { ticket: `${item}`, began: BEGAN, stamps: [], actions: [], seal: `${code} ${item}`, doubts };
    return { ...kept, file: `${code}-${item}`, trainee, item, attempt: 1, result: undefined, paper };
  };
  const [first, second] = [assignment.items.length, assignment.items.length + 1];
  const sums = [answer('vaSum', 'sums', true), answer('loopDrop', 'sums', false)];
  const more = [answer('reading', 'readings', false), answer('vaSum', 'sums', true), answer('vaSum', 'sums', true)];
  const book = gradebookOf({
    assignment: set,
    entries: [
      sheet('a', first, sums),
      sheet('a', second, more),
      sheet(
        'b',
        first,
        sums.map((each) => ({ ...each, right: true })),
        [doubt('edited')],
      ),
      sheet('b', second, [answer('reading', 'readings', true)]),
    ],
  });

  it('are counted by skill over all papers, but for what is in doubt', () => {
    expect(questionSkills(book.papers, book.rows.length)).toEqual([
      {
        skill: 'readings',
        shown: 1,
        asked: 2,
        trainees: [
          { shown: 0, asked: 1 },
          { shown: 1, asked: 1 },
        ],
      },
      {
        skill: 'sums',
        shown: 3,
        asked: 4,
        trainees: [
          { shown: 3, asked: 4 },
          { shown: 0, asked: 0 },
        ],
      },
    ]);
    expect(questionSkills([], 2)).toEqual([]);
    expect(answersBySkill(more)).toEqual([
      { skill: 'readings', shown: 0, asked: 1 },
      { skill: 'sums', shown: 2, asked: 2 },
    ]);
  });

  it('say of each kind how it goes with the rest of the paper, but for what is in doubt, on the page and on the command line', () => {
    // Of two sums and of four readings so many are right: the example that is worked by hand in tests/reference/restCorrelation.test.ts.
    const right = [
      [0, 0],
      [0, 2],
      [1, 2],
      [1, 2],
      [2, 2],
      [2, 4],
    ] as const;
    const answered = ([own, rest]: readonly [number, number]) => [
      ...[0, 1].map((at) => answer('vaSum', 'sums', at < own)),
      ...[0, 1, 2, 3].map((at) => answer('reading', 'readings', at < rest)),
    ];
    const entries = [
      ...right.map((each, index) => sheet(`t${index}`, second, answered(each))),
      sheet('z', second, answered([2, 0]), [doubt('edited')]),
    ];
    const rated = gradebookOf({ assignment: set, entries });
    const [, paper] = rated.papers;
    expect(paper?.kinds.map(({ kind, sheets, discrimination }) => [kind, sheets, discrimination])).toEqual(
      ['reading', 'vaSum'].map((kind) => [kind, 6, expect.closeTo(Math.SQRT1_2, 12)]),
    );
    expect(gradebookText(rated)).toContain('discrimination, the lowest first: reading 0.71, vaSum 0.71');
    expect(gradebookText(book)).not.toContain('the lowest first');
  });

  it('go by what they are, with the number that they have among all', () => {
    expect([0, first, second].map((item) => itemName(set, item))).toEqual(['Ticket 1', 'Exam 4', 'Exercises 5']);
    expect(itemTitle(set, first)).toBe('Exam 4: Mid-term');
    expect(itemTitle(set, second)).toBe('Exercises 5: readings and sums');
    expect(csvOf(wideTable(book, csvWords(set))).split('\r\n')[0]).toBe(
      'trainee,name,Ticket 1,Ticket 2,Ticket 3,Exam 4: Mid-term,Exercises 5: readings and sums,total,doubts',
    );
  });

  it('have their points spread beside those of the tickets', () => {
    expect(spreadsOf(book).map(({ item, lowest, highest }) => [item, lowest, highest])).toEqual([
      [4, 50, 100],
      [5, expect.closeTo(66.7, 1), 100],
    ]);
  });

  it('are doubted to their trainee without the name of anybody else', () => {
    for (const code of DOUBTS) {
      const values = { trainee: 'somebody', why: 'pace', reason: 'notHere', rig: 'trainingBoard', file: 'a.json' };
      expect(ownDoubtText(doubt(code, 3, values)), code).not.toMatch(/somebody|classview:/);
    }
  });
});

test('an item’s tickets are those that it has', () => {
  expect(assignment.items.map((_, index) => ticketsAt(assignment, index, library).length)).toEqual([2, 1, 2]);
  expect(ticketAt(assignment, 0, 'nowhere', library)).toBeUndefined();
});

test('every verdict and every mark has words', () => {
  const keys = wordKeys('.', 'en');
  for (const verdict of VERDICTS) expect(keys).toContain(`classview:items.discrimination.${verdict}`);
  for (const verdict of REST_VERDICTS) expect(keys).toContain(`classview:paper.apart.verdict.${verdict}`);
});

describe('the points that a report says were taken away', () => {
  it('come to what is missing in each part of every graded log, and each names the steps that show it', () => {
    const grader = createGrader(assignment, library, trainees);
    let wasted = 0;
    for (const submission of submissions) {
      const { debrief } = grader.debrief(submission)!;
      const losses = lossesOf(debrief, DEFAULT_RUBRIC);
      for (const item of SCORE_ITEMS) {
        const { points, of } = debrief.items[item];
        const lost = -losses[item].reduce((sum, each) => sum + each.points, 0);
        // Less than a twentieth of a point is left out, a reason at a time.
        if (points > 0) expect(Math.abs(lost - (of - points)), `${item} ${JSON.stringify(losses[item])}`).toBeLessThan(0.1);
        else expect(lost).toBeGreaterThan(of - 0.1);
      }
      const steps = losses.economy.find(({ code }) => code === 'stepWasted')?.steps ?? [];
      expect(steps).toEqual(debrief.steps.filter(({ kind }) => kind === 'wasted').map(({ number }) => number));
      wasted += steps.length;
    }
    expect(wasted).toBeGreaterThan(10);
  });

  it('are more than there was where a part stands at nothing, and what hints cost', () => {
    const reason = (code: string, points: number, step?: number) => ({ code, points, step, values: {} });
    const none = { points: 0, of: 10, reasons: [] };
    const unsafe = ['ohmsLive', 'liveTouch', 'jumperShort', 'coverLeft'].map((code, index) => reason(code, -5, index + 1));
    const items = {
      isolation: none,
      economy: none,
      proof: none,
      safety: { points: 0, of: 15, reasons: [reason('safeStart', 15), ...unsafe] },
    };
    const debrief: Pick<Debrief, 'items' | 'hints'> = { items, hints: [reason('hintTaken', -2, 3), reason('hintTaken', -4, 7)] };
    const losses = lossesOf(debrief, DEFAULT_RUBRIC);
    expect(losses.safety.map(({ points, steps }) => [points, steps])).toEqual([1, 2, 3, 4].map((step) => [-5, [step]]));
    expect(losses.hints).toMatchObject([{ points: -6, step: 3, steps: [3, 7] }]);
  });
});
