import { type Attempt, leftBehind, type Step } from '../attempt/attempt.ts';
import type { RigData } from '../rig/schema.ts';
import { alikeTo } from '../suspects/answers.ts';
import { leftByEvidence } from '../suspects/evidence.ts';
import { posterior, survivors } from '../suspects/field.ts';
import { type Following, followAttempt, leftNow } from '../suspects/follow.ts';
import { type Ground, prepareGround } from '../suspects/ground.ts';
import { type Naming, namingsOf, sameNaming } from '../suspects/hypotheses.ts';
import type { Debrief, JudgedStep, Par, ScoreItem, ScoreLine, ScoreReason } from './debrief.ts';
import { judge } from './judge.ts';
import { parOf } from './par.ts';
import { proofOf } from './proof.ts';
import { firstUnproved } from './required.ts';
import { DEFAULT_RUBRIC, type Rubric } from './rubric.ts';

/** What is the same for every attempt at a ticket: its suspects gathered, and its short way. */
export interface Yardstick {
  readonly ground: Ground;
  readonly par: Par;
}

export function yardstickFor(job: Attempt['job'], rig: RigData): Yardstick {
  const ground = prepareGround(job, rig);
  return { ground, par: parOf(job, rig, ground) };
}

/**
 * Works out what an attempt was worth: every twin is driven through it again.
 * @param yardstick the ticket's, when it was made before
 */
export function debriefOf(
  attempt: Attempt,
  rubric: Rubric = DEFAULT_RUBRIC,
  yardstick = yardstickFor(attempt.job, attempt.assembly.rig),
): Debrief {
  const { ground, par } = yardstick;
  const following = followAttempt(attempt, ground);
  const truth = truthOf(attempt);
  const nameStep = attempt.steps.find((step) => step.action.name === 'name');
  const named = nameStep && namedBy(attempt, nameStep);
  const left = leftNow(following);
  const leftAtNaming = [...survivors(following.field, left)].flatMap((hypothesis) => following.field.hypotheses[hypothesis] ?? []);
  const probabilities = posterior(following.field, left);
  const evidence = evidenceLeft(following, nameStep);
  const steps = judge(attempt, following);
  // From here on the twins are needed for other things.
  const alike = named ? alikeTo(attempt.job, ground, named, [...new Set([...leftAtNaming, ...evidence])]) : [];
  const answer = named ? [named, ...alike] : [];
  const items: Record<ScoreItem, ScoreLine> = {
    isolation: isolation(attempt, rubric, { truth, named, answer, hypotheses: following.field.hypotheses, probabilities }),
    economy: economy(steps, par, rubric),
    safety: safety(attempt, rubric),
    proof: proof(attempt, rubric, nameStep, answer, evidence),
  };
  const hints = hintsTaken(attempt, rubric);
  const sum = [...Object.values(items), { points: hints.reduce((all, each) => all + each.points, 0) }].reduce(
    (all, { points }) => all + points,
    0,
  );
  return {
    ticket: attempt.job.id,
    total: Math.max(0, Math.round(sum)),
    items,
    truth,
    named,
    rightNaming: answer.some((each) => sameNaming(each, truth)),
    alike,
    suspectsAtStart: survivors(following.field, following.arrival.matched).size,
    steps,
    minutes: searchSeconds(steps) / 60,
    par,
    hints,
    leftAtNaming,
    wastedSteps: steps.filter((step) => step.kind === 'wasted').length,
  };
}

/** What the readings that were picked as evidence leave by themselves. */
function evidenceLeft(following: Following, nameStep: Step | undefined): Naming[] {
  if (nameStep?.action.name !== 'name') return [];
  const { evidence } = nameStep.action;
  if (evidence.length === 0) return [];
  const left = leftByEvidence(
    following.field,
    following.arrival,
    evidence.map((number) => following.columns[number - 1]),
  );
  return [...left].flatMap((hypothesis) => following.field.hypotheses[hypothesis] ?? []);
}

function hintsTaken(attempt: Attempt, rubric: Rubric): ScoreReason[] {
  return attempt.steps.flatMap(({ action, view }) =>
    action.name === 'hint' ? [reason('hintTaken', -rubric.hints[action.depth], view.number)] : [],
  );
}

/** What is really wrong, as it would be named. */
function truthOf(attempt: Attempt): Naming {
  const [first, second] = attempt.job.faults;
  const truth = first && {
    target: first.target,
    mode: first.mode,
    ...(second ? { also: { target: second.target, mode: second.mode } } : {}),
  };
  const found = truth && namingsOf(attempt.assembly.rig, attempt.job.suspects).find((each) => sameNaming(each, truth));
  if (!found) throw new Error(`ticket ${attempt.job.id} has a fault that is none of its suspects`);
  return found;
}

/** What was named; a pair that is none of the ticket's own is still a naming, and may be half right. */
function namedBy(attempt: Attempt, step: Step): Naming | undefined {
  const { action } = step;
  if (action.name !== 'name') return undefined;
  const { target, mode, also } = action;
  const namings = namingsOf(attempt.assembly.rig, attempt.job.suspects);
  const found = namings.find((each) => sameNaming(each, { target, mode, ...(also ? { also } : {}) }));
  if (found || !also) return found;
  const first = namings.find((each) => sameNaming(each, { target, mode }));
  return first && { ...first, also };
}

function reason(code: string, points: number, step?: number, values: ScoreReason['values'] = {}): ScoreReason {
  return { code, points, step, values };
}

function line(of: number, reasons: readonly ScoreReason[]): ScoreLine {
  const points = reasons.reduce((sum, each) => sum + each.points, 0);
  return { points: Math.min(of, Math.max(0, points)), of, reasons };
}

interface Verdict {
  readonly truth: Naming;
  readonly named: Naming | undefined;
  /** What was named, and whatever nothing tells from it. */
  readonly answer: readonly Naming[];
  readonly hypotheses: readonly Naming[];
  /** Of each hypothesis, given what had been observed. */
  readonly probabilities: ReadonlyMap<number, number>;
}

/** What a naming was worth, given what had been observed: a guess is worth a guess. */
function probabilityOf({ hypotheses, probabilities }: Verdict, which: (naming: Naming) => boolean): number {
  let sum = 0;
  for (const [hypothesis, probability] of probabilities) {
    const naming = hypotheses[hypothesis];
    if (naming && which(naming)) sum += probability;
  }
  return Math.min(1, sum);
}

function isolation(attempt: Attempt, rubric: Rubric, verdict: Verdict): ScoreLine {
  const of = rubric.section + rubric.part + rubric.failure;
  const { named, answer, truth } = verdict;
  if (!named) return line(of, [reason('notNamed', 0)]);
  const step = attempt.steps.find((each) => each.action.name === 'name')?.view.number;
  const right = answer.some((each) => sameNaming(each, truth));
  const weighed = (code: 'part' | 'failure', points: number, probability: number) =>
    reason(probability > 0.999 ? `${code}Right` : `${code}Guessed`, points * probability, step, {
      percent: Math.round(probability * 100),
    });
  const reasons: ScoreReason[] = [];
  reasons.push(
    named.section === truth.section || right ? reason('sectionRight', rubric.section, step) : reason('sectionWrong', 0, step),
  );
  if (right || attempt.job.faults.some((fault) => fault.target === named.target)) {
    const targets = new Set(right ? answer.map((each) => each.target) : [named.target]);
    reasons.push(
      weighed(
        'part',
        rubric.part,
        probabilityOf(verdict, (each) => targets.has(each.target)),
      ),
    );
    if (right)
      reasons.push(
        weighed(
          'failure',
          rubric.failure,
          probabilityOf(verdict, (each) => answer.some((member) => sameNaming(member, each))),
        ),
      );
    else reasons.push(reason('failureWrong', 0, step));
  } else reasons.push(reason('partWrong', 0, step));
  for (const taken of attempt.steps) {
    if (taken.replacedSound && taken.action.name === 'replace') {
      reasons.push(reason('soundReplaced', -rubric.soundReplaced, taken.view.number, { target: taken.action.target }));
    }
  }
  return line(of, reasons);
}

function searchSeconds(steps: readonly JudgedStep[]): number {
  return steps.filter((step) => step.kind !== 'after').reduce((sum, step) => sum + step.seconds, 0);
}

function economy(steps: readonly JudgedStep[], par: Par, rubric: Rubric): ScoreLine {
  const of = rubric.waste + rubric.pace;
  const total = searchSeconds(steps);
  if (total === 0) return line(of, [reason('noSteps', 0)]);
  const reasons = [reason('timeUsed', rubric.waste)];
  for (const step of steps) {
    if (step.kind === 'wasted') reasons.push(reason('stepWasted', (-rubric.waste * step.seconds) / total, step.number));
  }
  const values = { minutes: total / 60, par: par.seconds / 60 };
  const pace = Math.min(1, par.seconds / total);
  reasons.push(reason(pace === 1 ? 'paceFull' : 'pace', rubric.pace * pace, undefined, values));
  return line(of, reasons);
}

function safety(attempt: Attempt, rubric: Rubric): ScoreLine {
  const reasons = [reason('safeStart', rubric.safety)];
  const kinds = new Set<string>();
  const take = (code: string, step?: number) => {
    if (kinds.has(code)) return;
    kinds.add(code);
    reasons.push(reason(code, -rubric.unsafe, step));
  };
  for (const step of attempt.steps) if (step.unsafe !== undefined) take(step.unsafe, step.view.number);
  const unproved = firstUnproved(attempt.steps);
  if (unproved !== undefined) take('meterNotProved', unproved);
  const left = leftBehind(attempt.bench);
  if (left.bypassed || left.jumpers) take('bypassLeft');
  if (left.covers) take('coverLeft');
  return line(rubric.safety, reasons);
}

function proof(
  attempt: Attempt,
  rubric: Rubric,
  nameStep: Step | undefined,
  answer: readonly Naming[],
  evidence: readonly Naming[],
): ScoreLine {
  const step = nameStep?.view.number;
  const others = evidence.filter((each) => !answer.some((member) => sameNaming(member, each)));
  const reasons: ScoreReason[] = [];
  if (evidence.length === 0) reasons.push(reason('evidenceNone', 0, step));
  else if (others[0])
    reasons.push(reason('evidenceAlsoFits', 0, step, { target: others[0].target, mode: others[0].mode, count: others.length }));
  else reasons.push(reason('evidenceProves', rubric.evidence, step));
  reasons.push(proofOf(attempt).proved ? reason('callProved', rubric.call) : reason('callNotProved', 0));
  return line(rubric.evidence + rubric.call, reasons);
}
