/** What a good technician does once the fault is named: dead and safe, repaired, put back, and the call run again and seen to work. */
import { bodyOf, isVisible, placeOf, TOUCH_VOLTS, voltsToEarth, wireEnd } from '../attempt/access.ts';
import type { Action } from '../attempt/actions.ts';
import { type Attempt, perform, phaseOf, refusalOf } from '../attempt/attempt.ts';
import { complaintHolds } from '../attempt/bench.ts';
import type { Observed } from '../attempt/job.ts';
import { perceives, signsOf } from '../attempt/notices.ts';
import type { AssembledPart } from '../rig/assemble.ts';
import { type Point, terminalPoint, WIRE_ENDS } from '../rig/points.ts';
import { callersOf } from '../suspects/route.ts';
import { stateOf } from '../world/world.ts';

/** Seconds for which whatever must not start again soon is left alone before the call; common practice, no source. */
const REST_SECONDS = 330;
/** A call that has not come to work after so long does not work, seconds. */
const LONGEST_CALL_SECONDS = 3600;
const LOOK_AGAIN_SECONDS = 30;

/** Takes an action if it can be taken now. */
function go(attempt: Attempt, action: Action): boolean {
  return refusalOf(attempt, action) === undefined && perform(attempt, action).ok;
}

/** Whether a fault is put right by setting a part as it should stand, or by replacing it or making it up again. */
export type Cure = 'byHand' | 'replace';

/**
 * Repairs these, puts everything back, runs the customer's call, watches it work and closes the ticket.
 * @param targets parts and wires that are put right
 */
export function finish(attempt: Attempt, targets: readonly string[], cure: Cure = 'replace'): void {
  const before = isolatorPositions(attempt);
  callNothing(attempt);
  for (const id of targets) {
    if (cure === 'byHand') setRight(attempt, id);
    else repairOne(attempt, id);
  }
  landWires(attempt);
  takeOffJumpers(attempt);
  for (const part of attempt.assembly.parts) {
    // A fuse that the fault has blown goes with it.
    if (part.kind.spoilt?.(stateOf(attempt.bench.world, part)) === true) repairOne(attempt, part.id);
  }
  seatBodies(attempt);
  closeCovers(attempt);
  switchOn(attempt, targets, before);
  go(attempt, { name: 'wait', seconds: REST_SECONDS });
  callAgain(attempt);
  witness(attempt);
  closeCovers(attempt);
  go(attempt, { name: 'close' });
}

/** Controls of a part that stand otherwise than on a sound one, with how they should stand. */
function astray(attempt: Attempt, part: AssembledPart): { readonly control: string; readonly position: string }[] {
  if (part.kind.calls !== undefined) return [];
  const fresh = part.kind.initial(part.params, undefined);
  return (part.kind.controls ?? []).flatMap(({ id, positions }) => {
    const should = part.kind.reads?.(fresh, id);
    const stands = part.kind.reads?.(stateOf(attempt.bench.world, part), id);
    return typeof should === 'string' && should !== stands && positions?.includes(should) === true
      ? [{ control: id, position: should }]
      : [];
  });
}

/** Whether a hand alone might put it right: a lever that stands wrong, a door to be shut properly. */
export function mayBeSetRight(attempt: Attempt, id: string): boolean {
  const part = attempt.assembly.partById.get(id);
  if (!part) return false;
  return astray(attempt, part).length > 0 || attempt.assembly.rig.covers.some((cover) => cover.panel === id);
}

function setRight(attempt: Attempt, id: string): void {
  const part = attempt.assembly.partById.get(id);
  if (!part) return;
  for (const cover of attempt.assembly.rig.covers) {
    if (cover.panel !== id) continue;
    go(attempt, { name: 'walk', to: cover.place });
    // Closed properly in the end, with all others.
    go(attempt, { name: 'cover', cover: cover.id, open: true });
  }
  for (const { control, position } of astray(attempt, part)) {
    reachControl(attempt, part, control);
    go(attempt, { name: 'operate', part: id, control, position });
  }
}

function partAt(attempt: Attempt, point: Point): AssembledPart | undefined {
  return attempt.assembly.partById.get(point.split('.')[0] ?? '');
}

/** Goes to a part and uncovers it: the cover off, a body that sits on it or carries it out of the way. */
function uncover(attempt: Attempt, part: AssembledPart): void {
  const { bench, assembly } = attempt;
  go(attempt, { name: 'walk', to: placeOf(bench, part) });
  if (part.data.cover !== undefined) go(attempt, { name: 'cover', cover: part.data.cover, open: true });
  if (isVisible(bench, part)) return;
  const over = assembly.wires.find((wire) => wire.data.pin && wire.fromPart === part.index);
  const body = part.data.rides === undefined ? assembly.parts[over?.toPart ?? -1] : assembly.partById.get(part.data.rides);
  if (!body) return;
  go(attempt, { name: 'pull', part: body.id });
  if (!isVisible(bench, part)) go(attempt, { name: 'turn', part: body.id });
}

/** Off, wherever a call can be made: nothing is to start, or start too soon, under somebody's hands. */
function callNothing(attempt: Attempt): void {
  for (const caller of callersOf(attempt.bench)) {
    const acts = caller.kind.calls?.find((call) => call.id === 'off')?.acts ?? [];
    uncover(attempt, caller);
    for (const { control, value } of acts)
      go(
        attempt,
        typeof value === 'string'
          ? { name: 'operate', part: caller.id, control, position: value }
          : { name: 'set', part: caller.id, control, value },
      );
  }
}

/** Opens isolators, those at hand first, until no hand on these points meets more than it may. */
function makeDead(attempt: Attempt, points: readonly Point[]): void {
  const { bench, assembly } = attempt;
  const live = () => points.some((point) => voltsToEarth(bench, point) > TOUCH_VOLTS);
  const home = bench.place;
  const isolators = assembly.parts.filter((part) => part.kind.isolator !== undefined);
  for (const part of [
    ...isolators.filter((each) => placeOf(bench, each) === home),
    ...isolators.filter((each) => placeOf(bench, each) !== home),
  ]) {
    if (!live()) break;
    const by = part.kind.isolator;
    if (!by || part.kind.reads?.(stateOf(bench.world, part), by.control) !== by.on) continue;
    reachControl(attempt, part, by.control);
    go(attempt, { name: 'operate', part: part.id, control: by.control, position: by.off });
  }
  go(attempt, { name: 'walk', to: home });
}

/** Goes to a part's control; the cover stays on where the control is worked through it. */
function reachControl(attempt: Attempt, part: AssembledPart, control: string): void {
  go(attempt, { name: 'walk', to: placeOf(attempt.bench, part) });
  if (part.kind.controls?.find((each) => each.id === control)?.through !== true) uncover(attempt, part);
}

function repairOne(attempt: Attempt, id: string): void {
  const { assembly, bench } = attempt;
  const wire = assembly.wireById.get(id);
  const part = assembly.partById.get(id);
  const replace: Action = { name: 'replace', target: id };
  if (part) {
    uncover(attempt, part);
    makeDead(
      attempt,
      part.kind.terminals.map((terminal) => terminalPoint(part.id, terminal.id)),
    );
    uncover(attempt, part);
  } else if (wire) {
    const ends = WIRE_ENDS.flatMap((end) => partAt(attempt, wire.data[end]) ?? []);
    // At the end where one stands already, where there is one.
    ends.sort((a, b) => Number(placeOf(bench, b) === bench.place) - Number(placeOf(bench, a) === bench.place));
    const reached = ends.find((end) => {
      uncover(attempt, end);
      return refusalOf(attempt, replace) === undefined;
    });
    if (reached) {
      makeDead(attempt, [wire.data.from, wire.data.to]);
      uncover(attempt, reached);
    }
  }
  go(attempt, replace);
}

function landWires(attempt: Attempt): void {
  const { assembly, bench } = attempt;
  for (const wire of assembly.wires) {
    for (const end of WIRE_ENDS) {
      const now = wireEnd(bench, wire, end);
      if (!now.lifted) continue;
      uncover(attempt, now.part);
      makeDead(attempt, [now.terminal]);
      uncover(attempt, now.part);
      go(attempt, { name: 'land', wire: wire.id, end });
    }
  }
}

function takeOffJumpers(attempt: Attempt): void {
  for (const { from, to } of attempt.bench.world.state.jumpers) {
    const part = partAt(attempt, from);
    if (part) uncover(attempt, part);
    go(attempt, { name: 'jumper', from, to, on: false });
  }
}

function seatBodies(attempt: Attempt): void {
  for (const part of attempt.assembly.parts) {
    const body = bodyOf(attempt.bench, part);
    if (body === undefined || body === 'seated') continue;
    go(attempt, { name: 'walk', to: placeOf(attempt.bench, part) });
    go(attempt, { name: 'seat', part: part.id });
  }
}

/** Lets go of what was held in, and closes what stands open. */
function closeCovers(attempt: Attempt): void {
  const { assembly, bench } = attempt;
  for (const part of assembly.parts) {
    const by = part.kind.bypass;
    if (!by || part.kind.bypassed?.(stateOf(bench.world, part)) !== true) continue;
    uncover(attempt, part);
    go(attempt, { name: 'operate', part: part.id, control: by.control, position: by.off });
  }
  assembly.rig.covers.forEach((cover, index) => {
    if (bench.world.state.covers[index] !== 1) return;
    go(attempt, { name: 'walk', to: cover.place });
    go(attempt, { name: 'cover', cover: cover.id, open: false });
  });
}

/** How each isolator stood, by part. */
function isolatorPositions(attempt: Attempt): ReadonlyMap<string, string | number | undefined> {
  const { assembly, bench } = attempt;
  return new Map(
    assembly.parts.flatMap((part) => {
      const by = part.kind.isolator;
      return by ? [[part.id, part.kind.reads?.(stateOf(bench.world, part), by.control)] as const] : [];
    }),
  );
}

/** Switches on again what was switched off, or tripped, since; what the customer keeps off stays off, unless that was the fault. */
function switchOn(attempt: Attempt, targets: readonly string[], before: ReadonlyMap<string, string | number | undefined>): void {
  const { assembly, bench } = attempt;
  for (const part of assembly.parts) {
    const by = part.kind.isolator;
    if (!by || (before.get(part.id) === by.off && !switchedOff(attempt, part) && !targets.includes(part.id))) continue;
    const stands = part.kind.reads?.(stateOf(bench.world, part), by.control);
    if (stands === by.on) continue;
    reachControl(attempt, part, by.control);
    // A tripped breaker is reset through off.
    if (stands !== by.off) go(attempt, { name: 'operate', part: part.id, control: by.control, position: by.off });
    go(attempt, { name: 'operate', part: part.id, control: by.control, position: by.on });
    closeCovers(attempt);
  }
}

/** Whether the technician has switched it off while searching. */
function switchedOff(attempt: Attempt, part: AssembledPart): boolean {
  return attempt.steps.some(
    ({ action }) => action.name === 'operate' && action.part === part.id && action.position === part.kind.isolator?.off,
  );
}

/** Sets everything as the customer had set it. */
function callAgain(attempt: Attempt): void {
  for (const act of attempt.job.complaint.history) {
    if (act.name === 'wait') continue;
    const part = attempt.assembly.partById.get(act.part);
    if (part) go(attempt, { name: 'walk', to: placeOf(attempt.bench, part) });
    go(attempt, act);
  }
}

/** Waits until all works that should, and goes to see or hear each of it. */
function witness(attempt: Attempt): void {
  const { assembly, bench, job } = attempt;
  const { works } = job.complaint;
  const began = bench.world.state.time;
  const working = () => complaintHolds(bench, { complaint: { ...job.complaint, observed: works } });
  const first = assembly.partById.get(works[0]?.part ?? '');
  if (first) go(attempt, { name: 'walk', to: placeOf(bench, first) });
  while (!working() && bench.world.state.time - began < LONGEST_CALL_SECONDS && phaseOf(attempt) === 'named')
    go(attempt, { name: 'wait', seconds: LOOK_AGAIN_SECONDS });
  for (const work of works) {
    const part = assembly.partById.get(work.part);
    if (!part) continue;
    go(attempt, { name: 'walk', to: placeOf(bench, part) });
    if (!perceived(attempt, part, work)) uncover(attempt, part);
    go(attempt, { name: 'wait', seconds: LOOK_AGAIN_SECONDS });
  }
}

function perceived(attempt: Attempt, part: AssembledPart, work: Observed): boolean {
  const sign = signsOf(attempt.bench, part).find((each) => each.key === work.sign);
  return sign !== undefined && perceives(attempt.bench, part, sign);
}
