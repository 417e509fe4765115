/** Grading is replaying: every number comes from the grader's own copy of the ticket, none from the file. */
import { type Action, actionSchema } from '../attempt/actions.ts';
import { type Attempt, begin, perform } from '../attempt/attempt.ts';
import { possibleFaults } from '../rig/faults.ts';
import type { Library } from '../scenario/library.ts';
import { type Skill, skillsShown } from '../scenario/skills.ts';
import { solveTicket } from '../scenario/solve.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { type Debrief, SCORE_ITEMS, type ScoreItem } from '../score/debrief.ts';
import { debriefOf, type Yardstick, yardstickFor } from '../score/score.ts';
import type { Naming } from '../suspects/hypotheses.ts';
import { isAnswers, type Submitted } from './answers.ts';
import type { Assignment } from './assignment.ts';
import { digestOf } from './digest.ts';
import { type Doubt, doubt, listDoubt, timeDoubts } from './doubts.ts';
import { drawnFor, type Work, workOf, workWith } from './draw.ts';
import { createPaperGrader, type PaperResult } from './gradeAnswers.ts';
import { RULES, sealRest, sealSteps } from './seal.ts';
import { restOf, type Submission, sealedTo } from './submission.ts';
import { loadSubmitted } from './submitted.ts';

/** What an attempt was worth, without the debrief's length. */
export interface Result {
  readonly total: number;
  readonly items: Readonly<Record<ScoreItem, number>>;
  readonly rightNaming: boolean;
  readonly truth: Naming;
  readonly named: Naming | undefined;
  /** On the job, searching. */
  readonly minutes: number;
  readonly parMinutes: number;
  readonly steps: number;
  readonly wastedSteps: number;
  /** The wasted steps, from 1: their actions, with the seconds that they took. */
  readonly wasted: readonly { readonly step: number; readonly action: Action; readonly seconds: number }[];
  /** What was measured: the function and its two points, or the wire in the clamp. */
  readonly measured: readonly string[];
  /** Skills that the attempt shows. */
  readonly skills: readonly Skill[];
  /** Skills that the ticket asks for: those that its short way shows. */
  readonly asked: readonly Skill[];
}

export interface Graded {
  readonly submission: Submitted;
  readonly doubts: readonly Doubt[];
  /** What the log is worth on this trainee's own ticket; undefined where it does not replay there to its end. */
  readonly result: Result | undefined;
  /** What the answers are worth on this trainee's own paper. */
  readonly paper?: PaperResult | undefined;
}

/** Grades one submission after another of one assignment, and keeps what is the same for all of them. */
export interface Grader {
  readonly assignment: Assignment;
  /** @throws DataError where the file is no submission at all */
  grade(json: unknown): Graded;
  /** The whole debrief of a submission that replays. */
  debrief(submission: Submission): { readonly attempt: Attempt; readonly debrief: Debrief } | undefined;
}

/** What is the same for every attempt at a ticket. */
interface Measure {
  readonly yardstick: Yardstick;
  /** Share of all that can be wrong which the complaint rules out, 0…1. */
  readonly told: number;
  readonly asked: readonly Skill[];
}

interface Kept {
  readonly work: Work;
  readonly digests: { readonly ticket: string; readonly rig: string };
  /** Worked out when it is first asked for. */
  measure: Measure | undefined;
}

/** Tickets whose suspects are kept in memory at once. */
const MOST_KEPT = 12;

/** @param trainees codes of everybody who may hand in, to know whose log somebody else's is */
export function createGrader(assignment: Assignment, library: Library, trainees: readonly string[] = []): Grader {
  const kept = new Map<Ticket, Kept>();
  const assignmentDigest = digestOf(assignment);

  function keptOf(trainee: string, item: number): Kept {
    const drawn = drawnFor(assignment, trainee, item, library);
    const known = kept.get(drawn);
    kept.delete(drawn);
    const [oldest] = kept.keys();
    if (kept.size >= MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    const work = known ? { ...known.work, item } : workWith(assignment, item, drawn, library);
    const digests = known?.digests ?? { ticket: digestOf(work.ticket), rig: digestOf(work.rig) };
    const fresh: Kept = { work, digests, measure: known?.measure };
    kept.set(drawn, fresh);
    return fresh;
  }

  function measureOf(of: Kept): Measure {
    if (of.measure) return of.measure;
    const { ticket, rig } = of.work;
    const yardstick = yardstickFor(ticket, rig);
    const possible = possibleFaults(rig, ticket.suspects?.intermittents).length;
    const told = Math.max(0, 1 - yardstick.ground.field.hypotheses.length / possible);
    of.measure = { yardstick, told, asked: skillsShown(solveTicket(ticket, rig, yardstick), told) };
    return of.measure;
  }

  /** Whose log it is, if its first step is sealed to somebody else, or to something else, of this assignment. */
  function ownerOf(submission: Submission, actions: readonly Action[]): Doubt | undefined {
    const [action] = actions;
    const [seal] = submission.seals;
    if (!action || !seal) return undefined;
    for (const trainee of [submission.trainee.code, ...trainees]) {
      for (const work of workOf(assignment, trainee, library)) {
        for (let number = 1; number <= assignment.attempts; number++) {
          const attempt = begin(work.ticket, work.rig);
          if (!perform(attempt, action).ok) continue;
          if (sealSteps(sealedTo(assignment, trainee, work, number), attempt.steps)[0] !== seal) continue;
          return trainee === submission.trainee.code
            ? doubt('otherWorksLog', 1, { item: work.item + 1, attempt: number })
            : doubt('othersLog', 1, { trainee });
        }
      }
    }
    return undefined;
  }

  const gradeAnswers = createPaperGrader(assignment, library, trainees);

  function grade(json: unknown): Graded {
    const submission = loadSubmitted(json);
    return isAnswers(submission) ? gradeAnswers(submission) : gradeLog(submission);
  }

  function gradeLog(submission: Submission): Graded {
    const doubts: Doubt[] = [];
    if (submission.rules !== RULES) doubts.push(doubt('otherRules', undefined, { rules: submission.rules, here: RULES }));
    if (submission.assignment.id !== assignment.id || submission.assignment.digest !== assignmentDigest)
      doubts.push(doubt('otherAssignment', undefined, { assignment: submission.assignment.id }));
    if (!assignment.items[submission.item])
      return { submission, doubts: [...doubts, doubt('noItem', undefined, { item: submission.item + 1 })], result: undefined };
    const own = keptOf(submission.trainee.code, submission.item);
    const { work } = own;
    const to = {
      assignment: assignmentDigest,
      trainee: submission.trainee.code,
      item: work.item,
      attempt: submission.attempt,
      ...own.digests,
    };
    const { ticket } = submission;
    if (ticket.id !== work.ticket.id || ticket.digest !== to.ticket)
      doubts.push(doubt('otherTicket', undefined, { ticket: ticket.id, own: work.ticket.id }));
    if (submission.rig !== to.rig) doubts.push(doubt('otherRig', undefined, { rig: work.rig.id }));

    const log = readLog(submission.log, work);
    if ('code' in log) return { submission, doubts: [...doubts, log], result: undefined };
    doubts.push(...timeDoubts(submission, assignment, log.length));
    const { attempt, refused, retimed } = retake(work, log);
    const actions = log.map((step) => step.action);
    const listed = listDoubt(actions, submission.seals);
    const fresh = sealSteps(to, attempt.steps);
    const apart = fresh.findIndex((seal, index) => seal !== submission.seals[index]);
    const owner = apart === 0 && !listed ? ownerOf(submission, actions) : undefined;
    if (owner) doubts.push(owner);
    else if (listed) doubts.push(listed);
    else if (apart >= 0) doubts.push(doubt('seenOtherwise', apart + 1));
    if (refused) doubts.push(refused);
    if (retimed && !listed && !refused) doubts.push(retimed);
    const closed = actions.at(-1)?.name === 'close';
    if (closed !== (submission.ended === 'closed') && !doubts.some(({ code }) => code === 'truncated'))
      doubts.push(doubt('truncated', actions.length));

    const result =
      refused || (doubts.some(({ code }) => code === 'otherTicket') && apart >= 0) ? undefined : resultOf(attempt, own);
    if (result && submission.shown !== undefined && submission.shown !== result.total)
      doubts.push(doubt('scoreEdited', undefined, { shown: submission.shown, total: result.total }));
    if (doubts.length === 0 && sealRest(to, submission.seals, restOf(submission)) !== submission.seal) doubts.push(doubt('edited'));
    return { submission, doubts, result };
  }

  function resultOf(attempt: Attempt, own: Kept): Result {
    const { yardstick, told, asked } = measureOf(own);
    const debrief = debriefOf(attempt, own.work.ticket.rubric, yardstick);
    return {
      total: debrief.total,
      items: Object.fromEntries(SCORE_ITEMS.map((item) => [item, debrief.items[item].points])) as Record<ScoreItem, number>,
      rightNaming: debrief.rightNaming,
      truth: debrief.truth,
      named: debrief.named,
      minutes: debrief.minutes,
      parMinutes: debrief.par.seconds / 60,
      steps: attempt.steps.length,
      wastedSteps: debrief.wastedSteps,
      wasted: debrief.steps.flatMap((step) => {
        const taken = attempt.steps[step.number - 1];
        return step.kind === 'wasted' && taken ? [{ step: step.number, action: taken.action, seconds: step.seconds }] : [];
      }),
      measured: measuredIn(attempt.steps),
      skills: skillsShown(attempt, told),
      asked,
    };
  }

  return {
    assignment,
    grade,
    debrief(submission) {
      if (!assignment.items[submission.item]) return undefined;
      const own = keptOf(submission.trainee.code, submission.item);
      const log = readLog(submission.log, own.work);
      if ('code' in log) return undefined;
      const { attempt, refused } = retake(own.work, log);
      const { yardstick } = measureOf(own);
      return refused ? undefined : { attempt, debrief: debriefOf(attempt, own.work.ticket.rubric, yardstick) };
    },
  };
}

interface LoggedStep {
  readonly at: number;
  readonly action: Action;
}

/** The steps of a log, or why it is none. */
function readLog(log: unknown, { ticket }: Work): readonly LoggedStep[] | Doubt {
  const { ticket: id, rig, steps } = (typeof log === 'object' && log !== null ? log : {}) as Readonly<Record<string, unknown>>;
  if (typeof id !== 'string' || typeof rig !== 'string' || !Array.isArray(steps) || steps.length > 600) return doubt('brokenLog');
  if (id !== ticket.id || rig !== ticket.rig) return doubt('otherTicket', undefined, { ticket: id, own: ticket.id });
  const found: LoggedStep[] = [];
  for (const [index, step] of steps.entries()) {
    const { at, action } = (typeof step === 'object' && step !== null ? step : {}) as Readonly<Record<string, unknown>>;
    const parsed = actionSchema.safeParse(action);
    if (!parsed.success || typeof at !== 'number') return doubt('brokenLog', index + 1);
    found.push({ at, action: parsed.data });
  }
  return found;
}

interface Retaken {
  readonly attempt: Attempt;
  readonly refused: Doubt | undefined;
  readonly retimed: Doubt | undefined;
}

/** Takes the steps again, up to the first that cannot be taken. */
function retake({ ticket, rig }: Work, log: readonly LoggedStep[]): Retaken {
  const attempt = begin(ticket, rig);
  let retimed: Doubt | undefined;
  for (const [index, { at, action }] of log.entries()) {
    // A wait of open length would be as long as it takes here: a log has the seconds that it took.
    const open = action.name === 'watch' && action.seconds === 0;
    const outcome = open ? undefined : perform(attempt, action);
    if (!outcome?.ok) {
      const reason = outcome && !outcome.ok ? outcome.refusal.code : 'openWatch';
      return { attempt, refused: doubt('refused', index + 1, { reason }), retimed };
    }
    if (outcome.step.seconds !== at) retimed ??= doubt('retimed', index + 1, { at, should: outcome.step.seconds });
  }
  return { attempt, refused: undefined, retimed };
}

/** What was measured, each as a text that is equal for equal measurements. */
function measuredIn(steps: Attempt['steps']): string[] {
  const found = new Set<string>();
  let clamp: string | undefined;
  for (const { action, view } of steps) {
    if (action.name === 'clamp') clamp = action.around ?? undefined;
    if (view.reading === undefined) continue;
    // What the clamp reads is not between the leads, wherever they were left.
    const points = view.fn === 'ampsAc' ? [clamp] : [view.red, view.black].sort();
    if (points.every((each) => each !== undefined)) found.add([view.fn, ...points].join(' '));
  }
  return [...found].sort();
}
