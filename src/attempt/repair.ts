import { splitMode } from '../rig/faults.ts';
import { stateOf } from '../world/world.ts';
import type { Bench } from './bench.ts';
import { signsOf } from './notices.ts';

/** Whether a fault is put right when this part or wire is replaced: its own, and a short or swap with a second wire. */
function concerns(fault: { target: string; mode: string }, target: string): boolean {
  return fault.target === target || splitMode(fault.mode).other === target;
}

/** What a close look at it once showed is known no more: whoever put it right has seen it since. */
function forgetLooks(bench: Bench, target: string): void {
  const part = bench.world.assembly.partById.get(target);
  if (part === undefined) return;
  for (const sign of signsOf(bench, part)) if (sign.sense === 'inspect') bench.seen.delete(`${part.id}.${sign.key}`);
}

/** Puts a sound part or wire in place of what was there. */
export function repair(bench: Bench, target: string): void {
  const { world } = bench;
  forgetLooks(bench, target);
  world.faults.forEach((fault, index) => {
    if (concerns(fault, target)) world.state.repaired[index] = 1;
  });
  const part = world.assembly.partById.get(target);
  if (!part) return;
  const fresh = part.kind.initial(part.params, undefined);
  Object.assign(stateOf(world, part), fresh, 'since' in fresh ? { since: world.state.time } : {});
  const cover = world.assembly.rig.covers.find((candidate) => candidate.panel === target);
  const site = world.sites[part.index];
  if (cover && site) {
    const open = world.state.covers[world.assembly.coverIndex.get(cover.id) ?? -1] === 1;
    part.kind.operate?.(site, stateOf(world, part), 'cover', open ? 'open' : 'closed');
  }
}

/** Whether anything was wrong with it that has not been put right: a fault of its own, or what another's fault did to it. */
export function isFaulty(bench: Bench, target: string): boolean {
  const part = bench.world.assembly.partById.get(target);
  if (part?.kind.spoilt?.(stateOf(bench.world, part)) === true) return true;
  return bench.world.faults.some((fault, index) => bench.world.state.repaired[index] === 0 && concerns(fault, target));
}
