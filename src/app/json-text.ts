import { dataError } from '../rig/errors.ts';

/**
 * Text from outside as JSON. Its shape is for the schema of whatever it should be.
 * @param text undefined: a file that was too large to be read
 * @param most characters
 * @throws DataError where it is no JSON, or too long to be ours
 */
export function parseJson(text: string | undefined, most: number): unknown {
  if (text === undefined || text.length > most) throw dataError('data.large', '(file)');
  try {
    return JSON.parse(text);
  } catch {
    throw dataError('data.notJson', '(file)');
  }
}
