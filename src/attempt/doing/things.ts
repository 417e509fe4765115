import { stateOf } from '../../world/world.ts';
import { isHere, isVisible } from '../access.ts';
import type { Bench } from '../bench.ts';
import { COST_SECONDS } from '../costs.ts';
import { no, partOf, type Refusal, type Registry, wireHere, wireOf } from '../kind.ts';
import { repair } from '../repair.ts';

function plugged(bench: Bench, id: string, out: number): Refusal | undefined {
  const part = partOf(bench, id);
  if (!part?.kind.pluggable) return no('notPluggable');
  if (!isVisible(bench, part)) return no('notHere', { part: id });
  return stateOf(bench.world, part).out === out ? undefined : no(out === 1 ? 'notOut' : 'alreadyOut', { part: id });
}

function setOut(bench: Bench, id: string, out: number): void {
  const part = partOf(bench, id);
  if (part) stateOf(bench.world, part).out = out;
}

function pluggables(bench: Bench): string[] {
  return bench.world.assembly.parts.filter((part) => part.kind.pluggable).map((part) => part.id);
}

/** Single parts: out of their holder, looked at, put right. */
export const things: Pick<Registry, 'unplug' | 'plug' | 'look' | 'replace'> = {
  unplug: {
    seconds: () => COST_SECONDS.unplug,
    refusal: (bench, { part }) => plugged(bench, part, 0),
    apply: (bench, { part }) => setOut(bench, part, 1),
    electrical: true,
    options: (bench) => pluggables(bench).map((part) => ({ name: 'unplug', part })),
  },
  plug: {
    seconds: () => COST_SECONDS.plug,
    refusal: (bench, { part }) => plugged(bench, part, 1),
    apply: (bench, { part }) => setOut(bench, part, 0),
    electrical: true,
    options: (bench) => pluggables(bench).map((part) => ({ name: 'plug', part })),
  },
  look: {
    seconds: () => COST_SECONDS.look,
    refusal(bench, { part: id }) {
      const part = partOf(bench, id);
      if (!part) return no('noSuchPart');
      return isVisible(bench, part) ? undefined : no('notHere', { part: id });
    },
    apply() {},
    electrical: false,
    options: (bench) => bench.world.assembly.parts.map((part) => ({ name: 'look', part: part.id })),
  },
  replace: {
    seconds(bench, { target }) {
      const part = partOf(bench, target);
      if (part) return part.kind.replaceMinutes * 60;
      return wireOf(bench, target)?.data.cable === undefined ? COST_SECONDS.repairJoint : COST_SECONDS.replaceWire;
    },
    refusal(bench, { target }) {
      const part = partOf(bench, target);
      if (part)
        return isVisible(bench, part) || (part.data.rides !== undefined && isHere(bench, part))
          ? undefined
          : no('notHere', { part: target });
      const wire = wireOf(bench, target);
      if (!wire) return no('noSuchPart');
      if (wire.data.fixed) return no('fixedWire', { wire: target });
      return wireHere(bench, target) ? undefined : no('wireNotHere');
    },
    apply: (bench, { target }) => repair(bench, target),
    electrical: true,
    options: (bench) =>
      [...bench.world.assembly.parts, ...bench.world.assembly.wires.filter((wire) => !wire.data.fixed)].map(({ id }) => ({
        name: 'replace',
        target: id,
      })),
  },
};
