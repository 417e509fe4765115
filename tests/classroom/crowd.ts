/** A class that hands in: an assignment of drawn and shipped tickets, and attempts of many hands at it, good and poor. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { type Attempt, begin, optionsOf, perform } from '../../src/attempt/attempt.ts';
import { type Answers, answersOf } from '../../src/classroom/answers.ts';
import { type Assignment, loadAssignment, type PaperSetting } from '../../src/classroom/assignment.ts';
import { canonical } from '../../src/classroom/digest.ts';
import { type Work, workOf } from '../../src/classroom/draw.ts';
import { paperResult } from '../../src/classroom/gradeAnswers.ts';
import { papersOf, rigsOf } from '../../src/classroom/papers.ts';
import { type Submission, submissionOf } from '../../src/classroom/submission.ts';
import { generate } from '../../src/cli/generate.ts';
import { createBank } from '../../src/drills/draw.ts';
import { itemOf } from '../../src/drills/paper.ts';
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

/** An exam of six questions, drawn in a moment. */
export const SMALL_EXAM: PaperSetting = {
  kind: 'exam',
  title: 'Mid-term',
  exam: { id: 'own', items: 6, minutes: 10, pass: 0.6, skills: { sums: 1, contacts: 1 } },
};

/** One trainee's answers at a paper, right but for the first few; the last is left open where one is to be. */
export function answered(assignment: Assignment, code: string, item: number, wrong: number, isOpen = false): Answers {
  const paper = papersOf(assignment, code, library).find((each) => each.item === item)!;
  const bank = createBank(rigsOf(library).map((id) => library.rigs.get(id)!));
  const items = paper.questions.map((question) => itemOf(bank, question)!);
  const choices = items.map(({ right, choices: { length } }, place) => {
    if (isOpen && place === items.length - 1) return null;
    return place < wrong ? (right + 1) % length : right;
  });
  const stamps = choices.map((choice, place) => (choice === null ? null : 20 * place + 7));
  const shown = paperResult(paper.setting, items, choices).total;
  const trainee = { code, name: `Trainee ${code}` };
  return answersOf({ assignment, trainee, paper, attempt: 1, began: BEGAN, choices, stamps, ended: 'closed', shown });
}

export const codes = (count: number): string[] => Array.from({ length: count }, (_, index) => `t${index + 1}`);
