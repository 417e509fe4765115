/** Exercises and exams that are set: drawn alike everywhere, graded by drawing them anew. */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Answers, answersOf, loadAnswers, sealAnswers } from '../../src/classroom/answers.ts';
import { type Assignment, loadAssignment } from '../../src/classroom/assignment.ts';
import type { DoubtCode } from '../../src/classroom/doubts.ts';
import { entryOf } from '../../src/classroom/entry.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { paperResult } from '../../src/classroom/gradeAnswers.ts';
import { gradebookOf } from '../../src/classroom/gradebook.ts';
import { csvOf, longTable, namingKey } from '../../src/classroom/gradebookCsv.ts';
import { FORMS, minutesFor, type Paper, papersOf, rigsOf } from '../../src/classroom/papers.ts';
import { SURE_WRONG } from '../../src/classroom/sameAnswers.ts';
import { createBank } from '../../src/drills/draw.ts';
import type { Item } from '../../src/drills/item.ts';
import { itemOf } from '../../src/drills/paper.ts';
import type { Library } from '../../src/scenario/library.ts';
import { library as whole } from '../scenario/shipped.ts';

/** The smallest systems alone, so that a paper is drawn in a moment. */
const library: Library = {
  rigs: new Map(['trainingBoard', 'twoWireHeat'].map((id) => [id, whole.rigs.get(id)!])),
  tickets: whole.tickets,
};
const BEGAN = '2026-03-02T13:00:00Z';
const COUNT = 16;

function setWork(rest: object = {}): Assignment {
  return loadAssignment({
    format: 'bellwire-assignment',
    version: 1,
    id: 'week-10',
    title: 'Week ten',
    mode: 'graded',
    attempts: 2,
    seed: 3,
    items: [],
    papers: [{ kind: 'drills', drills: ['reading', 'contacts', 'loadCurrent'], count: COUNT }],
    ...rest,
  });
}
const assignment = setWork();
const trainees = Array.from({ length: 40 }, (_, index) => `T-${index + 1}`);
const formOf = (trainee: string) => papersOf(assignment, trainee, library)[0]!;

/** The items of a paper, drawn here. */
const drawn = new Map<string, (Item | undefined)[]>();
function itemsOf(paper: Paper): (Item | undefined)[] {
  const bank = createBank(rigsOf(library).map((id) => library.rigs.get(id)!));
  const found = drawn.get(paper.digest) ?? paper.questions.map((question) => itemOf(bank, question));
  drawn.set(paper.digest, found);
  return found;
}

/** Chooses at every question; wrong at the first few. */
function sheet(trainee: string, wrong = 0, changes: Partial<Answers> = {}): Answers {
  const paper = formOf(trainee);
  const items = itemsOf(paper);
  const wrongs = new Set([...items.keys()].filter((place) => items[place]).slice(0, wrong));
  const choices = items.map((item, place) =>
    item ? (wrongs.has(place) ? (item.right + 1) % item.choices.length : item.right) : null,
  );
  const stamps = choices.map((choice, place) => (choice === null ? null : 20 * place + 7));
  const shown = paperResult(paper.setting, items, choices).total;
  const own = { code: trainee, name: '' };
  const made = answersOf({ assignment, trainee: own, paper, attempt: 1, began: BEGAN, choices, stamps, ended: 'closed', shown });
  return { ...made, ...changes };
}

let grader: ReturnType<typeof createGrader>;
beforeAll(() => {
  grader = createGrader(assignment, library, trainees);
});
const doubtsOf = (json: unknown): DoubtCode[] => grader.grade(json).doubts.map(({ code }) => code);

describe('a paper that is set', () => {
  it('has the questions that were asked for, in one of several forms by trainee, the same ones for whoever draws it', () => {
    const forms = new Map(trainees.map((code) => [code, formOf(code)]));
    expect(new Set([...forms.values()].map(({ digest }) => digest)).size).toBeGreaterThan(FORMS / 2);
    for (const [code, paper] of forms) {
      expect(paper.questions).toHaveLength(COUNT);
      expect(new Set(paper.questions.map(({ kind }) => kind.id))).toEqual(new Set(['reading', 'contacts', 'loadCurrent']));
      expect(formOf(code)).toEqual(paper);
    }
  });

  it('is over with the exam’s time or the assignment’s, whichever comes first', () => {
    const exam = { kind: 'exam', exam: { id: 'own', items: 5, minutes: 30, pass: 0.7, skills: { readings: 1 } } } as const;
    expect([20, 40, undefined].map((minutes) => minutesFor({ minutes }, exam))).toEqual([20, 30, 30]);
    expect(minutesFor({ minutes: undefined }, { kind: 'drills', drills: ['reading'], count: 5 })).toBeUndefined();
  });

  it('must be of kinds that there are, and an assignment must have something to do', () => {
    const unknown = setWork({ papers: [{ kind: 'drills', drills: ['reading', 'mindReading'], count: 5 }] });
    expect(() => papersOf(unknown, 'a', library)).toThrow(
      expect.objectContaining({ code: 'classroom.noKind', path: 'papers[0].drills[1]' }),
    );
    expect(() => setWork({ papers: undefined })).toThrow(expect.objectContaining({ code: 'classroom.items', path: 'items' }));
  });
});

describe('answers that were handed in', () => {
  it('come to what was right of them, worked out anew', () => {
    const { doubts, paper } = grader.grade(JSON.parse(JSON.stringify(sheet('T-1', 3))));
    const asked = itemsOf(formOf('T-1')).filter((item) => item !== undefined).length;
    expect(doubts).toEqual([]);
    expect(paper).toMatchObject({ right: asked - 3, asked, total: Math.round((1000 * (asked - 3)) / asked) / 10 });
    expect(asked).toBe(COUNT);
    expect(paper!.answers.slice(0, 3).every(({ right, misconception }) => !right && misconception !== undefined)).toBe(true);
  });

  const other = trainees.find((code) => formOf(code).digest !== formOf('T-1').digest)!;
  const twin = trainees.find((code) => code !== 'T-1' && formOf(code).digest === formOf('T-1').digest)!;
  it.each<[string, () => unknown, DoubtCode]>([
    ['a score that was edited', () => ({ ...sheet('T-1', 2), shown: 100 }), 'scoreEdited'],
    ['a choice that was changed', () => ({ ...sheet('T-1'), choices: sheet('T-1', 1).choices, shown: undefined }), 'edited'],
    ['a time that was changed', () => ({ ...sheet('T-1'), began: '2026-03-02T12:00:00Z' }), 'edited'],
    ['another trainee’s sheet of the same form', () => ({ ...sheet(twin), trainee: { code: 'T-1', name: '' } }), 'othersLog'],
    ['another trainee’s sheet of another form', () => ({ ...sheet(other), trainee: { code: 'T-1', name: '' } }), 'otherPaper'],
    ['answers that are missing', () => resealed({ choices: sheet('T-1').choices.slice(1) }), 'brokenAnswers'],
    ['a time without a choice', () => resealed({ choices: sheet('T-1').choices.map(() => null) }), 'brokenAnswers'],
    ['sixteen answers within a second', () => resealed({ stamps: sheet('T-1').stamps.map((at) => at && 5) }), 'impossibleTimes'],
    ['a third attempt of two', () => resealed({ attempt: 3 }), 'tooManyAttempts'],
    ['another assignment’s', () => resealed({ assignment: { ...sheet('T-1').assignment, id: 'week-11' } }), 'otherAssignment'],
    ['other rules', () => resealed({ rules: 99 }), 'otherRules'],
    ['an item that is none', () => resealed({ item: 4 }), 'noItem'],
  ])('are doubted for %s', (_, made, code) => {
    expect(doubtsOf(JSON.parse(JSON.stringify(made())))).toContain(code);
  });

  function resealed(changes: Partial<Answers>): Answers {
    const changed = { ...sheet('T-1'), ...changes };
    return { ...changed, seal: sealAnswers(changed) };
  }

  it('that are no answers at all are refused with the path', () => {
    expect(() => loadAnswers({ ...sheet('T-1'), choices: ['a'] })).toThrow(expect.objectContaining({ path: 'choices[0]' }));
  });
});

describe('the gradebook', () => {
  const namesKeys = {
    column: String,
    item: String,
    weighted: (item: string, weight: number) => `${item} ×${weight}`,
    naming: namingKey,
    doubt: ({ code }: { code: string }) => code,
    yes: '1',
    no: '0',
  };

  it('has a paper’s points beside the tickets’, in the table, the spreadsheet and by skill', () => {
    const entries = [sheet('T-1', 3), sheet('T-2')].map((each, index) => entryOf(`${index}.json`, grader.grade(each)));
    const book = gradebookOf({ assignment, entries });
    expect(book.rows.map(({ total }) => total)).toEqual([entries[0]!.paper!.total, 100]);
    const [analysis] = book.papers;
    expect(analysis).toMatchObject({ item: 0, count: 2, passedCount: undefined });
    expect(analysis!.difficulty).toBeCloseTo((entries[0]!.paper!.total + 100) / 200, 3);
    const sum = (all: readonly { right: number; asked: number }[]) => all.reduce((most, { right }) => most + right, 0);
    expect(sum(analysis!.skills)).toBe(sum(entries.map(({ paper }) => paper!)));
    expect(sum(analysis!.skills.flatMap(({ trainees: each }) => each[0]!))).toBe(entries[0]!.paper!.right);
    expect(analysis!.misconceptions.reduce((all, { answers }) => all + answers, 0)).toBe(3);
    // A sheet in doubt has its points, and says nothing about the paper.
    const edited = entryOf('3.json', grader.grade({ ...sheet('T-3', 5), shown: 100 }));
    const more = gradebookOf({ assignment, entries: [...entries, edited] });
    expect(more.rows[2]!.total).toBeGreaterThan(0);
    expect(more.papers[0]!.count).toBe(2);
    const csv = csvOf(longTable(book, namesKeys));
    expect(csv).toContain(`,${entries[0]!.paper!.right},${entries[0]!.paper!.asked},`);
  });

  it('doubts two sheets that are wrong alike at every question, and not two that are right alike', () => {
    const twin = trainees.find((code) => code !== 'T-1' && formOf(code).digest === formOf('T-1').digest)!;
    const codesOf = (wrong: number) => {
      const entries = ['T-1', twin].map((code) => entryOf(`${code}.json`, grader.grade(sheet(code, wrong))));
      return gradebookOf({ assignment, entries }).rows.flatMap(({ cells }) => cells[0]!.doubts.map(({ doubt }) => doubt.code));
    };
    expect(codesOf(SURE_WRONG)).toEqual(['sameAnswers', 'sameAnswers']);
    expect(codesOf(0)).toEqual([]);
  });
});
