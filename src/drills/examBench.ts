/** Bench tickets in a mock exam: which ones a lot gives, and when the work on one is right. */
import { z } from 'zod';
import { GRADES, type Grade } from '../scenario/grade.ts';
import { randomOf, shuffled } from '../scenario/random.ts';
import { SKILLS } from '../scenario/skills.ts';
import type { Debrief } from '../score/debrief.ts';

/** Of one grade, in one exam. */
const MOST_OF_A_GRADE = 10;
/** In one exam. */
export const MOST_TICKETS = MOST_OF_A_GRADE * GRADES.length;

export const examBenchSchema = z.strictObject({
  /** So many of each grade: every paper is as hard as every other. */
  tickets: z.partialRecord(z.enum(GRADES), z.int().min(1).max(MOST_OF_A_GRADE)).refine((counts) => Object.keys(counts).length > 0),
  /** Only tickets that ask for one of these; any where left out. */
  skills: z.array(z.enum(SKILLS)).min(1).optional(),
});
/** What an exam asks for at the bench. */
export type ExamBench = z.infer<typeof examBenchSchema>;

/** A ticket that an exam may ask for. */
export interface Posted {
  readonly id: string;
  readonly rig: string;
  /** Undefined for one that is newer than its measure: no exam asks for it. */
  readonly grade: Grade | undefined;
  readonly skills?: readonly string[] | undefined;
}

export const ticketCount = (bench: ExamBench | undefined): number =>
  Object.values(bench?.tickets ?? {}).reduce((sum, count) => sum + count, 0);

/** Lots for the tickets that are not those of the questions. */
const APART = 0x2b5e;

/**
 * The tickets of a lot, the easier grades first; fewer where there are not so many. What is known already comes last, and of the rest one whose
 * rig was not met yet comes before one whose rig was: knowing a ticket spoils it more than knowing its rig.
 * @param posted in an order that is the same for everybody
 * @param known ids of tickets that whoever sits the exam has closed before
 * @param lot 0 … 1,000,000
 */
export function ticketsOf(bench: ExamBench, posted: readonly Posted[], known: ReadonlySet<string>, lot: number): string[] {
  const random = randomOf(lot ^ APART);
  const { tickets, skills } = bench;
  const met = new Set<string>();
  return GRADES.flatMap((grade) => {
    const left = shuffled(
      random,
      posted.filter(
        (each) => each.grade === grade && (skills === undefined || skills.some((skill) => each.skills?.includes(skill) === true)),
      ),
    );
    const burden = ({ id, rig }: Posted) => (known.has(id) ? 2 : 0) + (met.has(rig) ? 1 : 0);
    const count = Math.min(tickets[grade] ?? 0, left.length);
    return Array.from({ length: count }, () => {
      const least = Math.min(...left.map(burden));
      const [taken] = left.splice(
        left.findIndex((each) => burden(each) === least),
        1,
      ) as [Posted];
      met.add(taken.rig);
      return taken.id;
    });
  });
}

/**
 * Whether the work on a ticket that was closed counts as right: the fault, or one that nothing tells from it, was named; nothing was taken off for
 * safety; and no sound part was replaced. All of it is what the debrief says.
 */
export function isRight({ rightNaming, items }: Pick<Debrief, 'rightNaming' | 'items'>): boolean {
  const safe = items.safety.reasons.every(({ code }) => code === 'safeStart');
  return rightNaming && safe && items.isolation.reasons.every(({ code }) => code !== 'soundReplaced');
}
