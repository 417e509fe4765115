import type { Reached } from '../../classroom/lms/statements.ts';

/** The learning system from which the page was opened, whatever it speaks. */
export interface Course {
  readonly kind: 'scorm12' | 'scorm2004' | 'cmi5';
  readonly learner: { readonly id: string; readonly name: string };
  /** Characters of resume data that it keeps at the most. */
  readonly limit: number;
  /** What was kept the last time; empty at first. */
  readonly resume: string;
  /** Keeps what is needed to go on; whether it has been taken. */
  keep(text: string): boolean | Promise<boolean>;
  /** Tells the score so far, and that all is handed in. */
  report(reached: Reached, complete: boolean): void | Promise<void>;
  /** The page is being left, after so many seconds. */
  leave(seconds: number, complete: boolean): void | Promise<void>;
}
