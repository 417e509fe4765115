/**
 * The service report of an attempt: what its trainee would leave with the customer and the office. Keys and values only. It holds
 * what was named and done, never what is true beyond that, and no score.
 */
import { bodyOf } from '../attempt/access.ts';
import { act } from '../attempt/act.ts';
import { type Attempt, begin, leftBehind } from '../attempt/attempt.ts';
import type { Bench } from '../attempt/bench.ts';
import type { Observed } from '../attempt/job.ts';
import type { StepView } from '../attempt/view.ts';
import type { BodyPosition } from '../rig/points.ts';
import { type Naming, namingsOf, sameNaming } from '../suspects/hypotheses.ts';
import { stateOf } from '../world/world.ts';
import { proofOf } from './proof.ts';

/** How a control of the thermostat stood. */
export interface Setting {
  readonly part: string;
  readonly control: string;
  readonly value: string | number;
}

/** A step that was picked as evidence. */
export interface Evidence {
  readonly step: StepView;
  /** How the thermostat's switches stood when its reading was taken. */
  readonly settings: readonly Setting[];
  /** Where its body was then. */
  readonly body: BodyPosition | undefined;
}

export interface ServiceReport {
  readonly ticket: string;
  readonly rig: string;
  /** On the job, from arriving to the last step. */
  readonly seconds: number;
  /** As it was named, right or wrong; undefined when it never was. */
  readonly named: Naming | undefined;
  readonly evidence: readonly Evidence[];
  /** Parts and wires that were repaired or replaced, in order. */
  readonly replaced: readonly string[];
  readonly proof: {
    readonly proved: boolean;
    /** The call that was run: the thermostat as it stood when all worked, else as it was left. */
    readonly call: readonly Setting[];
    readonly witnessed: readonly Observed[];
  };
  /** Isolators that were turned off, with the second on the job; `on` is undefined while one was left off. */
  readonly power: readonly { readonly part: string; readonly off: number; readonly on: number | undefined }[];
  /** Covers that were opened, and whether each was closed again. */
  readonly covers: readonly { readonly cover: string; readonly closed: boolean }[];
  /** Whether all was put back in the end; undefined where there was nothing to put back. */
  readonly back: {
    readonly jumpers: boolean | undefined;
    readonly bypasses: boolean | undefined;
    readonly apart: boolean | undefined;
  };
}

/** The report of a closed attempt, worked out from its steps alone. */
export function reportOf(attempt: Attempt): ServiceReport {
  const { job, assembly, steps } = attempt;
  const name = steps.find((step) => step.action.name === 'name')?.action;
  const proof = proofOf(attempt);
  const stood = settingsAfter(attempt);
  const last = stood.at(-1);
  const asked = new Set(job.complaint.history.flatMap((each) => (each.name === 'wait' ? [] : [`${each.part} ${each.control}`])));
  const picked = name?.name === 'name' ? [...new Set(name.evidence)].sort((a, b) => a - b) : [];
  return {
    ticket: job.id,
    rig: job.rig,
    seconds: steps.at(-1)?.view.seconds ?? 0,
    named: namedIn(attempt),
    evidence: picked.flatMap((number) => {
      const step = steps[number - 1]?.view;
      const then = stood[number - 1];
      return step === undefined || then === undefined
        ? []
        : [{ step, settings: then.settings.filter((each) => typeof each.value === 'string'), body: then.body }];
    }),
    replaced: steps.flatMap(({ action }) => (action.name === 'replace' ? [action.target] : [])),
    proof: {
      proved: proof.proved,
      witnessed: proof.witnessed,
      call: ((proof.worked === undefined ? last : stood[proof.worked - 1])?.settings ?? []).filter(
        (each) => typeof each.value === 'string' || asked.has(`${each.part} ${each.control}`),
      ),
    },
    power: powerOf(attempt),
    covers: assembly.rig.covers
      .filter(({ id }) => steps.some(({ action }) => action.name === 'cover' && action.cover === id && action.open))
      .map(({ id }) => ({ cover: id, closed: attempt.bench.world.state.covers[assembly.coverIndex.get(id) ?? -1] !== 1 })),
    back: backOf(attempt),
  };
}

/** The naming as it was put, with the section that it lies in. */
function namedIn({ job, assembly, steps }: Attempt): Naming | undefined {
  const name = steps.find((step) => step.action.name === 'name')?.action;
  if (name?.name !== 'name') return undefined;
  const { target, mode, also } = name;
  const first = namingsOf(assembly.rig, job.suspects).find((each) => sameNaming(each, { target, mode }));
  return first && { ...first, ...(also && { also }) };
}

interface Stood {
  readonly settings: readonly Setting[];
  readonly body: BodyPosition | undefined;
}

/** After each step: how the controls of the part that calls stood, and its body. */
function settingsAfter({ job, assembly, steps }: Attempt): readonly Stood[] {
  const { bench } = begin(job, assembly.rig, assembly);
  return steps.map(({ action }) => {
    act(bench, action);
    return standing(bench);
  });
}

function standing(bench: Bench): Stood {
  const { world } = bench;
  const caller = world.assembly.parts.find((part) => part.kind.calls !== undefined);
  if (caller === undefined) return { settings: [], body: undefined };
  const settings = (caller.kind.controls ?? []).flatMap(({ id }): Setting[] => {
    const value = caller.kind.reads?.(stateOf(world, caller), id);
    return value === undefined ? [] : [{ part: caller.id, control: id, value }];
  });
  return { settings, body: bodyOf(bench, caller) };
}

function powerOf({ assembly, steps }: Attempt): ServiceReport['power'] {
  const times: { part: string; off: number; on: number | undefined }[] = [];
  for (const { action, view } of steps) {
    if (action.name !== 'operate') continue;
    const isolator = assembly.partById.get(action.part)?.kind.isolator;
    if (isolator?.control !== action.control) continue;
    const open = times.findLast((each) => each.part === action.part && each.on === undefined);
    if (action.position === isolator.off && open === undefined) times.push({ part: action.part, off: view.seconds, on: undefined });
    else if (action.position === isolator.on && open !== undefined) open.on = view.seconds;
  }
  return times;
}

function backOf({ assembly, steps, bench }: Attempt): ServiceReport['back'] {
  const left = leftBehind(bench);
  const did = (which: (action: Attempt['steps'][number]['action']) => boolean) => steps.some(({ action }) => which(action));
  const bypassed = did((action) => action.name === 'operate' && action.position === bypassOn(assembly, action.part));
  const taken = did(({ name }) => name === 'lift' || name === 'pull' || name === 'turn' || name === 'mat');
  return {
    jumpers: did((action) => action.name === 'jumper' && action.on) ? !left.jumpers : undefined,
    bypasses: bypassed ? !left.bypassed : undefined,
    apart: taken ? !left.apart : undefined,
  };
}

const bypassOn = (assembly: Attempt['assembly'], part: string): string | undefined => assembly.partById.get(part)?.kind.bypass?.on;
