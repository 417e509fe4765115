import { METER_FUNCTIONS, type MeterFunction } from '../../meter/functions.ts';
import { rewire, settle } from '../../world/world.ts';
import { isReachable, reachablePoints } from '../access.ts';
import type { Bench } from '../bench.ts';
import { COST_SECONDS } from '../costs.ts';
import { no, type Registry, wireHere } from '../kind.ts';

/** A microamps meter with both leads on is part of the network. */
export function takeUpMeter(bench: Bench): void {
  const { red, black, fn, world } = bench;
  const inSeries = fn === 'microampsDc' && red !== undefined && black !== undefined && red !== black && !bench.meterFuseOpen;
  const was = world.state.series;
  if (!inSeries && was === undefined) return;
  if (inSeries && was?.red === red && was?.black === black) return;
  world.state.series = inSeries ? { red, black } : undefined;
  rewire(world);
  settle(world);
}

/** Whether this technician's meter has a function. */
export function carries(bench: Bench, fn: MeterFunction): boolean {
  return fn === 'off' || bench.tools.includes(fn);
}

/** The meter's key, its leads and its clamp. */
export const measuring: Pick<Registry, 'meter' | 'probe' | 'clamp'> = {
  meter: {
    seconds: () => COST_SECONDS.meter,
    refusal(bench, { fn }) {
      if (bench.fn === fn) return no('alreadySo');
      return carries(bench, fn) ? undefined : no('notCarried');
    },
    apply(bench, { fn }) {
      bench.fn = fn;
      if (fn !== 'ampsAc') bench.clamp = undefined;
    },
    electrical: false,
    options: () => METER_FUNCTIONS.map((fn) => ({ name: 'meter', fn })),
  },
  probe: {
    seconds: () => COST_SECONDS.probe,
    refusal(bench, { lead, at }) {
      if (at === null) return bench[lead] === undefined ? no('leadFree') : undefined;
      if (bench[lead] === at) return no('alreadySo');
      return isReachable(bench, at) ? undefined : no('pointNotHere');
    },
    apply(bench, { lead, at }) {
      bench[lead] = at ?? undefined;
    },
    electrical: false,
    options: (bench) =>
      (['red', 'black'] as const).flatMap((lead) =>
        [null, ...reachablePoints(bench)].map((at) => ({ name: 'probe' as const, lead, at })),
      ),
  },
  clamp: {
    seconds: () => COST_SECONDS.clamp,
    refusal(bench, { around, turns }) {
      if (bench.fn !== 'ampsAc') return no('noClamp');
      if (around === null) return bench.clamp === undefined ? no('leadFree') : undefined;
      if (bench.clamp === around && bench.turns === turns) return no('alreadySo');
      const { rig } = bench.world.assembly;
      const inside = rig.wires.filter((wire) => !wire.pin && (wire.id === around || wire.cable === around));
      return inside.some((wire) => wireHere(bench, wire.id)) ? undefined : no('wireNotHere');
    },
    apply(bench, { around, turns }) {
      bench.clamp = around ?? undefined;
      bench.turns = turns;
    },
    electrical: false,
    options: (bench) =>
      [
        null,
        ...bench.world.assembly.rig.wires.filter((wire) => !wire.pin).map((wire) => wire.id),
        ...bench.world.assembly.rig.cables.map((cable) => cable.id),
      ].map((around) => ({ name: 'clamp', around, turns: 1 })),
  },
};
