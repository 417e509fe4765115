import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadAssignment } from '../classroom/assignment.ts';
import { workOf } from '../classroom/draw.ts';
import type { PackageKind } from '../classroom/lms/manifests.ts';
import { APP_FILES, loadAppFiles, packageOf } from '../classroom/lms/package.ts';
import { papersOf } from '../classroom/papers.ts';
import { dataError } from '../rig/errors.ts';
import { inFile } from '../scenario/library.ts';
import { readJson, shippedLibrary } from './files.ts';

interface Wishes {
  readonly language: string;
  readonly passAt: number | undefined;
  /** The folder of the built app. */
  readonly app: string;
}

/**
 * Packs a file into a file.
 * @returns bytes written
 * @throws DataError where the assignment does not hold, there is no app to pack, or nothing may be written there
 */
export async function packageFile(
  kind: PackageKind,
  file: string,
  out: string,
  { language, passAt, app }: Wishes,
): Promise<number> {
  const json = readJson(file);
  const assignment = inFile(file, () => {
    const loaded = loadAssignment(json);
    workOf(loaded, 'anybody', shippedLibrary());
    papersOf(loaded, 'anybody', shippedLibrary());
    return loaded;
  });
  const read = async (name: string): Promise<Uint8Array> => {
    try {
      return new Uint8Array(readFileSync(join(app, name)));
    } catch {
      throw dataError('package.noPage', join(app, name));
    }
  };
  const listed = loadAppFiles(new TextDecoder().decode(await read(APP_FILES)));
  const bytes = await packageOf({ kind, assignment, language, passAt }, listed, read, () => Promise.resolve());
  try {
    writeFileSync(out, bytes);
  } catch {
    throw dataError('data.unwritable', out);
  }
  return bytes.length;
}
