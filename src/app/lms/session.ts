import { strFromU8, strToU8, unzlibSync, zlibSync } from 'fflate';
import { beginCmi5, cmi5Asked } from './cmi5.ts';
import type { Course } from './course.ts';
import { findScorm, type WindowLike } from './scorm.ts';

/** Where a package carries its assignment: see src/classroom/lms/package.ts. */
const EMBEDDED_ID = 'bellwire-assignment';

/** The assignment with which the page was packed, not looked at yet; undefined where it was not. */
export const embeddedText = (): string | undefined => document.getElementById(EMBEDDED_ID)?.textContent ?? undefined;

let course: Promise<Course | undefined> | undefined;

/** The learning system that opened the page; undefined where none did, or it does not answer. */
export function courseNow(): Promise<Course | undefined> {
  course ??= findCourse().catch(() => undefined);
  return course;
}

async function findCourse(): Promise<Course | undefined> {
  const asked = cmi5Asked(location.search);
  if (asked)
    return beginCmi5(
      asked,
      () => new Date().toISOString(),
      () => crypto.randomUUID(),
    );
  return findScorm(window as unknown as WindowLike);
}

/** A learner's id as a trainee's code: what a code may not hold becomes a hyphen. */
export function codeOf(learner: Course['learner']): string {
  const plain = (text: string) =>
    text
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .replace(/[^A-Za-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40)
      .replace(/-+$/, '');
  return plain(learner.id) || plain(learner.name) || 'learner';
}

/** What is to be taken up again, packed into a text that every learning system keeps: zlib (RFC 1950) in base64. */
export function packResume(state: unknown): string {
  const bytes = zlibSync(strToU8(JSON.stringify(state)), { level: 9 });
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary);
}

/** What {@link packResume} packed; undefined for anything else. It comes from outside and is still to be checked. */
export function unpackResume(text: string): unknown {
  try {
    return JSON.parse(strFromU8(unzlibSync(Uint8Array.from(atob(text), (each) => each.charCodeAt(0)))));
  } catch {
    return undefined;
  }
}
