import { z } from 'zod';
import { type Assembly, assemble } from '../rig/assemble.ts';
import { dataError, pathText } from '../rig/errors.ts';
import type { RigData } from '../rig/schema.ts';
import { stateOf } from '../world/world.ts';
import { act, type Observation, secondsUntilChange } from './act.ts';
import { ACTION_NAMES, type Action, actionSchema } from './actions.ts';
import { type Bench, createBench } from './bench.ts';
import type { Job } from './job.ts';
import type { Refusal } from './kind.ts';
import { lookRound } from './notices.ts';
import { kindOf, REGISTRY } from './registry.ts';
import { drawView } from './scene.ts';
import type { BenchView, StepView } from './view.ts';

/** One step as it was taken, with what it showed. */
export interface Step {
  readonly action: Action;
  readonly view: StepView;
  readonly observation: Observation;
  readonly unsafe: string | undefined;
  readonly replacedSound: boolean;
}

/** A trainee at work on a job: the true world and the steps so far. Everything follows from the job and the steps' actions. */
export interface Attempt {
  readonly job: Job;
  readonly assembly: Assembly;
  readonly bench: Bench;
  readonly steps: Step[];
  /** What the technician perceived on arriving. */
  readonly arrival: Observation;
}

export type Phase = BenchView['phase'];

export type Outcome = { readonly ok: true; readonly step: StepView } | { readonly ok: false; readonly refusal: Refusal };

/** Steps in one attempt; nobody needs as many. */
const MOST_STEPS = 500;
/** An attempt that stands on the job longer than a day has gone astray. */
const MOST_SECONDS = 86_400;

/** @param assembly the rig put together, when that was done before */
export function begin(job: Job, rig: RigData, assembly: Assembly = assemble(rig)): Attempt {
  const bench = createBench(assembly, job.faults, job);
  return { job, assembly, bench, steps: [], arrival: arrive(bench) };
}

/** The first look round. */
export function arrive(bench: Bench): Observation {
  return { notices: lookRound(bench), reading: undefined, levels: new Map() };
}

export function phaseOf(attempt: Attempt): Phase {
  if (attempt.steps.some((step) => step.action.name === 'close')) return 'closed';
  return attempt.steps.some((step) => step.action.name === 'name') ? 'named' : 'working';
}

/** Why an action cannot be done now; undefined when it can. */
export function refusalOf(attempt: Attempt, action: Action, phase = phaseOf(attempt)): Refusal | undefined {
  if (phase === 'closed') return { code: 'closed', values: {} };
  // Who has gone astray may still name the fault and close the ticket.
  const ending = action.name === 'name' || action.name === 'close';
  if (!ending && attempt.steps.length >= MOST_STEPS) return { code: 'tooManySteps', values: { most: MOST_STEPS } };
  if (!ending && attempt.bench.world.state.time - attempt.bench.arrived > MOST_SECONDS) return { code: 'tooLong', values: {} };
  if (action.name === 'name') {
    if (phase !== 'working') return { code: 'alreadyNamed', values: {} };
    const beyond = action.evidence.find((number) => number > attempt.steps.length);
    return beyond === undefined ? undefined : { code: 'noSuchStep', values: { step: beyond } };
  }
  if (action.name === 'hint') {
    if (attempt.job.mode === 'graded') return { code: 'noHints', values: {} };
    return phase === 'working' ? undefined : { code: 'alreadyNamed', values: {} };
  }
  if (action.name === 'close') return phase === 'named' ? undefined : { code: 'nameFirst', values: {} };
  return kindOf(action).refusal(attempt.bench, action);
}

/** Takes a step, or says why it cannot be taken; a refused action leaves no trace. */
export function perform(attempt: Attempt, action: Action): Outcome {
  const refusal = refusalOf(attempt, action);
  if (refusal) return { ok: false, refusal };
  const { bench } = attempt;
  const resolved: Action =
    action.name === 'watch' && action.seconds === 0 ? { name: 'watch', seconds: secondsUntilChange(bench) } : action;
  const { observation, unsafe, replacedSound } = act(bench, resolved);
  const view: StepView = {
    number: attempt.steps.length + 1,
    action: resolved,
    seconds: bench.world.state.time - bench.arrived,
    place: bench.place,
    fn: bench.fn,
    reading: observation.reading,
    red: bench.red,
    black: bench.black,
    noticed: observation.notices,
    unsafe,
  };
  attempt.steps.push({ action: resolved, view, observation, unsafe, replacedSound });
  return { ok: true, step: view };
}

/** Every discrete action that can be done now. Settings with a range, and naming, are left to whoever asks. */
export function optionsOf(attempt: Attempt): Action[] {
  const all = ACTION_NAMES.flatMap((name): readonly Action[] => REGISTRY[name].options(attempt.bench));
  const phase = phaseOf(attempt);
  return all.filter((action) => refusalOf(attempt, action, phase) === undefined);
}

export function viewOf(attempt: Attempt): BenchView {
  return drawView(
    attempt.job,
    attempt.bench,
    attempt.steps.map((step) => step.view),
    phaseOf(attempt),
  );
}

/** Whether a bypassed safety, a jumper or an open cover has been left behind. */
export function leftBehind(bench: Bench): {
  readonly bypassed: boolean;
  readonly jumpers: boolean;
  readonly covers: boolean;
  readonly apart: boolean;
} {
  const { state, assembly } = bench.world;
  return {
    bypassed: assembly.parts.some((part) => part.kind.bypassed?.(stateOf(bench.world, part)) === true),
    jumpers: state.jumpers.length > 0,
    covers: state.covers.includes(1),
    apart: state.lifted.includes(1) || state.bodies.some((body) => body !== 0),
  };
}

const loggedStepSchema = z.strictObject({ at: z.number().min(0), action: actionSchema });
/** A log but for its steps, which are looked at one by one. */
const frameSchema = z.strictObject({
  format: z.literal('bellwire-attempt'),
  version: z.literal(1),
  ticket: z.string().min(1).max(80),
  rig: z.string().min(1).max(80),
  // Naming and closing are always possible, beyond the most.
  steps: z.array(z.unknown()).max(MOST_STEPS + 2),
});
type LoggedStep = z.infer<typeof loggedStepSchema>;
type Frame = z.infer<typeof frameSchema>;
/** A saved attempt: the ticket and what was done, each step with the second on the job at which it was over. */
export type AttemptLog = Omit<Frame, 'steps'> & { steps: LoggedStep[] };

export function logOf(attempt: Attempt): AttemptLog {
  return {
    format: 'bellwire-attempt',
    version: 1,
    ticket: attempt.job.id,
    rig: attempt.job.rig,
    steps: attempt.steps.map((step) => ({ at: step.view.seconds, action: step.action })),
  };
}

/**
 * Takes every step of a log again.
 * @throws DataError at the first step that has the wrong shape, is refused, or was over at another second
 */
export function replay(job: Job, rig: RigData, json: unknown): Attempt {
  const log = checkFrame(json);
  if (log.ticket !== job.id) throw dataError('log.otherTicket', 'ticket', { ticket: log.ticket });
  if (log.rig !== job.rig) throw dataError('log.otherRig', 'rig', { rig: log.rig });
  const attempt = begin(job, rig);
  log.steps.forEach((step, index) => {
    const { at, action } = checkStep(step, index);
    const path = `steps[${index}]`;
    if (action.name === 'watch' && action.seconds === 0)
      throw dataError('log.openWatch', `${path}.action.seconds`, { step: index + 1 });
    const outcome = perform(attempt, action);
    if (!outcome.ok) throw dataError('log.refused', `${path}.action`, { step: index + 1, reason: outcome.refusal.code });
    if (outcome.step.seconds !== at)
      throw dataError('log.retimed', `${path}.at`, { step: index + 1, at, should: outcome.step.seconds });
  });
  return attempt;
}

/** @throws DataError with the path of the first thing that has the wrong shape */
export function checkLog(json: unknown): AttemptLog {
  const frame = checkFrame(json);
  return { ...frame, steps: frame.steps.map(checkStep) };
}

function checkFrame(json: unknown): Frame {
  const parsed = frameSchema.safeParse(json);
  if (parsed.success) return parsed.data;
  throw dataError('log.shape', pathText(parsed.error.issues[0]?.path ?? []), {});
}

function checkStep(step: unknown, index: number): LoggedStep {
  const parsed = loggedStepSchema.safeParse(step);
  if (parsed.success) return parsed.data;
  throw dataError('log.shape', pathText(['steps', index, ...(parsed.error.issues[0]?.path ?? [])]), { step: index + 1 });
}
