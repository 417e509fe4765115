import type { Action } from '../attempt/actions.ts';
import type { BenchView } from '../attempt/view.ts';
import type { Scene } from './layout.ts';
import { type Lead, leadUnder, nearestSpot, partAt, pointAt, regionAt, regionsOf, type StageTool, wireAt } from './targets.ts';
import type { Spot } from './wires.ts';

/** What is in the trainee's hand on the drawn bench. Nothing of it is in the log. */
export interface Grip {
  readonly tool: StageTool;
  readonly lead: Lead | undefined;
  /** First clip of a jumper that waits for its second. */
  readonly clip: string | undefined;
}

/** What a press leads to: an action, something taken in hand, or a word about why nothing happens. No press is without any. */
export type Outcome =
  | { readonly kind: 'act'; readonly action: Action; readonly grip: Grip }
  | { readonly kind: 'grip'; readonly grip: Grip }
  /** `part`: id of the part that the words are about. */
  | { readonly kind: 'say'; readonly key: string; readonly part?: string };

function released(grip: Grip): Grip {
  return { ...grip, lead: undefined, clip: undefined };
}

/** Puts the held lead down where it is let go: on a terminal, or off it. */
export function putLead(grip: Grip, scene: Scene, view: BenchView, at: Spot, unit: number): Outcome {
  if (grip.lead === undefined) return { kind: 'grip', grip };
  const point = pointAt(scene, at, unit)?.point;
  if (point !== undefined) return { kind: 'act', action: { name: 'probe', lead: grip.lead, at: point }, grip: released(grip) };
  if (view.meter[grip.lead] !== undefined) {
    return { kind: 'act', action: { name: 'probe', lead: grip.lead, at: null }, grip: released(grip) };
  }
  return { kind: 'grip', grip: released(grip) };
}

function pressHand(grip: Grip, scene: Scene, view: BenchView, at: Spot, unit: number): Outcome {
  const region = regionAt(regionsOf(scene, view), at, unit);
  // A terminal is small and a control under it is large: the nearer thing is meant.
  const terminal = pointAt(scene, at, unit);
  if (region !== undefined && (terminal === undefined || Math.hypot(terminal.x - at.x, terminal.y - at.y) > 13)) {
    return { kind: 'act', action: region.action, grip: released(grip) };
  }
  if (terminal !== undefined) return { kind: 'say', key: 'stage:say.pickLead' };
  const part = partAt(scene, at);
  return part === undefined ? { kind: 'say', key: 'stage:say.nothing' } : { kind: 'say', key: 'stage:say.notByHand', part };
}

function pressJumper(grip: Grip, scene: Scene, view: BenchView, at: Spot, unit: number): Outcome {
  const point = pointAt(scene, at, unit)?.point;
  if (point === undefined)
    return grip.clip === undefined ? { kind: 'say', key: 'stage:say.jumperFrom' } : { kind: 'grip', grip: released(grip) };
  if (grip.clip === undefined) {
    const on = view.jumpers.find((jumper) => jumper.from === point || jumper.to === point);
    if (on !== undefined) return { kind: 'act', action: { name: 'jumper', from: on.from, to: on.to, on: false }, grip };
    return { kind: 'grip', grip: { ...grip, clip: point } };
  }
  if (grip.clip === point) return { kind: 'grip', grip: released(grip) };
  return { kind: 'act', action: { name: 'jumper', from: grip.clip, to: point, on: true }, grip: released(grip) };
}

/** What a press at a spot of the scene means for what is in hand. It decides nothing about whether an action is allowed. */
export function press(grip: Grip, scene: Scene, view: BenchView, at: Spot, unit: number): Outcome {
  if (grip.lead !== undefined) return putLead(grip, scene, view, at, unit);
  const lead = leadUnder(scene, view, at, unit);
  switch (grip.tool) {
    case 'lift': {
      const end = nearestSpot(scene.ends, at, unit);
      if (end === undefined) return { kind: 'say', key: 'stage:say.lift' };
      return { kind: 'act', action: { name: end.lifted ? 'land' : 'lift', wire: end.wire, end: end.end }, grip };
    }
    case 'jumper':
      return pressJumper(grip, scene, view, at, unit);
    case 'clamp': {
      const wire = wireAt(scene, at, unit);
      if (wire === undefined) return { kind: 'say', key: 'stage:say.clamp' };
      const around = view.meter.clamp === wire ? null : wire;
      return { kind: 'act', action: { name: 'clamp', around, turns: Math.max(1, view.meter.turns) }, grip };
    }
    case 'look': {
      const part = partAt(scene, at);
      return part === undefined ? { kind: 'say', key: 'stage:say.look' } : { kind: 'act', action: { name: 'look', part }, grip };
    }
    case 'tug': {
      const wire = wireAt(scene, at, unit);
      return wire === undefined ? { kind: 'say', key: 'stage:say.tug' } : { kind: 'act', action: { name: 'tug', wire }, grip };
    }
    default:
      if (lead !== undefined) return { kind: 'grip', grip: { ...grip, lead } };
      return pressHand(grip, scene, view, at, unit);
  }
}
