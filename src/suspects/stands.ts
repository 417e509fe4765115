import { bodyOf, canLift } from '../attempt/access.ts';
import type { Bench } from '../attempt/bench.ts';
import { MAT_PLACE, WIRE_ENDS, type WireEnd } from '../rig/points.ts';
import { callersOf, type Stand } from './route.ts';

/** Seconds to stand and watch what a new call brings: enough for a furnace to light and its blower to follow; common practice, no source. */
const WATCH_SECONDS = 120;

/**
 * Every stand worth considering on a rig, generated: each place with each cover off, live and isolated; each caller's calls, watched
 * from each place; a body back on its base, off it, and on the mat.
 */
export function standsOf(bench: Bench): Stand[] {
  const { rig, parts } = bench.world.assembly;
  const callers = callersOf(bench);
  const stands: Stand[] = [];
  const apart = callers.filter((caller) => caller.kind.removable && bodyOf(bench, caller) !== 'seated');
  const seated = [{}, ...apart.map(({ id }) => ({ caller: id, body: 'seated' as const }))];
  const places = rig.places.filter((place) => parts.some((part) => part.data.place === place.id));
  for (const { id: place } of places) {
    const covers = rig.covers.filter((cover) => cover.place === place).map((cover) => cover.id);
    const isolate = isolatorsIn(bench, place);
    for (const opened of [[], ...covers.map((cover) => [cover])]) {
      for (const body of seated) stands.push({ place, covers: opened, live: true, ...body });
      if (opened.length > 0 && isolate.length > 0) stands.push({ place, covers: opened, live: false, isolate });
      for (const caller of callers) {
        // On its wall a body's calls are judged on the mat, or elsewhere.
        if (place === caller.data.place && caller.kind.removable) continue;
        const body = caller.kind.removable ? { body: 'seated' as const } : {};
        for (const call of caller.kind.calls ?? [])
          stands.push({ place, covers: opened, live: true, caller: caller.id, ...body, call: call.id, linger: WATCH_SECONDS });
      }
    }
  }
  for (const caller of callers) {
    if (!caller.kind.removable) continue;
    stands.push({ place: caller.data.place, covers: [], live: true, caller: caller.id, body: 'turned' });
    if (!rig.places.some((place) => place.id === MAT_PLACE)) continue;
    for (const call of [{}, ...(caller.kind.calls ?? []).map(({ id }) => ({ call: id, linger: 5 }))]) {
      stands.push({ place: MAT_PLACE, covers: [], live: true, caller: caller.id, body: 'mat', ...call });
    }
  }
  return stands;
}

/** Isolators in the same place: a switch that is reached without a walk. */
function isolatorsIn(bench: Bench, place: string): string[] {
  return bench.world.assembly.parts
    .filter((part) => part.kind.isolator !== undefined && part.data.place === place)
    .map((part) => part.id);
}

/** A stand at both ends of every wire that is on these parts, or on a terminal with one of these wires: isolated, and live where it is low voltage, to lift it there. */
export function liftStands(bench: Bench, targets: ReadonlySet<string>): Stand[] {
  const { assembly } = bench.world;
  const touched = new Set(assembly.wires.filter((wire) => targets.has(wire.id)).flatMap((wire) => [wire.data.from, wire.data.to]));
  const stands = new Map<string, { stand: Stand; lifts: { wire: string; end: WireEnd }[] }>();
  for (const wire of assembly.wires) {
    const from = assembly.parts[wire.fromPart];
    const to = assembly.parts[wire.toPart];
    if (!canLift(wire) || !from || !to) continue;
    const concerned = targets.has(from.id) || targets.has(to.id) || touched.has(wire.data.from) || touched.has(wire.data.to);
    if (!concerned) continue;
    for (const end of WIRE_ENDS) {
      const part = end === 'from' ? from : to;
      const { place, cover } = part.data;
      for (const live of part.kind.lineVoltage === true ? [false] : [false, true]) {
        const key = `${place} ${cover} ${live}`;
        const isolate = live ? [] : isolatorsIn(bench, place);
        const known = stands.get(key) ?? { stand: { place, covers: cover === undefined ? [] : [cover], live, isolate }, lifts: [] };
        known.lifts.push({ wire: wire.id, end });
        stands.set(key, known);
      }
    }
  }
  return [...stands.values()].map(({ stand, lifts }) => ({ ...stand, lifts }));
}
