import { type Attempt, leftBehind, type Step } from '../attempt/attempt.ts';
import { possibleFaults } from '../rig/faults.ts';
import type { RigData } from '../rig/schema.ts';
import { leftByEvidence } from '../suspects/evidence.ts';
import { posterior, survivors } from '../suspects/field.ts';
import { type Following, followAttempt, neededLater, searchSteps } from '../suspects/follow.ts';
import { type Naming, namingOf, sameNaming } from '../suspects/hypotheses.ts';
import type { Debrief, JudgedStep, ScoreItem, ScoreLine, ScoreReason, StepKind } from './debrief.ts';
import { callProved } from './proof.ts';
import { firstUnproved, isRequired } from './required.ts';

/** Points as diagnosis.md has them. */
const POINTS = {
  section: 15,
  part: 20,
  failure: 15,
  economy: 25,
  safety: 15,
  evidence: 5,
  call: 5,
  unsafe: 5,
  soundReplaced: 10,
} as const;

/** Works out what an attempt was worth: every twin is driven through it again. */
export function debriefOf(attempt: Attempt): Debrief {
  const following = followAttempt(attempt);
  const truth = truthOf(attempt);
  const nameStep = attempt.steps.find((step) => step.action.name === 'name');
  const named = nameStep && namedBy(attempt.assembly.rig, nameStep);
  const rightNaming = named !== undefined && isTrue(attempt, named);
  const steps = judge(attempt, following);
  const left = following.leftBefore[following.leftBefore.length - 1] ?? [];
  const items: Record<ScoreItem, ScoreLine> = {
    isolation: isolation(attempt, following, truth, named),
    economy: economy(steps),
    safety: safety(attempt),
    proof: proof(attempt, following, nameStep, named),
  };
  return {
    ticket: attempt.job.id,
    total: Math.round(Object.values(items).reduce((sum, line) => sum + line.points, 0)),
    items,
    truth,
    named,
    rightNaming,
    suspectsAtStart: survivors(following.field, following.arrival.matched).size,
    steps,
    minutes: searchSeconds(steps) / 60,
    leftAtNaming: [...survivors(following.field, left)].flatMap((hypothesis) => following.field.hypotheses[hypothesis] ?? []),
    wastedSteps: steps.filter((step) => step.kind === 'wasted').length,
  };
}

function truthOf(attempt: Attempt): Naming {
  const fault = attempt.job.faults[0];
  const possible = possibleFaults(attempt.assembly.rig).find((each) => fault && sameNaming(each, fault));
  if (!possible) throw new Error(`ticket ${attempt.job.id} has no fault that its rig can have`);
  return namingOf(possible);
}

function isTrue(attempt: Attempt, named: Naming): boolean {
  return attempt.job.faults.some((fault) => sameNaming(fault, named));
}

function namedBy(rig: RigData, step: Step): Naming | undefined {
  const { action } = step;
  if (action.name !== 'name') return undefined;
  const possible = possibleFaults(rig).find((each) => each.target === action.target && each.mode === action.mode);
  return possible && namingOf(possible);
}

/** Says of each step what it was; the steps after the naming are `after`. */
export function judge(attempt: Attempt, following: Following): JudgedStep[] {
  const search = searchSteps(attempt.steps);
  const required = search.map((_, index) => isRequired(attempt.assembly, search, index));
  return attempt.steps.map((step, index): JudgedStep => {
    const column = following.columns[index];
    const before = following.leftBefore[index] ?? following.leftBefore[following.leftBefore.length - 1] ?? [];
    const after = following.leftBefore[index + 1] ?? before;
    const seconds = step.view.seconds - (attempt.steps[index - 1]?.view.seconds ?? 0);
    const kind = column ? kindOfStep(following, search, required, index) : 'after';
    return {
      number: index + 1,
      kind,
      seconds,
      gainBits: column?.gainBits ?? 0,
      left: survivors(following.field, after).size,
      ruledOut: (following.ruledOut[index] ?? []).flatMap((hypothesis) => following.field.hypotheses[hypothesis] ?? []),
      because: kind === 'wasted' ? deciders(following, index) : [],
      unsafe: step.unsafe,
    };
  });
}

function kindOfStep(following: Following, search: readonly Step[], required: readonly boolean[], index: number): StepKind {
  if ((following.columns[index]?.gainBits ?? 0) > 0) return 'informative';
  if (required[index] === true) return 'required';
  return neededLater(following, search, index, required) ? 'setUp' : 'wasted';
}

/** Earlier steps without which this one's outcome would still have been open: those that ruled out somebody who predicted otherwise. */
function deciders(following: Following, index: number): number[] {
  const column = following.columns[index];
  const { field } = following;
  const numbers: number[] = [];
  for (let earlier = 0; earlier < index; earlier++) {
    const before = following.leftBefore[earlier] ?? [];
    const after = following.leftBefore[earlier + 1] ?? [];
    if (field.twins.some((_, twin) => before[twin] && !after[twin] && column?.matched[twin] === false)) numbers.push(earlier + 1);
  }
  return numbers;
}

function reason(code: string, points: number, step?: number, values: ScoreReason['values'] = {}): ScoreReason {
  return { code, points, step, values };
}

function line(of: number, reasons: readonly ScoreReason[]): ScoreLine {
  const points = reasons.reduce((sum, each) => sum + each.points, 0);
  return { points: Math.min(of, Math.max(0, points)), of, reasons };
}

function isolation(attempt: Attempt, following: Following, truth: Naming, named: Naming | undefined): ScoreLine {
  const of = POINTS.section + POINTS.part + POINTS.failure;
  if (!named) return line(of, [reason('notNamed', 0)]);
  const nameStep = attempt.steps.find((step) => step.action.name === 'name')?.view.number;
  const probability = probabilityOf(following, named);
  const reasons: ScoreReason[] = [];
  const truths = attempt.job.faults.map((fault) => ({ ...truth, ...fault }));
  const values = { percent: Math.round(probability * 100) };
  reasons.push(
    named.section === truth.section ? reason('sectionRight', POINTS.section, nameStep) : reason('sectionWrong', 0, nameStep),
  );
  if (truths.some((each) => each.target === named.target)) {
    reasons.push(
      reason(probability > 0.999 ? 'partRight' : 'partGuessed', POINTS.part * partProbability(following, named), nameStep, {
        percent: Math.round(partProbability(following, named) * 100),
      }),
    );
    if (truths.some((each) => sameNaming(each, named))) {
      reasons.push(reason(probability > 0.999 ? 'failureRight' : 'failureGuessed', POINTS.failure * probability, nameStep, values));
    } else reasons.push(reason('failureWrong', 0, nameStep));
  } else reasons.push(reason('partWrong', 0, nameStep));
  for (const step of attempt.steps) {
    if (step.replacedSound && step.action.name === 'replace')
      reasons.push(reason('soundReplaced', -POINTS.soundReplaced, step.view.number, { target: step.action.target }));
  }
  return line(of, reasons);
}

/** What a naming was worth, given what had been observed: a guess is worth a guess. */
function probabilityOf(following: Following, named: Naming): number {
  const left = following.leftBefore[following.leftBefore.length - 1] ?? [];
  const hypothesis = following.field.hypotheses.findIndex((each) => sameNaming(each, named));
  return posterior(following.field, left).get(hypothesis) ?? 0;
}

function partProbability(following: Following, named: Naming): number {
  const left = following.leftBefore[following.leftBefore.length - 1] ?? [];
  let sum = 0;
  for (const [hypothesis, probability] of posterior(following.field, left)) {
    if (following.field.hypotheses[hypothesis]?.target === named.target) sum += probability;
  }
  return Math.min(1, sum);
}

function searchSeconds(steps: readonly JudgedStep[]): number {
  return steps.filter((step) => step.kind !== 'after').reduce((sum, step) => sum + step.seconds, 0);
}

/** First form, until the short way is known: all the points go by wasted time. */
function economy(steps: readonly JudgedStep[]): ScoreLine {
  const total = searchSeconds(steps);
  if (total === 0) return line(POINTS.economy, [reason('noSteps', 0)]);
  const reasons = [reason('timeSpent', POINTS.economy, undefined, { minutes: total / 60 })];
  for (const step of steps) {
    if (step.kind === 'wasted') reasons.push(reason('stepWasted', (-POINTS.economy * step.seconds) / total, step.number));
  }
  return line(POINTS.economy, reasons);
}

function safety(attempt: Attempt): ScoreLine {
  const reasons = [reason('safeStart', POINTS.safety)];
  const kinds = new Set<string>();
  const take = (code: string, step?: number) => {
    if (kinds.has(code)) return;
    kinds.add(code);
    reasons.push(reason(code, -POINTS.unsafe, step));
  };
  for (const step of attempt.steps) if (step.unsafe !== undefined) take(step.unsafe, step.view.number);
  const unproved = firstUnproved(attempt.steps);
  if (unproved !== undefined) take('meterNotProved', unproved);
  const left = leftBehind(attempt.bench);
  if (left.bypassed || left.jumpers) take('bypassLeft');
  if (left.covers) take('coverLeft');
  return line(POINTS.safety, reasons);
}

function proof(attempt: Attempt, following: Following, nameStep: Step | undefined, named: Naming | undefined): ScoreLine {
  const reasons: ScoreReason[] = [];
  if (nameStep?.action.name === 'name' && named) {
    const { evidence } = nameStep.action;
    const left = leftByEvidence(
      following.field,
      following.arrival,
      evidence.map((number) => following.columns[number - 1]),
    );
    const others = [...left]
      .flatMap((hypothesis) => following.field.hypotheses[hypothesis] ?? [])
      .filter((each) => !sameNaming(each, named));
    if (evidence.length > 0 && others.length === 0 && left.size > 0)
      reasons.push(reason('evidenceProves', POINTS.evidence, nameStep.view.number));
    else if (others[0])
      reasons.push(
        reason('evidenceAlsoFits', 0, nameStep.view.number, {
          target: others[0].target,
          mode: others[0].mode,
          count: others.length,
        }),
      );
    else reasons.push(reason('evidenceNone', 0, nameStep.view.number));
  } else reasons.push(reason('evidenceNone', 0));
  reasons.push(callProved(attempt) ? reason('callProved', POINTS.call) : reason('callNotProved', 0));
  return line(POINTS.evidence + POINTS.call, reasons);
}
