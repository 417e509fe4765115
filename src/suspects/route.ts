import { bodyOf, coverOpen, placeOf } from '../attempt/access.ts';
import { moveHands } from '../attempt/act.ts';
import type { Action } from '../attempt/actions.ts';
import type { Bench } from '../attempt/bench.ts';
import { kindOf } from '../attempt/registry.ts';
import type { AssembledPart } from '../rig/assemble.ts';
import { MAT_PLACE, type WireEnd } from '../rig/points.ts';
import { stateOf } from '../world/world.ts';

/** How somebody stands before they test: where, with what open, called, isolated and lifted. What is left out stays as it is. */
export interface Stand {
  readonly place: string;
  /** Covers to take off there; with a safety behind it bypassed where `live`. */
  readonly covers: readonly string[];
  readonly live: boolean;
  /** The part that makes calls and is meant by `call` and `body`. */
  readonly caller?: string;
  /** One of its calls, by its id. */
  readonly call?: string;
  readonly body?: 'seated' | 'turned' | 'mat';
  /** Isolators to open, by part. */
  readonly isolate?: readonly string[];
  /** Wire ends to lift there, one at a time: each is a test of its own. */
  readonly lifts?: readonly { readonly wire: string; readonly end: WireEnd }[];
  /** Seconds to stand and watch in the end. */
  readonly linger?: number;
}

/** The parts that can be made to call: a thermostat, or one in each zone. */
export function callersOf(bench: Bench): readonly AssembledPart[] {
  return bench.world.assembly.parts.filter((part) => part.kind.calls !== undefined);
}

/**
 * Goes there from where the bench stands, with hands and clock alone: nothing is solved. Says which actions that took; undefined when
 * there is no way. Which actions are needed and possible does not depend on what is wrong, so any twin can take them too.
 */
export function goTo(bench: Bench, stand: Stand): Action[] | undefined {
  const taken: Action[] = [];
  const go = (action: Action): void => {
    if (kindOf(action).refusal(bench, action) !== undefined) return;
    bench.world.state.time += kindOf(action).seconds(bench, action);
    moveHands(bench, action);
    taken.push(action);
  };
  const caller = stand.caller === undefined ? undefined : bench.world.assembly.partById.get(stand.caller);
  if (caller) callAndMove(bench, caller, stand, go);
  for (const id of stand.isolate ?? []) {
    const part = bench.world.assembly.partById.get(id);
    const isolator = part?.kind.isolator;
    if (!part || !isolator || part.kind.reads?.(stateOf(bench.world, part), isolator.control) === isolator.off) continue;
    go({ name: 'walk', to: placeOf(bench, part) });
    go({ name: 'operate', part: id, control: isolator.control, position: isolator.off });
  }
  go({ name: 'walk', to: stand.place });
  for (const cover of stand.covers) go({ name: 'cover', cover, open: true });
  if (stand.live) bypass(bench, stand, go);
  if (stand.linger !== undefined) go({ name: 'wait', seconds: stand.linger });
  return bench.place === stand.place && stand.covers.every((cover) => coverOpen(bench, cover)) ? taken : undefined;
}

function callAndMove(bench: Bench, caller: AssembledPart, stand: Stand, go: (action: Action) => void): void {
  const body = bodyOf(bench, caller);
  const acts = caller.kind.calls?.find((call) => call.id === stand.call)?.acts ?? [];
  const state = stateOf(bench.world, caller);
  const idle = acts.every((each) => caller.kind.reads?.(state, each.control) === each.value);
  const moved = stand.body !== undefined && stand.body !== body;
  if (idle && !moved) return;
  // The mat takes one body: what lies there goes back first.
  if (stand.body === 'mat') {
    for (const other of callersOf(bench)) {
      if (other === caller || bodyOf(bench, other) !== 'mat') continue;
      go({ name: 'walk', to: MAT_PLACE });
      go({ name: 'seat', part: other.id });
    }
  }
  go({ name: 'walk', to: placeOf(bench, caller) });
  for (const { control, value } of acts) {
    go(
      typeof value === 'number'
        ? { name: 'set', part: caller.id, control, value }
        : { name: 'operate', part: caller.id, control, position: value },
    );
  }
  if (!moved) return;
  if (stand.body === 'seated') go({ name: 'seat', part: caller.id });
  else {
    go({ name: 'pull', part: caller.id });
    if (stand.body === 'mat') go({ name: 'mat', part: caller.id });
    else if (bodyOf(bench, caller) === 'pulled') go({ name: 'turn', part: caller.id });
  }
}

/** Holds in what an open cover lets go of. */
function bypass(bench: Bench, stand: Stand, go: (action: Action) => void): void {
  for (const part of bench.world.assembly.parts) {
    const { bypass: by } = part.kind;
    if (!by || part.data.cover === undefined || !stand.covers.includes(part.data.cover)) continue;
    go({ name: 'operate', part: part.id, control: by.control, position: by.on });
  }
}
