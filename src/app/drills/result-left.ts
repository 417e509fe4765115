import type { Blueprint } from '../../drills/exam.ts';
import type { ExamOver } from './use-exam.ts';

export interface ExamTold extends ExamOver {
  readonly blueprint: Blueprint;
}

let left: ExamTold | undefined;

/** A result that was left for a ticket's debrief is there again when one comes back; undefined forgets it. */
export function leaveResult(told: ExamTold | undefined): void {
  left = told;
}

export const resultLeft = (): ExamTold | undefined => left;
