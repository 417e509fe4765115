import type { Assignment } from '../../classroom/assignment.ts';
import { LAUNCH_FILE, type PackageKind } from '../../classroom/lms/manifests.ts';
import { APP_FILES, loadAppFiles, packageOf } from '../../classroom/lms/package.ts';
import { dataError } from '../../rig/errors.ts';

/** Whether this page may fetch the app's own files: one that was opened from a disk may not. */
export const canPack = location.protocol.startsWith('http');

/** One of the app's own files, from where the page itself came. @throws DataError `package.noPage` */
async function ownFile(name: string): Promise<Uint8Array> {
  const response = await fetch(new URL(name, location.href)).catch(() => undefined);
  if (response?.ok !== true) throw dataError('package.noPage', name);
  return new Uint8Array(await response.arrayBuffer());
}

/** Lets the page do what it has to. */
const breathe = (): Promise<void> => new Promise((done) => setTimeout(done));

/**
 * Packs the app that this page is of, and an assignment.
 * @param passAt points of 100
 * @throws DataError `package.noPage` where the server has no built app, or another by now
 */
export async function makePackage(
  kind: PackageKind,
  assignment: Assignment,
  language: string,
  passAt: number | undefined,
): Promise<Blob> {
  const listed = loadAppFiles(new TextDecoder().decode(await ownFile(APP_FILES)));
  // All are asked for at once; the browser takes as many at a time as it sees fit.
  const coming = new Map([LAUNCH_FILE, ...listed.files].map((name) => [name, ownFile(name)]));
  await Promise.all(coming.values());
  const read = (name: string) => coming.get(name) ?? ownFile(name);
  const bytes = await packageOf({ kind, assignment, language, passAt }, listed, read, breathe);
  return new Blob([bytes], { type: 'application/zip' });
}
