/** Mock exams: a paper drawn from a blueprint, and what its answers and the work at its bench say. */
import { z } from 'zod';
import { shapeError } from '../rig/errors.ts';
import { examBenchSchema } from './examBench.ts';
import { shareInterval } from './interval.ts';
import { DRILL_SKILLS, type DrillKind, type DrillSkill } from './item.ts';
import { type Question, questionsOf } from './paper.ts';
import type { Shelf } from './practice.ts';

/** In one paper. */
export const MOST_QUESTIONS = 120;

export const blueprintSchema = z.strictObject({
  $schema: z.string().max(200).optional(),
  format: z.literal('bellwire-exam'),
  version: z.literal(1),
  id: z.string().regex(/^[a-z][A-Za-z0-9]{0,39}$/),
  /** Questions. */
  items: z.int().min(5).max(MOST_QUESTIONS),
  minutes: z.int().min(5).max(240),
  /** Share of right answers that passes. */
  pass: z.number().min(0.3).max(1),
  /** How much each skill counts beside the others. */
  skills: z.partialRecord(z.enum(DRILL_SKILLS), z.number().min(0.1).max(100)).refine((weights) => Object.keys(weights).length > 0),
  /** Tickets beside the questions; none where left out. */
  bench: examBenchSchema.optional(),
});
/** What an exam asks for. */
export type Blueprint = z.infer<typeof blueprintSchema>;

/** @throws DataError with the path inside the file */
export function loadBlueprint(json: unknown): Blueprint {
  const parsed = blueprintSchema.safeParse(json);
  if (parsed.success) return parsed.data;
  throw shapeError(parsed.error.issues);
}

/** Questions by skill as the weights have it: whole parts first, then the largest remainders. Skills that no kind asks for are left out. */
export function countsOf({ items, skills }: Blueprint, kinds: readonly DrillKind[]): ReadonlyMap<DrillSkill, number> {
  const asked = DRILL_SKILLS.filter((skill) => skills[skill] !== undefined && kinds.some((kind) => kind.skill === skill));
  const total = asked.reduce((sum, skill) => sum + (skills[skill] ?? 0), 0);
  const shares = asked.map((skill) => ({ skill, share: (items * (skills[skill] ?? 0)) / total }));
  const counts = new Map(shares.map(({ skill, share }) => [skill, Math.floor(share)]));
  let left = items - [...counts.values()].reduce((sum, count) => sum + count, 0);
  for (const { skill } of [...shares].sort((a, b) => (b.share % 1) - (a.share % 1))) {
    if (left <= 0) break;
    counts.set(skill, (counts.get(skill) ?? 0) + 1);
    left -= 1;
  }
  return counts;
}

/** The paper of a lot: the same lot is the same paper. @param lot 0 … 1,000,000 */
export function paperOf(blueprint: Blueprint, shelf: Shelf, lot: number): Question[] {
  const groups = [...countsOf(blueprint, shelf.kinds)].map(([skill, count]) => ({
    kinds: shelf.kinds.filter((kind) => kind.skill === skill),
    count,
  }));
  return questionsOf(groups, shelf.rigs, lot);
}

/** What a result counts apart: the skills that questions ask for, and the tickets. */
export const EXAM_SKILLS = [...DRILL_SKILLS, 'bench'] as const;
export type ExamSkill = (typeof EXAM_SKILLS)[number];

export interface Tally {
  readonly right: number;
  readonly asked: number;
  /** 0…1; with the ends of its exact 95 % interval. */
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

export interface ExamResult extends Tally {
  readonly passed: boolean;
  /** Whether the interval leaves no doubt of that. */
  readonly sure: boolean;
  readonly skills: readonly (Tally & { readonly skill: ExamSkill })[];
  /** Skills to practise: below the pass mark, weakest first. */
  readonly practise: readonly ExamSkill[];
}

/** What answers come to, each ticket being one; a question without an answer and a ticket that was not closed are not right. */
export function examResult(
  { pass }: Pick<Blueprint, 'pass'>,
  answers: readonly { readonly skill: ExamSkill; readonly right: boolean }[],
): ExamResult {
  const all = tallyOf(answers);
  const skills = EXAM_SKILLS.flatMap((skill) => {
    const own = answers.filter((each) => each.skill === skill);
    return own.length === 0 ? [] : [{ skill, ...tallyOf(own) }];
  });
  const passed = all.share >= pass;
  return {
    ...all,
    passed,
    sure: passed ? all.low >= pass : all.high < pass,
    skills,
    practise: skills
      .filter(({ share }) => share < pass)
      .sort((a, b) => a.share - b.share)
      .map(({ skill }) => skill),
  };
}

function tallyOf(answers: readonly { readonly right: boolean }[]): Tally {
  const right = answers.filter((each) => each.right).length;
  const asked = answers.length;
  if (asked === 0) return { right, asked, share: 0, low: 0, high: 1 };
  return { right, asked, share: right / asked, ...shareInterval(right, asked) };
}
