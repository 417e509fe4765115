/** An attempt that is over, as a file to hand in. No browser in here. */
import { strToU8, zipSync } from 'fflate';
import { replay } from '../../attempt/attempt.ts';
import { type Answers, answersOf } from '../../classroom/answers.ts';
import type { Work } from '../../classroom/draw.ts';
import type { Paper } from '../../classroom/papers.ts';
import { type Submission, submissionOf } from '../../classroom/submission.ts';
import type { Assigned, KeptAttempt, KeptPaper, KeptWork } from './records.ts';
import type { Taken } from './use-assigned.ts';

/** The name of a submission's file, without spaces: assignment, trainee, item and attempt from 1. */
export function fileName({ assignment, trainee }: Assigned, { item, number }: Pick<KeptAttempt, 'item' | 'number'>): string {
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

export function handInPaper({ assignment, trainee }: Assigned, paper: Paper, kept: KeptPaper): Answers {
  const { number: attempt, began, choices, stamps, ended = 'timeOver', shown } = kept;
  return answersOf({ assignment, trainee, paper, attempt, began, choices, stamps, ended, shown });
}

export const fileText = (json: unknown): string => `${JSON.stringify(json, null, 1)}\n`;

/** All attempts that are over, in one zip file. @throws DataError as {@link handIn} does */
export function handInAll({ assigned, works, kept, papers, keptPapers }: Taken): Uint8Array<ArrayBuffer> {
  const files: [string, Uint8Array][] = [];
  const add = (each: KeptAttempt, json: unknown) => files.push([fileName(assigned, each), strToU8(fileText(json))]);
  for (const each of kept) {
    const work = works[each.item];
    if (work !== undefined && each.ended !== undefined) add(each, handIn(assigned, work, each));
  }
  for (const each of keptPapers) {
    const paper = papers.find(({ item }) => item === each.item);
    if (paper !== undefined && each.ended !== undefined) add(each, handInPaper(assigned, paper, each));
  }
  return new Uint8Array(zipSync(Object.fromEntries(files)));
}
