import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Resource } from 'i18next';
import { dataError, isDataError } from '../rig/errors.ts';
import type { RigData } from '../rig/schema.ts';
import { type Library, loadLibrary } from '../scenario/library.ts';
import type { Ticket } from '../scenario/ticket.ts';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
/** More than this is no rig, ticket or log of ours, bytes. */
const LARGEST_FILE = 4_000_000;

/** @throws DataError naming the file when it cannot be read or is no JSON */
export function readJson(path: string): unknown {
  let text: string;
  try {
    if (statSync(path).size > LARGEST_FILE) throw dataError('data.large', path);
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if (isDataError(error)) throw error;
    throw dataError('data.unreadable', path);
  }
  try {
    return JSON.parse(text);
  } catch {
    throw dataError('data.notJson', path);
  }
}

/** JSON files at a path: the file itself, or all below a folder, in order of name. */
export function jsonFiles(path: string): string[] {
  let folder: boolean;
  try {
    folder = statSync(path).isDirectory();
  } catch {
    throw dataError('data.unreadable', path);
  }
  if (!folder) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => {
      const inner = join(path, name);
      return statSync(inner).isDirectory() ? jsonFiles(inner) : name.endsWith('.json') ? [inner] : [];
    });
}

/** The rigs and tickets that come with Bellwire. */
export function shippedLibrary(): Library {
  const read = (folder: string) =>
    Object.fromEntries(jsonFiles(join(ROOT, 'scenarios', folder)).map((file) => [basename(file), readJson(file)]));
  return loadLibrary(read('rigs'), read('tickets'));
}

/** A shipped rig by id. */
export function rigById(library: Library, id: string): RigData {
  const rig = library.rigs.get(id);
  if (!rig) throw dataError('data.noRig', id, { known: [...library.rigs.keys()].join(', ') });
  return rig;
}

/** A shipped ticket by id. */
export function ticketById(library: Library, id: string): Ticket {
  const ticket = library.tickets.find((each) => each.id === id);
  if (!ticket) throw dataError('data.noTicket', id, { known: library.tickets.map((each) => each.id).join(', ') });
  return ticket;
}

/** The words of one language, by namespace. @throws DataError where there is no such language */
export function wordsOf(language: string): Resource[string] {
  const known = readdirSync(join(ROOT, 'locales'), { withFileTypes: true }).filter((entry) => entry.isDirectory());
  if (!known.some(({ name }) => name === language)) {
    throw dataError('data.noLanguage', language, { known: known.map(({ name }) => name).join(', ') });
  }
  const folder = join(ROOT, 'locales', language);
  return Object.fromEntries(
    readdirSync(folder).map((file) => [basename(file, '.json'), readJson(join(folder, file)) as Resource[string][string]]),
  );
}
