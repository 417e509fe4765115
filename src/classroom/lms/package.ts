/** A package for a learning system: the built app, an assignment within its page, and a manifest, in one zip. */
import { strFromU8, strToU8, Zip, ZipDeflate } from 'fflate';
import { z } from 'zod';
import { dataError } from '../../rig/errors.ts';
import type { Assignment } from '../assignment.ts';
import { LAUNCH_FILE, manifestOf, type PackageKind } from './manifests.ts';
import { answersIn, papersFit } from './room.ts';

/** Where the built app lists its files: {@link loadAppFiles}. */
export const APP_FILES = 'app-files.json';
/** Where the page looks for the assignment that it was packed with. */
const EMBEDDED_ID = 'bellwire-assignment';
/** The same bytes whenever and wherever it is packed: without a zone, so each zone's own midnight. */
const PACKED = '2026-01-01T00:00';

/** By their own names, the same in every language. */
const STANDARDS: Readonly<Record<PackageKind, string>> = { scorm12: 'SCORM 1.2', scorm2004: 'SCORM 2004', cmi5: 'cmi5' };

/** A path below the app's own folder. */
const nameSchema = z
  .string()
  .max(200)
  .regex(/^\w[\w.-]*(\/\w[\w.-]*)*$/);
const appFilesSchema = z.strictObject({
  /** The script that the app's page loads first. */
  entry: nameSchema,
  /** All of its files beside the page. */
  files: z.array(nameSchema).max(2000),
});
export type AppFiles = z.infer<typeof appFilesSchema>;

/** The list that a build leaves beside its files. @throws DataError `package.noPage` for anything else */
export function loadAppFiles(text: string): AppFiles {
  try {
    return appFilesSchema.parse(JSON.parse(text));
  } catch {
    throw dataError('package.noPage', APP_FILES);
  }
}

export interface Packing {
  readonly kind: PackageKind;
  readonly assignment: Assignment;
  /** Language of title and note, BCP 47. */
  readonly language: string;
  /** Points of 100 from which it counts as passed; nothing passes or fails where left out. */
  readonly passAt: number | undefined;
}

/**
 * Packs an assignment and the app: the same bytes wherever it is done from the same build.
 * @param listed what the build says of its files
 * @param read one of the app's files by its name, the page among them
 * @param pause awaited between one file and the next
 * @throws DataError `package.papers` for more answers to exercises and exams than the learning system is sure to keep; `package.noPage` where the page is none, or another build's
 */
export async function packageOf(
  { kind, assignment, language, passAt }: Packing,
  { entry, files }: AppFiles,
  read: (name: string) => Promise<Uint8Array>,
  pause: () => Promise<void>,
): Promise<Uint8Array<ArrayBuffer>> {
  if (assignment.papers !== undefined && !papersFit(assignment, kind))
    throw dataError('package.papers', 'papers', { answers: answersIn(assignment), standard: STANDARDS[kind] });
  const { id, title, note = '' } = assignment;
  const manifest = manifestOf(kind, { id, title, note, language, passAt, files });
  const page = strFromU8(await read(LAUNCH_FILE));
  const head = page.indexOf('<head>');
  if (head < 0 || !page.includes(entry)) throw dataError('package.noPage', LAUNCH_FILE);
  // A script ends at the first "</script" or "<!--" whatever it holds, so no "<" stands in it.
  const data = JSON.stringify(assignment).replace(/</g, '\\u003c');
  const at = head + '<head>'.length;
  const embedded = `${page.slice(0, at)}<script type="application/json" id="${EMBEDDED_ID}">${data}</script>${page.slice(at)}`;
  const chunks: Uint8Array<ArrayBuffer>[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    chunks.push(new Uint8Array(chunk));
  });
  const add = (name: string, bytes: Uint8Array) => {
    const file = new ZipDeflate(name, { level: 9 });
    file.mtime = PACKED;
    zip.add(file);
    file.push(bytes, true);
  };
  add(manifest.name, strToU8(manifest.text));
  add(LAUNCH_FILE, strToU8(embedded));
  for (const name of files) {
    await pause();
    add(name, await read(name));
  }
  zip.end();
  return joined(chunks);
}

function joined(chunks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(chunks.reduce((size, chunk) => size + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}
