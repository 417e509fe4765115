/** An attempt that is over, as a file to hand in. No browser in here. */
import { strToU8, zipSync } from 'fflate';
import { replay } from '../../attempt/attempt.ts';
import type { Work } from '../../classroom/draw.ts';
import { type Submission, submissionOf } from '../../classroom/submission.ts';
import type { Assigned, KeptWork } from './records.ts';

/** The name of a submission's file, without spaces: assignment, trainee, item and attempt from 1. */
export function fileName({ assignment, trainee }: Assigned, { item, number }: Pick<KeptWork, 'item' | 'number'>): string {
  return `${assignment.id}-${trainee.code}-${item + 1}-${number}.bellwire.json`;
}

/** The log as it is handed in: it names the ticket by its own id. */
export const ownLog = (kept: KeptWork, work: Work): unknown => ({ ...kept.log, ticket: work.ticket.id });

/** @throws DataError where the kept log does not replay, such as one of another version */
export function handIn(assigned: Assigned, work: Work, kept: KeptWork): Submission {
  const { assignment, trainee } = assigned;
  return submissionOf({
    assignment,
    trainee,
    work,
    number: kept.number,
    attempt: replay(work.ticket, work.rig, ownLog(kept, work)),
    began: kept.began,
    stamps: kept.stamps,
    words: kept.words,
    shown: kept.shown,
  });
}

export const fileText = (json: unknown): string => `${JSON.stringify(json, null, 1)}\n`;

/** All attempts that are over, in one zip file. @throws DataError as {@link handIn} does */
export function handInAll(assigned: Assigned, works: readonly Work[], kept: readonly KeptWork[]): Uint8Array<ArrayBuffer> {
  const files = kept.flatMap((each) => {
    const work = works[each.item];
    if (work === undefined || each.ended === undefined) return [];
    return [[fileName(assigned, each), strToU8(fileText(handIn(assigned, work, each)))] as const];
  });
  return new Uint8Array(zipSync(Object.fromEntries(files)));
}
