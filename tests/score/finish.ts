/** What a good technician does once the fault is named: safe, repaired, put back, and the call run again. */
import { placeOf, wireEnd } from '../../src/attempt/access.ts';
import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, perform, refusalOf } from '../../src/attempt/attempt.ts';
import { WIRE_ENDS } from '../../src/rig/points.ts';
import { stateOf } from '../../src/world/world.ts';

/** Takes an action if it can be taken now. */
function go(attempt: Attempt, action: Action): void {
  if (refusalOf(attempt, action) === undefined) perform(attempt, action);
}

function isolate(attempt: Attempt, place: string, off: boolean): void {
  for (const part of attempt.assembly.parts) {
    const { isolator } = part.kind;
    if (isolator && part.data.place === place) {
      go(attempt, { name: 'operate', part: part.id, control: isolator.control, position: off ? isolator.off : isolator.on });
    }
  }
}

/** Repairs these, puts everything back, runs the customer's call and goes where it can be seen to work. */
export function finish(attempt: Attempt, targets: readonly string[]): void {
  const { assembly, bench, job } = attempt;
  for (const id of targets) {
    const wire = assembly.wireById.get(id);
    const part = assembly.partById.get(id) ?? assembly.parts[wire?.toPart ?? -1];
    if (!part) throw new Error(`no ${id}`);
    const place = placeOf(bench, part);
    go(attempt, { name: 'walk', to: place });
    const live = part.kind.lineVoltage === true || part.data.cover !== undefined;
    if (live) isolate(attempt, place, true);
    if (part.data.cover !== undefined) go(attempt, { name: 'cover', cover: part.data.cover, open: true });
    const body = assembly.parts.find((each) => each.kind.removable);
    if (body && wire && !wire.data.cable) go(attempt, { name: 'pull', part: body.id });
    go(attempt, { name: 'replace', target: id });
    // A fuse that the fault has blown goes with it.
    if (live) isolate(attempt, place, false);
  }
  for (const wire of assembly.wires) {
    for (const end of WIRE_ENDS) {
      if (bench.world.state.lifted[2 * wire.index + (end === 'to' ? 1 : 0)] !== 1) continue;
      const { part } = wireEnd(bench, wire, end);
      go(attempt, { name: 'walk', to: placeOf(bench, part) });
      if (part.data.cover !== undefined) go(attempt, { name: 'cover', cover: part.data.cover, open: true });
      if (part.kind.lineVoltage === true) isolate(attempt, bench.place, true);
      go(attempt, { name: 'land', wire: wire.id, end });
    }
  }
  for (const part of assembly.parts) {
    if (part.kind.spoilt?.(stateOf(bench.world, part)) !== true) continue;
    go(attempt, { name: 'walk', to: placeOf(bench, part) });
    if (part.data.cover !== undefined) go(attempt, { name: 'cover', cover: part.data.cover, open: true });
    go(attempt, { name: 'replace', target: part.id });
  }
  // Off while the cabinets close: nothing is to start, or start too soon, under somebody's hands.
  const caller = assembly.parts.find((part) => part.kind.calls !== undefined);
  if (caller) {
    go(attempt, { name: 'walk', to: placeOf(bench, caller) });
    for (const { control, value } of caller.kind.calls?.find((call) => call.id === 'off')?.acts ?? []) {
      if (typeof value === 'string') go(attempt, { name: 'operate', part: caller.id, control, position: value });
    }
    go(attempt, { name: 'seat', part: caller.id });
  }
  const touched = new Set(
    assembly.rig.covers.filter((_, index) => bench.world.state.covers[index] === 1).map((cover) => cover.place),
  );
  for (const part of assembly.parts) {
    const { isolator } = part.kind;
    if (isolator && part.kind.reads?.(stateOf(bench.world, part), isolator.control) !== isolator.on) touched.add(part.data.place);
  }
  for (const place of touched) {
    go(attempt, { name: 'walk', to: place });
    for (const part of assembly.parts) {
      const by = part.kind.bypass;
      if (by) go(attempt, { name: 'operate', part: part.id, control: by.control, position: by.off });
    }
    for (const cover of assembly.rig.covers) go(attempt, { name: 'cover', cover: cover.id, open: false });
    isolate(attempt, place, false);
  }
  if (caller) {
    go(attempt, { name: 'walk', to: placeOf(bench, caller) });
    for (const act of job.complaint.history) if (act.name !== 'wait') go(attempt, act);
  }
  go(attempt, { name: 'wait', seconds: 330 });
  for (const { part: id } of job.complaint.works) {
    const part = assembly.partById.get(id);
    if (part) go(attempt, { name: 'walk', to: placeOf(bench, part) });
    go(attempt, { name: 'wait', seconds: 60 });
  }
  go(attempt, { name: 'close' });
}
