/** What comes next, by FSRS and Elo. The scheduler's own figures are its library's; what is ours is what is asked, and how an answer is graded. */
import { describe, expect, it } from 'vitest';
import { DRILL_SKILLS, type DrillKind } from '../../src/drills/item.ts';
import {
  answered,
  difficulty,
  expectedRight,
  familyOf,
  joinPractice,
  known,
  mastery,
  numberFor,
  type Practice,
  practiceSchema,
  setFor,
} from '../../src/drills/practice.ts';
import { randomOf } from '../../src/scenario/random.ts';

const kinds: DrillKind[] = DRILL_SKILLS.flatMap((skill) =>
  [1, 2].map((at) => ({ id: `${skill}${'ab'[at - 1]}`, skill, choices: 4, draft: () => undefined })),
);
const rigs = ['one', 'two', 'three'];
const shelf = { kinds, rigs };
const fresh: Practice = { lot: 7, families: {}, skills: {} };
const DAY = 86_400_000;
const BEGAN = Date.parse('2026-03-02T13:00:00Z');

describe('practice', () => {
  const [kind] = kinds;
  const once = (right: boolean, seconds = 30) => answered(fresh, { kind: kind!, rig: 'one', right, seconds, now: BEGAN });

  it('brings back soon what was wrong, and later what was right; later still what was right at once', () => {
    const due = (practice: Practice) => practice.families[familyOf(kind!.id, 'one')]!.card.due - BEGAN;
    expect(due(once(false))).toBeLessThan(due(once(true)));
    expect(due(once(false))).toBeLessThan(DAY / 24);
    expect(due(once(true, 5))).toBeGreaterThan(2 * DAY);
    expect(due(once(true, 300))).toBeLessThan(due(once(true)));
  });

  it('asks first what is due, and nothing twice in one set', () => {
    const wrong = once(false);
    const set = setFor(wrong, shelf, BEGAN + DAY, 15);
    expect(set[0]).toEqual({ kind, rig: 'one' });
    expect(set).toHaveLength(15);
    expect(new Set(set.map((each) => familyOf(each.kind.id, each.rig))).size).toBe(15);
    // Before it is due it waits behind what is new.
    expect(setFor(wrong, shelf, BEGAN, 15)).not.toContainEqual({ kind, rig: 'one' });
  });

  it('spreads a first set over all skills', () => {
    const set = setFor(fresh, shelf, BEGAN, DRILL_SKILLS.length * 2);
    for (const skill of DRILL_SKILLS) expect(set.filter((each) => each.kind.skill === skill)).toHaveLength(2);
  });

  it('counts a streak of right answers, which a wrong one ends', () => {
    const two = answered(once(true), { kind: kind!, rig: 'two', right: true, seconds: 30, now: BEGAN });
    expect(two.skills[kind!.skill]).toMatchObject({ asked: 2, right: 2, streak: 2 });
    const three = answered(two, { kind: kind!, rig: 'two', right: false, seconds: 30, now: BEGAN });
    expect(three.skills[kind!.skill]).toMatchObject({ asked: 3, right: 2, streak: 0 });
  });

  it('never asks the same number twice, and other numbers of other people', () => {
    let practice = fresh;
    const numbers = new Set<number>();
    for (let turn = 0; turn < 40; turn++) {
      numbers.add(numberFor(practice, { kind: kind!, rig: 'two' }, rigs, 24));
      practice = answered(practice, { kind: kind!, rig: 'two', right: true, seconds: 30, now: BEGAN });
    }
    expect(numbers.size).toBe(40);
    // Every one of them hangs on the rig that was asked for.
    for (const number of numbers) expect(rigs[Math.floor(number / 24) % rigs.length]).toBe('two');
    expect(numbers.has(numberFor({ ...fresh, lot: 8000 }, { kind: kind!, rig: 'two' }, rigs, 24))).toBe(false);
  });

  it('of two places joins to what was asked more often, and the same read in twice changes nothing', () => {
    const here = once(true);
    const there = answered(once(false), { kind: kind!, rig: 'one', right: true, seconds: 30, now: BEGAN + DAY });
    expect(joinPractice(here, there)).toEqual(there);
    expect(joinPractice(there, here)).toEqual(there);
    expect(joinPractice(fresh, there)).toEqual(there);
  });

  it('is read back as it was kept, and refused where it is not', () => {
    const kept = once(true);
    expect(practiceSchema.parse(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
    expect(practiceSchema.safeParse({ ...kept, skills: { ...kept.skills, luck: 1 } }).success).toBe(false);
    expect(practiceSchema.safeParse({ ...kept, families: { '<b>': 1 } }).success).toBe(false);
  });
});

describe('Elo’s model', () => {
  // Source: Elo, The Rating of Chessplayers, Past and Present (1978), 8.2: 400 points are ten to one, 200 points about 0.76 (from memory).
  it('has the chances of its published table', () => {
    expect(expectedRight(400, 0)).toBeCloseTo(10 / 11, 10);
    expect(expectedRight(200, 0)).toBeCloseTo(0.76, 2);
    expect(expectedRight(0, 0)).toBe(0.5);
  });
});

describe('a learner whose skills are known', () => {
  it('is asked most of what is weakest, and that rises first, in 95 of 100 runs', () => {
    let first = 0;
    let most = 0;
    for (let run = 0; run < 100; run++) {
      const random = randomOf(1000 + run);
      const weak = DRILL_SKILLS[run % DRILL_SKILLS.length]!;
      const ability = new Map(DRILL_SKILLS.map((skill) => [skill, skill === weak ? 0.25 : 0.8]));
      const times = new Map<string, number>();
      let practice = fresh;
      let now = BEGAN;
      for (let day = 0; day < 6; day++, now += DAY) {
        for (let part = 0; part < 3; part++) {
          for (const { kind, rig } of setFor(practice, shelf, now, 5)) {
            const able = ability.get(kind.skill) ?? 0;
            times.set(kind.skill, (times.get(kind.skill) ?? 0) + 1);
            practice = answered(practice, { kind, rig, right: random() < able, seconds: 30, now });
            // Practice makes better: each answer takes away a twentieth of what is missing.
            ability.set(kind.skill, able + (1 - able) / 20);
            now += 40_000;
          }
        }
      }
      const others = DRILL_SKILLS.filter((skill) => skill !== weak).map((skill) => times.get(skill) ?? 0);
      if ((times.get(weak) ?? 0) >= Math.max(...others)) most += 1;
      const risen = (skill: (typeof DRILL_SKILLS)[number]) => (ability.get(skill) ?? 0) - (skill === weak ? 0.25 : 0.8);
      if (DRILL_SKILLS.every((skill) => skill === weak || risen(weak) > risen(skill))) first += 1;
    }
    expect(first).toBeGreaterThanOrEqual(95);
    expect(most).toBeGreaterThanOrEqual(95);
  });

  it('tells how hard what was asked of a skill is: as far below where it began as the skill is above, and nothing of what was not asked', () => {
    const [kind] = kinds;
    const { skill } = kind!;
    expect(difficulty(fresh, shelf, skill)).toBeUndefined();
    const right = answered(fresh, { kind: kind!, rig: 'one', right: true, seconds: 30, now: BEGAN });
    // Of even chances half a step is won, from the exercise (Elo, K = 32).
    expect(right.skills[skill]?.rating).toBe(16);
    expect(difficulty(right, shelf, skill)).toBe(-16);
    const wrong = answered(right, { kind: kind!, rig: 'two', right: false, seconds: 30, now: BEGAN });
    const two = wrong.families[familyOf(kind!.id, 'two')]!.rating;
    expect(two).toBeGreaterThan(16);
    expect(difficulty(wrong, shelf, skill)).toBeCloseTo((two - 16) / 2, 10);
    expect(difficulty(wrong, shelf, DRILL_SKILLS.find((each) => each !== skill)!)).toBeUndefined();
  });

  it('knows less as time goes by, and mastery is between nothing and all', () => {
    const [kind] = kinds;
    const asked = { kind: kind!, rig: 'one' };
    const practice = answered(fresh, { ...asked, right: true, seconds: 5, now: BEGAN });
    expect(known(practice, asked, BEGAN + DAY)).toBeGreaterThan(known(practice, asked, BEGAN + 60 * DAY));
    expect(known(fresh, asked, BEGAN)).toBe(0);
    expect(mastery(practice, shelf, kind!.skill, BEGAN)).toBeGreaterThan(0);
    expect(mastery(practice, shelf, kind!.skill, BEGAN)).toBeLessThan(1);
  });

  it('has mastered nothing without a right answer, and more with one than with any number of wrong ones', () => {
    const [kind] = kinds;
    const of = (practice: Practice, now = BEGAN) => mastery(practice, shelf, kind!.skill, now);
    const say = (practice: Practice, rig: string, right: boolean) =>
      answered(practice, { kind: kind!, rig, right, seconds: 30, now: BEGAN });
    const wrong = rigs.reduce((practice, rig) => say(say(practice, rig, false), rig, false), fresh);
    expect(of(wrong)).toBe(0);
    const one = say(fresh, 'one', true);
    // One of the skill's two kinds on three rigs, just seen.
    expect(of(one)).toBeCloseTo(1 / 6, 6);
    expect(of(one, BEGAN + DAY)).toBeGreaterThan(of(wrong, BEGAN + DAY));
    // What was known and then answered wrongly is not known until it is answered rightly again.
    const lost = say(one, 'one', false);
    expect(of(lost)).toBe(0);
    expect(of(say(lost, 'one', true))).toBeCloseTo(1 / 6, 6);
  });

  it('reads practice that was kept without the last answer by its cards', () => {
    const [kind] = kinds;
    const kept = (...rights: readonly boolean[]) => {
      const practice = rights.reduce(
        (before, right) => answered(before, { kind: kind!, rig: 'one', right, seconds: 30, now: BEGAN }),
        fresh,
      );
      const families = Object.entries(practice.families).map(([family, { right, ...rest }]) => [family, rest]);
      return practiceSchema.parse({ ...practice, families: Object.fromEntries(families) });
    };
    const of = (...rights: readonly boolean[]) => mastery(kept(...rights), shelf, kind!.skill, BEGAN);
    for (const rights of [[false], [false, false], [true, false], [true, true, false]]) expect(of(...rights), `${rights}`).toBe(0);
    for (const rights of [[true], [true, true], [false, true]]) expect(of(...rights), `${rights}`).toBeCloseTo(1 / 6, 6);
  });
});
