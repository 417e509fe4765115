/** What is asked of the host over HTTP. */
import type { z } from 'zod';
import type { Failure } from '../../classroom/protocol.ts';
import { t } from '../words.ts';

/** The host said no, or could not be reached (`lab.unreachable`). */
export class Refused extends Error {
  readonly failure: Failure['error'];
  constructor(failure: Failure['error']) {
    super(failure.code);
    this.failure = failure;
  }
}

/** An error of the host's, or anything else that went wrong, in words. */
export function failureText(failure: Pick<Failure['error'], 'code' | 'path' | 'values'>): string {
  if (failure.code === 'lab.unreachable') return t('lab:unreachable');
  return t(`error:${failure.code}`, { ...failure.values, path: failure.path });
}

export const failedText = (error: unknown): string =>
  error instanceof Refused ? failureText(error.failure) : t('lab:unreachable');

interface Ask {
  readonly method?: 'GET' | 'POST' | 'DELETE';
  readonly token?: string | undefined;
  readonly body?: unknown;
}

const unreachable = () => new Refused({ code: 'lab.unreachable', path: '', values: {} });

/** @throws Refused */
export async function ask(path: string, { method = 'GET', token, body }: Ask = {}): Promise<Response> {
  const headers: Record<string, string> = {};
  if (body !== undefined) headers['content-type'] = 'application/json';
  if (token !== undefined) headers.authorization = `Bearer ${token}`;
  let response: Response;
  try {
    response = await fetch(path, {
      method,
      headers,
      cache: 'no-store',
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
  } catch {
    throw unreachable();
  }
  if (response.ok) return response;
  const told = (await response.json().catch(() => undefined)) as Failure | undefined;
  throw typeof told?.error?.code === 'string' ? new Refused(told.error) : unreachable();
}

/** The same for an answer of a known shape. @throws Refused */
export async function askFor<T>(schema: z.ZodType<T>, path: string, how: Ask = {}): Promise<T> {
  const response = await ask(path, how);
  const parsed = schema.safeParse(await response.json().catch(() => undefined));
  if (parsed.success) return parsed.data;
  throw unreachable();
}
