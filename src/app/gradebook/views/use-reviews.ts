import { useEffect, useState } from 'preact/hooks';
import { drawnFor, type Work, workWith } from '../../../classroom/draw.ts';
import type { Gradebook, Row } from '../../../classroom/gradebook.ts';
import type { Submission } from '../../../classroom/submission.ts';
import type { Debrief } from '../../../score/debrief.ts';
import { type Engine, engineAlone, leaveMaking } from '../../engine/engine.ts';
import type { Review } from '../../engine/grading.ts';
import { library } from '../../library.ts';
import { retell } from '../../retell.ts';
import type { StepTold } from '../../step-words.ts';
import { codesOf, submissionOf } from '../book.ts';
import { bookNow } from '../store.ts';

/** An attempt that counts, with all that a report tells of it. */
export interface Reviewed {
  readonly work: Work;
  readonly debrief: Debrief;
  /** Every step in words, as they stood when it was taken. */
  readonly told: readonly StepTold[];
  /** The trainee's own in the service report. */
  readonly words: string;
}

export interface Reviews {
  /** By {@link placeOf}; one that could not be worked out is missing. */
  readonly found: ReadonlyMap<string, Reviewed>;
  readonly done: number;
  readonly all: number;
  readonly isReady: boolean;
}

export const placeOf = (code: string, item: number): string => `${code} ${item}`;

interface Job {
  readonly place: string;
  readonly code: string;
  readonly item: number;
  readonly ticket: string;
  readonly submission: Submission;
}

/** Of everything that counts and replays; ticket by ticket, so that what is the same for a ticket is worked out once. */
function jobsOf(rows: readonly Row[]): readonly Job[] {
  const book = bookNow();
  const jobs = rows.flatMap(({ trainee: { code }, cells }) =>
    cells.flatMap(({ item, entry, result }) => {
      const submission = entry && result && submissionOf(book, entry);
      return submission ? [{ place: placeOf(code, item), code, item, ticket: entry.ticket, submission }] : [];
    }),
  );
  return jobs.sort((a, b) => a.item - b.item || (a.ticket < b.ticket ? -1 : a.ticket > b.ticket ? 1 : 0));
}

const NONE: Reviews = { found: new Map(), done: 0, all: 0, isReady: false };

/** Works the reports of these rows out, one attempt after another, in the worker. @param rows undefined as long as they may change */
export function useReviews(assignment: Gradebook['assignment'] | undefined, rows: readonly Row[] | undefined): Reviews {
  const [reviews, setReviews] = useState(NONE);
  useEffect(() => {
    if (assignment === undefined || rows === undefined) return undefined;
    let current = true;
    const found = new Map<string, Reviewed>();
    const start = async () => {
      const jobs = jobsOf(rows);
      const ask = asker(assignment);
      for (const [done, job] of jobs.entries()) {
        setReviews({ found: NONE.found, done, all: jobs.length, isReady: false });
        const review = await ask(job.submission, () => current);
        if (!current) return;
        if (review) found.set(job.place, reviewed(assignment, job, review));
      }
      setReviews({ found, done: jobs.length, all: jobs.length, isReady: true });
    };
    void start();
    return () => {
      current = false;
      leaveMaking();
    };
  }, [assignment, rows]);
  return reviews;
}

/** Asks the worker; one that fails is tried once more in a new one, since the old one may have died of something else. */
function asker(assignment: Gradebook['assignment']) {
  const trainees = codesOf(bookNow());
  let rolled: Engine | undefined;
  return async (submission: Submission, isWanted: () => boolean): Promise<Review | null> => {
    for (let tries = 0; tries < 2 && isWanted(); tries++) {
      try {
        const engine = engineAlone();
        if (engine !== rolled) await engine.ask('roll', { assignment, trainees, library });
        rolled = engine;
        return await engine.ask('review', { submission });
      } catch {
        rolled = undefined;
      }
    }
    return null;
  };
}

function reviewed(assignment: Gradebook['assignment'], { code, item, submission }: Job, { debrief, actions }: Review): Reviewed {
  const work = workWith(assignment, item, drawnFor(assignment, code, item, library), library);
  return { work, debrief, told: retell(work.ticket, work.rig, actions).told, words: submission.words ?? '' };
}
