import type { Sign } from '../parts/part.ts';
import type { AssembledPart } from '../rig/assemble.ts';
import { endPoint, WIRE_ENDS } from '../rig/points.ts';
import { stateOf } from '../world/world.ts';
import { canLift, isHere, isVisible, movedEnds, wireEnd } from './access.ts';
import type { Bench } from './bench.ts';
import type { Notice } from './view.ts';

export function signsOf(bench: Bench, part: AssembledPart): readonly Sign[] {
  const site = bench.world.sites[part.index];
  return site ? part.kind.signs(site, stateOf(bench.world, part)) : [];
}

/** Whether somebody standing there perceives a sign without looking closely. */
export function perceives(bench: Bench, part: AssembledPart, sign: Sign): boolean {
  if (sign.sense === 'inspect') return false;
  if (sign.sense === 'hear' || sign.through === true) return isHere(bench, part);
  return isVisible(bench, part);
}

/** What is new since the last look round, in the rig's order; the bench remembers it. */
export function lookRound(bench: Bench): Notice[] {
  const notices: Notice[] = [];
  for (const part of bench.world.assembly.parts) {
    if (!isHere(bench, part)) continue;
    for (const sign of signsOf(bench, part)) {
      if (sign.quiet === true || sign.minor === true || !perceives(bench, part, sign)) continue;
      note(bench, notices, part.id, sign.key, sign.value, sign.sense);
    }
  }
  const moved = movedEnds(bench);
  for (const wire of bench.world.assembly.wires) {
    if (!canLift(wire)) continue;
    for (const end of WIRE_ENDS) {
      const now = wireEnd(bench, wire, end, moved);
      if (!isVisible(bench, now.part) || now.lifted) continue;
      // A wire on its right terminal is what anybody expects to see: no news.
      const key = `landed.${end}`;
      if (now.terminal === wire.data[end] && !bench.seen.has(`${wire.id}.${key}`))
        bench.seen.set(`${wire.id}.${key}`, endPoint(wire.id, end));
      else note(bench, notices, wire.id, key, now.terminal === wire.data[end] ? endPoint(wire.id, end) : now.terminal, 'see');
    }
  }
  return notices;
}

/** What looking closely at one part shows besides. */
export function lookClosely(bench: Bench, part: AssembledPart): Notice[] {
  return signsOf(bench, part)
    .filter((sign) => sign.sense === 'inspect')
    .map((sign) => {
      bench.seen.set(`${part.id}.${sign.key}`, sign.value);
      return { part: part.id, key: sign.key, value: sign.value, sense: sign.sense };
    });
}

/** Slow drifts that can be read now (a room's temperature), by `part.key`. */
export function levels(bench: Bench): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const part of bench.world.assembly.parts) {
    if (!isHere(bench, part)) continue;
    for (const sign of signsOf(bench, part)) {
      if (sign.minor === true && typeof sign.value === 'number' && perceives(bench, part, sign))
        found.set(`${part.id}.${sign.key}`, sign.value);
    }
  }
  return found;
}

function note(bench: Bench, notices: Notice[], part: string, key: string, value: string | number, sense: Notice['sense']): void {
  const name = `${part}.${key}`;
  if (bench.seen.get(name) === value) return;
  bench.seen.set(name, value);
  notices.push({ part, key, value, sense });
}
