import type { Sign } from '../parts/part.ts';
import type { AssembledPart } from '../rig/assemble.ts';
import { landedElsewhere } from '../world/wiring.ts';
import { stateOf } from '../world/world.ts';
import { isHere, isVisible, wireEnd } from './access.ts';
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

/** Wire ends that a fault has put, or had put, on a terminal of another's. */
function strayLandings(bench: Bench): ReadonlyMap<string, string> {
  return landedElsewhere(bench.world.assembly, bench.world.faults);
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
  for (const [point, terminal] of strayLandings(bench)) {
    const [id = '', end] = point.split('@');
    const wire = bench.world.assembly.wireById.get(id);
    if (!wire || (end !== 'from' && end !== 'to')) continue;
    const now = wireEnd(bench, wire, end);
    if (!isVisible(bench, now.part) || now.lifted) continue;
    const key = `landed.${end}`;
    // A wire on its right terminal is what anybody expects to see: news only after it was seen elsewhere.
    const home = now.terminal !== terminal;
    if (home && !bench.seen.has(`${id}.${key}`)) continue;
    note(bench, notices, id, key, home ? point : now.terminal, 'see');
  }
  return notices;
}

/** What a close look at one part shows, whether or not anybody takes it. */
export function closeSigns(bench: Bench, part: AssembledPart): Notice[] {
  return signsOf(bench, part)
    .filter((sign) => sign.sense === 'inspect')
    .map(({ key, value, sense, minor }) => ({ part: part.id, key, value, sense, ...(minor === true ? { minor } : {}) }));
}

/** What looking closely at one part shows besides; the bench remembers it. */
export function lookClosely(bench: Bench, part: AssembledPart): Notice[] {
  const notices = closeSigns(bench, part);
  for (const { key, value } of notices) bench.seen.set(`${part.id}.${key}`, value);
  return notices;
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
