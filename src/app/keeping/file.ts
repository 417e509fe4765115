/** The file that everything of a profile goes out to and comes back from. No browser in here. */
import { z } from 'zod';
import { checkLog } from '../../attempt/attempt.ts';
import { practiceSchema } from '../../drills/practice.ts';
import { dataError, isDataError, shapeError } from '../../rig/errors.ts';
import { keptExamsSchema } from '../drills/exam-keep.ts';
import { parseJson } from '../json-text.ts';
import { SETTINGS } from '../setting-values.ts';
import { attemptShape, finishedSchema } from './records.ts';

const FORMAT = 'bellwire-keeping';
const VERSION = 1;
/** Longest file that is read, characters: some thousands of attempts. */
const MOST_CHARACTERS = 50_000_000;

/** What a habit may be called: no other goes into a file, or comes in from one. */
export const HABIT_NAME = /^[A-Za-z][\w-]{0,39}$/;

const profileSchema = z.strictObject({
  name: z.string().max(40),
  finished: z.array(finishedSchema.omit({ number: true, result: true })).max(20_000),
  running: z.array(z.strictObject(attemptShape)).max(500),
  /** What was practised in drills. */
  drills: practiceSchema.optional(),
  exams: keptExamsSchema.optional(),
  habits: z.record(z.string().regex(HABIT_NAME), z.string().max(200)).check(({ value, issues }) => {
    // A setting has a value of its own; what else a page remembered is any short text.
    for (const [name, values] of Object.entries<readonly string[]>(SETTINGS)) {
      const kept = value[name];
      if (kept !== undefined && !values.includes(kept))
        issues.push({ code: 'invalid_value', values: [...values], input: kept, path: [name] });
    }
  }),
});
const fileSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  profiles: z.array(profileSchema).min(1).max(200),
});

/** One profile in a file. Its finished attempts stand in the order in which they were finished. */
export type KeptProfile = z.infer<typeof profileSchema>;

export function fileText(profiles: readonly KeptProfile[]): string {
  return `${JSON.stringify({ format: FORMAT, version: VERSION, profiles }, null, 1)}\n`;
}

/**
 * Reads an exported file. Shapes only: whether an attempt can have happened is for a replay.
 * @throws DataError with the path of the first thing that does not fit
 */
export function parseFile(text: string): readonly KeptProfile[] {
  const json = parseJson(text, MOST_CHARACTERS);
  const version = z.object({ format: z.literal(FORMAT), version: z.number() }).safeParse(json);
  if (version.success && version.data.version > VERSION)
    throw dataError('keeping.newer', 'version', { version: version.data.version, known: VERSION });
  const parsed = fileSchema.safeParse(json);
  if (!parsed.success) throw shapeError(parsed.error.issues);
  parsed.data.profiles.forEach((profile, index) => {
    for (const list of ['finished', 'running'] as const) {
      profile[list].forEach((each, at) => {
        within(`profiles[${index}].${list}[${at}].log`, () => checkLog(each.log));
      });
    }
    profile.exams?.running?.bench?.forEach(({ log }, at) => {
      if (log !== undefined) within(`profiles[${index}].exams.running.bench[${at}].log`, () => checkLog(log));
    });
  });
  return parsed.data.profiles;
}

/** Runs a check of a piece of a file; what it throws gets the piece's place in the file before its path. */
export function within(place: string, check: () => void): void {
  try {
    check();
  } catch (error) {
    if (!isDataError(error)) throw error;
    throw dataError(error.code, error.path === '(file)' ? place : `${place}.${error.path}`, { ...error.values });
  }
}
