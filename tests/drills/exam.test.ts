/** Papers from blueprints, and how far their results can be trusted. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  type Blueprint,
  countsOf,
  EXAM_SKILLS,
  type ExamSkill,
  examResult,
  loadBlueprint,
  paperOf,
} from '../../src/drills/exam.ts';
import { ticketCount } from '../../src/drills/examBench.ts';
import { shareInterval } from '../../src/drills/interval.ts';
import { DRILL_SKILLS, type DrillKind } from '../../src/drills/item.ts';
import { randomOf } from '../../src/scenario/random.ts';

const kinds: DrillKind[] = DRILL_SKILLS.flatMap((skill) =>
  [1, 2].map((at) => ({ id: `${skill}${'ab'[at - 1]}`, skill, choices: 4, draft: () => undefined })),
);
const shelf = { kinds, rigs: ['one', 'two', 'three'] };
const folder = 'scenarios/exams';
/** What each item of a lot's paper counts as: its questions' skills, and its tickets. */
const itemsOf = (blueprint: Blueprint, lot: number): ExamSkill[] => [
  ...paperOf(blueprint, shelf, lot).map(({ kind: { skill } }) => skill),
  ...Array<ExamSkill>(ticketCount(blueprint.bench)).fill('bench'),
];
const shipped = readdirSync(folder).map((file) => loadBlueprint(JSON.parse(readFileSync(`${folder}/${file}`, 'utf8'))));

// Source: Newcombe, Two-sided confidence intervals for the single proportion, Statistics in Medicine 17 (1998), table I, method 5 (from memory).
describe('the exact interval of a share', () => {
  it.each([
    [81, 263, 0.2527, 0.3676],
    [15, 148, 0.0578, 0.1617],
    [0, 20, 0, 0.1684],
    [1, 29, 0.0009, 0.1776],
  ])('of %i of %i is the published one', (right, asked, low, high) => {
    const found = shareInterval(right, asked);
    expect(found.low).toBeCloseTo(low, 4);
    expect(found.high).toBeCloseTo(high, 4);
  });

  it('is the same seen from the other side', () => {
    const { low, high } = shareInterval(7, 30);
    const other = shareInterval(23, 30);
    expect(other.low).toBeCloseTo(1 - high, 10);
    expect(other.high).toBeCloseTo(1 - low, 10);
    expect(shareInterval(30, 30)).toMatchObject({ high: 1 });
  });
});

describe('a paper', () => {
  it('has as many questions of each skill as its blueprint weighs, all of them different, and other ones by another lot', () => {
    for (const blueprint of shipped) {
      const paper = paperOf(blueprint, shelf, 5);
      expect(paper).toHaveLength(blueprint.items);
      const total = Object.values(blueprint.skills).reduce((sum, weight) => sum + weight, 0);
      for (const skill of DRILL_SKILLS) {
        const share = (blueprint.items * (blueprint.skills[skill] ?? 0)) / total;
        expect(Math.abs(paper.filter(({ kind }) => kind.skill === skill).length - share)).toBeLessThan(1);
      }
      const keys = paper.flatMap(({ kind, draws }) => draws.map(({ number }) => `${kind.id} ${number}`));
      expect(new Set(keys).size).toBe(keys.length);
      expect(paperOf(blueprint, shelf, 5)).toEqual(paper);
      expect(paperOf(blueprint, shelf, 6)).not.toEqual(paper);
    }
  });

  it('leaves out a skill that nothing asks for, and still has all its questions', () => {
    const [blueprint] = shipped;
    const fewer = kinds.filter(({ skill }) => skill !== 'readings');
    expect(countsOf(blueprint!, fewer).has('readings')).toBe(false);
    expect(paperOf(blueprint!, { ...shelf, kinds: fewer }, 1)).toHaveLength(blueprint!.items);
  });
});

describe('a blueprint', () => {
  it('is refused with the path where it does not fit', () => {
    const [blueprint] = shipped;
    expect(() => loadBlueprint({ ...blueprint, pass: 2 })).toThrow(expect.objectContaining({ path: 'pass' }));
    expect(() => loadBlueprint({ ...blueprint, skills: { luck: 1 } })).toThrow();
    const asking = (bench: unknown) => () => loadBlueprint({ ...blueprint, bench });
    expect(asking({ tickets: { apprentice: 0 } })).toThrow(expect.objectContaining({ path: 'bench.tickets.apprentice' }));
    expect(asking({ tickets: { wizard: 1 } })).toThrow(expect.objectContaining({ path: expect.stringContaining('bench.tickets') }));
    expect(asking({ tickets: {} })).toThrow(expect.objectContaining({ path: 'bench.tickets' }));
    expect(asking({ tickets: { apprentice: 1 }, skills: ['luck'] })).toThrow(expect.objectContaining({ path: 'bench.skills[0]' }));
  });

  it('need not ask for tickets', () => {
    for (const { bench: _, ...plain } of shipped) expect(loadBlueprint(plain)).toEqual(plain);
  });
});

describe('a result', () => {
  it('counts what was not answered as not right, says what to practise, and when it is not sure', () => {
    const answers = [
      ...Array.from({ length: 10 }, (_, at) => ({ skill: 'readings' as const, right: at < 9 })),
      ...Array.from({ length: 10 }, (_, at) => ({ skill: 'safety' as const, right: at < 3 })),
    ];
    const result = examResult({ pass: 0.6 }, answers);
    expect(result).toMatchObject({ right: 12, asked: 20, share: 0.6, passed: true, sure: false, practise: ['safety'] });
    expect(
      examResult(
        { pass: 0.6 },
        answers.map((each) => ({ ...each, right: false })),
      ),
    ).toMatchObject({ passed: false, sure: true });
  });

  it('counts each ticket as one item, and those together as a row of their own', () => {
    const answers = [
      ...Array.from({ length: 8 }, (_, at) => ({ skill: 'sums' as const, right: at < 7 })),
      { skill: 'bench' as const, right: true },
      { skill: 'bench' as const, right: false },
    ];
    const result = examResult({ pass: 0.7 }, answers);
    expect(result).toMatchObject({ right: 8, asked: 10, passed: true, practise: ['bench'] });
    expect(result.skills.at(-1)).toEqual({ skill: 'bench', right: 1, asked: 2, share: 0.5, ...shareInterval(1, 2) });
    expect(examResult({ pass: 0.5 }, answers).practise).toEqual([]);
  });

  it('holds the true share of a learner in its interval in 95 of 100 runs, for the whole and for each skill, at every level', () => {
    // Of a hundred runs alone, an interval that holds it in 97 of 100 would often enough hold it in 94.
    const RUNS = 500;
    for (const blueprint of shipped) {
      // Every paper of a blueprint has as many of each.
      const items = itemsOf(blueprint, 1);
      for (const level of [0.3, 0.5, 0.65, 0.8, 0.95]) {
        const random = randomOf(Math.round(level * 1000) + blueprint.items);
        let held = 0;
        let parts = 0;
        let partsHeld = 0;
        for (let run = 0; run < RUNS; run++) {
          const able = new Map(EXAM_SKILLS.map((skill) => [skill, Math.min(1, Math.max(0, level + (random() - 0.5) * 0.2))]));
          const result = examResult(
            blueprint,
            items.map((skill) => ({ skill, right: random() < (able.get(skill) ?? 0) })),
          );
          const truth = items.reduce((sum, skill) => sum + (able.get(skill) ?? 0), 0) / items.length;
          expect(result.asked).toBe(blueprint.items + ticketCount(blueprint.bench));
          if (result.low <= truth && truth <= result.high) held += 1;
          for (const { skill, low, high } of result.skills) {
            parts += 1;
            const share = able.get(skill) ?? 0;
            if (low <= share && share <= high) partsHeld += 1;
          }
        }
        expect(held / RUNS, `${blueprint.id} at ${level}`).toBeGreaterThanOrEqual(0.95);
        expect(partsHeld / parts).toBeGreaterThanOrEqual(0.95);
      }
    }
  });

  it('ranks two learners right wherever their intervals do not touch', () => {
    const random = randomOf(77);
    let apart = 0;
    let right = 0;
    const [blueprint] = shipped;
    for (let run = 0; run < 200; run++) {
      const levels = [random(), random()];
      const results = levels.map((level, which) =>
        examResult(
          blueprint!,
          itemsOf(blueprint!, 2 * run + which).map((skill) => ({ skill, right: random() < level })),
        ),
      );
      const [one, other] = results;
      if (!one || !other || (one.low <= other.high && other.low <= one.high)) continue;
      apart += 1;
      if (one.share > other.share === (levels[0] ?? 0) > (levels[1] ?? 0)) right += 1;
    }
    expect(apart).toBeGreaterThan(50);
    expect(right / apart).toBeGreaterThanOrEqual(0.95);
  });
});
