/** A class that hands in: an assignment of drawn and shipped tickets, and attempts of many hands at it, good and poor. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { type Attempt, begin, optionsOf, perform } from '../../src/attempt/attempt.ts';
import { type Assignment, loadAssignment } from '../../src/classroom/assignment.ts';
import { canonical } from '../../src/classroom/digest.ts';
import { type Work, workOf } from '../../src/classroom/draw.ts';
import { type Submission, submissionOf } from '../../src/classroom/submission.ts';
import { generate } from '../../src/cli/generate.ts';
import { solveTicket } from '../../src/scenario/solve.ts';
import { debriefOf, type Yardstick, yardstickFor } from '../../src/score/score.ts';
import { library } from '../scenario/shipped.ts';

/** Whole numbers from 0 up to, and without, a bound. */
export type Dice = (below: number) => number;

export function diceOf(seed: number): Dice {
  const generator = xoroshiro128plus(seed);
  return (below) => uniformInt(generator, 0, below - 1);
}

export const BEGAN = '2026-03-02T13:00:00Z';

/** Two drawn items and a shipped one; drawn in a moment, from small systems. */
export function classAssignment(pool = 6): Assignment {
  const drawn = (rig: string, seed: number) =>
    generate({ rigs: [library.rigs.get(rig)!], skill: undefined, grade: undefined, count: pool, seed }).made.map(
      ({ ticket, measured }) => ({ ticket, seconds: measured.seconds }),
    );
  return loadAssignment({
    format: 'bellwire-assignment',
    version: 1,
    id: 'fall-week-9',
    title: 'Week nine',
    mode: 'graded',
    attempts: 2,
    seed: 11,
    items: [
      { kind: 'drawn', recipe: { rig: 'twoWireHeat' }, pool: drawn('twoWireHeat', 3) },
      { kind: 'shipped', ticket: library.tickets.find((each) => each.rig === 'trainingBoard')!.id },
      { kind: 'drawn', recipe: { rig: 'trainingBoard' }, pool: drawn('trainingBoard', 4) },
    ],
  });
}

/** One drawn item of two tickets, and one that is the same for all: of the smallest rig, for tests that open a browser. */
export function smallAssignment(): Assignment {
  const rig = 'trainingBoard';
  const { made } = generate({ rigs: [library.rigs.get(rig)!], skill: undefined, grade: undefined, count: 2, seed: 4 });
  const pool = made.map(({ ticket, measured }) => ({ ticket, seconds: measured.seconds }));
  return loadAssignment({
    format: 'bellwire-assignment',
    version: 1,
    id: 'week-9',
    title: 'Week nine',
    mode: 'graded',
    seed: 11,
    items: [
      { kind: 'drawn', recipe: { rig }, pool },
      { kind: 'own', ticket: pool[0]!.ticket },
    ],
  });
}

const kept = new Map<string, { readonly yardstick: Yardstick; readonly way: Attempt }>();

/** A ticket's short way, finished: worked out once for each ticket. */
function solved({ ticket, rig }: Work): { readonly yardstick: Yardstick; readonly way: Attempt } {
  // Two assignments may have drawn other tickets under the same id.
  const key = canonical(ticket);
  const known = kept.get(key);
  if (known) return known;
  const yardstick = yardstickFor(ticket, rig);
  const fresh = { yardstick, way: solveTicket(ticket, rig, yardstick) };
  kept.set(key, fresh);
  return fresh;
}

/** Goes the short way, with steps between that chance picks, and does not always name the right thing. */
export function attemptAt(work: Work, dice: Dice): Attempt {
  const attempt = begin(work.ticket, work.rig);
  for (const { action } of solved(work).way.steps) {
    for (let extra = dice(3); extra > 0; extra--) {
      const quiet = optionsOf(attempt).filter(
        ({ name }) => name === 'probe' || name === 'look' || name === 'tug' || name === 'meter',
      );
      const chosen = quiet[dice(Math.max(1, quiet.length))];
      if (chosen) perform(attempt, chosen);
    }
    const wrong = action.name === 'name' && dice(4) === 0;
    perform(attempt, wrong ? { ...action, mode: action.mode === 'open' ? 'poor' : 'open', evidence: [] } : action);
  }
  perform(attempt, { name: 'close' });
  return attempt;
}

/** One trainee's submission for one item, honestly made. */
export function honest(assignment: Assignment, code: string, item: number, dice: Dice): Submission {
  const work = workOf(assignment, code, library)[item]!;
  const attempt = attemptAt(work, dice);
  let clock = 0;
  const stamps = attempt.steps.map(() => {
    clock += 2 + dice(9000) / 1000;
    return clock;
  });
  const { total } = debriefOf(attempt, work.ticket.rubric, solved(work).yardstick);
  return submissionOf({
    assignment,
    trainee: { code, name: `Trainee ${code}` },
    work,
    number: 1 + dice(assignment.attempts),
    attempt,
    began: BEGAN,
    stamps,
    shown: total,
  });
}

export const codes = (count: number): string[] => Array.from({ length: count }, (_, index) => `t${index + 1}`);
