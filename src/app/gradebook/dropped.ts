/** Files as a hand brings them: chosen, dropped, in folders, in a zip file. Each is read when its turn comes. */
import { strFromU8, unzipSync } from 'fflate';
import { dataError } from '../../rig/errors.ts';
import { MOST_BYTES, type Problem, problemOf } from './contents.ts';

export interface Dropped {
  /** Its name, with the folders that it lay in. */
  readonly name: string;
  /** Undefined: too large to be read. */
  readonly text: () => Promise<string | undefined>;
}

export interface DroppedFiles {
  readonly files: readonly Dropped[];
  readonly problems: readonly Problem[];
}

/** At once. */
const MOST_FILES = 10_000;

const isOurs = (name: string): boolean => /\.json$/i.test(name);
const isZip = (name: string): boolean => /\.zip$/i.test(name);

interface Named {
  readonly name: string;
  readonly file: File;
}

/** Files that were chosen: of a folder only those that may be ours. */
export function chosenFiles(list: Iterable<File>): Named[] {
  return [...list].flatMap((file) => {
    const inside = file.webkitRelativePath;
    if (inside === '') return [{ name: file.name, file }];
    return isOurs(inside) || isZip(inside) ? [{ name: inside, file }] : [];
  });
}

/** What was dropped, folders and all. It must be asked at once: the browser forgets it when the event is over. */
export async function droppedFiles({ items, files }: DataTransfer): Promise<Named[]> {
  const entries = [...items].map((item) => item.webkitGetAsEntry()).filter((entry) => entry !== null);
  if (entries.length === 0) return chosenFiles(files);
  const found: Named[] = [];
  const walk = async (entry: FileSystemEntry, path: string): Promise<void> => {
    if (found.length > MOST_FILES) return;
    if (isFolder(entry)) for (const inner of await entriesIn(entry)) await walk(inner, `${path}${entry.name}/`);
    else if (path === '' || isOurs(entry.name) || isZip(entry.name))
      found.push({ name: `${path}${entry.name}`, file: await fileOf(entry as FileSystemFileEntry) });
  };
  for (const entry of entries) await walk(entry, '');
  return found;
}

const isFolder = (entry: FileSystemEntry): entry is FileSystemDirectoryEntry => entry.isDirectory;

const fileOf = (entry: FileSystemFileEntry): Promise<File> => new Promise((resolve, reject) => entry.file(resolve, reject));

/** A folder tells what is in it a hundred at a time, and nothing when it has told all. */
async function entriesIn(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (some.length === 0 || all.length > MOST_FILES) return all;
    all.push(...some);
  }
}

/** The files, and what lies in those that are zip files. */
export async function opened(named: readonly Named[]): Promise<DroppedFiles> {
  const files: Dropped[] = [];
  const problems: Problem[] = [];
  for (const { name, file } of named) {
    if (!isZip(name)) files.push({ name, text: async () => (file.size > MOST_BYTES ? undefined : file.text()) });
    else {
      try {
        if (file.size > MOST_BYTES) throw dataError('data.large', '(file)');
        files.push(...zipped(name, new Uint8Array(await file.arrayBuffer())));
      } catch (error) {
        problems.push(problemOf(name, error));
      }
    }
  }
  const [fits, rest] = [files.slice(0, MOST_FILES), files.slice(MOST_FILES)];
  const [first] = rest;
  if (first) problems.push(problemOf(first.name, dataError('classroom.tooMany', '(file)', { most: MOST_FILES })));
  return { files: fits, problems };
}

/** @throws DataError where it is no zip file, or unpacks to more than a class can be */
function zipped(zip: string, bytes: Uint8Array): Dropped[] {
  let total = 0;
  const inner = unpacked(bytes, ({ name, originalSize }) => {
    if (!isOurs(name)) return false;
    total += originalSize;
    if (total > MOST_BYTES) throw dataError('data.large', '(file)');
    return true;
  });
  return Object.entries(inner).map(([name, content]) => ({ name: `${zip}/${name}`, text: async () => strFromU8(content) }));
}

function unpacked(
  bytes: Uint8Array,
  filter: (file: { name: string; originalSize: number }) => boolean,
): Record<string, Uint8Array> {
  try {
    return unzipSync(bytes, { filter });
  } catch (error) {
    if (error instanceof Error && 'path' in error) throw error;
    throw dataError('classroom.zip', '(file)');
  }
}
