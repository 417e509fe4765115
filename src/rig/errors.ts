import type { z } from 'zod';

/** What is wrong with data from outside: a code that the screen translates, and where in the file it is. */
export interface DataError extends Error {
  readonly code: string;
  /** `file › path[2].inside`; the file's part is added by whoever knows it. */
  readonly path: string;
  readonly values: Readonly<Record<string, string | number>>;
}

export function dataError(code: string, path: string, values: Record<string, string | number> = {}): DataError {
  return Object.assign(new Error(`${code} at ${path}`), { code, path, values });
}

export function isDataError(error: unknown): error is DataError {
  return error instanceof Error && 'code' in error && 'path' in error;
}

/** A zod path as people write it: `wires[3].to`. */
export function pathText(path: readonly PropertyKey[]): string {
  let text = '';
  for (const step of path) text += typeof step === 'number' ? `[${step}]` : `${text ? '.' : ''}${String(step)}`;
  return text || '(file)';
}

/** Codes that a schema of ours gives as its message. */
const OWN_CODES = new Set([
  'rig.id',
  'rig.terminalRef',
  'ticket.id',
  'rubric.sum',
  'rig.staging',
  'classroom.code',
  'classroom.hours',
  'classroom.items',
  'classroom.weight',
]);

/**
 * The first thing that does not fit, as an error with words of ours.
 * @param inside where in the file the checked piece lies, when it is not the whole
 */
export function shapeError(issues: readonly z.core.$ZodIssue[], inside = ''): DataError {
  const issue = issues[0];
  const own = issue ? pathText(issue.path) : '';
  const path = inside === '' ? own || '(file)' : own === '(file)' || own === '' ? inside : `${inside}.${own}`;
  if (!issue) return dataError('data.shape', path);
  if (OWN_CODES.has(issue.message)) return dataError(issue.message, path);
  switch (issue.code) {
    case 'invalid_type':
      return dataError('data.type', path, { expected: String(issue.expected) });
    case 'unrecognized_keys':
      return dataError('data.unknownKey', path, { keys: list(issue.keys) });
    case 'invalid_value':
      return dataError('data.value', path, { options: list(issue.values) });
    case 'too_small':
      return dataError('data.tooSmall', path, { limit: String(issue.minimum) });
    case 'too_big':
      return dataError('data.tooBig', path, { limit: String(issue.maximum) });
    default:
      return dataError('data.shape', path);
  }
}

function list(values: unknown): string {
  return Array.isArray(values) ? values.map(String).join(', ') : '';
}
