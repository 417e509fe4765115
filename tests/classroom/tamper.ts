/** Eleven ways in which somebody might help their grade along. Each changes the file and nothing else. */
import type { AttemptLog } from '../../src/attempt/attempt.ts';
import { begin, perform } from '../../src/attempt/attempt.ts';
import type { Assignment } from '../../src/classroom/assignment.ts';
import type { DoubtCode } from '../../src/classroom/doubts.ts';
import { workOf } from '../../src/classroom/draw.ts';
import { sealRest, sealSteps } from '../../src/classroom/seal.ts';
import { restOf, type Submission, sealedTo, submissionOf } from '../../src/classroom/submission.ts';
import { library } from '../scenario/shipped.ts';
import { attemptAt, BEGAN, type Dice, honest } from './crowd.ts';

interface Setting {
  readonly assignment: Assignment;
  readonly classmates: readonly string[];
  readonly dice: Dice;
}

const stepsOf = (submission: Submission) => (submission.log as AttemptLog).steps;

function withSteps(submission: Submission, steps: AttemptLog['steps']): Submission {
  return { ...submission, log: { ...(submission.log as AttemptLog), steps } };
}

/** A copy of a list without some of its places. */
const without = <T>(list: readonly T[], from: number, count = 1): T[] => [...list.slice(0, from), ...list.slice(from + count)];

export interface Tampering {
  readonly name: string;
  /** Any of these names it rightly. */
  readonly reasons: readonly DoubtCode[];
  apply(submission: Submission, setting: Setting): Submission;
}

export const TAMPERINGS: readonly Tampering[] = [
  {
    name: 'score edited',
    reasons: ['scoreEdited'],
    apply: (submission) => ({ ...submission, shown: submission.shown === 100 ? 99 : 100 }),
  },
  {
    name: 'step removed',
    reasons: ['removed'],
    apply(submission, { dice }) {
      const at = dice(stepsOf(submission).length - 1);
      return {
        ...withSteps(submission, without(stepsOf(submission), at)),
        stamps: without(submission.stamps, at),
      };
    },
  },
  {
    name: 'reordered',
    reasons: ['reordered'],
    apply(submission, { dice }) {
      const steps = [...stepsOf(submission)];
      const own = submission.seals.map((seal) => seal.slice(0, 8));
      // Two steps that are not the same, or nothing would be changed.
      const places = own.flatMap((seal, index) => (own[index + 1] !== undefined && own[index + 1] !== seal ? [index] : []));
      const at = places[dice(places.length)]!;
      const [first, second] = [steps[at]!, steps[at + 1]!];
      steps[at] = { ...second, at: first.at };
      steps[at + 1] = { ...first, at: second.at };
      return withSteps(submission, steps);
    },
  },
  {
    name: 'retimed',
    reasons: ['retimed'],
    apply: (submission) =>
      withSteps(
        submission,
        stepsOf(submission).map((step) => ({ ...step, at: step.at / 2 })),
      ),
  },
  {
    name: 'fault swapped',
    reasons: ['seenOtherwise', 'refused'],
    // Played on a fault of one's own choice, and handed in as the drawn one.
    apply(submission, { assignment, dice }) {
      const item = assignment.items[submission.item]!;
      const own = workOf(assignment, submission.trainee.code, library)[submission.item]!;
      const pool =
        item.kind === 'drawn' ? item.pool.map(({ ticket }) => ticket) : library.tickets.filter(({ rig }) => rig === own.rig.id);
      const others = pool.filter(({ faults }) => JSON.stringify(faults) !== JSON.stringify(own.ticket.faults));
      const easier = others[dice(others.length)]!;
      const swapped = workOf({ ...assignment, items: [{ kind: 'own', ticket: easier }] }, submission.trainee.code, library)[0]!;
      const attempt = attemptAt(swapped, dice);
      const steps = attempt.steps.length;
      const made = submissionOf({
        assignment,
        trainee: submission.trainee,
        work: { ...swapped, item: submission.item },
        number: submission.attempt,
        attempt,
        began: BEGAN,
        stamps: Array.from({ length: steps }, (_, index) => 3 * index),
      });
      // Sealed anew as if it had been the own ticket: what was seen is all that is left to tell it.
      const to = sealedTo(assignment, submission.trainee.code, own, submission.attempt);
      const log: AttemptLog = { ...(made.log as AttemptLog), ticket: own.ticket.id };
      const seals = sealSteps(to, attempt.steps);
      const forged: Submission = { ...made, ticket: submission.ticket, rig: submission.rig, log, seals };
      return { ...forged, seal: sealRest(to, seals, restOf(forged)) };
    },
  },
  {
    name: 'another trainee’s log',
    reasons: ['othersLog', 'otherTicket'],
    apply(submission, { assignment, classmates, dice }) {
      const mates = classmates.filter((code) => code !== submission.trainee.code);
      const theirs = honest(assignment, mates[dice(mates.length)]!, submission.item, dice);
      return { ...theirs, trainee: submission.trainee, ticket: submission.ticket, rig: submission.rig };
    },
  },
  {
    name: 'wrong version',
    reasons: ['otherRules'],
    apply: (submission) => ({ ...submission, rules: submission.rules + 1 }),
  },
  {
    name: 'truncated',
    reasons: ['truncated'],
    apply(submission, { dice }) {
      const count = 1 + dice(stepsOf(submission).length - 1);
      return { ...withSteps(submission, stepsOf(submission).slice(0, count)), stamps: submission.stamps.slice(0, count) };
    },
  },
  {
    name: 'padded',
    reasons: ['added'],
    apply(submission, { assignment, dice }) {
      const work = workOf(assignment, submission.trainee.code, library)[submission.item]!;
      const steps = stepsOf(submission);
      const at = dice(steps.length - 1);
      const attempt = begin(work.ticket, work.rig);
      for (const { action } of steps.slice(0, at)) perform(attempt, action);
      perform(attempt, { name: 'wait', seconds: 60 });
      const padded = [
        ...steps.slice(0, at),
        { at: attempt.steps.at(-1)!.view.seconds, action: { name: 'wait', seconds: 60 } as const },
      ];
      const clock = submission.stamps[at - 1] ?? 0;
      return {
        ...withSteps(submission, [...padded, ...steps.slice(at).map((step) => ({ ...step, at: step.at + 60 }))]),
        stamps: [...submission.stamps.slice(0, at), clock, ...submission.stamps.slice(at)],
      };
    },
  },
  {
    name: 'replayed on another ticket',
    reasons: ['otherTicket', 'otherWorksLog'],
    apply(submission, { assignment, dice }) {
      const item = (submission.item + 1) % assignment.items.length;
      const theirs = honest(assignment, submission.trainee.code, item, dice);
      return { ...theirs, item: submission.item };
    },
  },
  {
    name: 'worked at other weights',
    reasons: ['otherAssignment'],
    apply(submission, { assignment, dice }) {
      const { items } = assignment;
      const heavier = {
        ...assignment,
        items: items.map((each, item) => (item === submission.item ? { ...each, weight: 9 } : each)),
      };
      return honest(heavier, submission.trainee.code, submission.item, dice);
    },
  },
];
