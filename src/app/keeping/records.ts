/** What is kept of a profile, as it lies in the store and in an exported file. No browser in here. */
import { z } from 'zod';
import { checkLog } from '../../attempt/attempt.ts';
import { dataError, isDataError, shapeError } from '../../rig/errors.ts';
import { TICKET_MODES } from '../../scenario/ticket.ts';
import type { Debrief } from '../../score/debrief.ts';

const line = z.strictObject({ points: z.number().min(0).max(100), of: z.number().min(0).max(100) });

/** What a debrief came to, in short. Always worked out here, from a log: never taken from a file. */
export const resultSchema = z.strictObject({
  total: z.number().min(0).max(100),
  right: z.boolean(),
  steps: z.number().int().min(0),
  wasted: z.number().int().min(0),
  minutes: z.number().min(0),
  items: z.strictObject({ isolation: line, economy: line, safety: line, proof: line }),
});
export type Result = z.infer<typeof resultSchema>;

export function resultOf(debrief: Debrief): Result {
  const { isolation, economy, safety, proof } = debrief.items;
  const short = ({ points, of }: { readonly points: number; readonly of: number }) => ({ points, of });
  return {
    total: debrief.total,
    right: debrief.rightNaming,
    steps: debrief.steps.length,
    wasted: debrief.wastedSteps,
    minutes: debrief.minutes,
    items: { isolation: short(isolation), economy: short(economy), safety: short(safety), proof: short(proof) },
  };
}

const attempt = { ticket: z.string().min(1).max(80), mode: z.enum(TICKET_MODES), log: z.unknown() };

const finishedSchema = z.strictObject({
  ...attempt,
  /** Counts up with every attempt that is finished: the order, whatever the PC's clock says. */
  number: z.number().int().min(1),
  /** The PC's clock when it was finished, milliseconds since 1970: a note, never an order. */
  when: z.number().min(0),
  result: resultSchema.optional(),
});
/** An attempt that was closed. */
export type Finished = z.infer<typeof finishedSchema>;

/** Key of a finished attempt. */
export const finishedKey = (number: number): string => `finished:${number}`;

/** The finished attempts among what is kept, in the order in which they were finished. */
export function finishedIn(shelf: ReadonlyMap<string, unknown>): readonly Finished[] {
  return [...shelf]
    .flatMap(([key, value]) => {
      if (!key.startsWith('finished:')) return [];
      const found = finishedSchema.safeParse(value);
      return found.success ? [found.data] : [];
    })
    .sort((a, b) => a.number - b.number);
}

const FORMAT = 'bellwire-keeping';
const VERSION = 1;
/** Longest file that is read, characters: some thousands of attempts. */
export const MOST_CHARACTERS = 50_000_000;

const profileSchema = z.strictObject({
  name: z.string().max(40),
  finished: z.array(finishedSchema.omit({ number: true, result: true })).max(20_000),
  running: z.array(z.strictObject(attempt)).max(500),
  habits: z.record(z.string().regex(/^[A-Za-z][\w-]{0,39}$/), z.string().max(200)),
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
  if (text.length > MOST_CHARACTERS) throw dataError('data.large', '(file)');
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw dataError('data.notJson', '(file)');
  }
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
