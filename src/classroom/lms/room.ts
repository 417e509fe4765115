/** How much a learning system keeps to go on from, and how much of it an assignment may come to need. */
import { type Assignment, placesOf } from '../assignment.ts';
import type { PackageKind } from './manifests.ts';

/** Characters. Of SCORM what each edition must keep (from memory of the standards); nobody says it for cmi5, and this is far more than is needed. */
export const KEPT_CHARACTERS: Readonly<Record<PackageKind, number>> = { scorm12: 4096, scorm2004: 64_000, cmi5: 1_000_000 };

/** Characters at the most, packed: measured, with some to spare. */
const TRAINEE = 400;
const TICKETS = 1500;
const ATTEMPT = 160;
const ANSWER = 10;

/** Answers over all attempts at an assignment's exercises and exams. */
export function answersIn({ papers = [], attempts }: Assignment): number {
  const each = papers.map((setting) => (setting.kind === 'exam' ? setting.exam.items : setting.count));
  return attempts * each.reduce((sum, count) => sum + count, 0);
}

/** Whether all attempts at its exercises and exams fit beside its tickets; what does not fit of the tickets' attempts is shortened. */
export function papersFit(assignment: Assignment, kind: PackageKind): boolean {
  const { items, attempts } = assignment;
  const papers = attempts * (placesOf(assignment) - items.length);
  const tickets = items.length === 0 ? 0 : TICKETS;
  return TRAINEE + tickets + ATTEMPT * papers + ANSWER * answersIn(assignment) <= KEPT_CHARACTERS[kind];
}
