import { toldApart } from '../meter/apart.ts';
import type { Reading } from '../meter/read.ts';
import { terminalPoint, WIRE_ENDS } from '../rig/points.ts';
import { cloneState } from '../world/state.ts';
import { advance } from '../world/time.ts';
import { ampsThrough, rewire, settle, solve, stateOf } from '../world/world.ts';
import { canLift, isReachable, TOUCH_VOLTS, voltsToEarth, wireEnd } from './access.ts';
import type { Action } from './actions.ts';
import type { Bench } from './bench.ts';
import { LONGEST_WATCH_SECONDS } from './costs.ts';
import { takeUpMeter } from './doing/measuring.ts';
import { measure } from './measure.ts';
import { levels, lookClosely, lookRound } from './notices.ts';
import { kindOf } from './registry.ts';
import { isFaulty } from './repair.ts';
import type { Notice } from './view.ts';

/** All that a person standing there could see, hear or read after an action. */
export interface Observation {
  readonly notices: readonly Notice[];
  /** The meter's display, while it is connected. */
  readonly reading: Reading | undefined;
  /** Slow drifts that can be read (room temperature), by `part.key`. */
  readonly levels: ReadonlyMap<string, number>;
}

/** What was done, beside what was observed: kept for the truth, not for twins. */
export interface Deed {
  readonly observation: Observation;
  readonly unsafe: string | undefined;
  /** The thing replaced had been sound. */
  readonly replacedSound: boolean;
  /** How often something happened by itself while its time passed. */
  readonly events: number;
}

/** A jumper that carries more than this has shorted a supply, amps. */
const JUMPER_SHORT_AMPS = 3;

/**
 * Does an action that is not refused, and lets its time pass. The same for the truth and for every twin.
 */
export function act(bench: Bench, action: Action): Deed {
  const { world } = bench;
  const kind = kindOf(action);
  const seconds = kind.seconds(bench, action);
  const touched = liveTouch(bench, action);
  const replacedSound = action.name === 'replace' && !isFaulty(bench, action.target);
  const harmsBefore = harms(bench);
  const notices: Notice[] = [];

  moveHands(bench, action);
  if (kind.electrical) {
    rewire(world);
    settle(world);
  }
  takeUpMeter(bench);
  const jumperShort = action.name === 'jumper' && action.on && shorted(bench);
  notices.push(...lookRound(bench));
  let events = 0;
  advance(world, seconds, () => {
    events += 1;
    notices.push(...lookRound(bench));
    return false;
  });
  if (action.name === 'look') {
    const part = world.assembly.partById.get(action.part);
    if (part) notices.push(...lookClosely(bench, part));
  }
  if (action.name === 'tug') notices.push(...tugged(bench, action.wire));

  const reading = measure(bench);
  let unsafe = touched ?? (jumperShort ? 'jumperShort' : undefined);
  if (reading?.kind === 'live') unsafe ??= 'ohmsLive';
  if (reading?.kind === 'fuseOpen' && !bench.meterFuseOpen) {
    bench.meterFuseOpen = true;
    unsafe ??= 'meterFuse';
    takeUpMeter(bench);
  }
  const harmsAfter = harms(bench);
  for (const [code, count] of harmsAfter) if (count > (harmsBefore.get(code) ?? 0)) unsafe ??= code;
  return { observation: { notices, reading, levels: levels(bench) }, unsafe, replacedSound, events };
}

/** What an action does to hands, leads and what they hold, before anything electrical follows from it. */
export function moveHands(bench: Bench, action: Action): void {
  const away = action.name === 'seat' && bench.place !== bench.world.assembly.partById.get(action.part)?.data.place;
  if (action.name === 'walk' || action.name === 'mat' || away) letGo(bench);
  kindOf(action).apply(bench, action);
  dropLeads(bench);
}

/** Seconds, whole, until something changes that can be perceived here; the bench is left as it was. */
export function secondsUntilChange(bench: Bench): number {
  const { world } = bench;
  const state = cloneState(world.state);
  const seen = new Map(bench.seen);
  const before = measure(bench);
  const passed = advance(world, LONGEST_WATCH_SECONDS, () => {
    if (lookRound(bench).length > 0) return true;
    const now = measure(bench);
    return before !== undefined && now !== undefined && toldApart(before, now);
  });
  world.state = state;
  bench.seen.clear();
  for (const [key, value] of seen) bench.seen.set(key, value);
  solve(world);
  return Math.max(1, Math.ceil(passed));
}

/** Leads and clamp come along, off. */
function letGo(bench: Bench): void {
  bench.red = undefined;
  bench.black = undefined;
  bench.clamp = undefined;
}

/** A lead stays only where a hand still reaches. */
function dropLeads(bench: Bench): void {
  if (bench.red !== undefined && !isReachable(bench, bench.red)) bench.red = undefined;
  if (bench.black !== undefined && !isReachable(bench, bench.black)) bench.black = undefined;
}

/** Bare hands on line voltage. */
function liveTouch(bench: Bench, action: Action): string | undefined {
  const { assembly } = bench.world;
  let points: string[] = [];
  if (action.name === 'lift' || action.name === 'land' || action.name === 'tug') {
    const wire = assembly.wireById.get(action.wire);
    if (wire) points = (action.name === 'tug' ? WIRE_ENDS : [action.end]).map((end) => wireEnd(bench, wire, end).terminal);
  } else if (action.name === 'jumper') points = [action.from, action.to];
  else if (action.name === 'replace') {
    const part = assembly.partById.get(action.target);
    const wire = assembly.wireById.get(action.target);
    if (part) points = part.kind.terminals.map((terminal) => terminalPoint(part.id, terminal.id));
    else if (wire) points = [wire.data.from, wire.data.to];
  }
  return points.some((point) => voltsToEarth(bench, point) > TOUCH_VOLTS) ? 'liveTouch' : undefined;
}

function shorted(bench: Bench): boolean {
  const { wiring } = bench.world;
  return wiring.jumpers.some((branch) => {
    const { re, im } = ampsThrough(bench.world, branch);
    return Math.hypot(re, im) > JUMPER_SHORT_AMPS;
  });
}

/** Harm done so far, by code. */
function harms(bench: Bench): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const part of bench.world.assembly.parts) {
    const harm = part.kind.harm?.(stateOf(bench.world, part));
    if (harm) counts.set(harm.code, (counts.get(harm.code) ?? 0) + harm.count);
  }
  return counts;
}

/** Whether a pull on a wire finds it loose at an end that is within reach. */
export function comesLoose(bench: Bench, id: string): boolean {
  const wire = bench.world.assembly.wireById.get(id);
  if (!wire || !canLift(wire)) return false;
  return WIRE_ENDS.some((end) => {
    const mode = end === 'from' ? 'looseFrom' : 'looseTo';
    if (
      !bench.world.faults.some(
        (fault, index) => fault.target === id && fault.mode === mode && bench.world.state.repaired[index] === 0,
      )
    )
      return false;
    const now = wireEnd(bench, wire, end);
    return !now.lifted && isReachable(bench, now.terminal);
  });
}

/** What a pull on a wire tells. */
function tugged(bench: Bench, id: string): Notice[] {
  return [{ part: id, key: 'tug', value: comesLoose(bench, id) ? 'loose' : 'tight', sense: 'inspect' }];
}
