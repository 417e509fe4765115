import type { AssembledPart } from '../../rig/assemble.ts';
import { MAT_PLACE } from '../../rig/points.ts';
import { BODY } from '../../world/state.ts';
import { bodyOf, isHere } from '../access.ts';
import type { Bench } from '../bench.ts';
import { COST_SECONDS } from '../costs.ts';
import { no, partOf, type Refusal, type Registry } from '../kind.ts';

function removableHere(bench: Bench, id: string, from: readonly string[]): Refusal | undefined {
  const part = partOf(bench, id);
  if (!part?.kind.removable) return no('notRemovable');
  if (!isHere(bench, part)) return no('notHere', { part: id });
  return from.includes(bodyOf(bench, part) ?? '') ? undefined : no('bodyElsewhere', { part: id });
}

function moveBody(bench: Bench, id: string, to: number): void {
  const part = partOf(bench, id);
  if (part) bench.world.state.bodies[part.index] = to;
}

function bodies(bench: Bench): string[] {
  return bench.world.assembly.parts.filter((part) => part.kind.removable).map((part) => part.id);
}

/** A body that comes off its base: off, over, onto the mat and back. */
export const body: Pick<Registry, 'pull' | 'turn' | 'mat' | 'seat'> = {
  pull: {
    seconds: () => COST_SECONDS.pull,
    refusal: (bench, { part }) => removableHere(bench, part, ['seated']),
    apply: (bench, { part }) => moveBody(bench, part, BODY.pulled),
    electrical: true,
    options: (bench) => bodies(bench).map((part) => ({ name: 'pull', part })),
  },
  turn: {
    seconds: () => COST_SECONDS.turn,
    refusal: (bench, { part }) => removableHere(bench, part, ['pulled', 'turned']),
    apply(bench, { part: id }) {
      const part = partOf(bench, id);
      moveBody(bench, id, part && bodyOf(bench, part) === 'turned' ? BODY.pulled : BODY.turned);
    },
    electrical: false,
    options: (bench) => bodies(bench).map((part) => ({ name: 'turn', part })),
  },
  mat: {
    seconds: () => COST_SECONDS.mat,
    refusal(bench, { part }) {
      if (!bench.world.assembly.rig.places.some((place) => place.id === MAT_PLACE)) return no('noMat');
      const there = bodies(bench).find((id) => bodyOf(bench, partOf(bench, id) as AssembledPart) === 'mat');
      if (there !== undefined && there !== part) return no('matTaken', { part: there });
      return removableHere(bench, part, ['pulled', 'turned']);
    },
    apply(bench, { part }) {
      moveBody(bench, part, BODY.mat);
      bench.place = MAT_PLACE;
    },
    electrical: false,
    options: (bench) => bodies(bench).map((part) => ({ name: 'mat', part })),
  },
  seat: {
    seconds(bench, { part: id }) {
      const part = partOf(bench, id);
      const away = part && bodyOf(bench, part) === 'mat';
      return COST_SECONDS.seat + (away ? COST_SECONDS.mat : 0);
    },
    refusal: (bench, { part }) => removableHere(bench, part, ['pulled', 'turned', 'mat']),
    apply(bench, { part: id }) {
      moveBody(bench, id, BODY.seated);
      bench.place = partOf(bench, id)?.data.place ?? bench.place;
    },
    electrical: true,
    options: (bench) => bodies(bench).map((part) => ({ name: 'seat', part })),
  },
};
