import { STIRRED_SECONDS } from '../../rig/faults.ts';
import { WIRE_ENDS } from '../../rig/points.ts';
import { canLift, isAtHand, isReachable, isVisible, reachablePoints, wireEnd } from '../access.ts';
import type { ActionOf } from '../actions.ts';
import type { Bench } from '../bench.ts';
import { COST_SECONDS } from '../costs.ts';
import { no, type Refusal, type Registry, wireHere, wireOf } from '../kind.ts';

function liftable(bench: Bench, action: ActionOf<'lift'> | ActionOf<'land'>, lifted: boolean): Refusal | undefined {
  const wire = wireOf(bench, action.wire);
  if (!wire) return no('noSuchWire');
  if (!canLift(wire)) return no('fixedWire', { wire: wire.id });
  const now = wireEnd(bench, wire, action.end);
  if (!isVisible(bench, now.part)) return no('endNotHere', { wire: wire.id });
  return now.lifted === lifted ? undefined : no(lifted ? 'notLifted' : 'alreadyLifted', { wire: wire.id });
}

function setLifted(bench: Bench, action: ActionOf<'lift'> | ActionOf<'land'>, lifted: 0 | 1): void {
  const wire = wireOf(bench, action.wire);
  if (wire) bench.world.state.lifted[2 * wire.index + (action.end === 'to' ? 1 : 0)] = lifted;
}

function wireEnds(bench: Bench): { wire: string; end: 'from' | 'to' }[] {
  return bench.world.assembly.wires.filter(canLift).flatMap((wire) => WIRE_ENDS.map((end) => ({ wire: wire.id, end })));
}

/** Jumpers, and wires lifted, landed and tugged. */
export const wires: Pick<Registry, 'jumper' | 'lift' | 'land' | 'tug'> = {
  jumper: {
    seconds: () => COST_SECONDS.jumper,
    refusal(bench, { from, to, on }) {
      const there = bench.world.state.jumpers.find((jumper) => jumper.from === from && jumper.to === to);
      const within = on ? isReachable : isAtHand;
      if (!within(bench, from) || !within(bench, to)) return no('pointNotHere');
      if (!on) return there ? undefined : no('noJumper');
      if (from === to) return no('samePoint');
      if (bench.world.state.jumpers.length >= 4) return no('tooManyJumpers');
      const turned = bench.world.state.jumpers.some((jumper) => jumper.from === to && jumper.to === from);
      return there || turned ? no('alreadySo') : undefined;
    },
    apply(bench, { from, to, on }) {
      const others = bench.world.state.jumpers.filter((jumper) => jumper.from !== from || jumper.to !== to);
      bench.world.state.jumpers = on ? [...others, { from, to }] : others;
    },
    electrical: true,
    options(bench) {
      const points = reachablePoints(bench);
      const laid = bench.world.state.jumpers.map(({ from, to }) => ({ name: 'jumper' as const, from, to, on: false }));
      const possible = points.flatMap((from, place) =>
        points.slice(place + 1).map((to) => ({ name: 'jumper' as const, from, to, on: true })),
      );
      return [...laid, ...possible];
    },
  },
  lift: {
    seconds: () => COST_SECONDS.lift,
    refusal: (bench, action) => liftable(bench, action, false),
    apply: (bench, action) => setLifted(bench, action, 1),
    electrical: true,
    options: (bench) => wireEnds(bench).map((end) => ({ name: 'lift', ...end })),
  },
  land: {
    seconds: () => COST_SECONDS.land,
    refusal: (bench, action) => liftable(bench, action, true),
    apply: (bench, action) => setLifted(bench, action, 0),
    electrical: true,
    options: (bench) => wireEnds(bench).map((end) => ({ name: 'land', ...end })),
  },
  tug: {
    seconds: () => COST_SECONDS.tug,
    refusal(bench, { wire: id }) {
      const wire = wireOf(bench, id);
      if (!wire || !canLift(wire)) return no('noSuchWire');
      return wireHere(bench, id) ? undefined : no('wireNotHere');
    },
    apply(bench, { wire: id }) {
      const wire = wireOf(bench, id);
      if (wire) bench.world.state.stirredUntil[wire.index] = bench.world.state.time + STIRRED_SECONDS;
    },
    electrical: true,
    options: (bench) => bench.world.assembly.wires.filter(canLift).map((wire) => ({ name: 'tug', wire: wire.id })),
  },
};
