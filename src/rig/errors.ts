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
