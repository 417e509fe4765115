import { z } from 'zod';
import { JOB_MODES } from '../attempt/job.ts';
import { blueprintSchema } from '../drills/exam.ts';
import { dataError, shapeError } from '../rig/errors.ts';
import { GRADES } from '../scenario/grade.ts';
import { SKILLS } from '../scenario/skills.ts';
import { ticketSchema } from '../scenario/ticket.ts';
import { rubricSchema } from '../score/rubric.ts';
import { instantSchema, secondsOf } from './instant.ts';
import { weightSchema } from './weights.ts';

/** A name that files, links and people can carry: letters, digits and hyphens. */
export const codeSchema = z.string().regex(/^[A-Za-z0-9](?:[A-Za-z0-9-]{0,38}[A-Za-z0-9])?$/, { error: 'classroom.code' });

const drawnSchema = z.strictObject({
  ticket: ticketSchema,
  /** The short way's time on the job, seconds: what makes it as hard as the others. */
  seconds: z.number().positive(),
});

const itemSchema = z.discriminatedUnion('kind', [
  /** A ticket that ships with Bellwire, the same for everybody. */
  z.strictObject({ kind: z.literal('shipped'), ticket: z.string().min(1).max(40), weight: weightSchema }),
  /** A ticket of the instructor's own, the same for everybody. */
  z.strictObject({ kind: z.literal('own'), ticket: ticketSchema, weight: weightSchema }),
  /** One of several that are as hard as each other, another for each trainee. */
  z.strictObject({
    kind: z.literal('drawn'),
    recipe: z.strictObject({ rig: z.string().min(1).max(40), skill: z.enum(SKILLS).optional(), grade: z.enum(GRADES).optional() }),
    pool: z.array(drawnSchema).min(2).max(100),
    weight: weightSchema,
  }),
]);

const { id, items, minutes, pass, skills } = blueprintSchema.shape;

export const paperSchema = z.discriminatedUnion('kind', [
  /** The questions of an exam; its time holds beside the assignment's own. Bench tickets are items of the assignment. */
  z.strictObject({
    kind: z.literal('exam'),
    /** For an exam of the instructor's own. */
    title: z.string().trim().min(1).max(120).optional(),
    exam: z.strictObject({ id, items, minutes, pass, skills }),
    weight: weightSchema,
  }),
  /** So many exercises of these kinds. */
  z.strictObject({
    kind: z.literal('drills'),
    drills: z
      .array(z.string().regex(/^[A-Za-z]{1,40}$/))
      .min(1)
      .max(40),
    count: z.int().min(3).max(60),
    weight: weightSchema,
  }),
]);

/** Tickets and papers together. */
export const MOST_ITEMS = 30;

export const assignmentSchema = z
  .strictObject({
    /** Where this file's JSON Schema is, for editors; nothing that anybody hands out or is graded by. */
    $schema: z.string().max(200).optional(),
    format: z.literal('bellwire-assignment'),
    version: z.literal(1),
    id: codeSchema,
    title: z.string().trim().min(1).max(120),
    /** What the instructor says about it, as plain text. */
    note: z.string().max(2000).optional(),
    mode: z.enum(JOB_MODES),
    /** How often each of its tickets may be tried. */
    attempts: z.int().min(1).max(20).default(1),
    /** Minutes by the clock on the wall for one attempt; no limit where left out. */
    minutes: z.number().min(1).max(1440).optional(),
    opens: instantSchema.optional(),
    closes: instantSchema.optional(),
    /** Points and the price of hints in place of each ticket's own. */
    rubric: rubricSchema.optional(),
    /** With the trainee's code it decides what each of them draws. */
    seed: z.int().min(0).max(2_147_483_647),
    items: z.array(itemSchema).max(MOST_ITEMS),
    /** Exercises and exams; they are counted on from the items. */
    papers: z.array(paperSchema).min(1).max(10).optional(),
  })
  .refine(({ opens, closes }) => opens === undefined || closes === undefined || secondsOf(opens) < secondsOf(closes), {
    error: 'classroom.hours',
    path: ['closes'],
  })
  .refine(({ items, papers = [] }) => items.length + papers.length >= 1 && items.length + papers.length <= MOST_ITEMS, {
    error: 'classroom.items',
    path: ['items'],
  });

/** What an instructor sets: tickets, or recipes for them, and how they are to be worked on. */
export type Assignment = Omit<z.infer<typeof assignmentSchema>, '$schema'>;
export type AssignmentItem = Assignment['items'][number];
export type PaperSetting = NonNullable<Assignment['papers']>[number];

/** How many grades it comes to: its tickets, then its papers. */
export const placesOf = ({ items, papers = [] }: Assignment): number => items.length + papers.length;

/** Takes data of one version to the next; by the version that it comes from. */
export type Migrations = Readonly<Record<number, (json: Record<string, unknown>) => Record<string, unknown>>>;

const CURRENT_VERSION = 1;
/** None yet: the first version is the current one. */
const MIGRATIONS: Migrations = {};

/**
 * Data in their current version, by however many steps it takes.
 * @throws DataError for a version from the future, or one that nobody can read any more
 */
export function migrated(json: unknown, current = CURRENT_VERSION, migrations = MIGRATIONS): unknown {
  let data = json;
  while (typeof data === 'object' && data !== null && 'version' in data && data.version !== current) {
    const { version } = data;
    if (typeof version === 'number' && version > current) throw dataError('classroom.newer', 'version', { version, current });
    const step = typeof version === 'number' ? migrations[version] : undefined;
    if (!step) throw dataError('classroom.noVersion', 'version', { version: String(version), current });
    data = step(data as Record<string, unknown>);
  }
  return data;
}

/**
 * Checks an assignment's shape, and takes one of an earlier version to the current one.
 * @throws DataError with the path inside the file
 */
export function loadAssignment(json: unknown): Assignment {
  const parsed = assignmentSchema.safeParse(migrated(json));
  if (!parsed.success) throw shapeError(parsed.error.issues);
  const { $schema: _, ...assignment } = parsed.data;
  return assignment;
}
