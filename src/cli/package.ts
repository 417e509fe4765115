import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { strToU8, zipSync } from 'fflate';
import { loadAssignment } from '../classroom/assignment.ts';
import { workOf } from '../classroom/draw.ts';
import { LAUNCH_FILE, manifestOf, type PackageKind } from '../classroom/lms/manifests.ts';
import { dataError } from '../rig/errors.ts';
import { inFile } from '../scenario/library.ts';
import { readJson, shippedLibrary } from './files.ts';

/** The app in one file, as `npm run build:single` leaves it. */
const SINGLE = join(resolve(dirname(fileURLToPath(import.meta.url)), '../..'), 'dist-single/index.html');
/** Where the page looks for the assignment that it was packed with. */
const EMBEDDED_ID = 'bellwire-assignment';
/** The same bytes whenever it is packed. */
const PACKED = new Date(2026, 0, 1);

/**
 * Packs an assignment and the app for a learning system.
 * @param page the app in one HTML file
 * @throws DataError where the assignment does not hold
 */
export function packageOf(
  kind: PackageKind,
  json: unknown,
  page: string,
  { language, passAt }: { readonly language: string; readonly passAt: number | undefined },
): Uint8Array {
  const assignment = loadAssignment(json);
  workOf(assignment, 'anybody', shippedLibrary());
  const manifest = manifestOf(kind, { id: assignment.id, title: assignment.title, note: assignment.note ?? '', language, passAt });
  // A script ends at the first "</script" or "<!--" whatever it holds, so no "<" stands in it.
  const data = JSON.stringify(assignment).replace(/</g, '\\u003c');
  const embedded = `<script type="application/json" id="${EMBEDDED_ID}">${data}</script>`;
  const head = page.indexOf('<head>');
  if (head < 0) throw dataError('package.noPage', 'index.html');
  const at = head + '<head>'.length;
  return zipSync(
    {
      [manifest.name]: strToU8(manifest.text),
      [LAUNCH_FILE]: strToU8(page.slice(0, at) + embedded + page.slice(at)),
    },
    { mtime: PACKED, level: 9 },
  );
}

/** Packs a file into a file. @returns bytes written */
export function packageFile(
  kind: PackageKind,
  assignment: string,
  out: string,
  wishes: { readonly language: string; readonly passAt: number | undefined },
): number {
  if (!existsSync(SINGLE)) throw dataError('package.noPage', 'dist-single/index.html');
  const page = readFileSync(SINGLE, 'utf8');
  const json = readJson(assignment);
  const bytes = inFile(assignment, () => packageOf(kind, json, page, wishes));
  try {
    writeFileSync(out, bytes);
  } catch {
    throw dataError('data.unwritable', out);
  }
  return bytes.length;
}
