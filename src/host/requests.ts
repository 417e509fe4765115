/** What every request is asked for: a shape, a token, and where it comes from. */
import type { FastifyRequest } from 'fastify';
import type { z } from 'zod';
import { dataError, shapeError } from '../rig/errors.ts';

/** @throws DataError with the path inside the body */
export function checked<T>(schema: z.ZodType<T>, body: unknown): T {
  const parsed = schema.safeParse(body);
  if (parsed.success) return parsed.data;
  throw shapeError(parsed.error.issues);
}

/** @throws DataError where there is no token */
export function bearerOf({ headers }: FastifyRequest): string {
  const [, token] = /^Bearer ([A-Za-z0-9_-]{43})$/.exec(headers.authorization ?? '') ?? [];
  if (token === undefined) throw dataError('lab.signedOut', 'authorization');
  return token;
}

/** Whether a page of this very host asks: another site's script gives its own origin away. */
export function isSameOrigin({ headers }: FastifyRequest): boolean {
  const { origin, host } = headers;
  if (origin === undefined || host === undefined) return false;
  try {
    return new URL(origin).host === host;
  } catch {
    return false;
  }
}

/** HTTP status by code of an error; 400 for all others. */
const STATUS: Readonly<Record<string, number>> = {
  'lab.wait': 429,
  'lab.tooMany': 429,
  'lab.wrong': 401,
  'lab.wrongPassword': 401,
  'lab.signedOut': 401,
  'lab.noTrainee': 404,
  'lab.noAssignment': 404,
  'lab.noPage': 404,
  'lab.otherOrigin': 403,
  'data.large': 413,
  'lab.fault': 500,
};

export const statusOf = (code: string): number => STATUS[code] ?? 400;
